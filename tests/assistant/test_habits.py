"""House rules by saying so: kept, shown, changed, forgotten, taken back; in a file and without one."""

import stat
import threading
import tomllib
from pathlib import Path

import pytest

from assistant import Conversation
from assistant.cache import Cache, remembered
from assistant.house import HouseRules
from assistant.jobs import FILE, JobBook
from grammar.talk.habits import read_habit

TABLES = "eight 6 ft tables, full drop"


def talk_with(path: Path) -> Conversation:
    return Conversation(house=HouseRules(path))


def say(talk: Conversation, *turns: str) -> str:
    return [" ".join(talk.say(turn).text.split()) for turn in turns][-1]


def figure(talk: Conversation, id: str) -> float:
    found = talk.estimates.of(talk.state).figure(id)
    assert found is not None
    assert isinstance(found.value, int | float)
    return found.value


@pytest.mark.parametrize(
    ("said", "kept"),
    [
        ("remember: 5 inch balloons are 11 cents, bags of 100", {"balloon_price": (5, 0.11), "pack_size": (5, 100)}),
        ("remember 5in balloons cost 11c and 11in balloons cost 19c", {"balloon_price": (5, 0.11, 11, 0.19)}),
        ("remember that the 11s are 18 cents each", {"balloon_price": (11, 0.18)}),
        (
            "the 16 inch ones come in bags of 50 at 40 dollars a bag",
            {"pack_size": (16, 50), "balloon_price": (16, 0.8)},
        ),
        ("I pay 12 cents for a 5 inch", {"balloon_price": (5, 0.12)}),
        ("11 inch are $14 a bag", {"balloon_price": (11, 0.14)}),
        ("remember we blow our 11s to 10 inches", {"usual_sizing": (11, 10)}),
        ("bags of 5 inch hold 50", {"pack_size": (5, 50)}),
        ("5 inch latex: 8.50 per 100", {"balloon_price": (5, 0.085)}),
        ('11" bag of 100 $17.99', {"pack_size": (11, 100), "balloon_price": (11, 0.1799)}),
        ("a pack of 50 of the 16 inch is 40 dollars", {"pack_size": (16, 50), "balloon_price": (16, 0.8)}),
    ],
)
def test_rows_of_tables_are_kept(said: str, kept: dict[str, tuple[float, ...]], tmp_path: Path) -> None:
    talk = talk_with(tmp_path / "house.toml")
    reply = talk.say(said)
    written = tomllib.loads((tmp_path / "house.toml").read_text(encoding="utf-8"))
    rows = {id: tuple(n for row in block["rows"] for n in (row["at"], row["typical"])) for id, block in written.items()}
    assert rows == kept
    assert reply.unread == []
    assert reply.heard.pieces == []


@pytest.mark.parametrize(
    ("said", "kept", "heard"),
    [
        ("my rate is 38 an hour", {"labour_rate": "38 USD/hour"}, {"labour_rate": 38}),
        ("I always add 12 % spare", {"spare": "12 percent"}, {"spare_pct": 12}),
        ("we add 12 percent spare on every job", {"spare": "12 percent"}, {"spare_pct": 12}),
        ("my pump gives 3.5 inches in one stroke", {"pump_size": "3.5 in", "pump_strokes": 1}, {"pump_strokes": 1}),
        ("from now on my margin is 40%", {"margin": "40 percent"}, {"margin_pct": 40}),
        ("remember my rate is 38 an hour", {"labour_rate": "38 USD/hour"}, {}),
        ("raise my rate to 45 for every job", {"labour_rate": "45 USD/hour"}, {"labour_rate": 45}),
        ("my rate went up to 42", {"labour_rate": "42 USD/hour"}, {"labour_rate": 42}),
        ("a quad takes me 15 seconds", {"time_a_quad": "15 s"}, {}),
        ("it takes me 8 minutes a table", {"time_a_table": "8 min"}, {}),
        ("I can do 200 balloons an hour by hand", {"pace_by_hand": "200 count/hour"}, {}),
        ("my inflator does 300 an hour", {"pace_by_machine": "300 count/hour"}, {}),
        ("eucalyptus is 1.25 a stem", {"stem_price": "1.25 USD"}, {}),
        ("my line costs 3 cents a foot", {"line_price": "0.03 USD/ft"}, {}),
        ("my mileage is 80 cents a mile", {"mileage": "0.8 USD/mi"}, {}),
        ("helium is 60 cents a cubic foot", {"helium_price": "0.6 USD/ft**3"}, {}),
        ("our tables are always 29 inches high", {"table_height": "29 in"}, {}),
        ("remember: we never use greenery", {"foliage": False}, {}),
    ],
)
def test_facts_are_kept(said: str, kept: dict[str, object], heard: dict[str, object], tmp_path: Path) -> None:
    talk = talk_with(tmp_path / "house.toml")
    reply = talk.say(said)
    written = tomllib.loads((tmp_path / "house.toml").read_text(encoding="utf-8"))
    assert {id: block["assume"] for id, block in written.items()} == kept
    assert heard.items() <= reply.heard.job.items()
    assert reply.heard.pieces == []


