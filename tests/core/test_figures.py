"""Round figures: rules of thumb in the marks of the person's own ruler."""

from __future__ import annotations

from fractions import Fraction

import pytest

from core.figures import figure
from core.lengths import Units, parse

INCHES, MILLIMETRES = Fraction(1, 4), Fraction(15, 2)


@pytest.mark.parametrize("text", ["4", "50 1/2", "3/64", "0", "1 yd"])
def test_a_length_on_an_inch_ruler_asks_for_inches(text: str) -> None:
    assert figure(parse(text), INCHES, MILLIMETRES) == INCHES


@pytest.mark.parametrize("text", ["10 cm", "6,5 cm", "128 cm", "1 mm", "2.5 m"])
def test_a_length_on_a_metric_ruler_asks_for_millimetres(text: str) -> None:
    assert figure(parse(text), INCHES, MILLIMETRES) == parse("7.5", Units.MILLIMETRES)
