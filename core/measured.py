"""What a quilt measures in several places, as the person says it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from core.figures import figure
from core.lengths import Inches, Rounding, rounded


class Use(StrEnum):
    """Which of three measures the plan goes by."""

    MEAN = "mean"
    CENTRE = "centre"


@dataclass(frozen=True, slots=True)
class Measured:
    """Three widths (top, centre, bottom) and three lengths (left, centre, right) of the top.

    They stand in place of the quilt's width and length; a mean is taken to the
    nearest mark of a ruler. To go by the middle, and
    not by the edges, is published advice; so is the mean of three (the trade
    handbook's sources: guild handouts and a long-arm quilter's rule).
    """

    widths: tuple[Inches, Inches, Inches]
    lengths: tuple[Inches, Inches, Inches]
    use: Use = Use.MEAN

    @property
    def width(self) -> Inches:
        return self._of(self.widths)

    @property
    def length(self) -> Inches:
        return self._of(self.lengths)

    def _of(self, three: tuple[Inches, Inches, Inches]) -> Inches:
        if self.use is Use.CENTRE:
            return three[1]
        mark = figure(three[1], Fraction(1, 16), Fraction(1))
        return rounded(sum(three, Fraction(0)) / 3, mark, Rounding.NEAREST)

    @property
    def ease(self) -> tuple[tuple[str, Inches], ...]:
        """By how much each edge is longer than the plan takes it: ease it in; below 0, stretch."""
        return (
            ("top", self.widths[0] - self.width),
            ("bottom", self.widths[2] - self.width),
            ("left side", self.lengths[0] - self.length),
            ("right side", self.lengths[2] - self.length),
        )


@dataclass(frozen=True, slots=True)
class Squaring:
    """The quilted quilt's four sides and two diagonals.

    `down` runs from the upper left to the lower right corner, `up` from the
    lower left to the upper right. `tolerance` is how far each diagonal may be
    off where sides and diagonals do not fit together (None: as a tape may be).
    """

    top: Inches
    right: Inches
    bottom: Inches
    left: Inches
    down: Inches
    up: Inches
    tolerance: Inches | None = None


@dataclass(frozen=True, slots=True)
class TakeUp:
    """The shares of its size that a quilt loses in quilting and in its first wash.

    Published: 3 to 5 % in quilting (Stitching Times, 2011), up to 5 % for most
    cotton in the wash (L. Crump). Ours are 0, since a finished quilt is measured.
    """

    quilting: Fraction = Fraction(0)
    washing: Fraction = Fraction(0)
