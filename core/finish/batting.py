"""Batting: one rectangle, and the smallest common package that covers it."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from core.lengths import Inches
from core.quilt import Batting

# Packages as two teaching pages agree on them (Honey Be Good, "Common Quilt and
# Batting Sizes", 2012; Stitching Times, 2011); craft from Project 12 Quilts, 2012,
# whose full and king are 84 × 96 and 124 × 120. We take the smaller of two.
PACKAGES: tuple[tuple[str, Inches, Inches], ...] = (
    ("craft", Fraction(34), Fraction(45)),
    ("crib", Fraction(45), Fraction(60)),
    ("twin", Fraction(72), Fraction(90)),
    ("full", Fraction(81), Fraction(96)),
    ("queen", Fraction(90), Fraction(108)),
    ("king", Fraction(120), Fraction(120)),
)


@dataclass(frozen=True, slots=True)
class BattingPlan:
    """Size of the batting, and the package to buy (None: larger than any common one)."""

    across: Inches
    along: Inches
    package: tuple[str, Inches, Inches] | None


def plan_batting(batting: Batting, width: Inches, length: Inches) -> BattingPlan:
    """The batting of a quilt of `width` × `length`; packages may be turned.

    >>> plan_batting(Batting(Fraction(4)), Fraction(60), Fraction(80)).package[0]
    'twin'
    """
    across, along = width + 2 * batting.overage, length + 2 * batting.overage
    low, high = sorted((across, along))
    covering = (p for p in PACKAGES if low <= min(p[1:]) and high <= max(p[1:]))
    return BattingPlan(across, along, next(covering, None))