@pytest.mark.parametrize(
    "said",
    [
        "my rate for this job is 45",
        "it will take 8 hours",
        "it is 2 miles away",
        "my budget is 600",
        "our tables are 6 ft",
        "I always say eight, it's six tables",
        "eight 6 ft tables, 5 inch balloons, bags of 100",
        "remember the arch is outside",
        "forget the arch",
        "8 tables at 30 dollars each",
        "make it 12 inches",
    ],
)
def test_what_belongs_to_one_job_is_no_rule(said: str, tmp_path: Path) -> None:
    talk = talk_with(tmp_path / "house.toml")
    say(talk, TABLES, said)
    assert not (tmp_path / "house.toml").exists()


def test_a_rule_holds_for_the_job_in_hand_and_for_the_next(tmp_path: Path) -> None:
    talk = talk_with(tmp_path / "house.toml")
    say(talk, TABLES)
    was = figure(talk, "materials_cost")
    assert "In this job: - price:" in say(talk, "remember: 5 inch balloons are 20 cents")
    assert figure(talk, "materials_cost") == pytest.approx(was * 2, rel=0.05)  # 10 cents before; the line stays
    later = talk_with(tmp_path / "house.toml")
    say(later, TABLES)
    assert figure(later, "materials_cost") == figure(talk, "materials_cost")
    assert "Your own house value" in say(later, "remember my rate is 38 an hour", "why labour rate")


def test_what_was_said_for_the_job_stands_over_a_rule() -> None:
    talk = Conversation()
    say(talk, TABLES, "labour 45 an hour", "remember my rate is 38 an hour")
    assert figure(talk, "labour_rate") == 45
    say(talk, "start over", TABLES)
    assert figure(talk, "labour_rate") == 38


def test_shown_changed_forgotten_and_taken_back(tmp_path: Path) -> None:
    talk = talk_with(tmp_path / "house.toml")
    assert "no house rules yet" in say(talk, "house rules")
    say(talk, "remember: 5 inch balloons are 11 cents", "remember my rate is 38 an hour")
    shown = say(talk, "what are my rules?")
    assert "- balloon price at 5 in: $0.11 - labour rate: $38 an hour" in shown
    assert "(before: $38 an hour)" in say(talk, "remember my rate is 40 an hour")
    assert "as they were" in say(talk, "undo")
    assert "labour rate: $38 an hour" in say(talk, "house rules")
    assert "Forgotten: labour rate" in say(talk, "forget my rate")
    assert "labour rate" not in say(talk, "house rules")
    assert "Forgotten: balloon price at 5 in" in say(talk, "forget the price of 5 inch balloons")
    assert "labour rate" not in (tmp_path / "house.toml").read_text(encoding="utf-8")


