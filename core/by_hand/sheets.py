"""The cloths of a fabric's plan: those in use, and those that a hand may use."""

from __future__ import annotations

from fractions import Fraction

from core.lay.lay import BOLT, THE_BOLT, Rect, Sheet
from core.lay.places import sheet_size
from core.plan import FabricPlan


def sheets_of(fabric_plan: FabricPlan) -> tuple[Sheet, ...]:
    """The sheets of a fabric that something lies on, pieces on hand first."""
    return tuple(sheet for sheet, _ in fabric_plan.lay.sheets)


def all_sheets_of(fabric_plan: FabricPlan) -> tuple[Sheet, ...]:
    """The sheets in use, after them the first of each kind on hand that is not.

    Of a fabric that nothing is cut from there are none.
    """
    used, on_hand = sheets_of(fabric_plan), fabric_plan.fabric.on_hand
    if not used:
        return ()
    kinds = (Sheet(f"on_hand[{place}]") for place in range(len(on_hand)))
    left = (sheet for sheet in kinds if all(sheet.on != other.on for other in used))
    return (*used, *left)


def rect_of(fabric_plan: FabricPlan, sheet: Sheet) -> Rect:
    """The whole of a sheet, in use or not; a bolt of which nothing is bought has no length."""
    used = dict(fabric_plan.lay.sheets)
    if sheet in used:
        return used[sheet]
    zero = Fraction(0)
    size = sheet_size(fabric_plan.fabric, sheet) or (fabric_plan.fabric.cutting_width, zero)
    return Rect(zero, zero, *size)


def hand_sheets(fabric_plan: FabricPlan) -> tuple[Sheet, ...]:
    """The cloths that a piece may be put on: those in sight, and the bolt if more may be bought."""
    seen = all_sheets_of(fabric_plan)
    may_buy = fabric_plan.fabric.buy_more and all(sheet.on != BOLT for sheet in seen)
    return (*seen, THE_BOLT) if may_buy else seen
