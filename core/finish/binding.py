"""Binding: how long, in what strips, how wide on each face, how thick, how it closes.

The way round, what closing takes and the handling allowance are what is needed;
the modules beside this one say how wide (`binding_width`), how thick (`layers`),
how closed (`closing`), and what other cloth there is: bias (`bias_cloth`), two
cloths (`two_cloth`), many (`scrappy`), an accent, four strips of a facing.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from typing import TypeAlias

from core.binding_choices import Order
from core.edge.joins import chain_length, join_loss, narrowest_strip_length, strips_needed
from core.fabric import Fabric, Grain
from core.figures import figure, usual
from core.finish.accent import LAYERS, plan_accent
from core.finish.bias_cloth import BiasNeed, plan_bias
from core.finish.binding_plan import BACK_NAME, FACING, NAME, BindingPlan
from core.finish.binding_width import Widths, widths_of
from core.finish.bound_edge import BoundEdge
from core.finish.closing import plan_closing
from core.finish.demand import shortest_segment
from core.finish.edge_layers import Layers, layers_at_corner, layers_at_join, plain_layers
from core.finish.four_strips import LongStrip, SideStrips
from core.finish.scrappy import plan_scrappy
from core.finish.two_cloth import plan_two_cloth
from core.lengths import Inches, round_up
from core.quilt import Binding, Fold
from core.refusal import Refusal

# Common practice, no source: the ends of the last two facings are turned in.
TURN_IN, TURN_IN_MM = Fraction(1, 2), Fraction(12)
_MARK = Fraction(1, 16), Fraction(1)
_FINEST_WRITTEN = 1000  # sums of lengths that people write have smaller denominators
Cloths: TypeAlias = Callable[[str], Fabric]


def plan_binding(binding: Binding, edge: BoundEdge, cloths: Cloths) -> BindingPlan:
    """The binding of a quilt's edge, in equal strips before the lay is known."""
    _refuse_together(binding)
    fabric = cloths(binding.fabric)
    widths = widths_of(binding, edge.thickness)
    shortest = binding.shortest or shortest_segment(fabric.cutting_width)
    accent = plan_accent(
        binding, edge, widths, cloths(binding.accent.cloth or binding.fabric), shortest
    )
    plan = BindingPlan(
        widths=widths,
        perimeter=edge.perimeter,
        closing=Fraction(0),
        needs=Fraction(0),
        join_loss=join_loss(binding.joins, widths.strip, widths.seam),
        strips=0,
        strip_length=Fraction(0),
        joined_length=Fraction(0),
        joins=0,
        narrowest_usable_width=Fraction(0),
        layers=_layers(binding, widths, LAYERS if accent else 0),
        demands=(),
        accent=accent,
    )
    if binding.fold is Fold.FACED:
        plan = _faced(plan, binding, edge, fabric, shortest)
    else:
        ends = plan_closing(binding, widths, edge.shortest_side)
        needs = _to_a_mark(edge.perimeter + ends.takes + binding.allowance, widths.strip)
        plan = replace(plan, ends=ends, closing=ends.takes, needs=needs)
        if binding.back_fabric is not None:
            plan = _of_two_cloths(plan, binding, edge, cloths(binding.back_fabric), fabric)
        elif binding.scrappy.order is not Order.NONE:
            plan = _scrappy(plan, binding, cloths)
        else:
            plan = _of_one_cloth(plan, binding, fabric, shortest)
    return replace(plan, demands=plan.demands + (accent.demands if accent else ()))


def _to_a_mark(length: Inches, like: Inches) -> Inches:
    """A length that no ruler has, as that of an oval, up to the next mark; others as they are."""
    no_mark = length.denominator > _FINEST_WRITTEN
    return round_up(length, figure(like, *_MARK)) if no_mark else length


def _refuse_together(binding: Binding) -> None:
    """Refuse choices that rule each other out."""
    scrappy = binding.scrappy.order is not Order.NONE
    if scrappy and binding.back_fabric is not None:
        raise Refusal(
            "binding.back_fabric",
            "a scrappy binding has one cloth after the other, not two side by side; remove this "
            "or write none as the scrappy order",
        )
    for path, chosen, what in (
        ("binding.back_fabric", binding.back_fabric is not None, "a binding of two cloths"),
        ("binding.scrappy.order", scrappy, "a scrappy binding"),
    ):
        if chosen and binding.grain is Grain.BIAS:
            raise Refusal(
                "binding.grain",
                f"{what} is cut on the straight grain here; write crosswise, lengthwise or either",
            )
        if chosen and binding.fold is Fold.FACED:
            raise Refusal(
                path, f"a faced edge shows on the back only and cannot be {what}; choose a fold"
            )


def _layers(binding: Binding, widths: Widths, accents: int) -> tuple[Layers, Layers, Layers]:
    fold = binding.fold
    return (
        plain_layers(fold, accents),
        layers_at_join(fold, binding.joins, widths, accents),
        layers_at_corner(fold, accents),
    )


