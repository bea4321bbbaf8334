"""Binding: how long, in what strips, how wide on each face, how thick, how it closes.

The way round, what closing takes and the handling allowance are what is needed;
the modules beside this one say how wide (`binding_width`), how thick (`layers`),
how closed (`closing`), and what other cloth there is: bias (`bias_cloth`), two
cloths (`two_cloth`), many (`scrappy`), an accent; and what a `facing` is cut in.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from typing import TypeAlias

from core.binding_choices import Order
from core.edge.joins import chain_length, join_loss, narrowest_strip_length, strips_needed
from core.fabric import Fabric, Grain
from core.figures import to_a_mark
from core.finish.accent import LAYERS, plan_accent
from core.finish.bias_cloth import BiasNeed, plan_bias
from core.finish.binding_plan import BACK_NAME, NAME, BindingPlan
from core.finish.binding_width import Widths, widths_of
from core.finish.bound_edge import BoundEdge
from core.finish.closing import plan_closing
from core.finish.demand import shortest_segment
from core.finish.edge_layers import Layers, layers_at_corner, layers_at_join, plain_layers
from core.finish.facing import faced_apart, facing_of, is_ring
from core.finish.scrappy import Needs, ScrappyPlan, plan_scrappy
from core.finish.scrappy_bias import Segments, longest_segment, segment_cloth
from core.finish.side_strips import LongStrip
from core.finish.two_cloth import plan_two_cloth
from core.language import told
from core.lengths import Inches
from core.quilt import Binding, Fold
from core.refusal import Refusal

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
        layers=_layers(binding, widths, edge, LAYERS if accent else 0),
        demands=(),
        accent=accent,
    )
    if binding.fold is Fold.FACED and not is_ring(binding, edge):
        plan = _faced(plan, binding, edge, cloths, shortest)
    else:
        ends = plan_closing(binding, widths, edge.shortest_side)
        needs = to_a_mark(edge.perimeter + ends.takes + binding.allowance, widths.strip)
        plan = replace(plan, ends=ends, closing=ends.takes, needs=needs)
        if binding.back_fabric is not None:
            plan = _of_two_cloths(plan, binding, edge, cloths(binding.back_fabric), fabric)
        elif binding.scrappy.order is not Order.NONE:
            plan = _scrappy(plan, binding, cloths)
        else:
            plan = _of_one_cloth(plan, binding, fabric, shortest)
    return replace(plan, demands=plan.demands + (accent.demands if accent else ()))


def _refuse_together(binding: Binding) -> None:
    """Refuse choices that rule each other out."""
    scrappy = binding.scrappy.order is not Order.NONE
    if scrappy and binding.back_fabric is not None:
        raise Refusal(
            "binding.back_fabric",
            told(
                "a scrappy binding has one cloth after the other, not two side by side; remove "
                "this or write none as the scrappy order"
            ),
        )
    if binding.back_fabric is None:
        return
    if binding.grain is Grain.BIAS:
        raise Refusal(
            "binding.grain",
            told(
                "two bias strips sewn along their whole length stretch out of line, so a binding "
                "of two cloths is cut on the straight grain; write crosswise, lengthwise or either"
            ),
        )
    if binding.fold is Fold.FACED:
        raise Refusal(
            "binding.back_fabric",
            told(
                "a faced edge shows on the back only, so it has no second cloth; remove this, or "
                "choose another fold"
            ),
        )


def _layers(
    binding: Binding, widths: Widths, edge: BoundEdge, accents: int
) -> tuple[Layers, Layers, Layers | None]:
    fold, sharpest = binding.fold, edge.sharpest
    return (
        plain_layers(fold, accents),
        layers_at_join(fold, binding.joins, widths, accents),
        None if sharpest is None else layers_at_corner(fold, sharpest, accents),
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
            told(
                "a strip of {strip} is wider than its cloth's usable width of {usable}; "
                "write a narrower strip"
            ),
            strip=plan.widths.strip,
            usable=usable,
        )
    if plan.join_loss >= usable:
        raise Refusal(
            "binding.strip_width",
            told("each join would use up a whole strip; write a narrower strip"),
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
    if binding.grain is Grain.BIAS:
        return _scrappy_on_bias(plan, binding, cloths)
    longest = plan.needs if binding.grain is Grain.LENGTHWISE else narrowest
    scrappy = plan_scrappy(
        binding.scrappy, _needs(plan), plan.join_loss, plan.widths.strip, longest
    )
    return _in_segments(plan, scrappy, binding.grain, scrappy.length)


def _scrappy_on_bias(plan: BindingPlan, binding: Binding, cloths: Cloths) -> BindingPlan:
    widths, names = plan.widths, binding.scrappy.cloths
    zero = Fraction(0)

    def need(name: str) -> BiasNeed:
        part = f"{NAME}, {name}"
        return BiasNeed(part, binding.bias, widths.strip, widths.seam, binding.joins, zero, zero)

    longest = min(longest_segment(need(name), cloths(name)) for name in names)
    plan = replace(plan, join_loss=need(names[0]).join_loss)
    scrappy = plan_scrappy(binding.scrappy, _needs(plan), plan.join_loss, widths.strip, longest)
    cut = tuple(
        (name, segment_cloth(Segments(need(name), scrappy.length, count), cloths(name)))
        for name, count in scrappy.counts.items()
    )
    widest = max(piece.across for _, bias in cut for piece in bias.pieces)
    return _in_segments(plan, replace(scrappy, bias=cut), binding.grain, widest)


def _needs(plan: BindingPlan) -> Needs:
    return Needs(plan.perimeter + plan.closing, plan.needs)


def _in_segments(
    plan: BindingPlan, scrappy: ScrappyPlan, grain: Grain, narrowest: Inches
) -> BindingPlan:
    count = len(scrappy.order)
    return replace(
        plan,
        strips=count,
        strip_length=scrappy.length,
        joined_length=chain_length((scrappy.length,) * count, plan.join_loss),
        joins=count - 1,
        narrowest_usable_width=narrowest,
        scrappy=scrappy,
        demands=scrappy.demands(plan.widths.strip, grain),
    )


def _faced(
    plan: BindingPlan, binding: Binding, edge: BoundEdge, cloths: Cloths, shortest: Inches
) -> BindingPlan:
    """A strip for each straight side, turned wholly to the back."""
    sides = facing_of(binding, edge, plan.widths.strip)
    apart = faced_apart(plan, binding, sides, cloths)
    if apart is not None:
        return replace(apart, facing=sides)
    plan = replace(plan, needs=sides.needs + binding.allowance, facing=sides)
    [name] = sides.by_cloth
    return _of_one_cloth(plan, binding, cloths(name), shortest)
