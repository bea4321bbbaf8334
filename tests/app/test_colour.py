"""Colours as numbers, by values that others published."""

from __future__ import annotations

import pytest

from app.colour import contrast, ink_on, luminance


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        ("#000000", "#ffffff", 21.0),  # by the definition: (1 + 0.05) / (0 + 0.05)
        ("#777777", "#ffffff", 4.48),  # WebAIM, "Contrast and Color Accessibility"; from memory
        ("#ff0000", "#ffffff", 4.0),  # the same
    ],
)
def test_the_ratio_is_that_of_the_definition(one: str, other: str, ratio: float) -> None:
    assert contrast(one, other) == pytest.approx(ratio, abs=0.005)
    assert contrast(other, one) == contrast(one, other)


def test_black_and_white_are_the_ends() -> None:
    assert luminance("#000000") == 0
    assert luminance("#ffffff") == pytest.approx(1)


@pytest.mark.parametrize("green", range(0, 256, 5))
def test_black_or_white_reads_on_any_colour(green: int) -> None:
    # 4.5:1 is WCAG 2.2 criterion 1.4.3.
    colour = f"#80{green:02x}60"
    assert contrast(ink_on(colour), colour) >= 4.5
