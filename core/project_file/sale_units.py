"""Sale units in the file: in yards where cloth is sold so."""

from __future__ import annotations

from core.lengths import Inches, Units, exact_text, sale_text


def sale_unit_text(length: Inches, units: Units) -> str:
    """`1/8 yd` says more than `4 1/2`; other steps are written as lengths are.

    >>> from fractions import Fraction
    >>> sale_unit_text(Fraction(9), Units.INCHES), sale_unit_text(Fraction(5), Units.INCHES)
    ('1/4 yd', '5')
    """
    text = sale_text(length, length)
    return text if text.endswith("yd") else exact_text(length, units)
