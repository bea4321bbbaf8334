"""The binding in words: strips, joins, how narrow the cloth may be, how it finishes."""

from __future__ import annotations

from collections.abc import Iterator

from app.binding_wording import bias_given, layers_by_place
from app.wording import times
from core.binding_choices import BiasMethod
from core.fabric import Grain
from core.finish.binding_plan import BindingPlan
from core.lengths import Rounding, Units, show
from core.quilt import Binding, Fold


def binding_facts(binding: Binding, plan: BindingPlan, units: Units) -> Iterator[str]:
    """Sentences about the binding of one quilt."""
    round_it = f"Round the edge {show(plan.perimeter, units)}"
    if plan.facing is None:
        round_it += f", closing ({binding.closing}) {show(plan.closing, units)}"
    if plan.needs > (plan.facing.needs if plan.facing else plan.perimeter + plan.closing):
        round_it += f", handling allowance {show(binding.allowance, units)}"
    yield (
        f"Cut {show(plan.widths.strip, units)} wide, {binding.grain} grain, {_fold(binding)}. "
        f"{round_it}: needs {show(plan.needs, units)}."
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
    unit = _unit(binding, plan)
    yield (
        f"{times(plan.strips, unit)}, the longest {show(plan.strip_length, units)}; "
        f"{_joins(binding, plan, units)}. Joined length {show(plan.joined_length, units)}, "
        f"{show(plan.spare, units)} to spare."
    )
    yield f"The plan holds down to a usable width of {narrowest}. Measure yours before cutting."
    yield _finishes(binding, plan, units)
    said = "; ".join(f"{where} {layers}" for where, layers in layers_by_place(plan))
    yield f"Layers of binding: {said}."


def _unit(binding: Binding, plan: BindingPlan) -> str:
    """What the binding's lengths are called."""
    if plan.scrappy is not None:
        return "segment"
    if binding.grain is not Grain.BIAS:
        return "strip"
    return "bias tube" if binding.bias.method is BiasMethod.TUBE else "bias strip"


def _finishes(binding: Binding, plan: BindingPlan, units: Units) -> str:
    second = show(plan.second_face_width, units)
    if binding.fold is Fold.FACED:
        return f"Nothing of it shows on the front; it covers {second} of the back."
    return (
        f"It finishes {show(plan.first_face_width, units)} wide on the first face and "
        f"{second} on the second; the fold reaches {show(plan.reach, units)} past the seam "
        f"({show(plan.widths.needed_reach, units)} wanted by {binding.finishing})."
    )


def _joins(binding: Binding, plan: BindingPlan, units: Units) -> str:
    if not plan.joins:
        return "no join"
    loss = show(plan.join_loss, units)
    return f"{times(plan.joins, 'join')} ({binding.joins}), each taking {loss}"


def _fold(binding: Binding) -> str:
    return "faced" if binding.fold is Fold.FACED else f"{binding.fold} fold"
