"""The edge that a binding goes round."""

from __future__ import annotations

from dataclasses import dataclass

from core.lengths import Inches


@dataclass(frozen=True, slots=True)
class BoundEdge:
    """A quilt's edge, in inches: its size, its thickness, and the way round."""

    width: Inches
    length: Inches
    thickness: Inches
    perimeter: Inches

    @property
    def shortest_side(self) -> Inches:
        return min(self.width, self.length)


def rectangle(width: Inches, length: Inches, thickness: Inches) -> BoundEdge:
    """The edge of a quilt with four square corners."""
    return BoundEdge(width, length, thickness, 2 * (width + length))
