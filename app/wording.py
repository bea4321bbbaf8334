"""How views put a plan's values into words; nothing here is worked out."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

from core.lengths import Inches, Units, show
from core.plan import FabricPlan, Part


def size(across: Inches, along: Inches, units: Units) -> str:
    """Two sides of a rectangle, across the cloth first."""
    return f"{show(across, units, unit=False)} × {show(along, units)}"


def part_size(part: Part, units: Units) -> str:
    """The cut size of one of a part's pieces; a run's strips have a width and many lengths."""
    if part.along is None:
        return f"{show(part.across, units)} wide"
    return size(part.across, part.along, units)


def purchase(plan: FabricPlan, units: Units) -> str:
    """What to buy of one fabric, as it is sold and as it measures."""
    if plan.buy.along:
        return f"{plan.buy.sale_text} ({show(plan.buy.along, units)})"
    return "nothing: use what is on hand" if plan.lay.sheets else "nothing"


def money(amount: Fraction | None) -> str:
    """An amount to two places, in whatever money the prices were given; a dash if not known.

    >>> money(Fraction(12345, 1000)), money(None)
    ('12.35', '–')
    """
    if amount is None:
        return "–"
    exact = Decimal(amount.numerator) / Decimal(amount.denominator)
    return str(exact.quantize(Decimal("0.01"), ROUND_HALF_UP))


def times(count: int, thing: str) -> str:
    """A count with its noun.

    >>> times(1, "join"), times(3, "join")
    ('1 join', '3 joins')
    """
    return f"{count} {thing}" if count == 1 else f"{count} {thing}s"
