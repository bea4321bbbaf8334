"""Four strips, one a side, as a facing or a flange is cut.

Where every strip fits across the cloth they are cut whole; lengthwise strips
are cut in one; else they are joined to one long strip and cut to length.
"""

from __future__ import annotations

from dataclasses import dataclass

from core.edge.joins import join_loss
from core.fabric import Fabric, Grain
from core.finish.demand import Demand
from core.lay.problem import Piece, Run
from core.lengths import Inches
from core.quilt import Joins


@dataclass(frozen=True, slots=True)
class SideStrips:
    """Two strips of each of the two lengths, all `width` wide, named after `part`."""

    part: str
    width: Inches
    side: Inches
    end: Inches

    @property
    def needs(self) -> Inches:
        """The length of all four."""
        return 2 * (self.side + self.end)

    @property
    def longest(self) -> Inches:
        return max(self.side, self.end)

    def whole(self, grain: Grain, usable: Inches) -> bool:
        """Whether each strip is cut in one piece."""
        return grain is Grain.LENGTHWISE or (grain is Grain.CROSSWISE and self.longest <= usable)

    def pieces(self, path: str, role: str, fabric: str, grain: Grain) -> tuple[Demand, ...]:
        """The strips, each in one piece."""
        named = ((f"{self.part} side", self.side), (f"{self.part} top and bottom", self.end))
        sizes = ((name, (length, self.width)) for name, length in named)
        turned = grain is Grain.LENGTHWISE
        return tuple(
            Demand(path, role, Piece(name, fabric, *(size[::-1] if turned else size), 2))
            for name, size in sizes
        )


@dataclass(frozen=True, slots=True)
class LongStrip:
    """One joined strip of `width`, as a run of `fabric`; `spare` is added to what is needed."""

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
