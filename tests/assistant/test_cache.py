"""The cache of the command: the user's alone, safe to lose, and never touched by a conversation of its own accord."""

import os
import stat
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from assistant.cache import Cache, open_cache, warm_up

ROOT = Path(__file__).parents[2]
WORDS = "three 6 ft tables, full drop"

pytestmark = pytest.mark.skipif(os.name != "posix", reason="nothing is kept where files have no owner to ask")


class Maker:
    """Makes a thing and counts how often."""

    def __init__(self, thing: object = "made") -> None:
        self.thing, self.times = thing, 0

    def __call__(self) -> object:
        self.times += 1
        return self.thing


class Trap:
    """Unpickling it leaves a mark on the disk."""

    def __init__(self, mark: Path) -> None:
        self.mark = mark

    def __reduce__(self) -> tuple[Callable[..., object], tuple[object, ...]]:
        return os.mkdir, (str(self.mark),)


@pytest.fixture
def cache(tmp_path: Path) -> Cache:
    return Cache(tmp_path / "festoon", "key")


def kept_file(cache: Cache) -> Path:
    (file,) = cache.folder.iterdir()
    return file


def run(code: str, home: Path, **more: str) -> str:
    place = {
        **os.environ,
        "HOME": str(home),
        "XDG_CACHE_HOME": str(home / "cache"),
        "XDG_DATA_HOME": str(home / "data"),
    }
    argv = [sys.executable, "-c", code]
    return subprocess.run(argv, cwd=ROOT, env=place | more, capture_output=True, text=True, check=True).stdout


def say(home: Path, **more: str) -> str:
    return run(f"from assistant.cli import main; import sys; sys.argv = ['festoon', {WORDS!r}]; main()", home, **more)


def test_a_thing_is_made_once(cache: Cache) -> None:
    make = Maker({"a": [1, 2]})
    assert cache.recall("thing", make) == {"a": [1, 2]}
    assert cache.recall("thing", make) == {"a": [1, 2]}
    assert make.times == 1


def test_another_key_makes_it_anew_and_leaves_nothing_old(cache: Cache) -> None:
    cache.recall("thing", Maker("old"))
    cache.recall("other", Maker("stays"))
    assert Cache(cache.folder, "new").recall("thing", Maker("new")) == "new"
    assert sorted(path.name for path in cache.folder.iterdir()) == ["other-key.pickle", "thing-new.pickle"]


def test_folder_and_file_are_the_users_alone(cache: Cache) -> None:
    before = os.umask(0)
    try:
        cache.recall("thing", Maker())
    finally:
        os.umask(before)
    assert stat.S_IMODE(cache.folder.stat().st_mode) == 0o700
    assert stat.S_IMODE(kept_file(cache).stat().st_mode) == 0o600


@pytest.mark.parametrize("mode", [0o620, 0o602, 0o666])
def test_a_file_that_others_may_write_is_never_unpickled(cache: Cache, tmp_path: Path, mode: int) -> None:
    cache.recall("thing", Maker(Trap(tmp_path / "sprung")))
    kept_file(cache).chmod(mode)
    assert cache.recall("thing", Maker("anew")) == "anew"
    assert not (tmp_path / "sprung").exists()
    assert stat.S_IMODE(kept_file(cache).stat().st_mode) == 0o600


@pytest.mark.parametrize("mode", [0o720, 0o702, 0o777])
def test_a_folder_that_others_may_write_is_left_alone(cache: Cache, tmp_path: Path, mode: int) -> None:
    cache.recall("thing", Maker(Trap(tmp_path / "sprung")))
    cache.folder.chmod(mode)
    before = kept_file(cache).read_bytes()
    assert cache.recall("thing", Maker("anew")) == "anew"
    assert not (tmp_path / "sprung").exists()
    assert kept_file(cache).read_bytes() == before


def test_the_trap_does_spring_where_nothing_is_wrong(cache: Cache, tmp_path: Path) -> None:
    """So that the tests around it could fail."""
    cache.recall("thing", Maker(Trap(tmp_path / "sprung")))
    cache.recall("thing", Maker())
    assert (tmp_path / "sprung").exists()


