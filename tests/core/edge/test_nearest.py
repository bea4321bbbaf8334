"""The nearest place on an outline, against another library's geometry."""

from __future__ import annotations

import random
from fractions import Fraction

import pytest
from shapely.geometry import LinearRing
from shapely.geometry import Point as ShapelyPoint

from core.edge.nearest import nearest_place
from core.edge.shapes import outline_of
from core.shape import Shape, ShapeKind

F = Fraction
STEP = F(1, 8)
POINTS = ((F(0), F(0)), (F(50), F(5)), (F(30), F(60)))


@pytest.mark.parametrize("kind", list(ShapeKind))
def test_no_other_place_is_nearer(kind: ShapeKind) -> None:
    draw = random.Random(kind.value)
    length = F(50) if kind is ShapeKind.CIRCLE else F(60)  # a circle is as long as wide
    outline = outline_of(Shape(kind, points=POINTS), F(50), length)
    ring = LinearRing(outline.points)
    for _ in range(60):
        point = draw.uniform(-10, 60), draw.uniform(-10, 70)
        place, away = nearest_place(outline, point, STEP)
        assert 0 <= place < outline.ring
        assert (place / STEP).denominator == 1 or place < STEP
        assert away == pytest.approx(ring.distance(ShapelyPoint(point)), abs=1e-6)
        at, _ = outline.point_at(place)
        off = ShapelyPoint(at).distance(ShapelyPoint(point))
        assert off <= away + float(STEP)
