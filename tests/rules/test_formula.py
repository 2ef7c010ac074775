"""The formula language: what is read, what it is worth, what is refused."""

from collections import Counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rules.compiled import compile_node
from rules.formula import FormulaError, parse
from rules.functions import FUNCTIONS
from rules.nodes import Arithmetic, Call, If, Known, Name, Number, OverPieces, Truth, Word, walk, with_words


class Values(dict):
    """Values by id that also answer what an exact closure asks."""

    def __init__(self, *args, **kwargs) -> None:
        super().__init__(*args, **kwargs)
        self.noted: dict[str, bool] = {}

    def known(self, id: str) -> bool:
        return id in self

    def said(self, id: str) -> bool:
        return id in self

    def note(self, key: str, test: object) -> bool:
        self.noted[key] = bool(test)
        return self.noted[key]


def worth(text: str, **values):
    return compile_node(parse(text), "test")(Values(values))


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("1 + 2 * 3", 7),
        ("(1 + 2) * 3", 9),
        ("10 - 4 - 3", 3),
        ("2 ^ 3", 8),
        ("-2 ^ 2", -4),
        ("2 ^ -1", 0.5),
        ("12 / 4 / 3", 1),
        ("0.5 ft", 6),
        ("1 yd + 3 in", 39),
        ("15 %", 0.15),
        ("2 * 15 % + 1", 1.3),
        ("90 min", 1.5),
        ("if 2 < 1 then 5 else 7", 7),
        ("if not 2 < 1 and 1 <= 1 then 5 else 7", 5),
        ("if 1 == 2 or 1 != 2 then 5 else 7", 5),
        ("if known(x) then x else 4", 4),
        ("if said(a) then a else 4", 10),
        ("a * 2 - b", 17),
        ("shape is round", True),
        ("shape is not round", False),
        ("flag is true", False),
        ("flag is not true", True),
        ("max(a, b)", 10),
        ("round(2.5)", 3),
        ("round(3.4999)", 3),
        ("up_to_whole(3.0000000001)", 3),
        ("up_to_whole(3.01)", 4),
        ("floor(2.9999999999)", 3),
        ("whole_pairs(27)", 28),
        ("whole_pairs(26.9)", 26),
        ("smallest(sizes) + largest(sizes)", 16),
        ("first(span) + last(span)", 3),
        ("mean(span)", 1.5),
        ("how_many_sizes(sizes)", 2),
        ("sqrt(9)", 3),
        ("price(8)", 0.15),
        ("price(2)", 0.1),
        ("price(99)", 0.2),
    ],
)
def test_worth(text: str, value: object) -> None:
    known = {
        "a": 10,
        "b": 3,
        "shape": "round",
        "flag": False,
        "sizes": (5.0, 11.0),
        "span": (1.0, 2.0),
        "price": ((5.0, 0.1), (11.0, 0.2)),
    }
    found = worth(text, **known)
    assert found == (pytest.approx(value) if isinstance(value, float) else value)


def test_the_tree() -> None:
    assert parse("2 ft") == Number(24.0, "ft")
    assert parse("a + b") == Arithmetic("+", Name("a"), Name("b"))
    assert parse("known(a)") == Known("a", said=False)
    assert parse("total(balloons)") == OverPieces("total", "balloons")
    assert parse("pi()") == Call("pi", ())
    assert parse("true") == Truth(True)
    assert parse("is_land") == Name("is_land")
    assert parse("island") == Name("island")


def test_each_text_is_parsed_once() -> None:
    assert parse("a + b * 17") is parse("a + b * 17")


def test_choices_in_answering_position_become_words() -> None:
    node = with_words(parse("if a is b then round else square"), frozenset({"round", "square", "b"}))
    assert isinstance(node, If)
    assert (node.then, node.other) == (Word("round"), Word("square"))