def test_what_belongs_to_another_is_never_unpickled(
    cache: Cache, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    cache.recall("thing", Maker(Trap(tmp_path / "sprung")))
    mine = os.getuid()
    monkeypatch.setattr(os, "getuid", lambda: mine + 1)
    assert cache.recall("thing", Maker("anew")) == "anew"
    assert not (tmp_path / "sprung").exists()


def test_a_link_is_not_followed(cache: Cache, tmp_path: Path) -> None:
    cache.recall("thing", Maker(Trap(tmp_path / "sprung")))
    moved = kept_file(cache).rename(tmp_path / "elsewhere")
    (cache.folder / "thing-key.pickle").symlink_to(moved)
    assert cache.recall("thing", Maker("anew")) == "anew"
    assert not (tmp_path / "sprung").exists()


@pytest.mark.parametrize(
    "spoil", [lambda b: b"", lambda b: b[:-9], lambda b: b[:40] + b"?" + b[41:], lambda b: b"x" * 99]
)
def test_a_spoilt_file_is_made_anew(cache: Cache, spoil: Callable[[bytes], bytes]) -> None:
    cache.recall("thing", Maker(list(range(99))))
    kept_file(cache).write_bytes(spoil(kept_file(cache).read_bytes()))
    assert cache.recall("thing", Maker("anew")) == "anew"
    assert cache.recall("thing", Maker()) == "anew"


def test_where_nothing_can_be_kept_it_is_made_each_time(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way", encoding="utf-8")
    make = Maker()
    cache = Cache(tmp_path / "file" / "festoon", "key")
    assert (cache.recall("thing", make), cache.recall("thing", make), make.times) == ("made", "made", 2)


def test_what_cannot_be_pickled_is_handed_over_all_the_same(cache: Cache) -> None:
    def thing() -> None:
        """A function within a function has no name to be found by."""

    assert cache.recall("thing", Maker(thing)) is thing
    assert not cache.folder.exists()


def test_a_mistake_in_making_is_not_hidden(cache: Cache) -> None:
    def broken() -> None:
        raise ZeroDivisionError

    with pytest.raises(ZeroDivisionError):
        cache.recall("thing", broken)


def test_it_can_be_turned_off(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv("FESTOON_NO_CACHE", "1")
    assert open_cache(tmp_path) is None
    warm_up(None)
    say(tmp_path, FESTOON_NO_CACHE="1", FESTOON_NO_JOBS="1")
    assert list(tmp_path.iterdir()) == []


def test_the_command_answers_alike_with_it_and_without(tmp_path: Path) -> None:
    without = say(tmp_path, FESTOON_NO_CACHE="1")
    first, second = say(tmp_path), say(tmp_path)
    assert without == first == second
    assert "tables" in without or "runners" in without
    names = sorted(path.name.partition("-")[0] for path in (tmp_path / "cache" / "festoon").iterdir())
    assert names == ["book", "formulas", "request", "tongues", "words"]


def test_with_it_neither_pint_nor_the_formula_parser_is_waited_for(tmp_path: Path) -> None:
    say(tmp_path)
    code = (
        "import sys; from assistant.turns import make_conversation; from rules import formula; "
        f"make_conversation(40).say({WORDS!r}); print('pint' in sys.modules, formula._parser.cache_info().currsize)"
    )
    assert run(code, tmp_path) == "False 0\n"


def test_a_conversation_of_its_own_accord_reads_and_writes_nothing(tmp_path: Path) -> None:
    say(tmp_path, FESTOON_NO_JOBS="1")
    before = {path: path.read_bytes() for path in (tmp_path / "cache").rglob("*.pickle")}
    code = (
        "import sys; opened = []; "
        "sys.addaudithook(lambda event, args: opened.append(str(args[0])) if event == 'open' else None); "
        f"from assistant import Conversation; Conversation().say({WORDS!r}); "
        "print([path for path in opened if path.endswith('.pickle')], 'assistant.cache' in sys.modules)"
    )
    assert run(code, tmp_path) == "[] False\n"
    assert {path: path.read_bytes() for path in (tmp_path / "cache").rglob("*.pickle")} == before
    assert [path.name for path in tmp_path.iterdir()] == ["cache"]


def test_the_key_follows_the_sources(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    import rules
    from assistant import cache as module

    first = module._key()
    assert module._key() == first
    (tmp_path / "a.toml").write_text("x = 1", encoding="utf-8")
    monkeypatch.setattr(rules, "__file__", str(tmp_path / "__init__.py"))
    second = module._key()
    (tmp_path / "a.toml").write_text("x = 2", encoding="utf-8")
    assert len({first, second, module._key()}) == 3
