"""The binding in words: strips, joins, how narrow the cloth may be, how it finishes."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from app.binding_wording import bias_given, layers_by_place
from app.wording import upper_first
from core.binding_choices import AccentKind, BiasMethod, Finishing
from core.fabric import Grain
from core.finish.accent import AccentPlan
from core.finish.binding_plan import BindingPlan
from core.language import marked, told, told_count
from core.lengths import Rounding, Units, show
from core.quilt import Binding, Closing, Fold, Joins

_GRAINS: Final = {
    Grain.CROSSWISE: marked("crosswise grain"),
    Grain.LENGTHWISE: marked("lengthwise grain"),
    Grain.EITHER: marked("either grain"),
    Grain.BIAS: marked("bias grain"),
}
_FOLDS: Final = {
    Fold.DOUBLE: marked("double fold"),
    Fold.SINGLE: marked("single fold"),
    Fold.FACED: marked("faced"),
}
_CLOSINGS: Final = {
    Closing.DIAGONAL: marked("closing (diagonal) {length}"),
    Closing.TUCKED: marked("closing (tucked) {length}"),
    Closing.STRAIGHT: marked("closing (straight) {length}"),
}
_JOINS: Final = {
    Joins.DIAGONAL: marked("diagonal"),
    Joins.STRAIGHT: marked("straight"),
    Joins.ANGLED: marked("angled"),
}


def binding_facts(binding: Binding, plan: BindingPlan, units: Units) -> Iterator[str]:
    """Sentences about the binding of one quilt."""
    yield f"{_cut(binding, plan, units)} {_needs(binding, plan, units)}"
    if plan.two_cloth is not None:
        two = plan.two_cloth
        yield told(
            "Two cloths: {front_cloth} cut {front} wide for the front, {back_cloth} {back} for "
            "the back, sewn edge to edge.",
            front_cloth=two.front_fabric,
            front=show(two.front, units),
            back_cloth=two.back_fabric,
            back=show(two.back, units),
        )
    if plan.scrappy is not None:
        yield told(
            "{count} segments of {length}, in the order given under Binding below.",
            count=len(plan.scrappy.order),
            length=show(plan.scrappy.length, units),
        )
    if plan.accent is not None:
        yield _accent(plan.accent, units)
    for name, given in bias_given(plan, units):
        yield f"{upper_first(name)}: {given}."
    yield _joined(binding, plan, units)
    yield told(
        "The plan holds down to a usable width of {width}. Measure yours before cutting.",
        width=show(plan.narrowest_usable_width, units, Rounding.UP),
    )
    yield _finishes(binding, plan, units)
    said = "; ".join(f"{where} {layers}" for where, layers in layers_by_place(plan))
    yield told("Layers of binding: {layers}.", layers=said)


def _cut(binding: Binding, plan: BindingPlan, units: Units) -> str:
    return told(
        "Cut {width} wide, {grain}, {fold}.",
        width=show(plan.widths.strip, units),
        grain=told(_GRAINS[binding.grain]),
        fold=told(_FOLDS[binding.fold]),
    )


def _needs(binding: Binding, plan: BindingPlan, units: Units) -> str:
    """The length it needs, and what that is made of."""
    made_of = [told("Round the edge {length}", length=show(plan.perimeter, units))]
    if plan.facing is None:
        closing = _CLOSINGS[binding.closing]
        made_of.append(told(closing, length=show(plan.closing, units)))
    if plan.needs > (plan.facing.needs if plan.facing else plan.perimeter + plan.closing):
        made_of.append(told("handling allowance {length}", length=show(binding.allowance, units)))
    return told(
        "{lengths}: needs {whole}.", lengths=", ".join(made_of), whole=show(plan.needs, units)
    )


def _accent(accent: AccentPlan, units: Units) -> str:
    values = {
        "cloth": accent.fabric,
        "width": show(accent.strip, units),
        "length": show(accent.needs, units),
    }
    if accent.kind is AccentKind.PIPING:
        return told("Piping: {cloth}, cut {width} wide, {length} in all.", **values)
    return told("Flange: {cloth}, cut {width} wide, {length} in all.", **values)


def _joined(binding: Binding, plan: BindingPlan, units: Units) -> str:
    return told(
        "{pieces}, the longest {longest}; {joins}. Joined length {joined}, {spare} to spare.",
        pieces=_pieces(binding, plan),
        longest=show(plan.strip_length, units),
        joins=_joins(binding, plan, units),
        joined=show(plan.joined_length, units),
        spare=show(plan.spare, units),
    )


def _pieces(binding: Binding, plan: BindingPlan) -> str:
    """How many of what the binding is joined of."""
    if plan.scrappy is not None:
        return told_count("{count} segment", "{count} segments", plan.strips)
    if binding.grain is not Grain.BIAS:
        return told_count("{count} strip", "{count} strips", plan.strips)
    if binding.bias.method is BiasMethod.TUBE:
        return told_count("{count} bias tube", "{count} bias tubes", plan.strips)
    return told_count("{count} bias strip", "{count} bias strips", plan.strips)


def _joins(binding: Binding, plan: BindingPlan, units: Units) -> str:
    if not plan.joins:
        return told("no join")
    return told_count(
        "{count} join ({kind}), each taking {length}",
        "{count} joins ({kind}), each taking {length}",
        plan.joins,
        kind=told(_JOINS[binding.joins]),
        length=show(plan.join_loss, units),
    )


def _finishes(binding: Binding, plan: BindingPlan, units: Units) -> str:
    second = show(plan.second_face_width, units)
    if binding.fold is Fold.FACED:
        return told(
            "Nothing of it shows on the front; it covers {width} of the back.", width=second
        )
    wanted = show(plan.widths.needed_reach, units)
    return told(
        "It finishes {first} wide on the first face and {second} on the second; the fold reaches "
        "{reach} past the seam ({wanted}).",
        first=show(plan.first_face_width, units),
        second=second,
        reach=show(plan.reach, units),
        wanted=told("{length} wanted by hand", length=wanted)
        if binding.finishing is Finishing.HAND
        else told("{length} wanted by machine", length=wanted),
    )
