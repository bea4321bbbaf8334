"""Batting as it is packed: a table that the project carries and a person can change.

The sizes are those that two teaching pages agree on (Honey Be Good, "Common Quilt
and Batting Sizes", 2012; Stitching Times, 2011); craft is from Project 12 Quilts,
2012, whose full and king are 84 × 96 and 124 × 120. We take the smaller of two,
so that the package bought is never too small.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from core.language import marked
from core.lengths import Inches


@dataclass(frozen=True, slots=True)
class Package:
    """One size that batting is packed in; it may be turned."""

    name: str
    width: Inches
    length: Inches

    def covers(self, across: Inches, along: Inches) -> bool:
        """Whether it is large enough, in either direction.

        >>> Package(marked("twin"), Fraction(72), Fraction(90)).covers(Fraction(88), Fraction(68))
        True
        """
        low, high = sorted((across, along))
        return low <= min(self.width, self.length) and high <= max(self.width, self.length)


# The names are told when a project is given them, and are its own from then on.
COMMON = tuple(
    Package(name, Fraction(width), Fraction(length))
    for name, width, length in (
        (marked("craft"), 34, 45),
        (marked("crib"), 45, 60),
        (marked("twin"), 72, 90),
        (marked("full"), 81, 96),
        (marked("queen"), 90, 108),
        (marked("king"), 120, 120),
    )
)