def _of_one_cloth(
    plan: BindingPlan, binding: Binding, fabric: Fabric, shortest: Inches
) -> BindingPlan:
    """Strips of one cloth, joined."""
    strip, usable = plan.widths.strip, fabric.cutting_width
    if binding.grain is Grain.BIAS:
        return _on_bias(plan, binding, fabric, shortest)
    _refuse_strip(plan, usable)
    long = LongStrip(NAME, strip, plan.needs, binding.joins, plan.widths.seam, shortest)
    demand = long.demand("binding", "binding", fabric, binding.grain)
    return replace(_in_equal_strips(plan, usable), demands=(demand,))


def _in_equal_strips(plan: BindingPlan, usable: Inches) -> BindingPlan:
    """The plan told by strips of the whole usable width."""
    count = strips_needed(plan.needs, plan.join_loss, usable)
    return replace(
        plan,
        strips=count,
        strip_length=usable,
        joined_length=chain_length((usable,) * count, plan.join_loss),
        joins=count - 1,
        narrowest_usable_width=narrowest_strip_length(plan.needs, plan.join_loss, count),
    )


def _refuse_strip(plan: BindingPlan, usable: Inches) -> None:
    if plan.widths.strip > usable:
        raise Refusal(
            "binding.strip_width",
            "a strip of {strip} is wider than its cloth's usable width of {usable}; "
            "write a narrower strip",
            strip=plan.widths.strip,
            usable=usable,
        )
    if plan.join_loss >= usable:
        raise Refusal(
            "binding.strip_width", "each join would use up a whole strip; write a narrower strip"
        )


def _on_bias(plan: BindingPlan, binding: Binding, fabric: Fabric, shortest: Inches) -> BindingPlan:
    widths = plan.widths
    need = BiasNeed(
        NAME, binding.bias, widths.strip, widths.seam, binding.joins, plan.needs, shortest
    )
    bias = plan_bias(need, fabric)
    return replace(
        plan,
        join_loss=bias.join_loss,
        strips=len(bias.lengths),
        strip_length=max(bias.lengths),
        joined_length=bias.joined_length,
        joins=len(bias.lengths) - 1,
        narrowest_usable_width=max(piece.across for piece in bias.pieces),
        bias=bias,
        demands=bias.demands("binding", "binding", fabric.name),
    )


def _of_two_cloths(
    plan: BindingPlan, binding: Binding, edge: BoundEdge, back: Fabric, front: Fabric
) -> BindingPlan:
    """Two long strips, each of its own joined segments, to be sewn edge to edge."""
    two = plan_two_cloth(binding, back.name, plan.widths, edge.thickness)
    demands = []
    for name, width, fabric in ((NAME, two.front, front), (BACK_NAME, two.back, back)):
        shortest = binding.shortest or shortest_segment(fabric.cutting_width)
        long = LongStrip(name, width, plan.needs, binding.joins, two.seam, shortest)
        _refuse_strip(replace(plan, join_loss=long.join_loss), fabric.cutting_width)
        demands.append(long.demand("binding", "binding", fabric, binding.grain))
    loss = join_loss(binding.joins, two.front, two.seam)
    plan = _in_equal_strips(replace(plan, join_loss=loss), front.cutting_width)
    return replace(plan, two_cloth=two, demands=tuple(demands))


def _scrappy(plan: BindingPlan, binding: Binding, cloths: Cloths) -> BindingPlan:
    narrowest = min(cloths(name).cutting_width for name in binding.scrappy.cloths)
    _refuse_strip(plan, narrowest)
    longest = plan.needs if binding.grain is Grain.LENGTHWISE else narrowest
    scrappy = plan_scrappy(binding.scrappy, plan.needs, plan.join_loss, plan.widths.strip, longest)
    count = len(scrappy.order)
    return replace(
        plan,
        strips=count,
        strip_length=scrappy.length,
        joined_length=chain_length((scrappy.length,) * count, plan.join_loss),
        joins=count - 1,
        narrowest_usable_width=scrappy.length,
        scrappy=scrappy,
        demands=scrappy.demands(plan.widths.strip, binding.grain),
    )


def _faced(
    plan: BindingPlan, binding: Binding, edge: BoundEdge, fabric: Fabric, shortest: Inches
) -> BindingPlan:
    """Four strips: the sides as long as the quilt, top and bottom turned in over their ends."""
    if not edge.four_sided:
        raise Refusal(
            "binding.fold",
            "an edge faced with strips a side has four square corners; choose a double or single "
            "fold for this outline",
        )
    turn = usual(binding.turn_in, plan.widths.strip, TURN_IN, TURN_IN_MM)
    sides = SideStrips(FACING, plan.widths.strip, edge.length, edge.width + 2 * turn)
    if sides.whole(binding.grain, fabric.cutting_width):
        return replace(
            plan,
            needs=sides.needs,
            strips=4,
            strip_length=sides.longest,
            joined_length=sides.needs,
            narrowest_usable_width=(
                plan.widths.strip if binding.grain is Grain.LENGTHWISE else sides.longest
            ),
            facing=sides,
            demands=sides.pieces("binding", "binding", fabric.name, binding.grain),
        )
    plan = replace(plan, needs=sides.needs + binding.allowance, facing=sides)
    return _of_one_cloth(plan, binding, fabric, shortest)
