"""Polygons given by their corners: refused unless simple, and turned so that the quilt lies left.

Points are exact inches, x to the right and y *down*; whether edges cross is
decided in fractions.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import combinations

from core.language import told
from core.lengths import Inches
from core.refusal import Refusal
from core.shape import Spot

FEWEST = 3
PATH = "outline.points"


def simple_polygon(points: tuple[Spot, ...], width: Inches, length: Inches) -> tuple[Spot, ...]:
    """The corners anticlockwise on the picture, the first one first.

    Raises `Refusal` for a point off the quilt of `width` × `length`, a point
    that stands twice in a row, an edge that turns straight back, and edges that
    cross or touch.
    """
    if len(points) < FEWEST:
        raise Refusal(PATH, told("an outline has three corners or more; write its points in order"))
    for place, (x, y) in enumerate(points):
        if not (0 <= x <= width and 0 <= y <= length):
            raise Refusal(
                f"{PATH}[{place}]",
                told(
                    "this point lies off the quilt of {width} × {length}; write one on it, "
                    "measured right and down from its upper left corner"
                ),
                width=width,
                length=length,
            )
    _refuse_spikes(points)
    _refuse_crossings(points)
    return points if _doubled_area(points) < 0 else (points[0], *points[:0:-1])


def _refuse_spikes(points: tuple[Spot, ...]) -> None:
    for place, here in enumerate(points):
        before, after = points[place - 1], points[(place + 1) % len(points)]
        if here == after:
            raise Refusal(
                f"{PATH}[{place}]", told("this point stands twice in a row; write each corner once")
            )
        turns_back = _dot(before, here, after) > 0
        if _cross(before, here, after) == 0 and turns_back and before != here:
            raise Refusal(
                f"{PATH}[{place}]",
                told("the outline turns straight back here; leave this point out"),
            )


def _refuse_crossings(points: tuple[Spot, ...]) -> None:
    count = len(points)
    edges = [(points[i], points[(i + 1) % count]) for i in range(count)]
    for i, j in combinations(range(count), 2):
        neighbours = j - i in (1, count - 1)
        if not neighbours and _meet(*edges[i], *edges[j]):
            raise Refusal(
                PATH,
                told(
                    "the edge from point {a} to point {b} crosses or touches the edge from point "
                    "{c} to point {d}; write the corners in order round the quilt",
                    a=i + 1,
                    b=(i + 1) % count + 1,
                    c=j + 1,
                    d=(j + 1) % count + 1,
                ),
            )


def _meet(a: Spot, b: Spot, c: Spot, d: Spot) -> bool:
    """Whether the segments a–b and c–d have a point in common."""
    if max(a[0], b[0]) < min(c[0], d[0]) or max(c[0], d[0]) < min(a[0], b[0]):
        return False
    if max(a[1], b[1]) < min(c[1], d[1]) or max(c[1], d[1]) < min(a[1], b[1]):
        return False
    return _cross(a, b, c) * _cross(a, b, d) <= 0 and _cross(c, d, a) * _cross(c, d, b) <= 0


def _cross(a: Spot, b: Spot, c: Spot) -> Fraction:
    """Twice the area of the triangle a, b, c; its sign says which way it turns."""
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _dot(a: Spot, b: Spot, c: Spot) -> Fraction:
    """Above 0 where the way from b to c leads back towards a."""
    return (a[0] - b[0]) * (c[0] - b[0]) + (a[1] - b[1]) * (c[1] - b[1])


def _doubled_area(points: tuple[Spot, ...]) -> Fraction:
    """Below 0 for corners that run anticlockwise on the picture, where y runs down."""
    pairs = zip(points, (*points[1:], points[0]), strict=True)
    return sum((x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in pairs), Fraction(0))
