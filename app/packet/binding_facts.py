"""The binding in words: strips, joins, how narrow the cloth may be, how it finishes."""

from __future__ import annotations

from collections.abc import Iterator

from app.binding_wording import LAYER_PLACES, bias_given, layers_said
from app.wording import times
from core.fabric import Grain
from core.finish.binding_plan import BindingPlan
from core.lengths import Rounding, Units, show
from core.quilt import Binding, Fold


def binding_facts(binding: Binding, plan: BindingPlan, units: Units) -> Iterator[str]:
    """Sentences about the binding of one quilt."""
    closing = show(plan.closing, units)
    yield (
        f"Cut {show(plan.widths.strip, units)} wide, {binding.grain} grain, {_fold(binding)}. "
        f"Round the edge {show(plan.perimeter, units)}, closing ({binding.closing}) {closing}, "
        f"handling allowance {show(binding.allowance, units)}: needs {show(plan.needs, units)}."
    )
    if plan.two_cloth is not None:
        two = plan.two_cloth
        yield (
            f"Two cloths: {two.front_fabric} cut {show(two.front, units)} wide for the front, "
            f"{two.back_fabric} {show(two.back, units)} for the back, sewn edge to edge."
        )
    if plan.scrappy is not None:
        yield (
            f"{len(plan.scrappy.order)} segments of {show(plan.scrappy.length, units)}, in the "
            "order given under Binding below."
        )
    if plan.accent is not None:
        yield (
            f"{plan.accent.kind.capitalize()}: {plan.accent.fabric}, cut "
            f"{show(plan.accent.strip, units)} wide, {show(plan.accent.needs, units)} in all."
        )
    for name, given in bias_given(plan, units):
        yield f"{name.capitalize()}: {given}."
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
        f"{show(plan.reach, units)} past the seam ({show(plan.widths.needed_reach, units)} wanted "
        f"by {binding.finishing})."
    )
    said = zip(LAYER_PLACES, plan.layers, strict=True)
    yield f"Layers of binding: {'; '.join(f'{where} {layers_said(each)}' for where, each in said)}."


def _joins(binding: Binding, plan: BindingPlan, units: Units) -> str:
    if not plan.joins:
        return "no join"
    loss = show(plan.join_loss, units)
    return f"{times(plan.joins, 'join')} ({binding.joins}), each taking {loss}"


def _fold(binding: Binding) -> str:
    return "faced" if binding.fold is Fold.FACED else f"{binding.fold} fold"
