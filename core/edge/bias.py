"""Bias binding by the continuous tube, from a square or a rectangle.

A rectangle of sides B ≥ H is cut at 45° from a corner, and the triangle so
freed is sewn to the other end: a parallelogram. It is marked in strips of width
w along its slanted edges, sewn into a tube one strip out of step, and cut in
one go. With seam s the tube is (B − 2s)/√2 deep and one turn is √2·(H − 2s)
long, so whole strips give ⌊(B − 2s)/(√2·w)⌋ · √2·(H − 2s); a square is the case
B = H. The bare B·H/w that charts print ignores both the seams and the part
strip that is left over.
"""

from __future__ import annotations

from fractions import Fraction

from core.edge.root_two import floor_root, root_two_down
from core.lengths import Inches, round_up


def tube_turns(long: Inches, width: Inches, seam: Inches) -> int:
    """Whole strips of `width` across a tube whose parallelogram has sides of `long` on the grain.

    >>> tube_turns(Fraction(22), Fraction(5, 2), Fraction(1, 4))
    6
    """
    inner = long - 2 * seam
    return floor_root(inner**2 / (2 * width**2)) if inner > 0 else 0


def tube_yield(side: Inches, width: Inches, seam: Inches, other: Inches | None = None) -> Inches:
    """Length of strip from a square, or from `side` × `other`, rounded down to 1/64 in.

    >>> float(tube_yield(Fraction(22), Fraction(5, 2), Fraction(1, 4)))
    182.421875
    """
    other = side if other is None else other
    high = min(side, other) - 2 * seam
    if high <= 0:
        return Fraction(0)
    return root_two_down(tube_turns(max(side, other), width, seam) * high)


def bare_area_rule(across: Inches, along: Inches, width: Inches) -> Inches:
    """What charts print for a piece of cloth: its area over the strip's width.

    >>> bare_area_rule(Fraction(20), Fraction(20), Fraction(2))
    Fraction(200, 1)
    """
    return across * along / width


def square_for(length: Inches, width: Inches, seam: Inches, step: Inches) -> Inches:
    """Least side, a multiple of `step`, whose tube gives at least `length`.

    >>> square_for(Fraction(135), Fraction(5, 2), Fraction(1, 4), Fraction(1))
    Fraction(20, 1)
    """
    side = round_up(2 * seam + width, step)
    while tube_yield(side, width, seam) < length:
        side += step
    return side
