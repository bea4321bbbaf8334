"""How views put a plan's values into words; nothing here is worked out."""

from __future__ import annotations

from fractions import Fraction

from core.finish.batting import BattingPlan
from core.language import told, told_count
from core.lengths import Units, show, show_size
from core.money import money
from core.plan import FabricPlan, Part


def part_size(part: Part, units: Units) -> str:
    """The cut size of one of a part's pieces; a run's strips have a width and many lengths."""
    if part.along is None:
        return told("{width} wide", width=show(part.across, units))
    return show_size(part.across, part.along, units)


def purchase(plan: FabricPlan, units: Units) -> str:
    """What to buy of one fabric, as it is sold and as it measures."""
    if plan.buy.along:
        return f"{plan.buy.sale_text} ({show(plan.buy.along, units)})"
    return told("nothing: use what is on hand") if plan.lay.sheets else told("nothing")


def batting_from(batting: BattingPlan, units: Units) -> str:
    """What to buy for a batting: a package, or so much from the roll for all the quilts."""
    if batting.roll is None:
        package = batting.package
        return told("{package} package", package=package.name) if package else ""
    roll = batting.roll
    said = told(
        "{length} by the roll, {width} wide", length=roll.sale_text, width=show(roll.width, units)
    )
    if not roll.joins:
        return said
    joins = told_count("{count} join in each", "{count} joins in each", roll.joins)
    return f"{said}, {joins}"


def cost(amount: Fraction | None) -> str:
    """An amount of money; a dash if it is not known.

    >>> cost(Fraction(12345, 1000)), cost(None)
    ('12.35', '–')
    """
    return "–" if amount is None else money(amount)


def upper_first(text: str) -> str:
    """The text with a capital at its start; names in it stay as they are.

    >>> upper_first("flange, Lamp Gold")
    'Flange, Lamp Gold'
    """
    return text[:1].upper() + text[1:]