def test_a_smooth_closure_does_not_round_and_keeps_its_choices() -> None:
    node = parse("round(a / 4) + (if a > 10 then 100 else 0)")
    values = Values(a=13.0)
    assert compile_node(node, "f")(values) == 103
    assert values.noted == {"f if 1": True}
    assert compile_node(node, "f", smooth=True)({"a": 9.0, **values.noted}) == pytest.approx(102.25)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "'' cannot be read: it breaks off at the end"),
        ("a +", "'a +' cannot be read: it breaks off at the end"),
        ("a b", "'a b' cannot be read: 'b' does not fit after 'a'"),
        ("a $ b", "'a $ b' cannot be read: the sign '$' has no meaning in a formula"),
        ("__import__('os')", 'the sign "\'" has no meaning in a formula'),
        ("a.b", "the sign '.' has no meaning in a formula"),
        ("a[0]", "the sign '[' has no meaning in a formula"),
        ("lambda: 1", "the sign ':' has no meaning in a formula"),
        ("12 inn", "the unit 'inn' is not known"),
        ("total(a * 2)", "total takes the name of one fact"),
        ("a ^ b", "'b' does not fit after 'a ^'"),
        ("a < b < c", "'<' does not fit after 'a < b'"),
    ],
)
def test_refused(text: str, said: str) -> None:
    with pytest.raises(FormulaError) as caught:
        parse(text)
    assert said in str(caught.value)


@given(st.text(max_size=40))
def test_any_text_is_a_formula_or_a_plain_refusal(text: str) -> None:
    said = ""
    try:
        assert list(walk(parse(text)))
    except FormulaError as error:
        said = str(error).replace(repr(text), "")
    assert "\n" not in said
    assert "__ANON" not in said


NUMBERS = st.integers(1, 50)


@given(NUMBERS, NUMBERS, NUMBERS, st.sampled_from("+-*"), st.sampled_from("+-*"))
def test_arithmetic_is_pythons(a: int, b: int, c: int, first: str, second: str) -> None:
    signs = {"+": lambda x, y: x + y, "-": lambda x, y: x - y, "*": lambda x, y: x * y}
    text = f"{a} {first} {b} {second} {c}"
    by_hand = signs[first](a, b * c) if second == "*" and first != "*" else signs[second](signs[first](a, b), c)
    assert worth(text) == by_hand


HOSTILE = (
    "v['a'] or exit()", "a.__class__", "lambda: a", "__import__('os')", "a; b", "a\n+ b", "\"\"\"a", "a'b",
    "a if b else c", "open(a)", "exec(a)", "v", "v[a]", "__builtins__", "pow_(a)", "look_up_(a)", "inf",
    "note(a)", "known(v)",
)  # fmt: skip


@pytest.mark.parametrize("text", HOSTILE)
def test_what_is_compiled_reaches_nothing_but_values_and_functions(text: str) -> None:
    try:
        node = parse(text)
    except FormulaError:
        return
    for smooth in (False, True):
        code = compile_node(node, text, smooth).__code__
        assert set(code.co_names) <= {*FUNCTIONS, "look_up_", "pow_", "inf", "known", "said", "note"}
        assert not any(isinstance(const, type(code)) for const in code.co_consts)
        assert code.co_freevars == code.co_cellvars == ()


def test_words_and_names_are_no_more_than_text_in_what_is_compiled() -> None:
    word = "x'] or quit() or v['"
    node = with_words(If(Known(word, said=True), Name(word), Name("a\\")), frozenset({"a\\"}))
    assert compile_node(node, word)(Values({word: 7})) == 7
    assert compile_node(node, word)(Values({})) == "a\\"


def test_the_deepest_formula_can_be_compiled() -> None:
    for deep in (
        "(" * 90 + "a" + ")" * 90,
        "-" * 90 + "a",
        "abs(" * 45 + "a" + ")" * 45,
        "2 * (" * 30 + "a" + ")" * 30,
    ):
        node = parse(deep)
        assert compile_node(node, "deep")(Values(a=1.0)) == compile_node(node, "deep", smooth=True)(Counter(a=1.0))
