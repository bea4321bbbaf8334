"""A plan in a few lines of plain text, for the terminal."""

from __future__ import annotations

from collections.abc import Iterator

from app.binding_wording import bias_given
from app.wording import batting_from, upper_first
from core.language import told, told_count
from core.lengths import Rounding, Units, show, show_size
from core.money import money
from core.part_names import told_part
from core.plan import FabricPlan, Part, Plan


def summary(plan: Plan) -> str:
    """What to buy, what to cut, and what to mind."""
    return "\n".join(_lines(plan))


def _lines(plan: Plan) -> Iterator[str]:
    units = plan.project.units
    size = show_size(plan.finished_width, plan.finished_length, units)
    name = plan.project.quilt.name or told("Quilt")
    yield told("{quilt}: {size} with its borders", quilt=name, size=size)
    yield told("To buy:")
    for fabric in plan.fabrics:
        yield f"  {fabric.fabric.name}: {_buy(fabric)}"
    if plan.batting is not None:
        size = show_size(plan.batting.across, plan.batting.along, units)
        copies = plan.project.quilt.copies
        sizes = f"{copies} × {size}" if copies > 1 else size
        bought = batting_from(plan.batting, units)
        yield "  " + told("batting: {size}, {bought}", size=sizes, bought=bought)
    lays = plan.project.quilt.lays
    yield told("To cut, {count} times:", count=lays) if lays > 1 else told("To cut:")
    for part in plan.parts:
        pieces = f"{part.count} × {told_part(part.name)}"
        yield f"  {part.letter}  {pieces}, {_size(part, units)}, {part.fabric}"
    if (binding := plan.binding) is not None:
        yield told(
            "Binding: {strips}, {joins}, {joined} joined, {spare} spare",
            strips=told_count("{count} strip", "{count} strips", binding.strips),
            joins=told_count("{count} join", "{count} joins", binding.joins),
            joined=show(binding.joined_length, units, Rounding.DOWN),
            spare=show(binding.spare, units, Rounding.DOWN),
        )
        for name, given in bias_given(binding, units):
            yield f"{upper_first(name)}: {given}"
    for warning in plan.warnings:
        yield told("Mind: {notice}", notice=warning.text)


def _size(part: Part, units: Units) -> str:
    across = show(part.across, units, unit=False)
    if part.along is None:
        return told("{width} wide strips", width=across)
    return f"{across} × {show(part.along, units)}"


def _buy(fabric: FabricPlan) -> str:
    if not fabric.lay.placements:
        return told("nothing")
    if not fabric.buy.along:
        return told("nothing, what is on hand is enough")
    price = "" if fabric.buy.cost is None else f", {money(fabric.buy.cost)}"
    bought = f"{fabric.buy.sale_text}{price}"
    return told("{bought}, proved least", bought=bought) if fabric.lay.proved_least else bought
