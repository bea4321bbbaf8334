"""Bias built with shapely: a tube that is cut, sewn, marked, sheared and counted; and strips.

Nothing here uses the formulas under test: cloth is a polygon, a seam takes s off
both edges, and a strip counts if the whole of it is there.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise, product
from math import sqrt
from random import Random

import pytest
from shapely import Polygon, box
from shapely.affinity import translate

from core.edge.bias import tube_turns, tube_yield
from core.edge.bias_strips import bias_strips

F = Fraction
ROOT = sqrt(2)
NEAR = 1e-6
RANDOM = Random(11)


def _eighths(low: int, high: int) -> Fraction:
    return F(RANDOM.randint(8 * low, 8 * high), 8)


TUBES = [
    (_eighths(6, 48), _eighths(6, 48), F(RANDOM.randint(10, 32), 8), F(RANDOM.randint(2, 6), 16))
    for _ in range(100)
] + [
    (side, side, F(RANDOM.randint(10, 32), 8), F(1, 4))
    for side in (_eighths(6, 48) for _ in range(100))
]


def sewn_band(long: float, high: float, seam: float) -> Polygon:
    """The net cloth once the triangle is sewn on at the other end and the long seam's edges go."""
    cloth = box(0, 0, long, high)
    triangle = Polygon([(0, 0), (0, high), (high, high)])
    rest = cloth.difference(triangle)
    moved = translate(triangle, long - 2 * seam)
    line = long - seam  # where the two are sewn together
    left = rest.intersection(box(-1, -1, line, high + 1))
    right = moved.intersection(box(line, -1, long + high + 1, high + 1))
    return left.union(right).intersection(box(-1, seam, long + high + 1, high - seam))


def marked(width: float, seam: float, high: float, place: int) -> Polygon:
    """Strip number `place` between its two marked lines, from seam to seam."""
    step, low, top = width * ROOT, seam, high - seam
    near, far = place * step, (place + 1) * step
    return Polygon([(near + low, low), (far + low, low), (far + top, top), (near + top, top)])


@pytest.mark.parametrize(("across", "along", "width", "seam"), TUBES)
def test_a_tube_gives_what_it_gives_when_it_is_built(
    across: Fraction, along: Fraction, width: Fraction, seam: Fraction
) -> None:
    long, high, w, s = (float(x) for x in (max(across, along), min(across, along), width, seam))
    band = sewn_band(long, high, s)
    strips: list[Polygon] = []
    while True:
        strip = marked(w, s, high, len(strips))
        if strip.intersection(band).area < strip.area - NEAR:
            break
        strips.append(strip)
    assert tube_turns(max(across, along), width, seam) == len(strips)
    # Rolled up one strip out of step, the top of each strip meets the foot of the next.
    roll = w * ROOT - (high - 2 * s)
    for here, following in pairwise(strips):
        top = sorted(x + roll for x, y in here.exterior.coords[:-1] if y > high / 2)
        foot = sorted(x for x, y in following.exterior.coords[:-1] if y < high / 2)
        assert top == pytest.approx(foot)
    length = sum(strip.area for strip in strips) / w
    given = float(tube_yield(across, width, seam, along))
    assert length - 1 / 64 - NEAR < given <= length + NEAR


@pytest.mark.parametrize(("across", "along", "width", "seam"), TUBES[:40])
def test_the_seams_leave_the_band_that_the_derivation_says(
    across: Fraction, along: Fraction, width: Fraction, seam: Fraction
) -> None:
    long, high, s = (float(x) for x in (max(across, along), min(across, along), seam))
    ear = s * s / 2  # the corner that sticks out past the slanted edge, partly under the seam
    area = (long - 2 * s) * (high - 2 * s)
    assert area - NEAR <= sewn_band(long, high, s).area <= area + ear + NEAR


CLOTHS = [(_eighths(8, 44), _eighths(8, 44), F(RANDOM.randint(10, 28), 8)) for _ in range(60)] + [
    (side, side, F(5, 2)) for side in (F(18), F(21), F(24), _eighths(9, 30))
]


def longest_parallelogram(strip: Polygon, cloth: Polygon) -> float:
    """The long edge of the longest piece of `strip` with both ends along the grain, inside cloth.

    Ends may lie where the outline of the strip's cloth has a corner, or below or beside one.
    """
    inside = strip.intersection(cloth)
    best = 0.0
    if inside.is_empty or inside.geom_type != "Polygon":
        return best
    for axis in (0, 1):
        places = sorted({round(point[axis], 9) for point in inside.exterior.coords})
        for start, end in product(places, places):
            if end - start <= best / ROOT + NEAR:
                continue
            slab = box(start, -200, end, 200) if axis == 0 else box(-200, start, 200, end)
            wanted = strip.intersection(slab)
            if wanted.difference(cloth).area < NEAR:
                best = (end - start) * ROOT
    return best


@pytest.mark.parametrize(("across", "along", "width"), CLOTHS)
def test_strips_are_worth_their_longest_parallelogram(
    across: Fraction, along: Fraction, width: Fraction
) -> None:
    cloth = box(0, 0, float(across), float(along))
    step, first = float(width) * ROOT, float(min(across, along))
    strips = bias_strips(across, along, width)
    for place in range(strips[0].place - 1, strips[-1].place + 2):
        low, high = first + place * step, first + (place + 1) * step
        band = Polygon([(low + 150, -150), (high + 150, -150), (high - 150, 150), (low - 150, 150)])
        length = longest_parallelogram(band, cloth)
        [ours] = [float(strip.usable) for strip in strips if strip.place == place] or [0.0]
        assert length - 1 / 64 - 1e-4 < ours <= length + 1e-4, place


def test_the_usable_length_is_the_shorter_cut_edge_where_no_two_corners_share_a_strip() -> None:
    [*_, outer] = bias_strips(F(40), F(20), F(5, 2))
    # First cut at 20 from the corner; the long way, strips between are full: 20·√2 = 28.28.
    full = [strip.usable for strip in bias_strips(F(40), F(20), F(5, 2)) if strip.usable > 28]
    assert len(full) == 5  # ⌊20 / (2 1/2·√2)⌋ whole ones between the two corners
    assert outer.usable < 28
