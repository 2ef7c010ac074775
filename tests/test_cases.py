"""Every case of tests/cases comes out as it was worked by hand."""

from dataclasses import replace
from pathlib import Path

import pytest

from tests.worked_cases import Case, faults, read_cases

FILES = sorted(Path(__file__).with_name("cases").glob("*.toml"))
CASES = [
    pytest.param(case, id=f"{path.stem}: {case}") for path in FILES for case in read_cases(path.read_text("utf-8"))
]


@pytest.mark.parametrize("case", CASES)
def test_the_figures_are_those_worked_by_hand(case: Case) -> None:
    assert case.by_hand
    assert case.figures or case.job
    assert faults(case) == []


def test_a_case_that_comes_out_otherwise_is_named() -> None:
    case = Case(("one 6 ft table, full length",), "wrong on purpose", {"balloons_each": 109, "wheels": 4}, {})
    assert faults(case) == ["balloons_each: 108 count, not 109", "wheels: there is no such figure"]
    assert faults(replace(case, figures={"decor_length": "2 m"})) == ["decor_length: 6 ft, not 2 m"]
    assert faults(replace(case, say=("one table",))) == ["not understood: How long is each table?"]
