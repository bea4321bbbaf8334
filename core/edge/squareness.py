"""How far a quilt is out of square, and the largest true rectangle that it holds.

Four sides and one diagonal make a quadrilateral; the second diagonal is one
measure too many. So both are moved by the same error, one way, until they fit
the sides; a larger error than a tape makes is refused. The rectangle has the
largest area of all that lie inside, at any tilt: for one tilt the best is among
a few that touch three or four sides, and the tilt is closed in on.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations, pairwise
from math import acos, atan2, cos, degrees, hypot, pi, sin, sqrt

from core.figures import figure, usual
from core.language import told
from core.lengths import Inches, Rounding, rounded
from core.measured import Squaring
from core.refusal import Refusal

# Our default, no source: what a tape over a soft quilt may be out by.
TAPE, TAPE_MM = Fraction(1, 2), Fraction(12)
_MARKS = Fraction(1, 16), Fraction(1)
_ROUNDS, _TILTS = 60, 64
Spot = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Squareness:
    """`diagonals`, `widths` and `lengths` differ by so much; `corners` in degrees.

    `width` × `length` is the largest true rectangle, down to a ruler's mark.
    """

    diagonals: Inches
    widths: Inches
    lengths: Inches
    corners: tuple[float, float, float, float]
    width: Inches
    length: Inches

    @property
    def square(self) -> bool:
        return not (self.diagonals or self.widths or self.lengths)


def squareness_of(measured: Squaring) -> Squareness:
    """What the sides and diagonals say. Raises `Refusal` where no quilt measures so."""
    m = measured
    true = m.top**2 + m.left**2 == m.down**2
    if m.top == m.bottom and m.left == m.right and m.down == m.up and true:
        width, length, angles = m.top, m.left, (90.0, 90.0, 90.0, 90.0)
    else:
        spots = _quadrilateral(m)
        angles = _angles(spots)
        step = figure(m.top, *_MARKS)
        width, length = (
            rounded(Fraction(size).limit_denominator(10**9), step, Rounding.DOWN)
            for size in _largest(spots)
        )
    return Squareness(
        abs(m.down - m.up),
        abs(m.top - m.bottom),
        abs(m.left - m.right),
        angles,
        width,
        length,
    )


def _quadrilateral(m: Squaring) -> tuple[Spot, Spot, Spot, Spot]:
    """Corners from the upper left, clockwise, y down; the sides true, the diagonals evened out."""
    low = float(max(abs(m.top - m.right), abs(m.left - m.bottom)))
    high = float(min(m.top + m.right, m.left + m.bottom))
    if not low < m.down < high:
        raise Refusal(
            "squaring.down",
            told("sides and diagonals of these lengths make no quilt; measure this diagonal again"),
        )
    down, up = float(m.down), float(m.up)
    for _ in range(_ROUNDS):  # the longer one diagonal is, the shorter is the other
        middle = (low + high) / 2
        if (middle - down) < _other(_corners(m, middle)) - up:
            low = middle
        else:
            high = middle
    tape = usual(m.tolerance, m.top, TAPE, TAPE_MM)
    if abs(low - down) > tape:
        raise Refusal(
            "squaring.down",
            told(
                "the sides and the diagonals do not fit together: both diagonals would have to be "
                "about {error} off, and at most {tape} is taken for a tape's error; measure them "
                "again, or write a larger tolerance"
            ),
            tape=tape,
            error=rounded(Fraction(abs(low - down)), figure(m.top, *_MARKS), Rounding.NEAREST),
        )
    return _corners(m, low)


def _corners(m: Squaring, diagonal: float) -> tuple[Spot, Spot, Spot, Spot]:
    """The quadrilateral with that diagonal from the upper left to the lower right."""
    top, right, bottom, left = map(float, (m.top, m.right, m.bottom, m.left))
    at_top = _angle(top, diagonal, right)
    at_left = _angle(left, diagonal, bottom)
    turn = at_top + at_left
    return (
        (0.0, 0.0),
        (top, 0.0),
        (diagonal * cos(at_top), diagonal * sin(at_top)),
        (left * cos(turn), left * sin(turn)),
    )


def _angle(one: float, other: float, opposite: float) -> float:
    share = (one**2 + other**2 - opposite**2) / (2 * one * other)
    return acos(min(1.0, max(-1.0, share)))


def _other(spots: tuple[Spot, Spot, Spot, Spot]) -> float:
    return hypot(spots[1][0] - spots[3][0], spots[1][1] - spots[3][1])


def _angles(spots: tuple[Spot, ...]) -> tuple[float, float, float, float]:
    found = []
    for place, (x, y) in enumerate(spots):
        before, after = spots[place - 1], spots[(place + 1) % 4]
        one = atan2(before[1] - y, before[0] - x)
        other = atan2(after[1] - y, after[0] - x)
        found.append(degrees((one - other) % (2 * pi)))
    return found[0], found[1], found[2], found[3]


def _largest(spots: tuple[Spot, ...]) -> Spot:
    """Width and length of the largest rectangle, its tilt closed in on in thirds."""
    tilts = [_tilt(a, b) for a, b in pairwise((*spots, spots[0]))]
    low, high = min(tilts), max(tilts)
    step = (high - low) / _TILTS
    best = max((low + step * i for i in range(_TILTS + 1)), key=lambda t: _area(spots, t))
    low, high = best - step, best + step
    for _ in range(_ROUNDS):
        third = (high - low) / 3
        if _area(spots, low + third) < _area(spots, high - third):
            low += third
        else:
            high -= third
    return _at_tilt(spots, (low + high) / 2)


def _tilt(start: Spot, end: Spot) -> float:
    """How far an edge is off the nearest of the four ways, in radians."""
    angle = atan2(end[1] - start[1], end[0] - start[0])
    return (angle + pi / 4) % (pi / 2) - pi / 4


def _area(spots: tuple[Spot, ...], tilt: float) -> float:
    wide, high = _at_tilt(spots, tilt)
    return wide * high


def _at_tilt(spots: tuple[Spot, ...], tilt: float) -> Spot:
    """The largest rectangle at one tilt, by the limits that any three sides set it.

    Moved about, a rectangle w × h fits within three sides that close a triangle
    if p·w + q·h ≤ r; within all four if within each three (Helly, 1923). The
    largest w·h under such limits halves one limit, or lies where two meet.
    """
    turned = [(x * cos(tilt) + y * sin(tilt), y * cos(tilt) - x * sin(tilt)) for x, y in spots]
    limits = list(_limits(turned))
    tries = [(c / (2 * a), c / (2 * b)) for a, b, c in limits if a > 0 and b > 0]
    for (a, b, c), (d, e, f) in combinations(limits, 2):
        cross = a * e - b * d
        if abs(cross) > 1e-12:
            tries.append(((c * e - b * f) / cross, (a * f - c * d) / cross))
    fits = [
        (w, h)
        for w, h in tries
        if w > 0 and h > 0 and all(a * w + b * h <= c * (1 + 1e-12) + 1e-9 for a, b, c in limits)
    ]
    return max(fits, key=lambda size: size[0] * size[1], default=(0.0, 0.0))


def _limits(spots: list[Spot]) -> Iterator[tuple[float, float, float]]:
    """p, q, r of each three sides, and of each two that face one another squarely."""
    sides = []
    for (x1, y1), (x2, y2) in pairwise((*spots, spots[0])):
        long = sqrt((x2 - x1) ** 2 + (y2 - y1) ** 2)
        nx, ny = (y2 - y1) / long, -(x2 - x1) / long  # outwards, y down and clockwise
        sides.append((nx, ny, nx * x1 + ny * y1))
    for three in combinations(sides, 3):
        shares = _balance(*((nx, ny) for nx, ny, _ in three))
        if shares is not None:
            yield _limit(zip(shares, three, strict=True))
    for one, other in ((sides[0], sides[2]), (sides[1], sides[3])):
        if abs(one[0] * other[1] - one[1] * other[0]) < 1e-12:
            yield _limit(zip((1.0, 1.0), (one, other), strict=True))


def _limit(
    weighed: Iterator[tuple[float, tuple[float, float, float]]],
) -> tuple[float, float, float]:
    a = b = c = 0.0
    for share, (nx, ny, reach) in weighed:
        a += share * max(nx, 0.0)
        b += share * max(ny, 0.0)
        c += share * reach
    return a, b, c


def _balance(one: Spot, two: Spot, three: Spot) -> tuple[float, float, float] | None:
    """Shares above 0 of three directions that cancel out; None if there are none."""
    shares = (
        two[0] * three[1] - two[1] * three[0],
        three[0] * one[1] - three[1] * one[0],
        one[0] * two[1] - one[1] * two[0],
    )
    if min(shares) >= -1e-15 and max(shares) > 0:
        return shares
    if max(shares) <= 1e-15 and min(shares) < 0:
        return -shares[0], -shares[1], -shares[2]
    return None
