"""Hatch lines stay inside their polygon and cover it evenly."""

from __future__ import annotations

from math import dist, hypot

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.hatch import HATCHES, Point, hatch_lines

STRIP = [(0.0, 0.0), (42.0, 0.0), (42.0, 2.5), (0.0, 2.5)]
STEPPED = [(0.0, 0.0), (9.0, 0.0), (9.0, 3.0), (4.0, 3.0), (4.0, 8.0), (0.0, 8.0)]
ARROW = [(0.0, 0.0), (6.0, 4.0), (0.0, 8.0), (2.0, 4.0)]
POLYGONS = {"strip": STRIP, "stepped": STEPPED, "arrow": ARROW}
every_hatch = pytest.mark.parametrize("hatch", sorted(HATCHES))
every_polygon = pytest.mark.parametrize("polygon", POLYGONS.values(), ids=POLYGONS.keys())


def area(polygon: list[Point]) -> float:
    sides = zip(polygon, [*polygon[1:], polygon[0]], strict=True)
    return abs(sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in sides)) / 2


def holds(polygon: list[Point], point: Point, slack: float = 1e-6) -> bool:
    """Whether `point` is in the polygon or within `slack` of its outline."""
    x, y = point
    within = False
    for (x1, y1), (x2, y2) in zip(polygon, [*polygon[1:], polygon[0]], strict=True):
        if (y1 > y) != (y2 > y) and x < x1 + (y - y1) * (x2 - x1) / (y2 - y1):
            within = not within
        length = hypot(x2 - x1, y2 - y1)
        t = max(0.0, min(1.0, ((x - x1) * (x2 - x1) + (y - y1) * (y2 - y1)) / length**2))
        if dist(point, (x1 + t * (x2 - x1), y1 + t * (y2 - y1))) < slack:
            return True
    return within


@every_hatch
@every_polygon
def test_every_line_stays_inside_the_polygon(polygon: list[Point], hatch: str) -> None:
    lines = hatch_lines(polygon, hatch, 0.7)
    assert lines
    for (x1, y1), (x2, y2) in lines:
        for part in (0.0, 0.25, 0.5, 0.75, 1.0):
            assert holds(polygon, (x1 + part * (x2 - x1), y1 + part * (y2 - y1)))


@every_hatch
@every_polygon
def test_the_lines_cover_the_whole_polygon_evenly(polygon: list[Point], hatch: str) -> None:
    # Cavalieri: lines a spacing apart, times the spacing, make the area (times the
    # dashes' share), the closer the finer.
    pitch = 0.02
    expected = sum(
        area(polygon)
        / (family.spacing * pitch)
        * (family.dash[0] / sum(family.dash) if family.dash else 1)
        for family in HATCHES[hatch]
    )
    drawn = sum(dist(start, end) for start, end in hatch_lines(polygon, hatch, pitch))
    assert drawn == pytest.approx(expected, rel=0.03)


@every_hatch
def test_no_two_hatches_draw_the_same_lines(hatch: str) -> None:
    mine = hatch_lines(STRIP, hatch, 1.0)
    assert all(mine != hatch_lines(STRIP, other, 1.0) for other in HATCHES if other != hatch)


def test_neighbours_lines_meet() -> None:
    left = [(0.0, 0.0), (3.3, 0.0), (3.3, 5.0), (0.0, 5.0)]
    right = [(3.3, 0.0), (7.0, 0.0), (7.0, 5.0), (3.3, 5.0)]
    shared = [
        {
            round(y, 6)
            for line in hatch_lines(polygon, "rising", 0.5)
            for x, y in line
            if abs(x - 3.3) < 1e-9
        }
        for polygon in (left, right)
    ]
    assert shared[0] == shared[1] != set()


@given(
    st.lists(st.tuples(st.floats(0.5, 50), st.floats(0.5, 50)), min_size=3, max_size=3),
    st.sampled_from(sorted(HATCHES)),
    st.floats(0.2, 5),
)
def test_any_triangle_can_be_hatched(triangle: list[Point], hatch: str, pitch: float) -> None:
    for start, end in hatch_lines(triangle, hatch, pitch):
        assert all(0.49 < x < 50.01 for x in (*start, *end))


def test_no_hatch_has_no_lines() -> None:
    assert hatch_lines(STRIP, "", 1.0) == []


@pytest.mark.parametrize("pitch", [0.0, -1.0])
def test_a_pitch_that_would_never_end_is_refused(pitch: float) -> None:
    with pytest.raises(ValueError, match="above 0"):
        hatch_lines(STRIP, "level", pitch)
