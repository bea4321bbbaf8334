"""Guides of the true-size page measure what they say, and the join is the one that is sewn."""

from __future__ import annotations

from fractions import Fraction

import pytest
from shapely import LineString, Polygon, affinity

from core.drawing.gauges import draw_sewing_gauge, draw_strip_guide
from core.drawing.join import draw_join
from core.drawing.marks import Area, Drawing, Line
from core.drawing.tag import draw_piece
from core.lay.lay import Rect
from core.lengths import Units
from core.quilt import Joins

WIDTH, SEAM = Fraction(5, 2), Fraction(1, 4)


def _areas(drawing: Drawing, role: str) -> list[Polygon]:
    return [Polygon(m.points) for m in drawing.marks if isinstance(m, Area) and m.role == role]


def _lines(drawing: Drawing, role: str) -> list[LineString]:
    return [LineString(m.points) for m in drawing.marks if isinstance(m, Line) and m.role == role]


@pytest.mark.parametrize("width", [Fraction(1), WIDTH, Fraction(6)])
def test_the_strip_guide_is_as_wide_as_the_strip_with_a_line_at_45_degrees(width: Fraction) -> None:
    drawing = draw_strip_guide(width, Units.INCHES, longest=7.2)
    assert drawing.height == float(width)
    assert drawing.width <= 7.2
    [line] = _lines(drawing, "cut")
    (x1, y1), (x2, y2) = line.coords
    assert x2 - x1 == pytest.approx(y1 - y2)
    assert x2 - x1 == pytest.approx(float(width))


def test_the_gauges_dot_is_a_seam_and_a_stop_from_the_edges() -> None:
    stop = Fraction(3, 8)
    drawing = draw_sewing_gauge(SEAM, stop)
    [dot] = _areas(drawing, "grain")
    assert drawing.width - dot.centroid.x == pytest.approx(float(stop))
    assert drawing.height - dot.centroid.y == pytest.approx(float(SEAM))


def test_a_diagonal_join_opens_to_one_straight_strip() -> None:
    """The strip on top, folded over along the seam, goes on where the other ends."""
    drawing = draw_join(Joins.DIAGONAL, WIDTH, SEAM, Units.INCHES)
    [under], [over] = _areas(drawing, "binding"), _areas(drawing, "cloth")
    [seam] = _lines(drawing, "cut")
    (x0, y0), (x1, y1) = seam.coords
    assert (x1 - x0, y1 - y0) == (float(WIDTH), float(WIDTH)), "from corner to corner"
    # Reflection in the seam's line, which runs at 45 degrees: swap the ways from its start.
    opened = affinity.affine_transform(over, [0, 1, 1, 0, x0 - y0, y0 - x0])
    both = under.union(opened)
    assert both.bounds[3] - both.bounds[1] == pytest.approx(float(WIDTH)), "as wide as one strip"
    length = both.bounds[2] - both.bounds[0]
    cut = under.bounds[2] - under.bounds[0] + over.bounds[3] - over.bounds[1]
    assert length == pytest.approx(cut - float(WIDTH)), "a join takes a strip's width"
    assert both.area == pytest.approx(length * float(WIDTH))


def test_a_straight_joins_seam_is_a_seam_from_the_ends() -> None:
    drawing = draw_join(Joins.STRAIGHT, WIDTH, SEAM, Units.INCHES)
    [under], [over] = _areas(drawing, "binding"), _areas(drawing, "cloth")
    [seam] = _lines(drawing, "cut")
    assert under.bounds[2] == over.bounds[2], "ends even"
    assert under.bounds[2] - seam.bounds[0] == pytest.approx(float(SEAM))


@pytest.mark.parametrize(("one_way", "heads"), [(True, 1), (False, 2)])
def test_a_tags_arrow_runs_along_the_cloth(one_way: bool, heads: int) -> None:
    wide = Rect(Fraction(0), Fraction(0), Fraction(40), Fraction(5))
    drawing = draw_piece(wide, "binding", one_way=one_way)
    assert drawing.width > drawing.height
    [arrow] = _lines(drawing, "grain")
    assert arrow.bounds[0] == arrow.bounds[2], "upright, whichever way the piece is long"
    assert len(_areas(drawing, "grain")) == heads
