"""A plan in a few lines of plain text, for the terminal."""

from __future__ import annotations

from collections.abc import Iterator

from app.binding_wording import bias_given
from app.wording import batting_from, times
from core.lengths import Rounding, show, show_size
from core.money import money
from core.plan import FabricPlan, Plan


def summary(plan: Plan) -> str:
    """What to buy, what to cut, and what to mind."""
    return "\n".join(_lines(plan))


def _lines(plan: Plan) -> Iterator[str]:
    units = plan.project.units
    size = show_size(plan.finished_width, plan.finished_length, units)
    yield f"{plan.project.quilt.name or 'Quilt'}: {size} with its borders"
    yield "To buy:"
    for fabric in plan.fabrics:
        yield f"  {fabric.fabric.name}: {_buy(fabric)}"
    if plan.batting is not None:
        size = show_size(plan.batting.across, plan.batting.along, units)
        copies = plan.project.quilt.copies
        each = f"{copies} × " if copies > 1 else ""
        yield f"  batting: {each}{size}, {batting_from(plan.batting, units)}"
    lays = plan.project.quilt.lays
    yield f"To cut, {lays} times:" if lays > 1 else "To cut:"
    for part in plan.parts:
        across = show(part.across, units, unit=False)
        long = f"{across} × {show(part.along, units)}" if part.along else f"{across} wide strips"
        yield f"  {part.letter}  {part.count} × {part.name}, {long}, {part.fabric}"
    if (binding := plan.binding) is not None:
        yield (
            f"Binding: {times(binding.strips, 'strip')}, {times(binding.joins, 'join')}, "
            f"{show(binding.joined_length, units, Rounding.DOWN)} joined, "
            f"{show(binding.spare, units, Rounding.DOWN)} spare"
        )
        for name, given in bias_given(binding, units):
            yield f"{name.capitalize()}: {given}"
    for warning in plan.warnings:
        yield f"Mind: {warning.text}"


def _buy(fabric: FabricPlan) -> str:
    if not fabric.lay.placements:
        return "nothing"
    if not fabric.buy.along:
        return "nothing, what is on hand is enough"
    price = "" if fabric.buy.cost is None else f", {money(fabric.buy.cost)}"
    least = ", proved least" if fabric.lay.proved_least else ""
    return f"{fabric.buy.sale_text}{price}{least}"
