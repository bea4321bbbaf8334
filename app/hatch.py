"""Hatches: the line patterns that tell one part from another without colour.

Every surface draws the same lines, so screen and paper agree. A painter's own
brush patterns are of no use: they keep the device's pixel size, and turn into
solid grey on a printer.

A hatch is one or more families of parallel lines, each with an angle (degrees
from the x axis), a spacing in pitches, and dashes. Lines are anchored to the
drawing's origin, not to the polygon, so that neighbours' lines meet, and lie half
a spacing off it, so that they keep off edges at round measures.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil, cos, floor, radians, sin
from types import MappingProxyType
from typing import TypeAlias

Point: TypeAlias = tuple[float, float]
Segment: TypeAlias = tuple[Point, Point]


@dataclass(frozen=True, slots=True)
class Family:
    """Parallel lines `spacing` pitches apart.

    `dash` is (on, off) in pitches, or None for unbroken lines; every second
    line's dashes are moved half a period, as bricks are.
    """

    angle: float
    spacing: float = 1.0
    dash: tuple[float, float] | None = None


HATCHES: Mapping[str, tuple[Family, ...]] = MappingProxyType(
    {
        "rising": (Family(-45),),
        "falling": (Family(45, 0.6),),
        "crossed": (Family(-45), Family(45)),
        "level": (Family(0, 0.5),),
        "grid": (Family(0), Family(90)),
        "upright": (Family(90, 0.5),),
        "dashes": (Family(90, 0.8, (1.0, 1.0)),),
        "dots": (Family(0, 0.6, (0.15, 1.05)),),
        "wide rising": (Family(-45, 1.6),),
        "close falling": (Family(45, 0.45),),
        "close upright": (Family(90, 0.35),),
        "stitches": (Family(0, 0.7, (0.7, 0.5)),),
        "lattice": (Family(-30, 0.5), Family(30, 0.5)),
        "zigzag": (Family(60, 1.2, (0.6, 0.6)), Family(-60, 1.2, (0.6, 0.6))),
    }
)


def hatch_lines(polygon: Sequence[Point], hatch_id: str, pitch: float) -> list[Segment]:
    """The hatch's lines inside any simple polygon, in the polygon's own units.

    `hatch_id` "" has no lines. Raises `KeyError` for an unknown id and
    `ValueError` for a pitch that is not above 0.

    >>> hatch_lines([(0, 0), (4, 0), (4, 2), (0, 2)], "level", 2)
    [((0.0, 0.5), (4.0, 0.5)), ((0.0, 1.5), (4.0, 1.5))]
    """
    if pitch <= 0:
        raise ValueError(f"the pitch of a hatch is above 0, not {pitch}")
    if not hatch_id:
        return []
    return [
        segment for family in HATCHES[hatch_id] for segment in _family_lines(polygon, family, pitch)
    ]


def _family_lines(polygon: Sequence[Point], family: Family, pitch: float) -> Iterator[Segment]:
    """Turn the polygon so that the family is level, cut it by levels, turn back."""
    turn = radians(family.angle)
    cosine, sine = (cos(turn), sin(turn)) if turn else (1.0, 0.0)
    level = [(x * cosine + y * sine, y * cosine - x * sine) for x, y in polygon]
    spacing = family.spacing * pitch
    lowest, highest = min(y for _, y in level), max(y for _, y in level)
    for row in range(ceil(lowest / spacing - 0.5), floor(highest / spacing - 0.5) + 1):
        y = (row + 0.5) * spacing
        over, down = y * sine, y * cosine
        for left, right in _inside(level, y):
            for start, end in _dashed(left, right, family.dash, pitch, row):
                yield (
                    (start * cosine - over, start * sine + down),
                    (end * cosine - over, end * sine + down),
                )


def _inside(polygon: Sequence[Point], y: float) -> Iterator[tuple[float, float]]:
    """Where the level line at `y` runs inside the polygon (even-odd rule).

    Each side counts its lower end and not its upper, so a corner on the line is
    counted once or twice as it should be.
    """
    crossings = sorted(
        x1 + (y - y1) * (x2 - x1) / (y2 - y1)
        for (x1, y1), (x2, y2) in pairwise([*polygon, polygon[0]])
        if (y1 <= y) != (y2 <= y)
    )
    yield from zip(crossings[::2], crossings[1::2], strict=True)


def _dashed(
    left: float, right: float, dash: tuple[float, float] | None, pitch: float, row: int
) -> Iterator[tuple[float, float]]:
    """`left` … `right` broken into dashes that start from the drawing's origin."""
    if dash is None:
        yield left, right
        return
    on, period = dash[0] * pitch, sum(dash) * pitch
    shift = period / 2 if row % 2 else 0.0
    for turn in range(floor((left - shift) / period), floor((right - shift) / period) + 1):
        start = turn * period + shift
        if max(left, start) < min(right, start + on):
            yield max(left, start), min(right, start + on)
