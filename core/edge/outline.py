"""The outline: the quilt's edge as the binding goes round it.

Sides follow one another with the quilt on the left, which is how a quilt lies
at the machine: from the upper left corner down, along the bottom, up, and back
along the top, as seen from the face that the binding is first sewn to. A
*place* on the outline is how far one has come from there.

Lengths of straight edges are exact where they are fractions; where √2 or √3
comes in, and on curves, they are rounded up by less than a billionth of an
inch, and the perimeter of the whole is then rounded up to 1/1024 in, so that it
is never short and less than 1/1000 in long. Points are floats, to draw with.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from math import hypot
from typing import TypeAlias

from core.edge.corners import mitre_angle, stop_before_corner
from core.language import told
from core.lengths import Inches, round_up
from core.refusal import Refusal
from core.shape import Facing

Point: TypeAlias = tuple[float, float]
PERIMETER_STEP = Fraction(1, 1024)
_SMOOTH = 1e-6  # degrees: a turn below this is no corner
_STRAIGHT_ON = 180.0


@dataclass(frozen=True, slots=True)
class Side:
    """One straight edge or one curve, from the first of `points` to the last.

    `heading` and `end_heading` are degrees anticlockwise from "to the right".
    `radius` is the smallest on a curve, None on a straight edge. A `turning`
    curve rounds a corner. `exact` is whether `length` is the true one, or a hair above it.
    """

    points: tuple[Point, ...]
    length: Inches
    facing: Facing
    heading: float
    end_heading: float
    radius: Inches | None = None
    turning: bool = False
    exact: bool = True


@dataclass(frozen=True, slots=True)
class Corner:
    """Where two sides meet: its `place` on the outline and its interior angle in degrees."""

    place: Inches
    angle: float
    point: Point

    @property
    def inside(self) -> bool:
        """Whether the quilt is cut in here: clip the seam allowance, fold no mitre."""
        return self.angle > _STRAIGHT_ON

    @property
    def mitre(self) -> float | None:
        """Angle of the mitre to either edge, in degrees; None at an inside corner."""
        return None if self.inside else mitre_angle(self.angle)

    def stop(self, seam: Inches) -> float | None:
        """Inches before the corner at which to stop sewing; None at an inside corner."""
        return None if self.inside else stop_before_corner(seam, self.angle)


@dataclass(frozen=True, slots=True)
class Outline:
    """The sides in order, and the box round them, which starts at (`x`, `y`) on the quilt."""

    sides: tuple[Side, ...]
    x: Inches
    y: Inches
    width: Inches
    length: Inches

    @property
    def ring(self) -> Inches:
        """Length of all sides, each rounded up by a hair at most."""
        return sum((side.length for side in self.sides), Fraction(0))

    @property
    def perimeter(self) -> Inches:
        """What the binding goes round: exact, or rounded up to 1/1024 in."""
        exact = all(side.exact for side in self.sides)
        return self.ring if exact else round_up(self.ring, PERIMETER_STEP)

    @property
    def starts(self) -> tuple[Inches, ...]:
        """The place at which each side starts."""
        places = [Fraction(0)]
        for side in self.sides:
            places.append(places[-1] + side.length)
        return tuple(places[:-1])

    @property
    def corners(self) -> tuple[Corner, ...]:
        """The corners in the order in which the binding comes to them."""
        found = []
        before = (self.sides[-1], *self.sides[:-1])
        for place, last, side in zip(self.starts, before, self.sides, strict=True):
            turn = (side.heading - last.end_heading + 180) % 360 - 180
            if abs(turn) > _SMOOTH:
                found.append(Corner(place, round(_STRAIGHT_ON - turn, 9), side.points[0]))
        return tuple(found)

    @property
    def bends(self) -> tuple[Inches, ...]:
        """Places that a join keeps away from: corners, and the middles of rounded ones."""
        rounded = (
            place + side.length / 2
            for place, side in zip(self.starts, self.sides, strict=True)
            if side.turning
        )
        return tuple(sorted([*rounded, *(corner.place for corner in self.corners)]))

    @property
    def smallest_radius(self) -> Inches | None:
        """The tightest curve's radius; None where all edges are straight."""
        return min((side.radius for side in self.sides if side.radius is not None), default=None)

    @property
    def curved(self) -> bool:
        return self.smallest_radius is not None

    @property
    def points(self) -> tuple[Point, ...]:
        """The outline as a closed line to draw, each point once."""
        return tuple(point for side in self.sides for point in side.points[:-1])

    def side_at(self, place: Inches | float) -> int:
        """Which side a place lies on; the one that starts there, at a corner."""
        place %= self.ring
        return max(i for i, start in enumerate(self.starts) if start <= place)

    def point_at(self, place: Inches | float) -> tuple[Point, Point]:
        """Where a place lies, and the unit vector from there into the quilt; y runs down."""
        place %= self.ring
        index = self.side_at(place)
        side = self.sides[index]
        left = float((place - self.starts[index]) / side.length) * _long(side.points)
        for (x1, y1), (x2, y2) in pairwise(side.points):
            step = hypot(x2 - x1, y2 - y1)
            if left <= step or (x2, y2) == side.points[-1]:
                share = min(left / step, 1.0)
                at = (x1 + (x2 - x1) * share, y1 + (y2 - y1) * share)
                return at, ((y2 - y1) / step, -(x2 - x1) / step)
            left -= step
        raise ValueError("a side has two points at least")


def _long(points: tuple[Point, ...]) -> float:
    return sum(hypot(x2 - x1, y2 - y1) for (x1, y1), (x2, y2) in pairwise(points))


def require_bindable(outline: Outline, seam: Inches, face: Inches, path: str = "outline") -> None:
    """Refuse edges shorter than their corners' seams, and curves tighter than the binding.

    On the inside of a curve the binding's own edge runs `face` inside the
    quilt's, so a radius below that leaves it no way round. `path` is the part of
    the project that says how the edge runs.
    """
    radius = outline.smallest_radius
    if radius is not None and radius <= max(face, seam):
        raise Refusal(
            path,
            told(
                "the binding cannot follow a radius of {radius}: it covers {face} of the quilt; "
                "write a larger curve or a narrower binding"
            ),
            radius=radius,
            face=max(face, seam),
        )
    stops = {corner.place: corner.stop(seam) or 0.0 for corner in outline.corners}
    ends = (*outline.starts[1:], Fraction(0))
    for number, (side, start, end) in enumerate(
        zip(outline.sides, outline.starts, ends, strict=True), start=1
    ):
        needs = stops.get(start, 0.0) + stops.get(end, 0.0)
        if side.radius is None and float(side.length) <= needs:
            raise Refusal(
                path,
                told(
                    "edge {number}, which is {length} long, leaves no room to sew between the "
                    "seams at its two corners; write a longer edge or a narrower seam",
                    number=number,
                    length="{length}",
                ),
                length=side.length,
            )
