"""A house file made to hurt: too deep, too large, of the wrong kind; each is refused in a sentence, and at once."""

import pytest

from rules import BookError, load_book
from rules.house import read_house
from rules.texts import places

LAMPS = '[lamps]\nof = ["job"]\nunit = "{unit}"\nwhy = "a reason"\nsource = "mine"\nassume = 1\n'
HOSTILE = {
    "lists within lists": "a = " + "[" * 3_000,
    "tables within tables": "a = " + "{a=" * 3_000,
    "five thousand digits": "[table_height]\nassume = " + "9" * 5_000,
    "more than a float": "[table_height]\nassume = " + "9" * 400,
    "a power without end": LAMPS.format(unit="ft**99999999"),
    "a power beyond a float": LAMPS.format(unit="/".join(["acre**9"] * 6)),
    "a number of things shown": '[job]\nkind = "job"\nshows = 5\n',
    "a number of things told": '[job]\nkind = "job"\ntells = 5\n',
    "a number of words": '[zork]\nkind = "zork"\nwords = 5\n',
    "an endless rank": '[lamps]\nkind = "caution"\nof = ["any"]\nrank = inf\ntext = "t"\nsource = "mine"\n',
}


@pytest.mark.parametrize("text", HOSTILE.values(), ids=HOSTILE)
def test_it_is_refused_in_a_sentence(text: str) -> None:
    with pytest.raises(BookError) as refused:
        load_book(text)
    assert str(refused.value).startswith("house.toml")
    assert str(refused.value).endswith(".")


@pytest.mark.parametrize("text", HOSTILE.values(), ids=HOSTILE)
def test_it_is_left_out_and_the_rest_holds(text: str) -> None:
    sound = '[table_width]\nassume = "31 in"\n\n'
    house = read_house(sound + (text if text.startswith("[") else f"[table_height]\n{text}"))
    assert house.faults
    assert house.text.strip() == sound.strip()


def test_places_left_open_take_no_longer_than_the_text() -> None:
    # With the square of the text this would take minutes.
    assert list(places("{a:" * 300_000 + "b}")) == [("a", "b")]
