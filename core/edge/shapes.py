"""Shapes: from what the person says to an `Outline`.

Every shape is cut from a quilt of `width` × `length`. Sides go down the left,
along the bottom, up the right and back along the top.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise
from math import asin, atan2, cos, degrees, pi, radians, sin

from core.edge.curves import oval_arc, oval_length, root, up
from core.edge.outline import Outline, Point, Side
from core.edge.polygon import simple_polygon
from core.language import told
from core.lengths import Inches
from core.refusal import Refusal
from core.shape import Facing, Shape, ShapeKind, Spot, Upright, told_facing

_ARC_STEP = 4.0  # degrees between the points that a curve is drawn through
_AROUND = (Facing.LEFT, Facing.BOTTOM, Facing.RIGHT, Facing.TOP)


def outline_of(shape: Shape, width: Inches, length: Inches) -> Outline:
    """The outline cut from a quilt of `width` × `length`. Raises `Refusal` where it cannot be."""
    whole = (Fraction(0), Fraction(0), width, length)
    match shape.kind:
        case ShapeKind.ROUNDED:
            return Outline(tuple(_rounded(shape.radius, width, length)), *whole)
        case ShapeKind.CLIPPED:
            return Outline(tuple(_clipped(shape.clip, width, length)), *whole)
        case ShapeKind.HEXAGON:
            return _hexagon(shape.upright, width, length)
        case ShapeKind.OCTAGON:
            return _octagon(width, length)
        case ShapeKind.CIRCLE | ShapeKind.OVAL:
            if shape.kind is ShapeKind.CIRCLE and width != length:
                raise Refusal(
                    "outline.kind",
                    told(
                        "a circle is as wide as it is long, and this quilt is {width} × {length}; "
                        "choose oval, or write equal sizes"
                    ),
                    width=width,
                    length=length,
                )
            return Outline(tuple(_oval(width, length)), *whole)
        case ShapeKind.SCALLOPED:
            return Outline(tuple(_scalloped(shape, width, length)), *whole)
        case ShapeKind.POLYGON:
            return _polygon(simple_polygon(shape.points, width, length))
        case _:
            return rectangle(width, length)


def rectangle(width: Inches, length: Inches) -> Outline:
    """The plain outline of a quilt of `width` × `length`."""
    zero = Fraction(0)
    return _polygon(((zero, zero), (zero, length), (width, length), (width, zero)))


def _polygon(points: tuple[Spot, ...]) -> Outline:
    sides = tuple(_edges((*points, points[0])))
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return Outline(sides, min(xs), min(ys), max(xs) - min(xs), max(ys) - min(ys))


def _edges(points: Iterable[Spot]) -> Iterator[Side]:
    for start, end in pairwise(points):
        yield _edge(start, end)


def _edge(start: Spot, end: Spot, length: Inches | None = None) -> Side:
    """A straight edge; `length` where the spots themselves are rounded."""
    (x1, y1), (x2, y2) = start, end
    square = (x2 - x1) ** 2 + (y2 - y1) ** 2
    if length is None:
        length = root(square)
    heading = degrees(atan2(float(y1 - y2), float(x2 - x1)))
    points = (float(x1), float(y1)), (float(x2), float(y2))
    exact = length**2 == square
    return Side(points, length, _facing(x2 - x1, y2 - y1), heading, heading, exact=exact)


def _facing(dx: Fraction, dy: Fraction) -> Facing:
    """Which way an edge faces that runs by (dx, dy) with the quilt on its left."""
    if abs(dy) > abs(dx):
        return Facing.LEFT if dy > 0 else Facing.RIGHT
    return Facing.BOTTOM if dx > 0 else Facing.TOP


def _arc(
    centre: Point, radius: Inches, start: float, end: float, facing: Facing, *, turning: bool
) -> Side:
    """A circular arc from `start` to `end` degrees, anticlockwise from "to the right"."""
    steps = max(2, round((end - start) / _ARC_STEP))
    angles = [radians(start + (end - start) * step / steps) for step in range(steps + 1)]
    r = float(radius)
    points = tuple((centre[0] + r * cos(a), centre[1] - r * sin(a)) for a in angles)
    length = up(radians(end - start) * r)
    return Side(points, length, facing, start + 90, end + 90, radius, turning, exact=False)


def _rounded(radius: Inches, width: Inches, length: Inches) -> Iterator[Side]:
    _refuse_large("outline.radius", radius, min(width, length) / 2)
    centres = (
        (radius, length - radius, 180),
        (width - radius, length - radius, 270),
        (width - radius, radius, 0),
        (radius, radius, 90),
    )
    for (edge, facing), (x, y, angle) in zip(_between(radius, width, length), centres, strict=True):
        if edge[0] != edge[1]:
            yield _edge(*edge)
        centre = float(x), float(y)
        yield _arc(centre, radius, angle, angle + 90, facing, turning=True)


def _between(
    less: Inches, width: Inches, length: Inches
) -> tuple[tuple[tuple[Spot, Spot], Facing], ...]:
    """The four edges of a rectangle whose corners are gone, `less` of each edge."""
    zero = Fraction(0)
    edges = (
        ((zero, less), (zero, length - less)),
        ((less, length), (width - less, length)),
        ((width, length - less), (width, less)),
        ((width - less, zero), (less, zero)),
    )
    return tuple(zip(edges, _AROUND, strict=True))


def _clipped(clip: Inches, width: Inches, length: Inches) -> Iterator[Side]:
    _refuse_large("outline.clip", clip, min(width, length) / 2)
    spots = [spot for edge, _ in _between(clip, width, length) for spot in edge]
    return (_edge(a, b) for a, b in pairwise((*spots, spots[0])) if a != b)


def _refuse_large(path: str, size: Inches, most: Inches) -> None:
    if size > most:
        raise Refusal(
            path,
            told("that is more than half of the shorter edge; write at most {most}"),
            most=most,
        )


def _hexagon(upright: Upright, width: Inches, length: Inches) -> Outline:
    """The largest regular hexagon: twice its side one way, √3 times its side the other."""
    wide, high = (width, length) if upright is Upright.SIDE else (length, width)
    side = wide / 2 if 3 * wide**2 <= 4 * high**2 else root(high**2 / 3)
    span = min(root(3 * side**2), high)
    spots = ((0, span / 2), (side / 2, span), (side * 3 / 2, span), (2 * side, span / 2),
             (side * 3 / 2, 0), (side / 2, 0))  # fmt: skip
    exact = [(Fraction(x), Fraction(y)) for x, y in spots]
    if upright is Upright.CORNER:
        exact = [(y, x) for x, y in exact][::-1]
    return _regular(exact, side, (width, length), exact_side=side == wide / 2)


def _octagon(width: Inches, length: Inches) -> Outline:
    """The largest regular octagon with a side at the top: its side is √2 − 1 of its width."""
    span = min(width, length)
    side = root(2 * span**2) - span
    cut = (span - side) / 2
    spots = [spot for edge, _ in _between(cut, span, span) for spot in edge]
    return _regular(spots, side, (width, length), exact_side=False)


def _regular(
    spots: list[Spot], side: Inches, room: tuple[Inches, Inches], *, exact_side: bool
) -> Outline:
    """A regular polygon in the middle of its room; all its sides are `side` long."""
    wide = max(x for x, _ in spots) - min(x for x, _ in spots)
    high = max(y for _, y in spots) - min(y for _, y in spots)
    x, y = (room[0] - wide) / 2, (room[1] - high) / 2
    placed = [(sx + x, sy + y) for sx, sy in spots]
    step = 180 / len(placed)  # every side of a regular polygon heads for a multiple of this
    sides = []
    for start, end in pairwise((*placed, placed[0])):
        edge = _edge(start, end, side)
        heading = round(edge.heading / step) * step
        sides.append(replace(edge, heading=heading, end_heading=heading, exact=exact_side))
    return Outline(tuple(sides), x, y, wide, high)


def _oval(width: Inches, length: Inches) -> Iterator[Side]:
    """Four curves that part where the edge faces halfway between two ways."""
    a, b = float(width / 2), float(length / 2)
    tight = min(width, length) ** 2 / max(width, length) / 2
    whole = oval_length(a, b)
    split = atan2(b, a)
    ends = (pi - split, pi + split, 2 * pi - split, 2 * pi + split, 3 * pi - split)
    arcs = [oval_arc(a, b, start, end) for start, end in pairwise(ends)]
    scale = whole / sum(arcs)
    for (start, end), arc, facing in zip(pairwise(ends), arcs, _AROUND, strict=True):
        steps = max(4, round(degrees(end - start) / _ARC_STEP))
        angles = [start + (end - start) * step / steps for step in range(steps + 1)]
        points = tuple((a + a * cos(t), b - b * sin(t)) for t in angles)
        first, last = (degrees(atan2(b * cos(t), -a * sin(t))) for t in (start, end))
        yield Side(points, up(arc * scale), facing, first, last, tight, exact=False)


def _scalloped(shape: Shape, width: Inches, length: Inches) -> Iterator[Side]:
    """Equal arcs on each side, on chords that lie the side's depth inside the quilt's edge."""
    left, bottom, right, top = (shape.depth_on(side) for side in _AROUND)
    long = {True: length - top - bottom, False: width - left - right}
    ahead = {Facing.LEFT: top, Facing.BOTTOM: left, Facing.RIGHT: bottom, Facing.TOP: right}
    for quarter, facing in enumerate(_AROUND):
        depth, count = shape.depth_on(facing), shape.scallops_on(facing)
        chord = long[facing in (Facing.LEFT, Facing.RIGHT)] / count
        _refuse_deep(shape, facing, chord)
        radius = (chord**2 / 4 + depth**2) / (2 * depth)
        half = degrees(asin(min(float(chord / 2 / radius), 1.0)))
        for place in range(count):
            on = ahead[facing] + chord * (place + Fraction(1, 2))
            centre = {
                Facing.LEFT: (radius, on),
                Facing.BOTTOM: (on, length - radius),
                Facing.RIGHT: (width - radius, length - on),
                Facing.TOP: (width - on, radius),
            }[facing]
            out = 180 + 90 * quarter
            at = float(centre[0]), float(centre[1])
            yield _arc(at, radius, out - half, out + half, facing, turning=False)


def _refuse_deep(shape: Shape, side: Facing, chord: Inches) -> None:
    """Refuse scallops that are deeper than half a chord, which is half a circle."""
    if chord >= 2 * shape.depth_on(side):
        return
    upright = side in (Facing.LEFT, Facing.RIGHT)
    sharing = [end for end in Facing if _shares_depth(shape, end)]
    ends = sum((end in (Facing.LEFT, Facing.RIGHT)) is not upright for end in sharing)
    shared, count = side in sharing, shape.scallops_on(side)
    long = chord * count
    most = (long + ends * shape.depth) / (2 * count + ends) if shared else chord / 2
    raise Refusal(
        "outline.depth" if shared else f"outline.depth_{side}",
        told(
            "{count} scallops so deep on the {side} would be more than half circles; write at most "
            "{most}, or fewer scallops",
            count=count,
            side=told_facing(side),
            most="{most}",
        ),
        most=most,
    )


def _shares_depth(shape: Shape, side: Facing) -> bool:
    return getattr(shape, f"depth_{side}") is None
