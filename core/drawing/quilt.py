"""The quilt seen from the front: top, borders, binding, and the layers behind."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from core.drawing.borders import draw_border, inside
from core.drawing.marks import Area, Drawing, Label, Line, Mark
from core.drawing.shapes import area, corners, grown, label, point
from core.finish.overage import overages
from core.lay.lay import Rect
from core.lengths import Inches, show_size
from core.plan import Plan
from core.quilt import Seams

_MARGIN = Fraction(2)


def draw_quilt(plan: Plan) -> Drawing:
    """The picture of the finished quilt lying on its batting and backing, in inches."""
    quilt = Rect(Fraction(0), Fraction(0), plan.finished_width, plan.finished_length)
    outermost = grown(_behind(plan, quilt), _MARGIN)
    marks = [*_layers(plan, quilt), *_borders(plan, quilt), *_binding(plan, quilt)]
    moved = tuple(_moved(mark, -float(outermost.x), -float(outermost.y)) for mark in marks)
    name = plan.project.quilt.name or "the quilt"
    return Drawing(name, float(outermost.across), float(outermost.along), moved)


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
    size = show_size(plan.project.quilt.width, plan.project.quilt.length, units)
    yield area(outer, "top")
    yield label(outer, (f"quilt top\n{size}", "quilt top", "top"), "top")


def _binding(plan: Plan, quilt: Rect) -> Iterator[Mark]:
    """The binding's first face as four bands inside the edge."""
    if plan.binding is None:
        return
    face = plan.binding.first_face_width
    inner = grown(quilt, -face)
    bands = (
        Rect(quilt.x, quilt.y, quilt.across, face),
        Rect(quilt.x, inner.end, quilt.across, face),
        Rect(quilt.x, inner.y, face, inner.along),
        Rect(inner.right, inner.y, face, inner.along),
    )
    for band in bands:
        yield area(band, "binding", "binding")
    yield Line((*corners(quilt), corners(quilt)[0]), "edge")


def _moved(mark: Mark, dx: float, dy: float) -> Mark:
    if isinstance(mark, Label):
        x, y = mark.centre
        return Label((x + dx, y + dy), mark.texts, mark.room, mark.role, mark.key)
    points = tuple((x + dx, y + dy) for x, y in mark.points)
    if isinstance(mark, Area):
        return Area(points, mark.role, mark.key)
    return Line(points, mark.role)
