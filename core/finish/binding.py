"""Binding: how long, how many strips, how wide on each face.

Double fold: the strip (w) is folded in half, f = w/2, and sewn s from its raw
edges; the first face shows s, the fold turns the edge (thickness t), and the
second face gets f − 2s − t, which reaches f − 3s − t past the seam line. Single
fold turns its own edge under by s: second face w − 3s − t, reach w − 4s − t.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from core.edge.bias import square_for, tube_yield
from core.edge.joins import (
    chain_length,
    closing_takes,
    join_loss,
    narrowest_strip_length,
    strips_needed,
)
from core.fabric import Fabric, Grain
from core.figures import figure
from core.finish.demand import Demand, shortest_segment
from core.lay.lay import Placement
from core.lay.problem import Piece, Run
from core.lengths import Inches, Units, show
from core.quilt import Binding, Fold
from core.refusal import Refusal

NAME = "binding"
BIAS_SQUARE = "bias square for the binding"
# Common practice, no source: how far the fold must land past the seam line.
REACH_BY_HAND = Fraction(1, 16)
REACH_BY_MACHINE = Fraction(1, 8)
_BIAS_STEP, _BIAS_STEP_MM = Fraction(1, 2), Fraction(10)


@dataclass(frozen=True, slots=True)
class BindingPlan:
    """The binding of one quilt, in inches. `strips` and what follows are as laid."""

    perimeter: Inches
    closing: Inches
    needs: Inches
    join_loss: Inches
    strips: int
    strip_length: Inches
    joined_length: Inches
    joins: int
    narrowest_usable_width: Inches
    first_face_width: Inches
    second_face_width: Inches
    reach: Inches
    demands: tuple[Demand, ...]

    @property
    def spare(self) -> Inches:
        return self.joined_length - self.needs


def plan_binding(
    binding: Binding, width: Inches, length: Inches, thickness: Inches, fabric: Fabric
) -> BindingPlan:
    """The binding of a quilt of `width` × `length`, in equal strips before the lay is known."""
    strip, seam = binding.strip_width, binding.seam
    second, reach = _second_face(binding, thickness)
    loss = join_loss(binding.joins, strip, seam)
    closing = closing_takes(binding.closing, strip, seam)
    perimeter = 2 * (width + length)
    needs = perimeter + closing + binding.allowance
    count, each, narrowest, demand = _strips(binding, needs, loss, fabric)
    return BindingPlan(
        perimeter=perimeter,
        closing=closing,
        needs=needs,
        join_loss=loss,
        strips=count,
        strip_length=each,
        joined_length=chain_length((each,) * count, loss),
        joins=count - 1,
        narrowest_usable_width=narrowest,
        first_face_width=seam,
        second_face_width=second,
        reach=reach,
        demands=(demand,),
    )


def _second_face(binding: Binding, thickness: Inches) -> tuple[Inches, Inches]:
    """Finished width of the second face, and how far it reaches past the seam."""
    strip, seam = binding.strip_width, binding.seam
    folded = strip / 2 if binding.fold is Fold.DOUBLE else strip - seam
    width = folded - 2 * seam - thickness
    if width <= 0:
        least = 2 * (3 * seam + thickness) if binding.fold is Fold.DOUBLE else 4 * seam + thickness
        raise Refusal(
            "binding.strip_width",
            "a strip of {strip} is used up by its seams of {seam} and the quilt's edge; "
            "write more than {least}, or a narrower seam",
            strip=strip,
            seam=seam,
            least=least,
        )
    return width, width - seam


def _strips(
    binding: Binding, needs: Inches, loss: Inches, fabric: Fabric
) -> tuple[int, Inches, Inches, Demand]:
    """Strips, the length of each, the narrowest cloth that still gives them, and the demand."""
    strip, usable = binding.strip_width, fabric.cutting_width
    if binding.grain is Grain.BIAS:
        return _bias_squares(binding, needs, loss, usable)
    if strip > usable:
        raise Refusal(
            "binding.strip_width",
            "a strip of {strip} is wider than its cloth's usable width of {usable}; "
            "write a narrower strip",
            strip=strip,
            usable=usable,
        )
    if loss >= usable:
        raise Refusal(
            "binding.strip_width", "each join would use up a whole strip; write a narrower strip"
        )
    run = Run(NAME, fabric.name, strip, needs, loss, shortest_segment(usable), binding.grain)
    count = strips_needed(needs, loss, usable)
    return (
        count,
        usable,
        narrowest_strip_length(needs, loss, count),
        Demand("binding", "binding", run),
    )


def _bias_squares(
    binding: Binding, needs: Inches, loss: Inches, usable: Inches
) -> tuple[int, Inches, Inches, Demand]:
    """Fewest equal squares that fit the cloth and whose tubes, joined, reach `needs`."""
    strip, seam = binding.strip_width, binding.seam
    step = figure(strip, _BIAS_STEP, _BIAS_STEP_MM)
    widest = usable // step * step
    most = tube_yield(widest, strip, seam)
    if most <= loss:
        raise Refusal(
            "binding.grain",
            "no square on this cloth gives a bias strip this wide; write a narrower strip",
        )
    count = strips_needed(needs, loss, most)
    each = (needs + (count - 1) * loss) / count
    side = square_for(each, strip, seam, step)
    square = Piece(BIAS_SQUARE, binding.fabric, side, side, count, may_turn=False)
    return count, tube_yield(side, strip, seam), side, Demand("binding", "binding", square)


def as_laid(
    plan: BindingPlan, segments: tuple[Placement, ...], usable_width: Inches
) -> BindingPlan:
    """The plan with the segments that the lay found (offcuts may have been used).

    The narrowest usable width is how far the full-width strips could shrink with
    the other segments as they are; with none at full width, what the strips
    take of the cloth as they lie.
    """
    lengths = tuple(s.rect.along if s.turned else s.rect.across for s in segments)
    full = lengths.count(usable_width)
    others = tuple(length for length in lengths if length != usable_width)
    narrowest = max(segment.rect.right for segment in segments)
    if full:
        narrowest = narrowest_strip_length(
            plan.needs, plan.join_loss, full, sum(others, Fraction(0)), len(others)
        )
    return replace(
        plan,
        strips=len(lengths),
        strip_length=max(lengths),
        joined_length=chain_length(lengths, plan.join_loss),
        joins=len(lengths) - 1,
        narrowest_usable_width=narrowest,
    )


def reach_warning(plan: BindingPlan, units: Units) -> str | None:
    """A sentence where the fold lands too little past the seam, else None."""
    if plan.reach >= REACH_BY_MACHINE:
        return None
    reach, by_hand, by_machine = (
        show(length, units) for length in (plan.reach, REACH_BY_HAND, REACH_BY_MACHINE)
    )
    if plan.reach >= REACH_BY_HAND:
        return (
            f"The fold reaches {reach} past the seam: enough to finish by hand, too little by "
            f"machine (common practice: {by_machine}). Cut the strip wider for that."
        )
    return (
        f"The fold reaches only {reach} past the seam: too little to finish by hand (common "
        f"practice: {by_hand}) or by machine ({by_machine}). Cut the strip wider, or sew a "
        "narrower seam."
    )
