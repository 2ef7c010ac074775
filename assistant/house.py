"""The decorator's house rules: one TOML file that people may edit, and its text laid over the rule book.

What is written keeps every other line of the file, comments too. A file that cannot be had or written costs no rule:
the rules then hold until the program ends, and the trouble is said once.
"""

import os
import secrets
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from assistant.terminal import one_line
from rules.book import HOUSE_FILE
from rules.house import House, read_house
from rules.record import record

LARGEST = 1_000_000  # bytes of a house file that is read
HEAD = """\
# Your house rules: they take the place of the rule book's own values, in every job.
# Say "remember" and a rule in the chat, or write here by hand; a block that cannot be read is left out and named.
"""


class HouseError(Exception):
    """A rule could not be kept; str() says why in one short clause."""


@record
class Rule:
    """One rule to keep: `value` in TOML's terms for a fact, of one kind of piece where `kind` says so.

    For a table `at` is the place of the row, in the table's own unit.
    """

    id: str
    value: Any
    kind: str = ""
    at: float | None = None
    said: str = ""
    of_a_piece: bool = False  # whether a piece was named with it

    @property
    def path(self) -> tuple[str, ...]:
        """The headings that it stands under."""
        return (self.kind, self.id) if self.kind else (self.id,)


class HouseRules:
    """The rules in a file, or in memory alone where `path` is None."""

    def __init__(self, path: Path | None = None, lay: Callable[[str], House] = read_house) -> None:
        self.path, self.lay = path, lay
        self.trouble = ""  # why the file could not be used, said once
        self.text = ""  # the file as it was read or written last
        self.text = self._read()
        self.more: Callable[[str], str] = lambda _: ""  # what is learned, beside the rules of such a text
        self._house: House | None = None

    @property
    def house(self) -> House:
        """The book with the rules laid over it, and with what is learned."""
        if self._house is None:
            self._house = self._laid(self.text)
        return self._house

    def again(self) -> House:
        """The same, laid anew after more was learned or forgotten."""
        self._house = None
        return self.house

    def _laid(self, text: str) -> House:
        more = self.more(text)
        return self.lay(f"{text.rstrip()}\n\n{more}" if more else text)

    def keep(self, rules: list[Rule]) -> House:
        """Write the rules over those of the same fact; HouseError where one is not sound, and nothing is kept."""
        text = self._read()
        for rule in rules:
            text = _with(text, rule)
        return self._put(text)

    def forget(self, paths: list[tuple[tuple[str, ...], float | None]]) -> House:
        """Take rules out again, by headings and, of a table, by place; HouseError where the file cannot be changed."""
        text = self._read()
        for path, at in paths:
            text = _without(text, path, at)
        return self._put(text)

    def put_back(self, text: str) -> House:
        """The whole text as it was before."""
        return self._put(text)

    def _put(self, text: str) -> House:
        house = self._laid(text)
        before = {str(fault.error) for fault in self.house.faults}
        new = [fault for fault in house.faults if str(fault.error) not in before]
        if new:
            raise HouseError(f"{new[0].error.what}; {new[0].error.mend}")
        self._write(text)
        self.text, self._house = text, house
        return house

    def _read(self) -> str:
        """The file as it is now, since another chat or an editor may have changed it; else what is held."""
        if self.path is None or self.trouble:
            return self.text
        try:
            with self.path.open("rb") as file:
                return file.read(LARGEST).decode("utf-8")
        except FileNotFoundError:
            return ""
        except (OSError, ValueError) as error:
            self._fail(error)
            return self.text

    def _write(self, text: str) -> None:
        if self.path is None or self.trouble:
            return
        try:
            with _whole(self.path) as file:
                file.write(text.encode())
        except OSError as error:
            self._fail(error)

    def _fail(self, error: Exception) -> None:
        reason = (error.strerror if isinstance(error, OSError) else None) or "it is no readable text"
        self.trouble = (
            f"Your house file cannot be used ({one_line(reason).lower()}); rules are kept until you leave only."
        )


@contextmanager
def _whole(path: Path) -> Iterator[Any]:
    """A file written whole or not at all, its owner's alone; a link stays a link to what it names."""
    path = path.resolve()
    path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    part = path.parent / f".{path.name}-{secrets.token_hex(4)}.part"
    descriptor = os.open(part, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
    try:
        with os.fdopen(descriptor, "wb") as file:
            yield file
            file.flush()
            os.fsync(file.fileno())
        part.replace(path)
    finally:
        part.unlink(missing_ok=True)


def _with(text: str, rule: Rule) -> str:
    """The file's text with a rule set, all other lines as they were."""
    document = _parsed(text or HEAD)
    import tomlkit

    table = document
    for heading in rule.path:
        if not isinstance(table.get(heading), Mapping):
            table[heading] = tomlkit.table(is_super_table=heading != rule.id)
        table = table[heading]
    if rule.at is None:
        value = tomlkit.item(rule.value)
        if rule.said:
            value.comment(one_line(rule.said))
        table["assume"] = value
    else:
        rows = [dict(row) for row in table.get("rows", ()) if row.get("at") != rule.at]
        table["rows"] = _rows([*rows, {"at": rule.at, "typical": rule.value}])
    return tomlkit.dumps(document)


def _rows(rows: list[dict[str, Any]]) -> Any:
    """Rows of a table, one a line, in the order of their places."""
    import tomlkit

    array = tomlkit.array().multiline(True)
    for row in sorted(rows, key=lambda row: float(row["at"])):
        inline = tomlkit.inline_table()
        inline.update(row)
        array.append(inline)
    return array


def _without(text: str, path: tuple[str, ...], at: float | None) -> str:
    import tomlkit

    document = _parsed(text)
    above: Any = document
    for heading in path[:-1]:
        above = above.get(heading, {})
    table = above.get(path[-1])
    if table is None:
        return text
    if at is not None:
        rows = [dict(row) for row in table.get("rows", ()) if float(row.get("at", -1)) != at]
        if rows:
            table["rows"] = _rows(rows)
            return tomlkit.dumps(document)
    del above[path[-1]]
    if len(path) > 1 and not above:
        del document[path[0]]
    return tomlkit.dumps(document)


def _parsed(text: str) -> Any:
    import tomlkit
    from tomlkit.exceptions import TOMLKitError

    try:
        return tomlkit.parse(text)
    except TOMLKitError as error:
        reason = str(error).split(" at line")[0].lower()
        line = getattr(error, "line", "?")
        raise HouseError(f"line {line} of your house file is not valid TOML ({reason}); mend that line first") from None


def users_house_file() -> Path:
    """Where the user's house file is, or would be."""
    from platformdirs import user_config_path

    return user_config_path("festoon", appauthor=False) / HOUSE_FILE
