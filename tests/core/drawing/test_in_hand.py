"""The cloth in hand is drawn to scale, and the cut lies where its words say."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from shapely.geometry import Polygon

from core.cutting.cuts import TableCut
from core.cutting.order import Order, planned_orders
from core.drawing.in_hand import draw_in_hand
from core.drawing.marks import ROLES, Area, Drawing, Label, Line
from core.lay.lay import Direction
from core.lengths import Units
from core.plan import make_plan
from tests.core.demos import DEMOS, demo

NEAR = 1e-9
Drawn = tuple[Order, TableCut, Drawing]


@pytest.fixture(scope="module")
def drawn() -> list[Drawn]:
    return list(_drawn())


def _drawn() -> Iterator[Drawn]:
    for name in DEMOS:
        for order in planned_orders(make_plan(demo(name))):
            for cut in order.cuts:
                yield order, cut, draw_in_hand(order, cut, Units.INCHES)


def test_areas_measure_what_the_cloth_measures(drawn: list[Drawn]) -> None:
    for _, cut, drawing in drawn:
        cloth, off, *rest = [m for m in drawing.marks if isinstance(m, Area)]
        for area, rect in ((cloth, cut.region), (off, cut.off.rect)):
            assert abs(Polygon(area.points).area - float(rect.across * rect.along)) < NEAR
        assert len(rest) == (cut.rest is not None)


def test_the_cut_lies_its_measure_from_the_edge_where_it_starts(drawn: list[Drawn]) -> None:
    for _, cut, drawing in drawn:
        [edge] = [m for m in drawing.marks if isinstance(m, Line) and m.role == "edge"]
        [line] = [m for m in drawing.marks if isinstance(m, Line) and m.role == "next cut"]
        crosswise = cut.step.direction is Direction.CROSSWISE
        axis, sign = (0, 1) if crosswise else (1, -1)  # right of the straight end; above near edge
        for (one, other), (start, end) in ((edge.points, line.points),):
            assert one[axis] == other[axis]
            assert start[axis] == end[axis]
            assert abs((start[axis] - one[axis]) * sign - float(cut.step.measure)) < NEAR


def test_nothing_lies_off_the_picture_and_every_role_is_known(drawn: list[Drawn]) -> None:
    for _, _, drawing in drawn:
        for mark in drawing.marks:
            assert mark.role in ROLES
            points = (mark.centre,) if isinstance(mark, Label) else mark.points
            for x, y in points:
                assert -NEAR <= x <= drawing.width + NEAR
                assert -NEAR <= y <= drawing.height + NEAR


def test_what_falls_off_bears_its_letter(drawn: list[Drawn]) -> None:
    for _, cut, drawing in drawn:
        words = [text for m in drawing.marks if isinstance(m, Label) for text in m.texts]
        assert cut.step.straightening or any(cut.off.label in text for text in words)
