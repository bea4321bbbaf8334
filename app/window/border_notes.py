"""What the plan makes of each border, to be said under its fields."""

from __future__ import annotations

from core.finish.border import BorderPlan
from core.language import told
from core.lengths import show
from core.plan import Plan

NOTED = ("width", "to_length", "grain")  # the fields that have something said under them


def border_notes(plan: Plan) -> list[dict[str, str]]:
    """For each border, sentences by the key of the field that they stand under."""
    return [
        {
            "width": _cut(plan, border),
            "to_length": _cut(plan, border),
            "grain": _grain(plan, border),
        }
        for border in plan.borders
    ]


def _cut(plan: Plan, border: BorderPlan) -> str:
    widths = [show(width, plan.project.units) for width in border.cut_widths]
    if len(widths) == 1:
        return told("Strips are cut {width} wide.", width=widths[0])
    return told(
        "Strips are cut {sides} wide for the sides, {ends} for top and bottom.",
        sides=widths[0],
        ends=widths[1],
    )


def _grain(plan: Plan, border: BorderPlan) -> str:
    said = [o.sentence(plan.project) for o in plan.otherwise if o.path == border.path]
    return said[0] if said else ""
