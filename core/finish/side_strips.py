"""Strips one a side, as a facing or a flange is cut; and one long joined strip.

Where every strip fits across the cloth they are cut whole; lengthwise strips
are cut in one; else they are joined to one long strip and cut to length.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from typing import TypeAlias

from core.edge.joins import join_loss
from core.fabric import Fabric, Grain
from core.figures import to_a_mark
from core.finish.bound_edge import BoundEdge
from core.finish.demand import Demand
from core.lay.problem import Piece, Run
from core.lengths import Inches
from core.quilt import Joins

Ends: TypeAlias = Callable[[int], Inches]  # what a side's strip is longer than its edge


@dataclass(frozen=True, slots=True)
class SideStrip:
    """Equal strips of one cloth, cut `length` long, for sides that count from 1 round the quilt."""

    name: str
    fabric: str
    length: Inches
    sides: tuple[int, ...]

    @property
    def all_of_them(self) -> Inches:
        return self.length * len(self.sides)


@dataclass(frozen=True, slots=True)
class SideStrips:
    """A strip for every side of the quilt, all `width` wide."""

    width: Inches
    strips: tuple[SideStrip, ...]

    @property
    def count(self) -> int:
        return sum(len(strip.sides) for strip in self.strips)

    @property
    def needs(self) -> Inches:
        """The length of all of them."""
        return sum((strip.all_of_them for strip in self.strips), Inches(0))

    @property
    def longest(self) -> Inches:
        return max(strip.length for strip in self.strips)

    @property
    def by_cloth(self) -> dict[str, tuple[SideStrip, ...]]:
        names = dict.fromkeys(strip.fabric for strip in self.strips)
        return {name: tuple(s for s in self.strips if s.fabric == name) for name in names}

    def whole(self, grain: Grain, usable: Inches) -> bool:
        """Whether each strip is cut in one piece."""
        return grain is Grain.LENGTHWISE or (grain is Grain.CROSSWISE and self.longest <= usable)

    def pieces(self, path: str, role: str, grain: Grain) -> Iterator[Demand]:
        """The strips, each in one piece."""
        for strip in self.strips:
            size = (strip.length, self.width)
            across, along = size[::-1] if grain is Grain.LENGTHWISE else size
            piece = Piece(strip.name, strip.fabric, across, along, len(strip.sides))
            yield Demand(path, role, piece)


def side_strips(
    part: str, edge: BoundEdge, width: Inches, fabrics: tuple[str, ...], ends: Ends
) -> SideStrips:
    """A strip for each straight side, the cloths in turn; equal strips of one cloth together."""
    groups: dict[tuple[str, Inches], list[int]] = {}
    for place, side in enumerate(edge.outline.sides):
        length = to_a_mark(side.length, width) + ends(place)
        groups.setdefault((fabrics[place % len(fabrics)], length), []).append(place + 1)
    names = _names(part, edge, groups.values())
    return SideStrips(
        width,
        tuple(
            SideStrip(name, fabric, length, tuple(sides))
            for name, ((fabric, length), sides) in zip(names, groups.items(), strict=True)
        ),
    )


def _names(part: str, edge: BoundEdge, groups: Iterable[list[int]]) -> Iterator[str]:
    """By where they go on four sides, else by number; one kind alone is the part itself."""
    kinds = list(groups)
    if edge.four_sided and [1, 3] in kinds and [2, 4] in kinds:
        yield from (f"{part} {'side' if 1 in kind else 'top and bottom'}" for kind in kinds)
    elif len(kinds) == 1:
        yield f"{part} side"
    else:
        yield from (f"{part} {number}" for number in range(1, len(kinds) + 1))


@dataclass(frozen=True, slots=True)
class LongStrip:
    """One joined strip of `width`, as a run of `fabric`."""

    name: str
    width: Inches
    needs: Inches
    joins: Joins
    seam: Inches
    shortest: Inches

    @property
    def join_loss(self) -> Inches:
        return join_loss(self.joins, self.width, self.seam)

    def demand(self, path: str, role: str, fabric: Fabric, grain: Grain) -> Demand:
        """The run that asks for it."""
        shortest = min(self.shortest, fabric.cutting_width)
        run = Run(self.name, fabric.name, self.width, self.needs, self.join_loss, shortest, grain)
        return Demand(path, role, run)
