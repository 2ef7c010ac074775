"""Rows of the public test suites of general number and quantity readers, kept outside the project."""

import json
from collections import Counter
from pathlib import Path

import pytest

from grammar.numbers.quantities import read_quantities

ROWS = Path(__file__).resolve().parents[3] / "shared" / "quantities.jsonl"
LEAST = {"number": 97, "length": 98, "money": 95, "duration": 95}  # per cent
# Inches by the international agreement of 1959, seconds by the SI brochure, table 8.
SIZES: dict[str, dict[str, float]] = {
    "length": {
        "in": 1, "ft": 12, "yd": 36, "mi": 63360, "m": 1 / 0.0254, "cm": 1 / 2.54, "mm": 1 / 25.4, "km": 1000 / 0.0254,
    },
    "duration": {"s": 1, "min": 60, "hour": 3600, "day": 86400, "week": 604800},
}  # fmt: skip
UNIT = {"length": "in", "duration": "s"}


def passes(row: dict[str, object]) -> bool:
    """One quantity, and the right one; where the row has no value, not one of that kind alone."""
    found = read_quantities(str(row["text"]))
    kind, want = str(row["kind"]), row["value"]
    if want is None:
        return len(found) != 1 or found[0].kind != kind
    if len(found) != 1 or found[0].kind != kind:
        return False
    value = float(found[0].value) * SIZES.get(kind, {}).get(found[0].unit, 1)
    unit = UNIT.get(kind, found[0].unit)
    within = float(str(row.get("within", 0.001))) * max(abs(float(str(want))), 1e-9)
    return unit == (row["unit"] or "") and abs(value - float(str(want))) <= within


def test_rows() -> None:
    if not ROWS.exists():
        pytest.skip("the rows are not beside the project")
    rows = [json.loads(line) for line in ROWS.read_text(encoding="utf-8").splitlines()]
    asked = Counter(str(row["kind"]) for row in rows)
    passed = Counter(str(row["kind"]) for row in rows if passes(row))
    shares = {kind: 100 * passed[kind] / count for kind, count in asked.items()}
    assert {kind: share for kind, share in shares.items() if share < LEAST[kind]} == {}
