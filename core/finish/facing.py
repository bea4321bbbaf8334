"""A facing: the binding turned wholly to the back, a strip a side, or one bias strip on curves.

Four square corners: the sides go on first, as long as the quilt; top and bottom
end on them, their ends turned in. Other straight outlines: every strip has both
ends turned in along the line that halves the corner, so that neighbours meet
there. At an inside corner that line leads away from the corner: a facing of depth
f reaches f/tan(180° − θ/2) further. Curves are faced with one bias strip, closed
to a ring, whose inner edge is eased in. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from math import radians, tan
from typing import TypeAlias

from core.binding_choices import Order
from core.edge.joins import strips_needed
from core.fabric import Fabric, Grain
from core.figures import figure, usual
from core.finish.binding_plan import FACING, NAME, BindingPlan
from core.finish.bound_edge import BoundEdge
from core.finish.demand import Demand, shortest_segment
from core.finish.scrappy import in_order
from core.finish.side_strips import LongStrip, SideStrips, side_strips
from core.language import told
from core.lengths import Inches, round_up
from core.quilt import Binding
from core.refusal import Refusal

# Common practice, no source: the ends of facings are turned in.
TURN_IN, TURN_IN_MM = Fraction(1, 2), Fraction(12)
_MARKS = Fraction(1, 16), Fraction(1)
Cloths: TypeAlias = Callable[[str], Fabric]


def is_ring(binding: Binding, edge: BoundEdge) -> bool:
    """Whether the facing is one closed strip. Raises `Refusal` for a curve faced off the bias."""
    if not edge.outline.curved:
        return False
    if binding.scrappy.order is not Order.NONE:
        raise Refusal(
            "binding.scrappy.order",
            told(
                "a curved edge is faced with one bias strip; write none here, or choose another "
                "fold"
            ),
        )
    if binding.grain is not Grain.BIAS:
        raise Refusal(
            "binding.grain",
            told(
                "a curved edge is faced with a bias strip, which is eased round it; write bias, or "
                "choose another fold"
            ),
        )
    return True


def facing_of(binding: Binding, edge: BoundEdge, strip: Inches) -> SideStrips:
    """The strips, `strip` wide as cut, of an edge whose sides are all straight."""
    turn = usual(binding.turn_in, strip, TURN_IN, TURN_IN_MM)
    angles = edge.angles

    def ends(place: int) -> Inches:
        if edge.four_sided:
            return 2 * turn if place % 2 else Fraction(0)
        both = angles[place], angles[(place + 1) % len(angles)]
        return sum((turn + _beyond(angle, strip) for angle in both), Fraction(0))

    return side_strips(FACING, edge, strip, _cloths_in_order(binding, edge), ends)


def _beyond(angle: float, strip: Inches) -> Inches:
    """How far past its edge a folded strip goes to reach the line that halves an inside corner."""
    if angle <= 180:
        return Fraction(0)
    past = float(strip) / 2 / tan(radians(180 - angle / 2))
    return round_up(Fraction(past).limit_denominator(10**6), figure(strip, *_MARKS))


def _cloths_in_order(binding: Binding, edge: BoundEdge) -> tuple[str, ...]:
    if binding.scrappy.order is Order.NONE:
        return (binding.fabric,)
    sides = len(edge.outline.sides)
    if len(binding.scrappy.cloths) > sides:
        raise Refusal(
            "binding.scrappy.cloths",
            told(
                "a facing has one cloth a side, and this quilt has {sides} sides; write at most as "
                "many fabrics",
                sides=sides,
            ),
        )
    return in_order(binding.scrappy, sides)


def faced_apart(
    plan: BindingPlan, binding: Binding, sides: SideStrips, cloths: Cloths
) -> BindingPlan | None:
    """The plan of a facing that is cut whole, or from several cloths; None of one joined strip."""
    usable = {name: cloths(name).cutting_width for name in sides.by_cloth}
    if sides.whole(binding.grain, min(usable.values())):
        lengthwise = binding.grain is Grain.LENGTHWISE
        return replace(
            plan,
            needs=sides.needs,
            strips=sides.count,
            strip_length=sides.longest,
            joined_length=sides.needs,
            narrowest_usable_width=sides.width if lengthwise else sides.longest,
            demands=tuple(sides.pieces("binding", "binding", binding.grain)),
        )
    if len(usable) == 1:
        return None
    if binding.grain is Grain.BIAS:
        raise Refusal(
            "binding.grain",
            told(
                "a facing of several cloths is cut on the straight grain, since its edges are "
                "straight; write crosswise, lengthwise or either"
            ),
        )
    longs = {name: _long_strip(plan, binding, sides, name, usable[name]) for name in usable}
    counts = [
        strips_needed(long.needs, long.join_loss, usable[name]) for name, long in longs.items()
    ]
    return replace(
        plan,
        needs=sum((long.needs for long in longs.values()), Fraction(0)),
        strips=sum(counts),
        strip_length=max(usable.values()),
        joined_length=sum(
            (
                count * usable[name] - (count - 1) * plan.join_loss
                for name, count in zip(usable, counts, strict=True)
            ),
            Fraction(0),
        ),
        joins=sum(counts) - len(counts),
        narrowest_usable_width=max(usable.values()),
        demands=tuple(_demand(long, binding, cloths(name)) for name, long in longs.items()),
    )


def long_name(sides: SideStrips, fabric: str) -> str:
    """What the joined strip of one cloth is called in a lay."""
    return NAME if len(sides.by_cloth) == 1 else f"{FACING}, {fabric}"


def _long_strip(
    plan: BindingPlan, binding: Binding, sides: SideStrips, fabric: str, usable: Inches
) -> LongStrip:
    needs = sum((strip.all_of_them for strip in sides.by_cloth[fabric]), binding.allowance)
    least = shortest_segment(usable, binding.shortest)
    seam = plan.widths.seam
    return LongStrip(long_name(sides, fabric), sides.width, needs, binding.joins, seam, least)


def _demand(long: LongStrip, binding: Binding, fabric: Fabric) -> Demand:
    return long.demand("binding", "binding", fabric, binding.grain)
