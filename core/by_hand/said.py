"""What a person says about one cloth by hand, as a project holds it.

A piece is called by its name and copy, a segment of a run by its run's name and
copy and by its length. Letters would not do: they change when a part is added.
Segments have no numbers of their own, since the lay divides a run anew each time.
Sheets are those of the lay, x and y run as there.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Final, TypeAlias

from core.language import told
from core.lay.lay import THE_BOLT, Rect, Sheet
from core.lengths import Inches
from core.part_names import told_part

NOWHERE: Final = Sheet("nowhere")


@dataclass(frozen=True, slots=True)
class HandPin:
    """A piece or segment that must lie with its near corner at (x, y).

    `copy` None: any copy of the piece. `length` is a segment's, and None of a piece.
    `across` and `along` are the sides that a piece was cut in when it was put down, None
    where that is not known. They choose between ways to cut a part, and hold nothing.
    """

    name: str
    x: Inches
    y: Inches
    sheet: Sheet = THE_BOLT
    turned: bool = False
    copy: int | None = None
    length: Inches | None = None
    run_copy: int = 1
    across: Inches | None = None
    along: Inches | None = None


@dataclass(frozen=True, slots=True)
class HandFlaw:
    """A rectangle to keep clear of; `word` says what is there: a stain, a hole."""

    rect: Rect
    sheet: Sheet = THE_BOLT
    word: str = ""

    @property
    def called(self) -> str:
        """Its word, or "flaw" where it has none."""
        return self.word or told("flaw")


@dataclass(frozen=True, slots=True)
class HandMotif:
    """A rectangle that one copy of the piece `name` must contain; None: no piece as yet."""

    name: str | None
    rect: Rect
    sheet: Sheet = THE_BOLT

    @property
    def called(self) -> str:
        """What it is a motif for, if for any piece."""
        if self.name is None:
            return told("motif")
        return told("motif for {part}", part=told_part(self.name))


Said: TypeAlias = HandPin | HandFlaw | HandMotif


def moved_sheet(sheet: Sheet, places: Mapping[int, int]) -> Sheet:
    """The sheet where pieces on hand have new places; what has none is nowhere.

    >>> moved_sheet(Sheet("on_hand[2]"), {2: 1}), moved_sheet(Sheet("on_hand[0]"), {2: 1}).on
    (Sheet(on='on_hand[1]', copy=1), 'nowhere')
    """
    if not sheet.on.startswith("on_hand["):
        return sheet
    place = places.get(int(sheet.on.removeprefix("on_hand[").removesuffix("]")))
    return NOWHERE if place is None else replace(sheet, on=f"on_hand[{place}]")
