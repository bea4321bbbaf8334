"""A piece in the hand: picked up, moved from mark to mark, turned, taken to another sheet.

Places snap to the edges of the sheet, of its pieces and flaws where one is near, else
to the marks of a ruler. Whether a piece may lie where it is held is for
`core.by_hand.verdict` to say.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Final

from core.by_hand.sheets import hand_sheets, rect_of
from core.lay.lay import BOLT, Placement, Rect, Sheet
from core.lengths import INCHES_PER_MM, Inches, Rounding, Units, rounded
from core.plan import FabricPlan, Plan

MARK: Final = Fraction(1, 8)
MARK_METRIC: Final = 2 * INCHES_PER_MM


@dataclass(frozen=True, slots=True)
class Holding:
    """A piece or segment `taken` from a fabric's lay, held with its near corner at (x, y)."""

    place: int
    label: str
    taken: Placement
    sheet: Sheet
    x: Inches
    y: Inches
    turned: bool
    may_turn: bool

    @property
    def rect(self) -> Rect:
        """Where it is held."""
        across, along = self.taken.rect.across, self.taken.rect.along
        sides = (across, along) if self.turned == self.taken.turned else (along, across)
        return Rect(self.x, self.y, *sides)

    @property
    def moved(self) -> bool:
        """Whether it is held elsewhere than it lay."""
        lay = self.taken
        there = (lay.sheet, lay.rect.x, lay.rect.y, lay.turned)
        return there != (self.sheet, self.x, self.y, self.turned)


def pick_up(plan: Plan, label: str) -> Holding | None:
    """The piece of that label, held where it lies; None if there is none."""
    for place, fabric_plan in enumerate(plan.fabrics):
        for placed in fabric_plan.lay.placements:
            if plan.label(placed) == label:
                at = placed.rect
                may_turn = plan.part(placed.name).may_turn
                return Holding(
                    place, label, placed, placed.sheet, at.x, at.y, placed.turned, may_turn
                )
    return None


def mark_of(units: Units) -> Inches:
    """The finest step that a hand moves by."""
    return MARK if units is Units.INCHES else MARK_METRIC


def usual_marks(units: Units) -> int:
    """So many marks make a step of half an inch, or of a centimetre."""
    return 4 if units is Units.INCHES else 5


def to_mark(length: float, units: Units) -> Inches:
    """A place that was pointed at, on the nearest mark.

    >>> to_mark(2.3, Units.INCHES)
    Fraction(9, 4)
    """
    return rounded(Fraction(length), mark_of(units), Rounding.NEAREST)


def held_at(
    plan: Plan, holding: Holding, sheet: Sheet, at: tuple[float, float], reach: float
) -> Holding:
    """The piece held near a place, across and along: on an edge within `reach`, else on a mark."""
    held = replace(holding, sheet=sheet)
    units, rect = plan.project.units, held.rect
    xs, ys = edges(plan, held)
    x = _snapped(at[0], [one for line in xs for one in (line, line - rect.across)], reach, units)
    y = _snapped(at[1], [one for line in ys for one in (line, line - rect.along)], reach, units)
    return replace(held, x=x, y=y)


def _snapped(at: float, places: list[Inches], reach: float, units: Units) -> Inches:
    near = min(places, key=lambda place: abs(float(place) - at), default=None)
    if near is not None and abs(float(near) - at) <= reach:
        return near
    return to_mark(at, units)


def edges(plan: Plan, held: Holding) -> tuple[list[Inches], list[Inches]]:
    """The edges to snap to, across and along: of the sheet, and of what lies on it."""
    fabric_plan = plan.fabrics[held.place]
    whole = rect_of(fabric_plan, held.sheet)
    rects = [whole, *_others(fabric_plan, held)]
    rects += [flaw.rect for flaw in fabric_plan.fabric.flaws if flaw.sheet == held.sheet]
    xs = {side for rect in rects for side in (rect.x, rect.right)}
    ys = {side for rect in rects for side in (rect.y, rect.end)}
    return sorted(xs), sorted(ys)


def _others(fabric_plan: FabricPlan, held: Holding) -> Iterator[Rect]:
    for placed in fabric_plan.lay.placements:
        if placed.sheet == held.sheet and placed != held.taken:
            yield placed.rect


def stepped(plan: Plan, holding: Holding, across: int, along: int, marks: int) -> Holding:
    """The piece moved by so many marks one way; it stops at an edge on the way.

    `across` and `along` are −1, 0 or 1. No marks: to the next edge, if there is one. It
    stays on its cloth, but the bolt goes on behind what is bought.
    """
    rect, (xs, ys) = holding.rect, edges(plan, holding)
    step = mark_of(plan.project.units) * marks
    x = _onward(holding.x, across, step, [p for e in xs for p in (e, e - rect.across)])
    y = _onward(holding.y, along, step, [p for e in ys for p in (e, e - rect.along)])
    whole = rect_of(plan.fabrics[holding.place], holding.sheet)
    x = min(x, max(whole.across - rect.across, holding.x if across < 0 else Fraction(0)))
    if holding.sheet.on != BOLT:
        y = min(y, max(whole.along - rect.along, holding.y if along < 0 else Fraction(0)))
    return replace(holding, x=x, y=y)


def _onward(at: Inches, way: int, step: Inches, places: list[Inches]) -> Inches:
    if not way:
        return at
    ahead = [place for place in places if (place - at) * way > 0 and place >= 0]
    stop = min(ahead, key=lambda place: abs(place - at), default=None)
    if not step:
        return at if stop is None else stop
    there = at + way * step
    if stop is not None and (there - stop) * way > 0:
        return stop
    return max(there, Fraction(0))


def turned(holding: Holding) -> Holding:
    """The piece turned a quarter, where its grain allows; else as it was."""
    return replace(holding, turned=not holding.turned) if holding.may_turn else holding


def on_next_sheet(plan: Plan, holding: Holding) -> Holding:
    """The piece at the beginning of the next cloth of its fabric, as they are pictured."""
    sheets = hand_sheets(plan.fabrics[holding.place])
    here = sheets.index(holding.sheet) if holding.sheet in sheets else -1
    after = sheets[(here + 1) % len(sheets)]
    return replace(holding, sheet=after, x=Fraction(0), y=Fraction(0))
