"""The quilt seen from the front: top, borders, binding, and the layers behind.

Borders are drawn whole and then cut to the outline, as they are on the table.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from core.drawing.borders import draw_border, inside
from core.drawing.edge import band, within
from core.drawing.marks import Area, Drawing, Label, Line, Mark, Point
from core.drawing.real_cloth import sewn_from
from core.drawing.shapes import area, grown, label, moved, point
from core.finish.overage import overages
from core.language import told
from core.lay.lay import Rect
from core.lengths import Inches, show_size
from core.plan import Plan
from core.quilt import Seams
from core.shape import ShapeKind

_MARGIN = Fraction(2)


def draw_quilt(plan: Plan) -> Drawing:
    """The picture of the finished quilt lying on its batting and backing, in inches."""
    quilt = Rect(Fraction(0), Fraction(0), *plan.sizes.bordered)
    outline = plan.sizes.laid
    box = Rect(outline.x, outline.y, *plan.sizes.layers)
    outermost = grown(_behind(plan, box), _MARGIN)
    marks = [*_layers(plan, box), *_cut(plan, _borders(plan, quilt)), *_binding(plan)]
    sewn = sewn_from(marks, plan)
    shifted = tuple(moved(mark, -float(outermost.x), -float(outermost.y)) for mark in sewn)
    name = plan.project.quilt.name or told("the quilt")
    return Drawing(name, float(outermost.across), float(outermost.along), shifted)


def _cut(plan: Plan, marks: Iterator[Mark]) -> Iterator[Mark]:
    """The marks as far as they lie within the outline."""
    shape = plan.project.outline
    if shape is None or shape.kind is ShapeKind.RECTANGLE:
        yield from marks
        return
    outline = plan.sizes.laid.points
    for mark in marks:
        if isinstance(mark, Label):
            (x, y), (wide, high) = mark.centre, mark.room
            room = (x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)
            seen = within(outline, _box(*room))
            if seen:
                xs, ys = [point[0] for point in seen], [point[1] for point in seen]
                wide, high = max(xs) - min(xs), max(ys) - min(ys)
                if min(wide, high) > 0:
                    centre = (max(xs) + min(xs)) / 2, (max(ys) + min(ys)) / 2
                    yield replace(mark, centre=centre, room=(wide, high))
        else:
            seen = within(outline, mark.points)
            if seen:
                yield replace(mark, points=seen)


def _box(left: float, top: float, right: float, bottom: float) -> tuple[Point, ...]:
    return (left, top), (right, top), (right, bottom), (left, bottom)


def _behind(plan: Plan, quilt: Rect) -> Rect:
    """What quilt, batting and backing take together."""
    layers = [part for part in (plan.project.backing, plan.project.batting) if part is not None]
    rects = [quilt, *(overages(layer).grown(quilt) for layer in layers)]
    left, top = min(rect.x for rect in rects), min(rect.y for rect in rects)
    right, end = max(rect.right for rect in rects), max(rect.end for rect in rects)
    return Rect(left, top, right - left, end - top)


def _layers(plan: Plan, quilt: Rect) -> Iterator[Mark]:
    """Backing with its panel seams, then batting, each showing past the quilt."""
    backing = plan.backing
    if backing is not None and plan.project.backing is not None:
        rect = overages(plan.project.backing).grown(quilt)
        yield area(rect, "backing")
        place = Fraction(0)
        for width in backing.widths[:-1]:
            place += width - (2 * backing.seam if place else backing.seam)
            yield _seam(rect, place, backing.seams)
    if plan.project.batting is not None:
        yield area(_drawn_in(quilt, overages(plan.project.batting).grown(quilt)), "batting")


def _drawn_in(quilt: Rect, layer: Rect) -> Rect:
    """Half as far out, so that the backing shows round the batting."""
    return Rect(
        (quilt.x + layer.x) / 2,
        (quilt.y + layer.y) / 2,
        (quilt.across + layer.across) / 2,
        (quilt.along + layer.along) / 2,
    )


def _seam(rect: Rect, place: Inches, seams: Seams) -> Line:
    if seams is Seams.CROSSWISE:
        return Line((point(rect.x, rect.y + place), point(rect.right, rect.y + place)), "seam")
    return Line((point(rect.x + place, rect.y), point(rect.x + place, rect.end)), "seam")


def _borders(plan: Plan, quilt: Rect) -> Iterator[Mark]:
    """Borders from the outside in, then the top inside them."""
    letters = {part.name: part.letter for part in plan.parts}
    outer = quilt
    for border in reversed(plan.borders):
        yield from draw_border(border, outer, letters)
        outer = inside(border, outer)
    units = plan.project.units
    size = show_size(*plan.project.top, units)
    yield area(outer, "top")
    yield label(
        outer, (told("quilt top\n{size}", size=size), told("quilt top"), told("top")), "top"
    )


def _binding(plan: Plan) -> Iterator[Mark]:
    """The binding's first face, a band a side, mitred where they meet."""
    if plan.binding is None:
        return
    outline, face = plan.sizes.laid, float(plan.binding.first_face_width)
    for start, side in zip(outline.starts, outline.sides, strict=True):
        place = float(start)
        points = band(outline, place, place + float(side.length), face)
        yield Area(points, "binding", "binding")
    yield Line((*outline.points, outline.points[0]), "edge")
