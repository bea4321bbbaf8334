"""How views put a plan's values into words; nothing here is worked out."""

from __future__ import annotations

from fractions import Fraction

from core.finish.batting import BattingPlan
from core.lengths import Units, show, show_size
from core.money import money
from core.plan import FabricPlan, Part


def part_size(part: Part, units: Units) -> str:
    """The cut size of one of a part's pieces; a run's strips have a width and many lengths."""
    if part.along is None:
        return f"{show(part.across, units)} wide"
    return show_size(part.across, part.along, units)


def purchase(plan: FabricPlan, units: Units) -> str:
    """What to buy of one fabric, as it is sold and as it measures."""
    if plan.buy.along:
        return f"{plan.buy.sale_text} ({show(plan.buy.along, units)})"
    return "nothing: use what is on hand" if plan.lay.sheets else "nothing"


def batting_from(batting: BattingPlan, units: Units) -> str:
    """What to buy for a batting: a package, or so much from the roll for all the quilts."""
    if batting.roll is None:
        return f"{batting.package.name} package" if batting.package else ""
    roll = batting.roll
    joined = f", {times(roll.joins, 'join')} in each" if roll.joins else ""
    return f"{roll.sale_text} by the roll, {show(roll.width, units)} wide{joined}"


def cost(amount: Fraction | None) -> str:
    """An amount of money; a dash if it is not known.

    >>> cost(Fraction(12345, 1000)), cost(None)
    ('12.35', '–')
    """
    return "–" if amount is None else money(amount)


def times(count: int, thing: str) -> str:
    """A count with its noun.

    >>> times(1, "join"), times(3, "join")
    ('1 join', '3 joins')
    """
    return f"{count} {thing}" if count == 1 else f"{count} {thing}s"
