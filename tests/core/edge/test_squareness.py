"""Squareness: what sides and diagonals say, and the largest rectangle, against brute force."""

from __future__ import annotations

import random
from dataclasses import replace
from fractions import Fraction
from math import cos, dist, sin

import pytest
from shapely.geometry import Polygon

from core.edge.squareness import squareness_of
from core.measured import Measured, Squaring, Use
from core.refusal import Refusal

F = Fraction
TRUE = Squaring(F(60), F(80), F(60), F(80), F(100), F(100))


def test_a_true_rectangle_is_itself() -> None:
    # 60, 80, 100: the right triangle of 3, 4, 5.
    found = squareness_of(TRUE)
    assert found.square
    assert (found.width, found.length) == (F(60), F(80))
    assert found.corners == (90, 90, 90, 90)


def test_equal_sides_and_unequal_diagonals_are_a_leaning_quilt() -> None:
    # Parallelogram law: the squares of the diagonals add up to those of the sides.
    found = squareness_of(Squaring(F(60), F(80), F(60), F(80), F(101), F(99)))
    assert found.diagonals == 2
    assert found.width < 60
    assert found.length <= 80
    assert found.corners[0] == pytest.approx(found.corners[2], abs=0.01)
    assert sum(found.corners) == pytest.approx(360)


def test_the_tape_s_error_may_be_said() -> None:
    # Both diagonals an inch too long for 60 x 80: more than the usual half inch, less than two.
    long = replace(TRUE, down=F(101), up=F(101))
    with pytest.raises(Refusal, match="write a larger tolerance"):
        squareness_of(long)
    assert squareness_of(replace(long, tolerance=F(2))).corners == pytest.approx((90,) * 4)


@pytest.mark.parametrize("seed", range(6))
def test_the_rectangle_fits_and_none_tried_at_random_is_larger(seed: int) -> None:
    draw = random.Random(seed)
    spots = [(x + draw.uniform(-1, 1), y + draw.uniform(-1, 1))
             for x, y in ((0, 0), (60, 0), (60, 80), (0, 80))]  # fmt: skip

    def taped(a: int, b: int) -> Fraction:
        return F(round(dist(spots[a], spots[b]) * 64), 64)

    pairs = ((0, 1), (1, 2), (2, 3), (3, 0), (0, 2), (3, 1))
    found = squareness_of(Squaring(*(taped(*pair) for pair in pairs)))
    quilt = Polygon(spots).buffer(0.03)
    size = float(found.width), float(found.length)
    assert any(_fits(quilt, size, draw, spread=1.5) for _ in range(20_000))
    larger = size[0] * size[1] * 1.006  # two roundings down to a sixteenth, and the tape
    for _ in range(3000):
        wide = size[0] + draw.uniform(-1.5, 1.5)
        assert not _fits(Polygon(spots), (wide, larger / wide), draw, spread=1.5)


def _fits(quilt: Polygon, size: tuple[float, float], draw: random.Random, spread: float) -> bool:
    tilt, x, y = draw.uniform(-0.03, 0.03), draw.uniform(-spread, spread), draw.uniform(-1.5, 1.5)
    corners = ((0, 0), (size[0], 0), size, (0, size[1]))
    placed = [
        (x + a * cos(tilt) - b * sin(tilt), y + a * sin(tilt) + b * cos(tilt)) for a, b in corners
    ]
    return bool(quilt.contains(Polygon(placed)))


@pytest.mark.parametrize(("down", "up"), [(200, 100), (10, 100), (100, 96), (104, 100)])
def test_measures_that_no_quilt_has_are_refused(down: int, up: int) -> None:
    with pytest.raises(Refusal, match="again"):
        squareness_of(Squaring(F(60), F(80), F(60), F(80), F(down), F(up)))


def test_the_mean_or_the_centre_is_taken_and_each_edge_eased_to_it() -> None:
    # Measured through the middle, or the mean of three: guild handout "4Bs"; Kittle Quilting.
    mean = Measured((F(51), F(50), F(50)), (F(60), F(60), F(60)))
    assert mean.width == F(805, 16)  # 50 1/3 to the nearest sixteenth
    centre = Measured(mean.widths, mean.lengths, Use.CENTRE)
    assert (centre.width, centre.length) == (F(50), F(60))
    assert dict(centre.ease) == {"top": 1, "bottom": 0, "left side": 0, "right side": 0}
