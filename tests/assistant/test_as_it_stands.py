"""Where a turn changes nothing the estimate is not told again, unless it is asked for."""

import pytest

from tests.grammar.kinds_said import after

JOB = "8 runners on 6 ft tables, navy and gold"


@pytest.mark.parametrize("said", ["ok", "thanks", "great, she loves it", "sounds good", "make them 6 ft"])
def test_it_is_said_in_a_line_what_there_is(said: str) -> None:
    reply = after(f"{JOB} / {said}")
    assert "8 table runners, about 864 balloons" in " ".join(reply.text.split())
    assert len(reply.text.split("\n")) <= 4


def test_a_question_without_an_answer_says_so() -> None:
    reply = after(f"{JOB} / who was the king of that country?")
    assert reply.text.startswith("I have no answer to that")
    assert "king" in " ".join(reply.unread)


@pytest.mark.parametrize("said", ["estimate", "show me the estimate", "show it all", "the whole thing again"])
def test_the_whole_is_told_when_asked_for(said: str) -> None:
    first, again = after(JOB), after(f"{JOB} / {said}")
    assert again.text.split("\n")[0] == first.text.split("\n")[0]
    assert "buy" in again.text
    assert "intent" not in again.heard.job
    assert again.unread == []


@pytest.mark.parametrize("said", ["how many balloons", "how many balloons is that", "how many altogether?"])
def test_how_many_balloons_are_needed_is_a_figure_with_its_range(said: str) -> None:
    reply = after(f"{JOB} / {said}")
    assert "864" in reply.text
    assert "Range: 758 to 972" in reply.text
