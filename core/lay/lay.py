"""The lay as found: placements, offcuts and the cut order, cloth by cloth.

A `Lay` is data only. That it is right is for `core.lay.check` to say, which
shares no code with the solver.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from core.lengths import Inches

BOLT = "bolt"


@dataclass(frozen=True, slots=True)
class Sheet:
    """Which piece of cloth: `on` is "bolt" or "on_hand[i]", `copy` counts equal pieces from 1."""

    on: str = BOLT
    copy: int = 1


THE_BOLT: Final = Sheet()


@dataclass(frozen=True, slots=True)
class Rect:
    """A rectangle on a sheet, in inches from its left edge (x) and straightened end (y)."""

    x: Inches
    y: Inches
    across: Inches
    along: Inches

    @property
    def right(self) -> Inches:
        return self.x + self.across

    @property
    def end(self) -> Inches:
        return self.y + self.along

    def holds(self, other: Rect) -> bool:
        """Whether the other lies within this one, edges included."""
        across = self.x <= other.x and other.right <= self.right
        return across and self.y <= other.y and other.end <= self.end

    def within(self, whole: Rect) -> Rect | None:
        """The part of it that lies in `whole`; None if there is none."""
        x, y = max(self.x, whole.x), max(self.y, whole.y)
        across, along = min(self.right, whole.right) - x, min(self.end, whole.end) - y
        return Rect(x, y, across, along) if across > 0 and along > 0 else None


@dataclass(frozen=True, slots=True)
class Placement:
    """One piece or segment where it lies.

    `copy` counts the copies of a piece, or the segments of a run (over all its
    copies), from 1; `run_copy` says which of several equal runs a segment
    belongs to and is None for pieces. `turned`: a piece's across and along are
    swapped, or a run's segment lies lengthwise.
    """

    name: str
    copy: int
    sheet: Sheet
    rect: Rect
    turned: bool = False
    run_copy: int | None = None


@dataclass(frozen=True, slots=True)
class Offcut:
    """A rectangle left over that is worth keeping."""

    sheet: Sheet
    rect: Rect


class Direction(StrEnum):
    """A crosswise cut runs selvage to selvage, a lengthwise cut parallel to the selvages."""

    CROSSWISE = "crosswise"
    LENGTHWISE = "lengthwise"


@dataclass(frozen=True, slots=True)
class Cut:
    """One edge-to-edge cut of `region`, the rectangle of cloth in hand.

    A crosswise cut lies at y = `at`, a lengthwise one at x = `at` (sheet
    coordinates, strictly inside the region) and leaves two rectangles.
    """

    sheet: Sheet
    region: Rect
    direction: Direction
    at: Inches

    @property
    def measure(self) -> Inches:
        """Distance from the near edge of the region (its y or x start) to the cut."""
        start = self.region.y if self.direction is Direction.CROSSWISE else self.region.x
        return self.at - start

    @property
    def length(self) -> Inches:
        """How long the cut itself is."""
        crosswise = self.direction is Direction.CROSSWISE
        return self.region.across if crosswise else self.region.along


@dataclass(frozen=True, slots=True)
class ClothLay:
    """The lay of one cloth.

    `used_along` is the bolt's length in use after straightening, `bought_along`
    what that costs in sale units, `bound_along` a length below which no lay of
    these pieces can go; `proved_least` says that buying for the bound costs as
    much as buying for the lay. `sheets` lists the sheets in use with their size;
    the bolt's is all that is bought, once straightened and washed: usable width ×
    `Cloth.available`, so that the cut order frees the last strip from the rest.
    """

    name: str
    bought_along: Inches
    used_along: Inches
    bound_along: Inches
    proved_least: bool
    sheets: tuple[tuple[Sheet, Rect], ...] = ()
    placements: tuple[Placement, ...] = ()
    offcuts: tuple[Offcut, ...] = ()
    cuts: tuple[Cut, ...] = ()


@dataclass(frozen=True, slots=True)
class Unplaced:
    """What found no room: `count` copies of a piece or run (only where no more may be bought)."""

    name: str
    count: int


@dataclass(frozen=True, slots=True)
class Lay:
    """One `ClothLay` for every cloth of the problem, in its order."""

    cloths: tuple[ClothLay, ...]
    unplaced: tuple[Unplaced, ...] = ()
