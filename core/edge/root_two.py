"""Lengths with √2 in them, down or up to 1/64 in, exactly: what bias and 45° cuts give.

√2 is no fraction, so such a length is rounded, always to the safe side.
"""

from __future__ import annotations

from fractions import Fraction
from math import isqrt

from core.lengths import Inches

FINENESS = 64  # parts of an inch


def root_two_down(times: Fraction, plus: Inches = Fraction(0)) -> Inches:
    """`times`·√2 + `plus`, rounded down to 1/64 in; `times` is not negative.

    >>> root_two_down(Fraction(9)), float(root_two_down(Fraction(1), Fraction(-1)))
    (Fraction(407, 32), 0.40625)
    """
    if times < 0:
        raise ValueError(f"write a factor of √2 that is not negative, not {times}")
    part = (plus * FINENESS).denominator
    root = floor_root(2 * (times * FINENESS * part) ** 2)
    return Fraction((root + int(plus * FINENESS * part)) // part, FINENESS)


def root_two_up(times: Fraction) -> Inches:
    """`times`·√2, rounded up to 1/64 in.

    >>> root_two_up(Fraction(1, 2))
    Fraction(23, 32)
    """
    down = root_two_down(times)
    return down if down**2 == 2 * times**2 else down + Fraction(1, FINENESS)


def floor_root(square: Fraction) -> int:
    """⌊√square⌋, exactly: ⌊√(a/b)⌋ = ⌊√⌊a/b⌋⌋."""
    return isqrt(square.numerator // square.denominator)
