"""The place on an outline that is nearest to a point."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise
from math import hypot

from core.edge.outline import Outline, Point
from core.lengths import Inches, Rounding, rounded


def nearest_place(outline: Outline, point: Point, step: Inches) -> tuple[Inches, float]:
    """The place nearest to `point`, to a multiple of `step`, and how far away the edge is.

    >>> from core.edge.shapes import rectangle
    >>> square = rectangle(Fraction(40), Fraction(40))
    >>> nearest_place(square, (-3.0, 10.1), Fraction(1, 4))
    (Fraction(10, 1), 3.0)
    """
    away, place = min(_candidates(outline, point))
    return rounded(Fraction(place), step, Rounding.NEAREST) % outline.ring, away


def _candidates(outline: Outline, point: Point) -> Iterator[tuple[float, float]]:
    """How far off each straight bit of the outline is, and the place on it that is nearest."""
    for start, side in zip(outline.starts, outline.sides, strict=True):
        bits = list(pairwise(side.points))
        drawn = sum(hypot(x2 - x1, y2 - y1) for (x1, y1), (x2, y2) in bits)
        stretch, come = float(side.length) / drawn, 0.0
        for (x1, y1), (x2, y2) in bits:
            long = hypot(x2 - x1, y2 - y1)
            share = ((point[0] - x1) * (x2 - x1) + (point[1] - y1) * (y2 - y1)) / long**2
            share = min(max(share, 0.0), 1.0)
            at = x1 + (x2 - x1) * share, y1 + (y2 - y1) * share
            away = hypot(point[0] - at[0], point[1] - at[1])
            yield away, float(start) + (come + long * share) * stretch
            come += long
