"""A join of two strips, as it lies under the needle: overlap, seam line, what is trimmed off.

Inches, in true proportion. One strip comes from the left, right side up; the other
lies on it, wrong side up. A diagonal join meets in a square of the strip's width
and is sewn from corner to corner, so that what is kept of both lies on one side of
the seam; trimmed and opened, the strips make one straight strip.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import sqrt

from core.drawing.marks import Area, Drawing, Label, Line, Mark, Point
from core.language import marked, told
from core.lengths import Inches, Units, show
from core.quilt import Joins

_TAIL = 1.5  # strip widths of either strip that are seen past the overlap
_BESIDE = 0.9  # strip widths, for the words
_TITLES = {
    Joins.STRAIGHT: marked("a straight join"),
    Joins.DIAGONAL: marked("a diagonal join"),
    Joins.ANGLED: marked("an angled join"),
}


def draw_join(joins: Joins, width: Inches, seam: Inches, units: Units) -> Drawing:
    """The picture of one join of two strips of `width`, sewn with `seam`."""
    w, s = float(width), float(seam)
    said = _straight(w, s, units) if joins is Joins.STRAIGHT else _slanted(joins, w, s, units)
    wide = (_TAIL + 1 + _BESIDE) * w
    high = (1 + _TAIL) * w if joins is not Joins.STRAIGHT else 2 * w
    return Drawing(told(_TITLES[joins]), wide, high, tuple(said))


def _slanted(joins: Joins, w: float, s: float, units: Units) -> Iterator[Mark]:
    """Strips at right angles; the seam runs from the square's upper left to its lower right."""
    left, right, foot = _TAIL * w, (_TAIL + 1) * w, (1 + _TAIL) * w
    trim = s * sqrt(2)  # along the square's sides
    corner: tuple[Point, ...] = ((right, 0.0),)
    if joins is Joins.ANGLED:
        corner = ((left + trim, 0.0), (right, w - trim))
    under = ((0.0, 0.0), *corner, (right, w), (0.0, w))
    over = ((left, 0.0), *corner, (right, foot), (left, foot))
    yield Area(under, "binding")
    yield Area(over, "cloth")
    yield Line(((left, 0.0), (right, w)), "cut")
    if joins is Joins.DIAGONAL:
        yield Line(((left, 0.0), (left, w)), "seam")
        yield Line(((left, w), (right, w)), "seam")
    yield Line(((left + trim, 0.0), (right, w - trim)), "seam")
    yield Label((left / 2, w / 2), (told("right side"),), (left * 0.9, w * 0.5), "note")
    yield Label(((left + right) / 2, (w + foot) / 2), (told("wrong side"),), (w * 0.9, w), "note")
    beside = (right + _BESIDE * w / 2 + 0.05 * w, w / 2)
    how = told("sew the line,\ntrim to {width}", width=_shown(s, units))
    if joins is Joins.ANGLED:
        how = told("sew {width}\nfrom the edge", width=_shown(s, units))
    yield Label(beside, (how,), (_BESIDE * w * 0.95, w), "note")
    size = told("the strips cross\nin a square, {width}", width=_shown(w, units))
    yield Label((left / 2, w + 0.5 * w), (size,), (left * 0.95, 0.8 * w), "note")


def _straight(w: float, s: float, units: Units) -> Iterator[Mark]:
    """Strips on each other, ends even."""
    end, top = (_TAIL + 1) * w, 0.4 * w
    yield Area(((0.0, top), (end, top), (end, top + w), (0.0, top + w)), "binding")
    yield Area(((_TAIL * w, top), (end, top), (end, top + w), (_TAIL * w, top + w)), "cloth")
    yield Line(((end - s, top), (end - s, top + w)), "cut")
    yield Label(
        (_TAIL * w / 2, top + w / 2), (told("right side"),), (_TAIL * w * 0.9, w / 2), "note"
    )
    middle = ((_TAIL * w + end - s) / 2, top + w / 2)
    yield Label(middle, (told("wrong side"),), ((w - s) * 0.9, w / 2), "note")
    beside = (end + _BESIDE * w / 2 + 0.05 * w, top + w / 2)
    how = told("sew {width}\nfrom the ends", width=_shown(s, units))
    yield Label(beside, (how,), (_BESIDE * w * 0.95, w), "note")


def _shown(length: float, units: Units) -> str:
    return show(Inches(length).limit_denominator(10**6), units)
