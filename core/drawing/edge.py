"""The outline as shapes: stretches of binding along it, and what of a picture lies within it.

All in floats and in the outline's own inches, y down; nothing is decided here.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import hypot

from core.drawing.marks import Point
from core.edge.outline import Outline

# A band's inner corner is at most so many times its width from the outer one: at sharper
# corners (below 39°) the band is drawn narrower than it is.
MOST_MITRE = 3.0


@dataclass(frozen=True, slots=True)
class _Knee:
    """A point of the outline: its place, and the way inwards for an inch of band."""

    place: float
    point: Point
    inwards: Point


def band(outline: Outline, start: float, end: float, width: float) -> tuple[Point, ...]:
    """The area that a strip `width` wide covers inside the edge from `start` on to `end`.

    Places run on past the ring's length where the stretch goes round it.
    """
    stretch = list(_stretch(outline, start, end))
    inner = [
        (knee.point[0] + knee.inwards[0] * width, knee.point[1] + knee.inwards[1] * width)
        for knee in reversed(stretch)
    ]
    return (*(knee.point for knee in stretch), *inner)


def inwards_at(outline: Outline, place: float) -> Point:
    """Which way the quilt lies from a place on the edge; along the mitre, at a corner."""
    return _knee_at(outline, place).inwards


def _stretch(outline: Outline, start: float, end: float) -> Iterator[_Knee]:
    ring = float(outline.ring)
    yield _knee_at(outline, start)
    for turn in range(int(start // ring), int(end // ring) + 1):
        for knee in _knees(outline):
            place = knee.place + turn * ring
            if start < place < end:
                yield _Knee(place, knee.point, knee.inwards)
    yield _knee_at(outline, end)


def _knee_at(outline: Outline, place: float) -> _Knee:
    """The knee at any place; the mitre, where that is a corner."""
    ring = float(outline.ring)
    for knee in _knees(outline):
        if abs((knee.place - place + ring / 2) % ring - ring / 2) < 1e-6:
            return _Knee(place, knee.point, knee.inwards)
    return _Knee(place, *outline.point_at(place))


def _knees(outline: Outline) -> tuple[_Knee, ...]:
    """Every point of the outline, with the mitre's direction at its corners."""
    points = outline.points
    before = (points[-1], *points[:-1])
    after = (*points[1:], points[0])
    return tuple(
        _Knee(place, here, _mitre(_inwards(last, here), _inwards(here, following)))
        for place, last, here, following in zip(
            _places(outline), before, points, after, strict=True
        )
    )


def _places(outline: Outline) -> Iterator[float]:
    for start, side in zip(outline.starts, outline.sides, strict=True):
        steps = [hypot(x2 - x1, y2 - y1) for (x1, y1), (x2, y2) in pairwise(side.points)]
        gone = 0.0
        for step in steps:
            yield float(start) + gone / sum(steps) * float(side.length)
            gone += step


def _inwards(start: Point, end: Point) -> Point:
    """The unit vector to the left of the way from `start` to `end`, y down."""
    (x1, y1), (x2, y2) = start, end
    step = hypot(x2 - x1, y2 - y1)
    return (y2 - y1) / step, -(x2 - x1) / step


def _mitre(first: Point, second: Point) -> Point:
    """Along the mitre; at a corner like a needle's no longer than a picture has room for."""
    x, y = first[0] + second[0], first[1] + second[1]
    share = max(1 + first[0] * second[0] + first[1] * second[1], hypot(x, y) / MOST_MITRE)
    return x / share, y / share


def within(outline: Sequence[Point], window: Sequence[Point]) -> tuple[Point, ...]:
    """The part of a polygon inside a convex `window` (Sutherland and Hodgman, 1974).

    >>> sorted(within(((0, 0), (0, 4), (4, 4), (4, 0)), ((3, 3), (6, 3), (6, 6), (3, 6))))
    [(3.0, 3.0), (3.0, 4.0), (4.0, 3.0), (4, 4)]
    """
    sign = 1.0 if _doubled_area(window) > 0 else -1.0
    kept = list(outline)
    for start, end in pairwise((*window, window[0])):
        if start != end:
            kept = list(_on_side(kept, start, end, sign))
    return tuple(kept)


def _on_side(points: Sequence[Point], start: Point, end: Point, sign: float) -> Iterator[Point]:
    def depth(point: Point) -> float:
        (x1, y1), (x2, y2), (x, y) = start, end, point
        return sign * ((x2 - x1) * (y - y1) - (y2 - y1) * (x - x1))

    for here, following in zip(points, (*points[1:], *points[:1]), strict=True):
        at, then = depth(here), depth(following)
        if at >= 0:
            yield here
        if (at > 0 > then) or (at < 0 < then):
            share = at / (at - then)
            yield (
                here[0] + (following[0] - here[0]) * share,
                here[1] + (following[1] - here[1]) * share,
            )


def _doubled_area(points: Sequence[Point]) -> float:
    return sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in pairwise((*points, points[0])))
