"""The quilt's sizes on its way: bordered, quilted, squared, cut to its outline, washed.

Backing and batting are laid under the quilt before it is quilted, so they go by
the bordered size, and overage is as it was asked for; the binding and the
sleeve go by what is left after quilting, and after squaring where the quilted
quilt was measured. Binding comes before the first wash.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction
from typing import TypeAlias

from core.edge.outline import Outline
from core.edge.shapes import outline_of
from core.edge.squareness import Squareness, squareness_of
from core.figures import figure
from core.finish.bound_edge import BoundEdge
from core.language import told
from core.lengths import Inches, round_up
from core.measured import TakeUp
from core.quilt import Project
from core.refusal import Refusal
from core.shape import Shape, ShapeKind

_NO_HAIR = 10**6  # lengths that people write have smaller denominators than rounded roots
Size: TypeAlias = tuple[Inches, Inches]


@dataclass(frozen=True, slots=True)
class Sizes:
    """Widths and lengths in inches.

    `bordered` is the top with its borders, `laid` the outline cut from that and
    `layers` the box round it, which backing and batting cover. `outline` is the
    quilted quilt's, `finished` the box round it, and `washed` what a wash leaves.
    """

    bordered: Size
    laid: Outline
    layers: Size
    outline: Outline
    finished: Size
    washed: Size
    squareness: Squareness | None = None

    def bound(self, thickness: Inches) -> BoundEdge:
        """The edge that the binding goes round."""
        return BoundEdge(self.outline, *self.finished, thickness)


def sizes_of(project: Project, bordered: Size) -> Sizes:
    """The sizes of a project whose top and borders measure `bordered`."""
    shape, take_up = project.outline or Shape(), project.take_up or TakeUp()
    laid = outline_of(shape, *bordered)
    quilted = _less(bordered, take_up.quilting)
    squareness = None
    if project.squaring is not None:
        if shape.kind is ShapeKind.POLYGON:
            raise Refusal(
                "squaring", told("only a quilt with four sides is squared up; remove this")
            )
        squareness = squareness_of(project.squaring)
        quilted = squareness.width, squareness.length
    outline = laid
    if quilted != bordered:
        outline = outline_of(_drawn_up(shape, take_up.quilting), *quilted)
    finished = _box(outline, quilted)
    washed = _less(finished, take_up.washing)
    return Sizes(bordered, laid, _box(laid, bordered), outline, finished, washed, squareness)


def _less(size: Size, share: Fraction) -> Size:
    """What is left of a size, up to a ruler's mark: no take-up is known more finely."""
    if not share:
        return size
    step = figure(size[0], Fraction(1, 16), Fraction(1))
    wide, high = (round_up(length * (1 - share), step) for length in size)
    return wide, high


def _drawn_up(shape: Shape, share: Fraction) -> Shape:
    """A polygon is pieced, and shrinks with the quilt; other shapes are cut after quilting."""
    points = tuple((x * (1 - share), y * (1 - share)) for x, y in shape.points)
    return replace(shape, points=points)


def _box(outline: Outline, like: Size) -> Size:
    """The box round an outline; where √3 comes in, up to a mark that a ruler has."""
    step = figure(like[0], Fraction(1, 16), Fraction(1))
    wide, high = (
        size if size.denominator < _NO_HAIR else min(round_up(size, step), whole)
        for size, whole in zip((outline.width, outline.length), like, strict=True)
    )
    return wide, high
