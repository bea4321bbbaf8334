"""The binding in words: strips, joins, how narrow the cloth may be, how it finishes."""

from __future__ import annotations

from collections.abc import Iterator

from app.wording import times
from core.fabric import Grain
from core.finish.binding_plan import BindingPlan
from core.lengths import Rounding, Units, show
from core.quilt import Binding


def binding_facts(binding: Binding, plan: BindingPlan, units: Units) -> Iterator[str]:
    """Sentences about the binding of one quilt."""
    closing = show(plan.closing, units)
    yield (
        f"Cut {show(plan.widths.strip, units)} wide, {binding.fold} fold, {binding.grain} grain. "
        f"Round the edge {show(plan.perimeter, units)}, closing ({binding.closing}) {closing}, "
        f"handling allowance {show(binding.allowance, units)}: needs {show(plan.needs, units)}."
    )
    narrowest = show(plan.narrowest_usable_width, units, Rounding.UP)
    unit = "bias tube" if binding.grain is Grain.BIAS else "strip"
    yield (
        f"{times(plan.strips, unit)}, the longest {show(plan.strip_length, units)}; "
        f"{_joins(binding, plan, units)}. Joined length {show(plan.joined_length, units)}, "
        f"{show(plan.spare, units)} to spare."
    )
    yield f"The plan holds down to a usable width of {narrowest}. Measure yours before cutting."
    yield (
        f"It finishes {show(plan.first_face_width, units)} wide on the first face and "
        f"{show(plan.second_face_width, units)} on the second; the fold reaches "
        f"{show(plan.reach, units)} past the seam."
    )


def _joins(binding: Binding, plan: BindingPlan, units: Units) -> str:
    if not plan.joins:
        return "no join"
    loss = show(plan.join_loss, units)
    return f"{times(plan.joins, 'join')} ({binding.joins}), each taking {loss}"
