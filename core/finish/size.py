"""The quilt's sizes on its way: as bordered, as quilted, and as cut to its outline.

Backing and batting are laid under the quilt before it is quilted, so they go by
the bordered size; the binding goes round the quilted one.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TypeAlias

from core.edge.outline import Outline
from core.edge.shapes import outline_of
from core.figures import figure
from core.finish.bound_edge import BoundEdge
from core.lengths import Inches, round_up
from core.quilt import Project
from core.shape import Shape

_RIGHT_ANGLE = 90.0
Size: TypeAlias = tuple[Inches, Inches]


@dataclass(frozen=True, slots=True)
class Sizes:
    """Widths and lengths in inches.

    `bordered` is the top with its borders, `layers` the box round the outline
    cut from that, which backing and batting cover, and `finished` the box
    round `outline`, which the binding goes round.
    """

    bordered: Size
    layers: Size
    finished: Size
    outline: Outline

    def bound(self, thickness: Inches) -> BoundEdge:
        """The edge that the binding goes round."""
        outline = self.outline
        square = [corner.angle for corner in outline.corners] == [_RIGHT_ANGLE] * 4
        if square and len(outline.sides) == 4:
            return BoundEdge(*self.finished, thickness, outline.perimeter)
        longest = max(side.length for side in outline.sides)
        return BoundEdge(*self.finished, thickness, outline.perimeter, longest, four_sided=False)


def sizes_of(project: Project, bordered: Size) -> Sizes:
    """The sizes of a project whose top and borders measure `bordered`."""
    shape = project.outline or Shape()
    outline = outline_of(shape, *bordered)
    box = _box(outline, bordered)
    return Sizes(bordered, box, box, outline)


def _box(outline: Outline, like: Size) -> Size:
    """The box round an outline; where √3 comes in, up to a mark that a ruler has."""
    step = figure(like[0], Fraction(1, 16), Fraction(1))
    wide, high = (
        size if size.denominator < _NO_HAIR else min(round_up(size, step), whole)
        for size, whole in zip((outline.width, outline.length), like, strict=True)
    )
    return wide, high


_NO_HAIR = 10**6  # lengths that people write have smaller denominators than rounded roots
