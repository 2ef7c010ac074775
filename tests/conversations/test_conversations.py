"""Whole conversations, word for word, sorted by how they end.

    python tests/conversations/test_conversations.py --rewrite

writes every reply anew, those in README.md as well, so that a change of wording can be reviewed as a difference.
"""

import argparse
import sys
from pathlib import Path
from typing import Any

import pytest

sys.path.insert(0, str(Path(__file__).parents[2]))  # so that this file can be run by itself

from tests.dialogues import WIDTH, Dialogue, held_anew, hold, read_dialogue, with_dialogues_anew

HERE = Path(__file__).parent
LEAST = {"answered": 12, "asked": 8, "refused": 6}
FILES = sorted(path for folder in LEAST for path in (HERE / folder).glob("*.txt"))


def name(path: Path) -> str:
    return f"{path.parent.name}/{path.stem}"


def dialogue(path: Path) -> Dialogue:
    return read_dialogue(path.read_text(encoding="utf-8"))


def in_folder(folder: str) -> list[Path]:
    return [path for path in FILES if path.parent.name == folder]


def held(said: list[str]) -> dict[str, Any]:
    """All that is kept after those turns, but for what the last one wanted."""
    replies = hold(said)
    if not replies:
        return {"pieces": [], "job": {}}
    heard = replies[-1].model_dump(mode="json")["heard"]
    heard["job"].pop("intent", None)
    return dict(heard)


@pytest.mark.parametrize("path", FILES, ids=name)
def test_every_reply_is_as_written(path: Path) -> None:
    written = dialogue(path)
    assert written.turns
    assert str(held_anew(written)) == str(written)


@pytest.mark.parametrize("path", FILES, ids=name)
def test_replies_fit_the_narrow_screen(path: Path) -> None:
    lines = [line for turn in dialogue(path).turns for line in turn.reply.splitlines()]
    assert [line for line in lines if len(line) > WIDTH] == []


@pytest.mark.parametrize("folder", LEAST)
def test_there_are_enough_of_each_sort(folder: str) -> None:
    assert len(in_folder(folder)) >= LEAST[folder]


@pytest.mark.parametrize("path", in_folder("answered"), ids=name)
def test_an_answered_conversation_ends_without_a_question(path: Path) -> None:
    last = hold(dialogue(path).said)[-1]
    assert last.question is None
    assert last.heard.pieces


@pytest.mark.parametrize("path", in_folder("asked"), ids=name)
def test_an_asked_conversation_ends_with_a_question(path: Path) -> None:
    last = hold(dialogue(path).said)[-1]
    assert last.question
    assert "?" in last.question
    assert " ".join(last.question.split()) in " ".join(last.text.split())


@pytest.mark.parametrize("path", in_folder("refused"), ids=name)
def test_nothing_of_a_refused_last_turn_is_kept(path: Path) -> None:
    said = dialogue(path).said
    assert held(said) == held(said[:-1])


def test_the_text_of_a_dialogue_reads_back() -> None:
    text = "Two turns.\n\n> one\nfirst\n\nline\n\n> two\nsecond\n"
    assert [(turn.said, turn.reply) for turn in read_dialogue(text).turns] == [
        ("one", "first\n\nline"),
        ("two", "second"),
    ]
    assert str(read_dialogue(text)) == text


def rewrite() -> list[Path]:
    """Write the replies of today into every file; the files that came out different."""
    changed = []
    for path in (*FILES, HERE.parents[1] / "README.md"):
        before = path.read_text(encoding="utf-8")
        after = with_dialogues_anew(before) if path.suffix == ".md" else str(held_anew(read_dialogue(before)))
        if after != before:
            path.write_text(after, encoding="utf-8")
            changed.append(path)
    return changed


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--rewrite", action="store_true", required=True, help="write every reply anew, for review")
    parser.parse_args()
    sys.stdout.writelines(f"{path.relative_to(HERE.parents[1])}\n" for path in rewrite())
