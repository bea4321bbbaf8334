"""Fitting a cloth to pages: which way it lies, how small it is drawn, where it is broken.

A scale is 1 : n with a whole n. A cloth is drawn on one page where that leaves it
readable at arm's length; a longer one is broken over pages with an overlap that
both pages show, and a match line in its middle.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import ceil
from typing import Final

from app.packet.paper import POINTS_PER_INCH
from core.drawing.marks import Drawing, Label, Mark

# Our judgement: a 2 in strip at 1 : 12 is 12 points high and still holds its letter.
SMALLEST_READABLE: Final = 12
OVERLAP: Final = 3.0  # inches of cloth that two neighbouring pages both show
_SLACK: Final = 1e-6  # floats only ever place ink here


@dataclass(frozen=True, slots=True)
class Layout:
    """1 : `ratio`, and the stretches of the drawing (from, to: its y in inches), one a page."""

    ratio: int
    stretches: tuple[tuple[float, float], ...]

    @property
    def scale(self) -> float:
        """Points to an inch of drawing."""
        return POINTS_PER_INCH / self.ratio


def lay_out(drawing: Drawing, width: float, height: float) -> Layout:
    """How `drawing` goes on pages with `width` × `height` points for it.

    >>> lay_out(Drawing("", 40, 60, ()), 500, 500).ratio
    9
    >>> lay_out(Drawing("", 40, 200, ()), 500, 500)
    Layout(ratio=10, stretches=((0.0, 69.0), (66.0, 135.0), (132.0, 200.0)))
    """
    across = _ratio(drawing.width, width)
    whole = ratio_on_one_page(drawing, width, height)
    if whole <= max(SMALLEST_READABLE, across):
        return Layout(whole, ((0.0, drawing.height),))
    most = max(SMALLEST_READABLE, across)
    pages = len(_stretches(drawing.height, _inches(height, most)))
    ratio = next(
        n
        for n in range(across, most + 1)
        if len(_stretches(drawing.height, _inches(height, n))) == pages
    )
    return Layout(ratio, _stretches(drawing.height, _inches(height, ratio)))


def ratio_on_one_page(drawing: Drawing, width: float, height: float) -> int:
    """The least n at which all of `drawing` goes on one page at 1 : n."""
    return max(_ratio(drawing.width, width), _ratio(drawing.height, height))


def larger_turned(upright: Layout, turned: int) -> bool:
    """Whether one page at 1 : `turned`, the cloth lying, beats the upright layout.

    >>> larger_turned(Layout(16, ((0.0, 90.0),)), 12)
    True
    >>> larger_turned(Layout(10, ((0.0, 60.0), (57.0, 90.0))), 25)
    False
    """
    if len(upright.stretches) > 1:
        return turned <= max(SMALLEST_READABLE, upright.ratio)
    return turned * 5 <= upright.ratio * 4


def stretch_of(drawing: Drawing, top: float, bottom: float) -> Drawing:
    """`drawing` with the words that would be cut at `top` or `bottom` moved to what is seen.

    Shapes stay whole: the page cuts them off. A piece that lies on two pages is
    lettered on both.
    """
    return replace(drawing, marks=tuple(_seen(drawing, top, bottom)))


def _seen(drawing: Drawing, top: float, bottom: float) -> Iterator[Mark]:
    for mark in drawing.marks:
        if not isinstance(mark, Label):
            yield mark
            continue
        start = max(mark.centre[1] - mark.room[1] / 2, top)
        end = min(mark.centre[1] + mark.room[1] / 2, bottom)
        if start < end:
            centre = (mark.centre[0], (start + end) / 2)
            yield replace(mark, centre=centre, room=(mark.room[0], end - start))


def _ratio(inches: float, points: float) -> int:
    return max(1, ceil(inches * POINTS_PER_INCH / points - _SLACK))


def _inches(points: float, ratio: int) -> float:
    """Whole inches of drawing that `points` of page hold."""
    return float(int(points * ratio / POINTS_PER_INCH))


def _stretches(length: float, held: float) -> tuple[tuple[float, float], ...]:
    """Stretches of at most `held` that cover `length`, neighbours sharing `OVERLAP`."""
    stretches = []
    start = 0.0
    while start + held < length:
        stretches.append((start, start + held))
        start += held - OVERLAP
    return (*stretches, (start, length))
