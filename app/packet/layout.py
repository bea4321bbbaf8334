"""Fitting a cloth to pages: which way it lies, how small it is drawn, where it is broken.

A scale is 1 : n with a whole n. A cloth is drawn on one page where that leaves it
readable at arm's length; a longer one is broken over pages with an overlap that
both pages show, and a match line in its middle.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import ceil
from typing import Final, assert_never

from app.packet.paper import POINTS_PER_INCH
from core.drawing.marks import Area, Drawing, Label, Line, Mark, Point

# Our judgement: a 2 in strip at 1 : 14 is 10 points high and still holds its letter.
SMALLEST_READABLE: Final = 14
OVERLAP: Final = 3.0  # inches of cloth that two neighbouring pages both show
_BEYOND: Final = 1.0  # inches of drawing
_ROOM_FOR_WORDS: Final = 2.0  # inches of drawing
_SLACK: Final = 1e-6  # floats only ever place ink here


@dataclass(frozen=True, slots=True)
class Room:
    """Free space of a page, in points of layout, of which `inch` come out as one inch."""

    width: float
    height: float
    inch: float = POINTS_PER_INCH

    @property
    def smallest_readable(self) -> int:
        return max(1, int(SMALLEST_READABLE * self.inch / POINTS_PER_INCH))

    @property
    def least_for_two_overlaps(self) -> int:
        """The least n at which a page of a broken cloth shows more than it shares."""
        return max(1, ceil((2 * OVERLAP + 1) * self.inch / max(self.height, self.inch)))

    def inches_high(self, ratio: int) -> float:
        """Whole inches of drawing that the room holds at 1 : `ratio`."""
        return float(int(max(self.height, self.inch) * ratio / self.inch))


@dataclass(frozen=True, slots=True)
class Layout:
    """1 : `ratio`, and the stretches of the drawing (from, to: its y in inches), one a page."""

    ratio: int
    stretches: tuple[tuple[float, float], ...]


def lay_out(drawing: Drawing, room: Room) -> Layout:
    """How `drawing` goes on pages with `room` for it.

    >>> lay_out(Drawing("", 40, 60, ()), Room(500, 500)).ratio
    9
    >>> lay_out(Drawing("", 40.0, 200.0, ()), Room(500, 500))
    Layout(ratio=10, stretches=((0.0, 69.0), (66.0, 135.0), (132.0, 200.0)))
    """
    across = _ratio(drawing.width, room.width, room.inch)
    whole = ratio_on_one_page(drawing, room)
    most = max(room.smallest_readable, across, room.least_for_two_overlaps)
    if whole <= most:
        return Layout(whole, ((0.0, drawing.height),))
    pages = len(_stretches(drawing.height, room.inches_high(most)))
    ratio = next(
        n
        for n in range(max(across, room.least_for_two_overlaps), most + 1)
        if len(_stretches(drawing.height, room.inches_high(n))) == pages
    )
    return Layout(ratio, _stretches(drawing.height, room.inches_high(ratio)))


def ratio_on_one_page(drawing: Drawing, room: Room) -> int:
    """The least n at which all of `drawing` goes on one page at 1 : n."""
    return max(
        _ratio(drawing.width, room.width, room.inch), _ratio(drawing.height, room.height, room.inch)
    )


def larger_turned(upright: Layout, turned: int, readable: int = SMALLEST_READABLE) -> bool:
    """Whether one page at 1 : `turned`, the cloth lying, beats the upright layout.

    >>> larger_turned(Layout(16, ((0.0, 90.0),)), 12)
    True
    >>> larger_turned(Layout(10, ((0.0, 60.0), (57.0, 90.0))), 25)
    False
    """
    if len(upright.stretches) > 1:
        return turned <= max(readable, upright.ratio)
    return turned * 5 <= upright.ratio * 4


def stretch_of(drawing: Drawing, top: float, bottom: float) -> Drawing:
    """What a page shows of `drawing` from y = `top` to `bottom`.

    Areas end a little beyond the page's window, so that no edge shows where the
    cloth goes on. Words keep between the match lines, so that a piece on both
    sides of one is lettered on both pages; only a piece that a match line leaves
    too little on either side has its words across it.
    """
    words = (
        top + OVERLAP / 2 if top > 0 else -_BEYOND,
        bottom - OVERLAP / 2 if bottom < drawing.height else bottom + _BEYOND,
    )
    seen = (_seen(mark, top, bottom, words) for mark in drawing.marks)
    return replace(drawing, marks=tuple(mark for mark in seen if mark is not None))


def _seen(mark: Mark, top: float, bottom: float, words: tuple[float, float]) -> Mark | None:
    match mark:
        case Label():
            return _seen_words(mark, (top, bottom), words)
        case Area():
            points = _above(mark.points, bottom + _BEYOND)
            points = _mirrored(_above(_mirrored(points), _BEYOND - top))
            return replace(mark, points=points) if points else None
        case Line():
            ys = [y for _, y in mark.points]
            return mark if max(ys) >= top and min(ys) <= bottom else None
        case _:
            assert_never(mark)


def _seen_words(
    label: Label, page: tuple[float, float], words: tuple[float, float]
) -> Label | None:
    """`label` in the middle of what is seen of its room; a ruler's number stays at its tick."""
    if label.role == "ruler":
        return label if words[0] <= label.centre[1] <= words[1] else None
    half = label.room[1] / 2
    whole = (label.centre[1] - half, label.centre[1] + half)
    enough = min(2 * half, _ROOM_FOR_WORDS) - _SLACK
    start, end = _within(whole, words)
    if half <= _ROOM_FOR_WORDS and end - start < enough:
        start, end = _within(whole, page)
    if end - start < enough:
        return None
    return replace(
        label, centre=(label.centre[0], (start + end) / 2), room=(label.room[0], end - start)
    )


def _within(whole: tuple[float, float], window: tuple[float, float]) -> tuple[float, float]:
    return max(whole[0], window[0]), min(whole[1], window[1])


def _above(points: tuple[Point, ...], floor: float) -> tuple[Point, ...]:
    """A polygon's part with y at most `floor` (Sutherland and Hodgman, 1974)."""
    kept: list[Point] = []
    for (x1, y1), (x2, y2) in zip(points, (*points[1:], *points[:1]), strict=True):
        if y1 <= floor:
            kept.append((x1, y1))
        if (y1 <= floor) != (y2 <= floor):
            kept.append((x1 + (floor - y1) * (x2 - x1) / (y2 - y1), floor))
    return tuple(kept)


def _mirrored(points: tuple[Point, ...]) -> tuple[Point, ...]:
    return tuple((x, -y) for x, y in points)


def _ratio(inches: float, points: float, inch: float) -> int:
    return max(1, ceil(inches * inch / points - _SLACK))


def _stretches(length: float, held: float) -> tuple[tuple[float, float], ...]:
    """Stretches of at most `held` that cover `length`, neighbours sharing `OVERLAP`."""
    stretches = []
    start = 0.0
    while start + held < length:
        stretches.append((start, start + held))
        start += held - OVERLAP
    return (*stretches, (start, length))
