"""Numbers as text: mixed fractions, short decimals, and decimals as a language writes them.

What a program reads (files, tables) has a decimal point in every language; what a
person reads has the language's own.
"""

from __future__ import annotations

import re
from fractions import Fraction

from core.language import told_as

_LIKE_THOUSANDS = re.compile(r"[1-9]\d{0,2},\d{3}(?!\d)", re.ASCII)


def mixed(number: Fraction) -> str:
    """A number as whole and fraction.

    >>> mixed(Fraction(101, 2)), mixed(Fraction(-1, 4))
    ('50 1/2', '-1/4')
    """
    sign, number = ("-" if number < 0 else ""), abs(number)
    whole, rest = divmod(number, 1)
    if not rest:
        return f"{sign}{whole}"
    fraction = f"{rest.numerator}/{rest.denominator}"
    return f"{sign}{whole} {fraction}" if whole else f"{sign}{fraction}"


def decimal(number: Fraction) -> str:
    """A number of 0 or more to six places at most, without noughts at its end.

    >>> decimal(Fraction(128)), decimal(Fraction(5, 4))
    ('128', '1.25')
    """
    scaled = number * 10**6
    text = f"{scaled.numerator // scaled.denominator:07d}"
    return f"{text[:-6]}.{text[-6:]}".rstrip("0").rstrip(".")


def told_decimal(text: str) -> str:
    """A decimal, written with a point, as a person reads it.

    >>> told_decimal("2.5")
    '2.5'
    """
    return text.replace(".", told_as("in a decimal", "."))


def told_to_edit(text: str) -> str:
    """A number as a file has it, as a person reads it and may write over it.

    It keeps its point where a comma could mean thousands, since it would not be read again.

    >>> told_to_edit("2.5 cm"), told_to_edit("15.875 cm")
    ('2.5 cm', '15.875 cm')
    """
    shown = told_decimal(text)
    return text if _LIKE_THOUSANDS.search(shown) else shown
