"""Rectangles in exact inches, and the marks they become."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from fractions import Fraction

from core.drawing.marks import Area, Label, Line, Mark, Point
from core.lay.lay import Rect
from core.lengths import Inches

_PADDING = 0.94


def grown(rect: Rect, by: Inches) -> Rect:
    """The rectangle with `by` more on every side."""
    return Rect(rect.x - by, rect.y - by, rect.across + 2 * by, rect.along + 2 * by)


def free_of(whole: Rect, covered: Iterable[Rect]) -> Rect:
    """A large part of `whole` that none of the others covers.

    >>> free_of(Rect(0, 0, 10, 4), [Rect(7, 1, 2, 2)])
    Rect(x=0, y=0, across=7, along=4)
    """
    for rect in covered:
        if whole.within(rect) is not None:
            whole = max(_beside(whole, rect), key=lambda band: band.across * band.along)
    return whole


def _beside(whole: Rect, hole: Rect) -> Iterator[Rect]:
    """What `whole` has left of, above, right of and below a rectangle that covers some of it."""
    none = Fraction(0)
    left, right = max(hole.x - whole.x, none), max(whole.right - hole.right, none)
    above, below = max(hole.y - whole.y, none), max(whole.end - hole.end, none)
    yield replace(whole, across=left)
    yield replace(whole, along=above)
    yield replace(whole, x=whole.right - right, across=right)
    yield replace(whole, y=whole.end - below, along=below)


def point(x: Inches, y: Inches) -> Point:
    return float(x), float(y)


def corners(rect: Rect) -> tuple[Point, ...]:
    """The rectangle's corners, from the first one clockwise."""
    return (
        point(rect.x, rect.y),
        point(rect.right, rect.y),
        point(rect.right, rect.end),
        point(rect.x, rect.end),
    )


def area(rect: Rect, role: str, key: str = "") -> Area:
    return Area(corners(rect), role, key)


def label(rect: Rect, texts: tuple[str, ...], role: str, key: str = "") -> Label:
    """Words in the middle of the rectangle, with most of it as their room."""
    centre = point(rect.x + rect.across / 2, rect.y + rect.along / 2)
    room = (float(rect.across) * _PADDING, float(rect.along) * _PADDING)
    return Label(centre, texts, room, role, key)


def moved(mark: Mark, dx: float, dy: float) -> Mark:
    """The mark shifted to the right and down."""
    if isinstance(mark, Label):
        x, y = mark.centre
        return Label((x + dx, y + dy), mark.texts, mark.room, mark.role, mark.key)
    points = tuple((x + dx, y + dy) for x, y in mark.points)
    if isinstance(mark, Area):
        return replace(mark, points=points)
    return Line(points, mark.role)
