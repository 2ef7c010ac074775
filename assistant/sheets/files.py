"""Files of our own in a folder: written whole or not at all, never over anything that festoon did not write."""

import os
import secrets
from pathlib import Path

MARK = "made by festoon"  # stands in the first lines of every file of ours
LOOKED_AT = 300  # bytes in which the mark must stand
MOST_NUMBERS = 1000


def write(folder: Path, stem: str, suffix: str, text: str) -> Path:
    """Write the text as stem.suffix, or as stem-2.suffix and so on where that name is another's; the path.

    The text must hold MARK near its start. Raises OSError where the folder cannot be written in; then nothing is left.
    """
    data = text.encode()
    if MARK.encode() not in data[:LOOKED_AT]:
        raise ValueError("A file of ours says so in its first lines.")
    part = folder / f".{stem}-{secrets.token_hex(4)}.part"
    descriptor = os.open(part, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o666)
    try:
        with os.fdopen(descriptor, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        for number in range(1, MOST_NUMBERS):
            path = folder / f"{stem}{f'-{number}' if number > 1 else ''}{suffix}"
            if is_ours(path):
                part.replace(path)
                return path
            if _take(path):
                part.replace(path)
                return path
        raise FileExistsError(f"Too many files are called {stem}{suffix} here")
    finally:
        part.unlink(missing_ok=True)


def is_ours(path: Path) -> bool:
    """Whether the path is a plain file, no link to one, that festoon wrote."""
    try:
        if path.is_symlink() or not path.is_file():
            return False
        with path.open("rb") as file:
            return MARK.encode() in file.read(LOOKED_AT)
    except OSError:
        return False


def _take(path: Path) -> bool:
    """Make an empty file of that name where there is nothing of that name; whoever is quicker keeps it."""
    try:
        os.close(os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o666))
    except FileExistsError:
        return False
    return True
