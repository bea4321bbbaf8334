"""The edge that a binding goes round."""

from __future__ import annotations

from dataclasses import dataclass

from core.lengths import Inches


@dataclass(frozen=True, slots=True)
class BoundEdge:
    """A quilt's edge, in inches: its size, its thickness, and the way round.

    `longest_side` is the longest edge or curve, on which the ends can meet.
    `four_sided` is whether it has four square corners.
    """

    width: Inches
    length: Inches
    thickness: Inches
    perimeter: Inches
    longest_side: Inches | None = None
    four_sided: bool = True

    @property
    def shortest_side(self) -> Inches:
        """The stretch that the ends have to meet on, whichever side is chosen."""
        return min(self.width, self.length) if self.longest_side is None else self.longest_side


def rectangle(width: Inches, length: Inches, thickness: Inches) -> BoundEdge:
    """The edge of a quilt with four square corners."""
    return BoundEdge(width, length, thickness, 2 * (width + length))
