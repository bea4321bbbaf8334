"""A rectangle of a cloth that is being marked: drawn from place to place, or moved by keys."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from core.by_hand.holding import mark_of, to_mark, usual_marks
from core.by_hand.sheets import hand_sheets, rect_of
from core.language import told
from core.lay.lay import Rect, Sheet
from core.lay.places import meet
from core.lengths import Inches, show, show_size
from core.plan import Plan


@dataclass(frozen=True, slots=True)
class Spot:
    """A rectangle of one cloth of the plan's fabric at `place`."""

    place: int
    sheet: Sheet
    rect: Rect


def drawn(
    plan: Plan, place: int, sheet: Sheet, start: tuple[float, float], end: tuple[float, float]
) -> Spot | None:
    """The rectangle between two places that were pointed at, across and along, on marks.

    None if nothing of it lies on the cloth; of the bolt, what is bought.
    """
    units = plan.project.units
    xs, ys = (sorted(to_mark(one, units) for one in pair) for pair in zip(start, end, strict=True))
    rect = Rect(xs[0], ys[0], xs[1] - xs[0], ys[1] - ys[0])
    seen = rect.within(rect_of(plan.fabrics[place], sheet))
    return None if seen is None else Spot(place, sheet, seen)


def first_spot(plan: Plan, place: int, sheet: Sheet) -> Spot:
    """A small rectangle at the beginning of a cloth, to be moved where it belongs."""
    whole, side = rect_of(plan.fabrics[place], sheet), 2 * _step(plan)
    across, along = min(side, whole.across), min(side, whole.along or side)
    return Spot(place, sheet, Rect(Fraction(0), Fraction(0), across, along))


def _step(plan: Plan) -> Inches:
    return mark_of(plan.project.units) * usual_marks(plan.project.units)


def spot_moved(plan: Plan, spot: Spot, across: int, along: int, marks: int) -> Spot:
    """The spot moved by so many marks, as far as its cloth goes."""
    whole, step = rect_of(plan.fabrics[spot.place], spot.sheet), mark_of(plan.project.units) * marks
    rect = spot.rect
    x = _within(rect.x + across * step, whole.across - rect.across)
    y = _within(rect.y + along * step, whole.along - rect.along)
    return replace(spot, rect=replace(rect, x=x, y=y))


def spot_sized(plan: Plan, spot: Spot, across: int, along: int) -> Spot:
    """The spot made larger or smaller by a step, as far as its cloth goes."""
    whole, step, rect = rect_of(plan.fabrics[spot.place], spot.sheet), _step(plan), spot.rect
    wide, long = rect.across + across * step, rect.along + along * step
    wide = min(wide, whole.across - rect.x) if wide > 0 else rect.across
    long = min(long, whole.along - rect.y) if long > 0 else rect.along
    return replace(spot, rect=replace(rect, across=wide, along=long))


def _within(at: Inches, most: Inches) -> Inches:
    return min(max(at, Fraction(0)), max(most, Fraction(0)))


def next_cloth(plan: Plan, spot: Spot) -> Spot:
    """The spot at the beginning of the next cloth, of whatever fabric."""
    cloths = [
        (place, sheet)
        for place, fabric_plan in enumerate(plan.fabrics)
        for sheet in hand_sheets(fabric_plan)
        if rect_of(fabric_plan, sheet).along
    ]
    here = cloths.index((spot.place, spot.sheet))
    return first_spot(plan, *cloths[(here + 1) % len(cloths)])


def said_of_spot(plan: Plan, spot: Spot) -> str:
    """Where a spot is and how large, in words."""
    units, rect = plan.project.units, spot.rect
    size = show_size(rect.across, rect.along, units)
    return told(
        "{size} on {fabric}, {across} from the near edge, {along} from the straight end",
        size=size,
        fabric=plan.fabrics[spot.place].fabric.name,
        across=show(rect.x, units),
        along=show(rect.y, units),
    )


def pinned_under(plan: Plan, spot: Spot) -> list[str]:
    """The pinned pieces that a flaw there would spoil, by their labels."""
    pinned = plan.fabrics[spot.place].by_hand.pins
    return [
        plan.label(placed)
        for _, placed in pinned
        if meet(spot.sheet, spot.rect, placed.sheet, placed.rect)
    ]
