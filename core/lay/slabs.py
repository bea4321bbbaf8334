"""The tree of edge-to-edge cuts that takes a finished lay apart.

A node is a rectangle of cloth cut, in one direction, into slabs side by side;
a leaf is one thing that was laid, or waste. Any guillotine lay has such a tree,
and cutting wherever nothing is cut through never spoils the rest: a part of a
guillotine lay is a guillotine lay.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Generic, TypeAlias, TypeVar

from core.lay.lay import Direction

Thing = TypeVar("Thing")
Measure: TypeAlias = int | Fraction
Box: TypeAlias = tuple[Measure, Measure, Measure, Measure]  # x, y, across, along


@dataclass(frozen=True, slots=True)
class Slab(Generic[Thing]):
    """A rectangle and how it is cut; `thing` is what a leaf holds (None: waste)."""

    box: Box
    direction: Direction | None = None
    parts: tuple[Slab[Thing], ...] = ()
    thing: Thing | None = None

    @property
    def waste(self) -> bool:
        return self.direction is None and self.thing is None

    @property
    def cuts(self) -> int:
        """How many edge-to-edge cuts take it apart."""
        return max(0, len(self.parts) - 1) + sum(part.cuts for part in self.parts)

    @property
    def stages(self) -> int:
        """How often the direction of the cuts must change, the first one counted."""
        return 1 + max(part.stages for part in self.parts) if self.parts else 0

    def settings(self) -> set[Measure]:
        """The different measures at which the cuts are made, each from the fresh edge."""
        axis = 3 if self.direction is Direction.CROSSWISE else 2
        own = {part.box[axis] for part in self.parts[:-1]}
        return own.union(*(part.settings() for part in self.parts))

    @property
    def largest_waste(self) -> Measure:
        if self.waste:
            return self.box[2] * self.box[3]
        return max((part.largest_waste for part in self.parts), default=0)


class NotGuillotine(ValueError):
    """No edge-to-edge cut takes these things apart."""


def slabs(
    box: Box,
    things: Sequence[tuple[Box, Thing]],
    *,
    crosswise_first: bool = False,
    few_stages: bool = False,
) -> Slab[Thing]:
    """The cut tree of `things` within `box`; raises `NotGuillotine` if there is none.

    Where both directions serve, fewer cuts win, then the larger piece of waste;
    `crosswise_first` settles it for the first cuts, and with `few_stages` the
    fewest stages win before that.
    """
    if not things:
        return Slab(box)
    if len(things) == 1 and things[0][0] == box:
        return Slab(box, thing=things[0][1])
    ways = []
    for direction in (Direction.CROSSWISE, Direction.LENGTHWISE):
        groups = _groups(box, things, direction)
        if len(groups) > 1:
            parts = tuple(slabs(part, inside, few_stages=few_stages) for part, inside in groups)
            ways.append(Slab(box, direction, parts))
            if crosswise_first and not few_stages:
                break
    if not ways:
        raise NotGuillotine(f"no edge-to-edge cut through {box} misses all {len(things)} things")
    return min(ways, key=lambda way: (way.stages * few_stages, way.cuts, -way.largest_waste))


def _groups(
    box: Box, things: Sequence[tuple[Box, Thing]], direction: Direction
) -> list[tuple[Box, list[tuple[Box, Thing]]]]:
    """The slabs that all possible cuts in one direction leave, gaps included."""
    axis = 1 if direction is Direction.CROSSWISE else 0
    here, end = box[axis], box[axis] + box[axis + 2]
    groups: list[tuple[Box, list[tuple[Box, Thing]]]] = []
    inside: list[tuple[Box, Thing]] = []
    start = reach = here
    for entry in sorted(things, key=lambda entry: entry[0][axis]):
        low, high = entry[0][axis], entry[0][axis] + entry[0][axis + 2]
        if low >= reach:
            if inside:
                groups.append((_part(box, axis, start, reach), inside))
            if low > reach:
                groups.append((_part(box, axis, reach, low), []))
            inside, start = [], low
        inside.append(entry)
        reach = max(reach, high)
    groups.append((_part(box, axis, start, reach), inside))
    if reach < end:
        groups.append((_part(box, axis, reach, end), []))
    return groups


def _part(box: Box, axis: int, low: Measure, high: Measure) -> Box:
    if axis == 1:
        return (box[0], low, box[2], high - low)
    return (low, box[1], high - low, box[3])
