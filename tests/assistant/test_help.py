"""What the help gives as examples is heard, in each language."""

import pytest

from assistant import Conversation
from assistant.answers import HELP
from assistant.speech import speaking, spoken

JOB = {"": "eight 6 ft tables, full drop", "es": "ocho mesas de 6 pies, caída completa"}
OF_THE_BOOK = {"keep", "after"}  # these want a job book: see test_desk, test_habits and test_finished


def examples(language: str) -> list[str]:
    with speaking(language, frozenset()):
        rows = [spoken(text) for label, text in HELP if label not in OF_THE_BOOK]
    return [text for row in rows for text in row.split("; ")]


@pytest.mark.parametrize(("language", "said"), [(code, text) for code in JOB for text in examples(code)])
def test_every_example_is_heard(language: str, said: str) -> None:
    talk = Conversation()
    talk.say(JOB[language])
    reply = talk.say(said)
    assert reply.unread == []
    with speaking(language, frozenset()):
        unknown = spoken("I have no answer to that, and nothing changed.")
    assert not " ".join(reply.text.split()).startswith(unknown)


def test_the_spanish_examples_are_spanish() -> None:
    assert not {*examples("es")} & {*examples("")}
