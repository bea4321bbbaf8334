"""An accent under the binding's first face: a flat flange, or a corded piping.

A flange is a strip folded in half along its length, a side at a time: cut twice
the seam and what shows. A piping is a strip wrapped round a cord of diameter d
and sewn on in one: cut two seams and πd, rounded up to a ruler's mark. Both lie
in the binding's seam and add two layers there.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from core.binding_choices import AccentKind
from core.fabric import Fabric, Grain
from core.figures import figure, usual
from core.finish.bias_cloth import BiasNeed, BiasPlan, plan_bias
from core.finish.binding_width import Widths
from core.finish.bound_edge import BoundEdge
from core.finish.demand import Demand
from core.finish.side_strips import LongStrip, side_strips
from core.lengths import Inches, round_up
from core.quilt import Binding

LAYERS = 2
# Common practice, no source: a flange shows 1/8 to 1/4 in, piping cord is 1/16 to 1/8 in thick,
# and the ends of a piping overlap by 1 in or so.
SHOWS, SHOWS_MM = Fraction(1, 8), Fraction(3)
CORD, CORD_MM = Fraction(1, 8), Fraction(3)
OVERLAP, OVERLAP_MM = Fraction(1), Fraction(25)
_MARK, _MARK_MM = Fraction(1, 16), Fraction(1)
_PI = Fraction(355, 113)  # a little above π, so that the cord always fits
_PATH, _ROLE = "binding.accent", "accent"


@dataclass(frozen=True, slots=True)
class AccentPlan:
    """The accent's strips as cut, `strip` wide; `shows` is what is seen, or the cord's diameter.

    `whole`: cut as a strip a side, in one piece each; else joined, `needs` long.
    """

    kind: AccentKind
    fabric: str
    strip: Inches
    shows: Inches
    needs: Inches
    join_loss: Inches
    whole: bool
    bias: BiasPlan | None
    demands: tuple[Demand, ...]


def plan_accent(
    binding: Binding, edge: BoundEdge, widths: Widths, fabric: Fabric, shortest: Inches
) -> AccentPlan | None:
    """The accent of a binding, on the binding's own grain; None if it has none."""
    accent, seam = binding.accent, widths.seam
    if accent.kind is AccentKind.NONE:
        return None
    if accent.kind is AccentKind.FLANGE:
        shows = usual(accent.shows, widths.strip, SHOWS, SHOWS_MM)
        strip, needs = 2 * (seam + shows), edge.perimeter
    else:
        shows = usual(accent.cord, widths.strip, CORD, CORD_MM)
        strip = 2 * seam + round_up(_PI * shows, figure(widths.strip, _MARK, _MARK_MM))
        needs = edge.perimeter + usual(accent.overlap, widths.strip, OVERLAP, OVERLAP_MM)
    name = accent.kind.value
    long = LongStrip(name, strip, needs, binding.joins, seam, shortest)
    plan = AccentPlan(
        accent.kind, fabric.name, strip, shows, needs, long.join_loss, False, None, ()
    )
    return _cut(plan, binding, edge, long, fabric)


def _cut(
    plan: AccentPlan, binding: Binding, edge: BoundEdge, long: LongStrip, fabric: Fabric
) -> AccentPlan:
    """The plan with its cloth: bias, a strip a side in one piece each, or one joined strip."""
    grain = binding.grain
    if grain is Grain.BIAS:
        need = BiasNeed(
            long.name, binding.bias, plan.strip, long.seam, binding.joins, plan.needs, long.shortest
        )
        bias = plan_bias(need, fabric)
        demands = bias.demands(_PATH, _ROLE, fabric.name)
        return replace(plan, join_loss=bias.join_loss, bias=bias, demands=demands)
    if plan.kind is AccentKind.FLANGE and not edge.outline.curved:
        sides = side_strips(long.name, edge, plan.strip, (fabric.name,), lambda _: Inches(0))
        if sides.whole(grain, fabric.cutting_width):
            return replace(plan, whole=True, demands=tuple(sides.pieces(_PATH, _ROLE, grain)))
    return replace(plan, demands=(long.demand(_PATH, _ROLE, fabric, grain),))
