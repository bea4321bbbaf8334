"""The quilt seen from the front: top, borders, binding, and the layers behind."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from core.drawing.marks import Area, Drawing, Label, Line, Mark, Point
from core.finish.border import BorderPlan
from core.lay.lay import Rect
from core.lengths import Inches, show_size
from core.plan import Plan
from core.quilt import Corners, Seams

_MARGIN = Fraction(2)
_PADDING = 0.94


def draw_quilt(plan: Plan) -> Drawing:
    """The picture of the finished quilt lying on its batting and backing, in inches."""
    quilt = Rect(Fraction(0), Fraction(0), plan.finished_width, plan.finished_length)
    outermost = _grown(quilt, _overage(plan) + _MARGIN)
    marks = [*_layers(plan, quilt), *_borders(plan, quilt), *_binding(plan, quilt)]
    moved = tuple(_moved(mark, -float(outermost.x), -float(outermost.y)) for mark in marks)
    name = plan.project.quilt.name or "the quilt"
    return Drawing(name, float(outermost.across), float(outermost.along), moved)


def _overage(plan: Plan) -> Inches:
    backing, batting = plan.project.backing, plan.project.batting
    return max(
        (part.overage for part in (backing, batting) if part is not None), default=Fraction(0)
    )


def _layers(plan: Plan, quilt: Rect) -> Iterator[Mark]:
    """Backing with its panel seams, then batting, each showing past the quilt."""
    backing = plan.backing
    if backing is not None and plan.project.backing is not None:
        rect = _grown(quilt, plan.project.backing.overage)
        yield _area(rect, "backing")
        place = Fraction(0)
        for width in backing.widths[:-1]:
            place += width - (2 * backing.seam if place else backing.seam)
            yield _seam(rect, place, backing.seams)
    if plan.project.batting is not None:
        yield _area(_grown(quilt, plan.project.batting.overage / 2), "batting")


def _seam(rect: Rect, place: Inches, seams: Seams) -> Line:
    if seams is Seams.CROSSWISE:
        return Line((_point(rect.x, rect.y + place), _point(rect.right, rect.y + place)), "seam")
    return Line((_point(rect.x + place, rect.y), _point(rect.x + place, rect.end)), "seam")


def _borders(plan: Plan, quilt: Rect) -> Iterator[Mark]:
    """Borders from the outside in, then the top inside them."""
    letters = {part.name: part.letter for part in plan.parts}
    outer = quilt
    for border in reversed(plan.borders):
        inner = _grown(outer, -border.border.width)
        yield from _border(border, outer, inner, letters)
        outer = inner
    units = plan.project.units
    size = show_size(plan.project.quilt.width, plan.project.quilt.length, units)
    yield _area(outer, "top")
    yield _label(outer, (f"quilt top\n{size}", "quilt top", "top"), "top")


def _border(
    border: BorderPlan, outer: Rect, inner: Rect, letters: dict[str, str]
) -> Iterator[Mark]:
    b, number = border.border.width, border.number
    mitred = border.border.corners is Corners.MITRED
    for name, strip in _strips(border, outer, inner):
        letter = letters.get(name) or letters.get(f"border {number} strip", "")
        yield Area(_mitred(strip, outer, inner) if mitred else _corners(strip), "border", letter)
        words = (f"{letter}  border {number}", letter)
        yield _label(strip, words, "border", letter)
    if border.border.corners is Corners.SQUARES:
        letter = letters.get(f"border {number} corner", "")
        for x in (outer.x, inner.right):
            for y in (outer.y, inner.end):
                square = Rect(x, y, b, b)
                yield _area(square, "border corner", letter)
                yield _label(square, (letter,), "border corner", letter)


def _strips(border: BorderPlan, outer: Rect, inner: Rect) -> Iterator[tuple[str, Rect]]:
    """Each strip's name and the band it fills: sides, then top and bottom."""
    b = border.border.width
    wide = outer if border.border.corners is Corners.BUTTED else inner
    sides, ends = border.strips[0].name, border.strips[1].name
    yield sides, Rect(outer.x, inner.y, b, inner.along)
    yield sides, Rect(inner.right, inner.y, b, inner.along)
    yield ends, Rect(wide.x, outer.y, wide.across, b)
    yield ends, Rect(wide.x, inner.end, wide.across, b)


def _mitred(strip: Rect, outer: Rect, inner: Rect) -> tuple[Point, ...]:
    """The strip's band with its ends drawn out to the corners of the border."""
    if strip.along == inner.along and strip.y == inner.y:
        out = outer.x if strip.x < inner.x else outer.right
        into = inner.x if strip.x < inner.x else inner.right
        return (
            _point(out, outer.y),
            _point(into, inner.y),
            _point(into, inner.end),
            _point(out, outer.end),
        )
    out = outer.y if strip.y < inner.y else outer.end
    into = inner.y if strip.y < inner.y else inner.end
    return (
        _point(outer.x, out),
        _point(inner.x, into),
        _point(inner.right, into),
        _point(outer.right, out),
    )


def _binding(plan: Plan, quilt: Rect) -> Iterator[Mark]:
    """The binding's first face as four bands inside the edge."""
    if plan.binding is None:
        return
    face = plan.binding.first_face_width
    inner = _grown(quilt, -face)
    bands = (
        Rect(quilt.x, quilt.y, quilt.across, face),
        Rect(quilt.x, inner.end, quilt.across, face),
        Rect(quilt.x, inner.y, face, inner.along),
        Rect(inner.right, inner.y, face, inner.along),
    )
    for band in bands:
        yield _area(band, "binding", "binding")
    yield Line((*_corners(quilt), _corners(quilt)[0]), "edge")


def _grown(rect: Rect, by: Inches) -> Rect:
    return Rect(rect.x - by, rect.y - by, rect.across + 2 * by, rect.along + 2 * by)


def _point(x: Inches, y: Inches) -> Point:
    return float(x), float(y)


def _corners(rect: Rect) -> tuple[Point, ...]:
    return (
        _point(rect.x, rect.y),
        _point(rect.right, rect.y),
        _point(rect.right, rect.end),
        _point(rect.x, rect.end),
    )


def _area(rect: Rect, role: str, key: str = "") -> Area:
    return Area(_corners(rect), role, key)


def _label(rect: Rect, texts: tuple[str, ...], role: str, key: str = "") -> Label:
    centre = _point(rect.x + rect.across / 2, rect.y + rect.along / 2)
    room = (float(rect.across) * _PADDING, float(rect.along) * _PADDING)
    return Label(centre, texts, room, role, key)


def _moved(mark: Mark, dx: float, dy: float) -> Mark:
    if isinstance(mark, Label):
        x, y = mark.centre
        return Label((x + dx, y + dy), mark.texts, mark.room, mark.role, mark.key)
    points = tuple((x + dx, y + dy) for x, y in mark.points)
    if isinstance(mark, Area):
        return Area(points, mark.role, mark.key)
    return Line(points, mark.role)
