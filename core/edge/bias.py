"""Bias binding from squares by the continuous tube.

A square of side S is cut on the diagonal, sewn, marked in strips of width w,
sewn into a tube one strip out of step, and cut in one go. With seam s the tube
is (S − 2s)/√2 deep and one turn is √2·(S − 2s) long, so whole strips give
⌊(S − 2s)/(√2·w)⌋ · √2·(S − 2s). The bare S²/w that charts print ignores both
the seams and the part strip that is left over.
"""

from __future__ import annotations

from fractions import Fraction
from math import isqrt

from core.lengths import Inches, round_up

_FINENESS = 64  # yields are rounded down to 1/64 in, since √2 is no fraction


def tube_yield(side: Inches, width: Inches, seam: Inches) -> Inches:
    """Length of strip from one square, in whole strips, rounded down to 1/64 in.

    >>> float(tube_yield(Fraction(22), Fraction(5, 2), Fraction(1, 4)))
    182.421875
    """
    inner = side - 2 * seam
    if inner <= 0:
        return Fraction(0)
    turns = _floor_root(inner**2 / (2 * width**2))
    return Fraction(_floor_root(2 * (turns * inner * _FINENESS) ** 2), _FINENESS)


def square_for(length: Inches, width: Inches, seam: Inches, step: Inches) -> Inches:
    """Least side, a multiple of `step`, whose tube gives at least `length`.

    >>> square_for(Fraction(135), Fraction(5, 2), Fraction(1, 4), Fraction(1))
    Fraction(20, 1)
    """
    side = round_up(2 * seam + width, step)
    while tube_yield(side, width, seam) < length:
        side += step
    return side


def _floor_root(square: Fraction) -> int:
    """⌊√square⌋, exactly: ⌊√(a/b)⌋ = ⌊√⌊a/b⌋⌋."""
    return isqrt(square.numerator // square.denominator)
