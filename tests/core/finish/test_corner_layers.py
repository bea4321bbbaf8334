"""How often a strip lies on itself at a corner: folded by reflections, and the layers counted.

The strip lies along the first edge of a corner at 0, the quilt on its left, as in
`tests/core/edge/test_corners.py`. It is folded over the mitre and back over the
line square to the next edge; what then stands out past an edge is tucked back
over it.
"""

from __future__ import annotations

import cmath
from itertools import pairwise
from math import degrees, radians

import pytest

from core.finish.edge_layers import strip_at_corner

NEAR = 1e-9
MOST_TUCKS = 8
STEPS, PLACES = 3600, 397
SHARP = [30.5, 34, 40, 45, 50, 55, 60, 67.5, 72, 80, 89]
ANGLES = [*SHARP, 90, 100, 108, 120, 128, 135, 144, 160, 170]


def over(point: complex, along: complex) -> complex:
    """The point reflected in the line through the corner that runs `along`."""
    unit = along / abs(along)
    return unit * unit * point.conjugate()


def left_of(point: complex, along: complex) -> float:
    return float((point * along.conjugate()).imag)


def lies(point: complex, angle: float) -> complex:
    """Where a point of the strip, laid out along the first edge, lies when all is folded."""
    to, on = 1 + 0j, cmath.rect(1.0, radians(180 - angle))
    mitre = on - to  # from the corner into the quilt
    if left_of(point, mitre) < 0:  # past the mitre: the loose end goes away from the quilt
        point = over(point, mitre)
        if (point * on.conjugate()).real < 0:  # out past the corner: back over the second crease
            point = over(point, on * 1j)
    for _ in range(MOST_TUCKS):
        for edge in (to, on):
            if left_of(point, edge) < -NEAR:
                point = over(point, edge)
    return point


def most_layers(angle: float) -> int:
    """The most points of the strip that come to lie in one place.

    All folds pass through the corner, so points keep their distance from it, and one
    distance tells for all: the way round it is followed through all folds.
    """
    turns = [180 * (step + 0.5) / STEPS for step in range(STEPS)]
    folded = [degrees(cmath.phase(lies(cmath.rect(1.0, radians(turn)), angle))) for turn in turns]
    assert all(180 - angle - NEAR <= place <= 180 + NEAR for place in folded), "all on the quilt"
    places = [180 - angle + angle * (step + 0.37) / PLACES for step in range(PLACES)]
    return max(
        sum((one < place) is not (other < place) for one, other in pairwise(folded))
        for place in places
    )


@pytest.mark.parametrize("angle", ANGLES)
def test_the_strip_lies_as_often_on_itself_as_is_said(angle: float) -> None:
    assert most_layers(angle) == strip_at_corner(angle)
