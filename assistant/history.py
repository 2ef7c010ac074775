"""What was typed before, kept for the arrow keys in a file that only its owner can read."""

import os
from collections.abc import Iterable
from pathlib import Path

from prompt_toolkit.history import FileHistory, History, InMemoryHistory

from assistant.terminal import clean

NOT_KEPT = "What you type is remembered until you leave only: {folder} cannot be written ({reason})."


class PrivateHistory(FileHistory):
    """Lines typed, newest last, in one file of mode 0600; what the file holds is cleaned before it is shown.

    A disk that fails later on never stops the talk: from then on the lines live in memory.
    """

    def load_history_strings(self) -> Iterable[str]:
        try:
            return [clean(line) for line in super().load_history_strings()]
        except OSError:
            return []

    def store_string(self, string: str) -> None:
        try:
            super().store_string(clean(string))
        except OSError:
            return


def open_history(folder: Path | None = None) -> tuple[History, str | None]:
    """The history in that folder (the user's own data folder where None), and a sentence where it cannot be kept."""
    folder = folder or _data_folder()
    path = folder / "history"
    try:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        folder.chmod(0o700)
        descriptor = os.open(path, os.O_RDWR | os.O_APPEND | os.O_CREAT, 0o600)
        try:
            path.chmod(0o600)
        finally:
            os.close(descriptor)
    except OSError as error:
        return InMemoryHistory(), NOT_KEPT.format(folder=folder, reason=error.strerror or "unknown reason")
    return PrivateHistory(str(path)), None


def _data_folder() -> Path:
    from platformdirs import user_data_path

    return user_data_path("festoon", appauthor=False)
