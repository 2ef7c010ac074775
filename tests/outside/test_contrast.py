"""Contrast against figures that the Web Content Accessibility Guidelines' own texts give (W3C; from memory)."""

import pytest

from assistant.sheets.colours import contrast, luminance


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        ("#000000", "#ffffff", 21.0),  # the greatest there is: definition of contrast ratio
        ("#ffffff", "#ffffff", 1.0),
        ("#777777", "#ffffff", 4.47),  # Understanding 1.4.3: just not enough, and not to be rounded up to 4.5
        ("#767676", "#ffffff", 4.54),  # the lightest grey that is enough
        ("#949494", "#ffffff", 3.03),  # Understanding 1.4.11: the lightest grey with 3 to 1
    ],
)
def test_ratios_that_the_guidelines_name(one: str, other: str, ratio: float) -> None:
    assert contrast(one, other) == pytest.approx(ratio, abs=0.01)
    assert contrast(other, one) == contrast(one, other)


def test_the_weights_of_the_primaries_are_those_of_the_definition() -> None:
    assert luminance("#ff0000") == pytest.approx(0.2126)
    assert luminance("#00ff00") == pytest.approx(0.7152)
    assert luminance("#0000ff") == pytest.approx(0.0722)
