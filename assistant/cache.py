"""What takes long to work out at each start, and comes out the same each time, kept on disk between two runs.

Only the command and the chat turn it on; a Conversation of its own accord reads and writes nothing. All of it may be
lost or be unusable at any time: then it is worked out anew, and nobody is told. FESTOON_NO_CACHE=1 turns it off.

What is kept is unpickled, so it is read only from a folder and a file that belong to the user and that nobody else can
write to. Where a system has no such owners to ask (Windows), nothing is kept.
"""

import hashlib
import os
import pickle
import stat
import sys
from collections.abc import Callable, Iterable
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

if TYPE_CHECKING:
    from rules.house import House

T = TypeVar("T")

_DATA = (".lark", ".toml", ".txt")
_MARK = hashlib.sha256().digest_size
_FOLDER = getattr(os, "O_DIRECTORY", 0) | getattr(os, "O_NOFOLLOW", 0)
_FILE = getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_CLOEXEC", 0)


class Cache:
    """Things by name in one folder, all made from sources of which `key` is the hash: another key, other things."""

    def __init__(self, folder: Path, key: str) -> None:
        self.folder, self.key = folder, key

    def recall(self, name: str, make: Callable[[], T], mark: str = "") -> T:
        """What was kept under the name with the mark, else what `make()` gives, which is kept from then on.

        Raises only what `make()` raises.
        """
        with suppress(Exception):  # a kept thing that cannot be had, whatever the reason, is made anew
            kept: tuple[str, T] = pickle.loads(self._read(name))  # noqa: S301 - the user's own, see _read
            if kept[0] == mark:
                return kept[1]
        made = make()
        with suppress(Exception):  # nor does it matter where it cannot be kept
            self._write(name, pickle.dumps((mark, made), pickle.HIGHEST_PROTOCOL))
        return made

    def _file(self, name: str) -> str:
        return f"{name}-{self.key}.pickle"

    def _read(self, name: str) -> bytes:
        """The bytes kept; OSError where there are none that can be trusted, ValueError where they are not whole."""
        folder = _open_folder(self.folder)
        try:
            file = os.open(self._file(name), os.O_RDONLY | _FILE, dir_fd=folder)
        finally:
            os.close(folder)
        with open(file, "rb") as stream:  # noqa: PTH123 - a descriptor
            _refuse_strangers(os.fstat(file))
            mark, kept = stream.read(_MARK), stream.read()
        if hashlib.sha256(kept).digest() != mark:
            raise ValueError("not whole")
        return kept

    def _write(self, name: str, kept: bytes) -> None:
        """Whole or not at all; what an older key left under the name goes."""
        self.folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        folder = _open_folder(self.folder)
        try:
            os.fchmod(folder, 0o700)
            own = self._file(name)
            passing = f"{own}.{os.getpid()}"
            file = os.open(passing, os.O_WRONLY | os.O_CREAT | os.O_EXCL | _FILE, 0o600, dir_fd=folder)
            try:
                with open(file, "wb") as stream:  # noqa: PTH123 - a descriptor
                    stream.write(hashlib.sha256(kept).digest() + kept)
                os.replace(passing, own, src_dir_fd=folder, dst_dir_fd=folder)
            except BaseException:
                os.unlink(passing, dir_fd=folder)
                raise
            for other in os.listdir(folder):  # noqa: PTH208 - a descriptor
                if other != own and other.startswith(f"{name}-") and other.endswith(".pickle"):
                    os.unlink(other, dir_fd=folder)
        finally:
            os.close(folder)


def open_cache(folder: Path | None = None) -> Cache | None:
    """The user's cache in `folder` (the system's place for such where None); None where it is off or cannot be.

    Its key is the hash of all that the grammar and the rule book are written in, of the code that reads them (by time
    and size), and of the versions of lark, Python and festoon.
    """
    if os.environ.get("FESTOON_NO_CACHE") or os.name != "posix":
        return None
    try:
        return Cache(folder or _users_folder(), _key())
    except Exception:  # noqa: BLE001  no home, no source files: no cache
        return None


def warm_up(cache: Cache | None) -> None:
    """Hand the cache to the grammar and the rules, which take from it what they would make. Never raises."""
    if cache is None:
        return
    with suppress(Exception):  # whatever it is that fails, the conversation makes what it needs by itself
        import grammar.warm
        import rules.warm

        grammar.warm.warm(cache.recall)
        rules.warm.warm(cache.recall, grammar.warm.spoken_units())


def remembered(cache: Cache | None) -> Callable[[str], "House"]:
    """Lays a house file over the book, the last one out of the cache; a house of no rules costs nothing."""

    def lay(text: str) -> "House":
        from rules.book import load_book
        from rules.house import House, read_house

        if not text.strip():
            return House(load_book(), "")
        if cache is None:
            return read_house(text)
        return cache.recall("house", lambda: read_house(text), hashlib.sha256(text.encode()).hexdigest())

    return lay


def _open_folder(folder: Path) -> int:
    """A descriptor of the folder, held to its owner, so that it cannot be another folder a moment later."""
    opened = os.open(folder, os.O_RDONLY | _FOLDER)
    try:
        _refuse_strangers(os.fstat(opened))
    except BaseException:
        os.close(opened)
        raise
    return opened


def _refuse_strangers(found: os.stat_result) -> None:
    """PermissionError for what belongs to another, or what anybody else may write to."""
    if found.st_uid != os.getuid() or found.st_mode & (stat.S_IWGRP | stat.S_IWOTH):
        raise PermissionError("not the user's alone")


def _users_folder() -> Path:
    from platformdirs import user_cache_path

    return user_cache_path("festoon", appauthor=False)


def _key() -> str:
    import lark

    import grammar
    import rules
    from assistant.cli import VERSION

    found = hashlib.sha256(f"{VERSION} {lark.__version__} {sys.version}".encode())
    for package in (grammar, rules):
        for path in _sources(Path(str(package.__file__)).parent):
            found.update(f"\0{path}\0".encode())
            if path.endswith(".py"):
                about = os.stat(path)  # noqa: PTH116 - pathlib would slow each start
                found.update(f"{about.st_size} {about.st_mtime_ns}".encode())
            else:
                with open(path, "rb") as stream:  # noqa: PTH123 - pathlib would slow each start
                    found.update(stream.read())
    return found.hexdigest()[:24]


def _sources(folder: Path) -> Iterable[str]:
    """The paths of code and data under a folder, in a fixed order."""
    found: list[str] = []
    for at, _, names in os.walk(folder):
        found += [os.path.join(at, name) for name in names if name.endswith((".py", *_DATA))]  # noqa: PTH118
    return sorted(found)
