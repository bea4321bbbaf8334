"""The edge that a binding goes round."""

from __future__ import annotations

from dataclasses import dataclass

from core.edge.outline import Outline
from core.edge.shapes import rectangle as rectangular
from core.lengths import Inches

_SQUARE = [90.0] * 4


@dataclass(frozen=True, slots=True)
class BoundEdge:
    """A quilt's edge: its outline, the box round it and its thickness, in inches."""

    outline: Outline
    width: Inches
    length: Inches
    thickness: Inches

    @property
    def perimeter(self) -> Inches:
        return self.outline.perimeter

    @property
    def four_sided(self) -> bool:
        """Whether it has four square corners."""
        return len(self.outline.sides) == len(_SQUARE) and self.angles == _SQUARE

    @property
    def angles(self) -> list[float]:
        """Its corners' interior angles in degrees, in order."""
        return [corner.angle for corner in self.outline.corners]

    @property
    def sharpest(self) -> float | None:
        """The interior angle of its sharpest outside corner; None if it has none."""
        outside = (corner.angle for corner in self.outline.corners if not corner.inside)
        return min(outside, default=None)

    @property
    def shortest_side(self) -> Inches:
        """The stretch that the ends have to meet on, whichever side is chosen."""
        if self.four_sided:
            return min(self.width, self.length)
        return max(side.length for side in self.outline.sides)


def rectangle(width: Inches, length: Inches, thickness: Inches) -> BoundEdge:
    """The edge of a quilt with four square corners."""
    return BoundEdge(rectangular(width, length), width, length, thickness)