def test_undo_takes_back_a_habit_and_the_turn_that_told_it() -> None:
    talk = Conversation()
    say(talk, TABLES, "my rate is 38 an hour")
    reply = talk.say("undo")
    assert "labour_rate" not in reply.heard.job
    assert "no house rules yet" in say(talk, "house rules")


def test_a_bag_without_a_size_is_asked_about() -> None:
    talk = Conversation()
    assert say(talk, "a bag of 144 costs 12 dollars").startswith("Of which size of balloon?")
    shown = say(talk, "5 inch")
    assert "balloons in a bag at 5 in: 144" in shown
    assert "balloon price at 5 in: $0.08" in shown


def test_what_a_rule_says_is_told_on_asking() -> None:
    talk = Conversation()
    assert say(talk, "what's my rate?") == "Labour rate: $20 an hour, by the rule book."
    say(talk, "remember my rate is 38 an hour")
    assert say(talk, "what's my rate?") == "Labour rate: $38 an hour."
    assert "no such house rule" in say(talk, "forget my mileage")


def test_what_cannot_be_is_refused_in_a_sentence(tmp_path: Path) -> None:
    talk = talk_with(tmp_path / "house.toml")
    for said in ("remember my rate is 9000 an hour", "remember 5 inch balloons are 11 pence", "remember my dog"):
        assert say(talk, said).endswith((".", '".'))
    assert "That was not kept" in say(talk, "remember 5 inch balloons are 4000 dollars")
    assert not (tmp_path / "house.toml").exists()


def test_remember_that_keeps_what_was_said_last() -> None:
    talk = Conversation()
    say(talk, "markup 100 %")
    assert "no house rules" in say(talk, "house rules")
    assert "markup: 100 %" in say(talk, "remember that")
    assert "markup: 100 %" in say(talk, "house rules")


def test_the_rest_of_the_file_stays_as_it_was_written(tmp_path: Path) -> None:
    path = tmp_path / "house.toml"
    path.write_text(
        '# mine\n[labour_rate]\nassume = "30 USD/hour"   # for two\n\n# dear\n[tax]\nassume = "8 percent"\n'
    )
    talk = talk_with(path)
    say(talk, "remember: I add 12 % spare")
    text = path.read_text(encoding="utf-8")
    assert text.startswith('# mine\n[labour_rate]\nassume = "30 USD/hour"   # for two\n\n# dear\n[tax]')
    assert stat.S_IMODE(path.stat().st_mode) == 0o600
    say(talk, "forget the spare")
    assert path.read_text(encoding="utf-8").split() == text.partition("[spare]")[0].split()


def test_a_broken_file_is_named_once_and_never_written_over(tmp_path: Path) -> None:
    path = tmp_path / "house.toml"
    path.write_text("[labour_rate]\nassume = 38 dollars\n\n[tax]\nassume = 8\n")
    talk = talk_with(path)
    first = say(talk, TABLES)
    assert "Left out of your house file: line 2: [labour_rate] it is not valid TOML" in first
    assert "Left out" not in say(talk, "navy and gold")
    assert figure(talk, "tax") == 8
    assert "mend that line first" in say(talk, "remember: I add 12 % spare")
    assert path.read_text(encoding="utf-8").startswith("[labour_rate]\nassume = 38 dollars")


