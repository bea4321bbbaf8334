"""Round figures: rules of thumb in the marks of the ruler that the person uses.

A rule such as "a quarter inch" has a metric twin of its own (7.5 mm), not 6.35.
Which is meant shows in the lengths that the person gave.
"""

from __future__ import annotations

from fractions import Fraction

from core.lengths import INCHES_PER_MM, RULERS, Inches, Units, round_up

_MARKS = Fraction(1, 16), Fraction(1)
_FINEST_WRITTEN = 1000  # sums of lengths that people write have smaller denominators


def figure(like: Inches, inches: Fraction, millimetres: Fraction) -> Inches:
    """`inches` where `like` lies on an inch ruler's marks, else `millimetres`, as a length.

    >>> figure(Fraction(4), Fraction(1, 4), Fraction(15, 2))
    Fraction(1, 4)
    >>> figure(100 * INCHES_PER_MM, Fraction(1, 4), Fraction(15, 2)) / INCHES_PER_MM
    Fraction(15, 2)
    """
    on_inch_marks = (like / RULERS[Units.INCHES].finest).denominator == 1
    return inches if on_inch_marks else millimetres * INCHES_PER_MM


def usual(said: Inches | None, like: Inches, inches: Fraction, millimetres: Fraction) -> Inches:
    """What the person said, or where nothing is said the usual `figure`.

    >>> usual(None, Fraction(4), Fraction(1, 4), Fraction(6))
    Fraction(1, 4)
    """
    return figure(like, inches, millimetres) if said is None else said


def to_a_mark(length: Inches, like: Inches) -> Inches:
    """A length that no ruler has, as that of an oval, up to the next mark; others as they are."""
    no_mark = length.denominator > _FINEST_WRITTEN
    return round_up(length, figure(like, *_MARKS)) if no_mark else length