def test_a_folder_that_cannot_be_written_costs_no_rule(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way")
    talk = talk_with(tmp_path / "file" / "house.toml")
    say(talk, "remember my rate is 38 an hour")
    assert "until you leave" in say(talk, TABLES)
    assert figure(talk, "labour_rate") == 38


def test_two_chats_keep_each_others_rules(tmp_path: Path) -> None:
    path = tmp_path / "house.toml"
    one, two = talk_with(path), talk_with(path)
    say(one, "remember my rate is 38 an hour")
    say(two, "remember I add 12 % spare")
    assert set(tomllib.loads(path.read_text(encoding="utf-8"))) == {"labour_rate", "spare"}


def test_a_reader_never_meets_half_a_file(tmp_path: Path) -> None:
    path = tmp_path / "house.toml"
    rules = HouseRules(path)
    talk = Conversation(house=rules)
    say(talk, "remember my rate is 38 an hour")
    found: list[int] = []
    done = threading.Event()

    def look() -> None:
        while not done.is_set():
            found.append(len(tomllib.loads(path.read_text(encoding="utf-8"))))

    watcher = threading.Thread(target=look)
    watcher.start()
    for number in range(12, 18):
        say(talk, f"remember I add {number} % spare")
    done.set()
    watcher.join()
    assert set(found) <= {1, 2}


def test_orders_about_rules_are_no_turns_of_the_job_and_the_quote_holds_the_rules(tmp_path: Path) -> None:
    book = JobBook(tmp_path / FILE)
    talk = Conversation(jobs=book, house=HouseRules(tmp_path / "house.toml"), folder=tmp_path)
    say(talk, TABLES, "remember my rate is 38 an hour", "quote it")
    assert talk.desk is not None
    assert talk.desk.job is not None
    assert book.turns(talk.desk.job) == [TABLES, "quote it"]
    quote = book.quoted(talk.desk.job)
    assert quote is not None
    assert "38 USD/hour" in quote.house
    changed = say(talk, "remember my rate is 50 an hour", "what changed since I quoted")
    assert "labour rate: $38 an hour, now $50 an hour, house" in changed


def test_opening_a_job_again_writes_no_rule(tmp_path: Path) -> None:
    jobs, path = JobBook(tmp_path / FILE), tmp_path / "house.toml"
    talk = Conversation(jobs=jobs, house=HouseRules(path))
    say(talk, TABLES, "my rate is 38 an hour", "keep this as linden hall", "forget my rate", "start over")
    say(talk, "open linden hall")
    assert figure(talk, "labour_rate") == 38  # said for that job
    assert "labour_rate" not in path.read_text(encoding="utf-8")


def test_a_kept_house_is_used_only_for_the_text_it_was_made_of(tmp_path: Path) -> None:
    lay = remembered(Cache(tmp_path, "k"))
    texts = [f'[labour_rate]\nassume = "{n} USD/hour"\n' for n in (31, 32, 31)]
    houses = [lay(text) for text in texts]
    rates = [house.book.fact("labour_rate").assume.typical for house in houses]  # type: ignore[union-attr]
    assert rates == [rates[0], pytest.approx(rates[0] * 32 / 31), rates[0]]
    again = remembered(Cache(tmp_path, "k"))(texts[0])
    assert again.text == texts[0] or again.text.strip() == texts[0].strip()


@pytest.mark.parametrize(
    ("said", "act"),
    [
        ("remember that my rate is 38", "keep"),
        ("Please remember: bags of 100", "keep"),
        ("remember that", "last"),
        ("forget my rate", "forget"),
        ("forget all my rules!", "forget all"),
        ("what do you remember?", "show"),
        ("we usually add 12 % spare", "habit"),
        ("we add 12 % spare as a rule", "habit"),
        ("eight 6 ft tables", "mine"),
        ("my rate for this client is 45", None),
        ("", None),
    ],
)
def test_acts_are_told_apart(said: str, act: str | None) -> None:
    habit = read_habit(said)
    assert (habit.act if habit else None) == act


@pytest.mark.parametrize(
    "said",
    [
        "I've got £250 for ten trestle tables, 1.8 metres each",
        "300 dollars for a 12 ft garland with 11 inch balloons",
        "delivery is 30 dollars a bag",
        "20 bouquets of 5 at 8 dollars each",
    ],
)
def test_money_for_pieces_is_no_price_of_a_balloon(said: str) -> None:
    talk = Conversation()
    talk.say(said)
    assert talk.habits.text == ""
    assert talk.habits.waiting is None


def test_looking_at_the_rules_is_no_change_to_take_back() -> None:
    talk = Conversation()
    say(talk, TABLES, "remember my rate is 38 an hour", "house rules")
    assert "as they were" in say(talk, "undo")
    assert talk.habits.text == ""
    assert talk.state.pieces
