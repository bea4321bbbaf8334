"""Borders: four strips round what is there already, from the inside out.

Round a centre A × B (cut sizes) with finished border width b and seam s, all
strips cut b + 2s wide:

* butted, sides first: two of B, then two of A + 2b;
* squares at the corners: two of B, two of A, and four squares;
* mitred: four strips, each its side + 2b + margin.

Crosswise strips are joined end to end and then cut to length; where every
strip fits across the cloth they are cut whole. Lengthwise strips are cut in one.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from core.edge.joins import join_loss
from core.fabric import Fabric, Grain
from core.finish.demand import Demand, shortest_segment
from core.lay.problem import Piece, Run
from core.lengths import Inches
from core.quilt import Border, Corners
from core.refusal import Refusal


@dataclass(frozen=True, slots=True)
class BorderStrip:
    """`count` strips of one border as sewn on, cut `length` × the border's cut width."""

    name: str
    length: Inches
    count: int


@dataclass(frozen=True, slots=True)
class BorderPlan:
    """One border. `outer_*` is the quilt with it on, raw edge to raw edge.

    `last_resort` marks a way of cutting that is used only where nothing else
    can be laid.
    """

    border: Border
    number: int
    cut_width: Inches
    grain: Grain
    joined: bool
    strips: tuple[BorderStrip, ...]
    outer_width: Inches
    outer_length: Inches
    demands: tuple[Demand, ...]
    last_resort: bool = False


def border_options(
    border: Border, number: int, width: Inches, length: Inches, fabric: Fabric
) -> tuple[BorderPlan, ...]:
    """Ways to cut border `number` (from 1) round `width` × `length`, the plainest first."""
    plan = BorderPlan(
        border=border,
        number=number,
        cut_width=border.cut_width,
        grain=Grain.CROSSWISE,
        joined=False,
        strips=_strips(border, number, width, length),
        outer_width=width + 2 * border.width,
        outer_length=length + 2 * border.width,
        demands=(),
    )
    options: list[BorderPlan] = []
    if border.grain is not Grain.LENGTHWISE:
        whole = all(strip.length <= fabric.cutting_width for strip in plan.strips)
        if whole:
            options.append(_cut_whole(plan, Grain.CROSSWISE))
        options.append(_joined(plan, fabric, last_resort=whole))
    if border.grain is not Grain.CROSSWISE:
        _refuse_too_wide(border, number, fabric)
        options.append(_cut_whole(plan, Grain.LENGTHWISE))
    return tuple(options)


def _strips(border: Border, number: int, width: Inches, length: Inches) -> tuple[BorderStrip, ...]:
    sides, ends = f"border {number} side", f"border {number} top and bottom"
    beyond = 2 * border.width
    match border.corners:
        case Corners.BUTTED:
            return BorderStrip(sides, length, 2), BorderStrip(ends, width + beyond, 2)
        case Corners.SQUARES:
            return BorderStrip(sides, length, 2), BorderStrip(ends, width, 2)
        case Corners.MITRED:
            more = beyond + border.mitre_margin
            return BorderStrip(sides, length + more, 2), BorderStrip(ends, width + more, 2)


def _cut_whole(plan: BorderPlan, grain: Grain) -> BorderPlan:
    """Each strip in one piece, across the cloth or along it."""
    demands = []
    for strip in plan.strips:
        sides = (strip.length, plan.cut_width)
        across, along = sides if grain is Grain.CROSSWISE else reversed(sides)
        piece = Piece(strip.name, plan.border.fabric, across, along, strip.count)
        demands.append(Demand(_path(plan.number), "border", piece))
    return replace(plan, grain=grain, demands=(*demands, *_squares(plan)))


def _joined(plan: BorderPlan, fabric: Fabric, *, last_resort: bool) -> BorderPlan:
    """All four strips as one run, cut to length after joining."""
    border, usable = plan.border, fabric.cutting_width
    loss = join_loss(border.joins, plan.cut_width, border.seam)
    if loss >= usable:
        raise Refusal(
            f"{_path(plan.number)}.width",
            "each join would use up a whole strip; choose straight joins or lengthwise grain",
        )
    needs = sum((strip.length * strip.count for strip in plan.strips), Fraction(0))
    name, shortest = f"border {plan.number} strip", shortest_segment(usable)
    run = Run(name, border.fabric, plan.cut_width, needs, loss, shortest)
    demands = (Demand(_path(plan.number), "border", run), *_squares(plan))
    return replace(plan, joined=True, demands=demands, last_resort=last_resort)


def _squares(plan: BorderPlan) -> tuple[Demand, ...]:
    """The four corner squares, if the border has them."""
    if plan.border.corners is not Corners.SQUARES:
        return ()
    side, fabric = plan.cut_width, plan.border.corner_fabric or plan.border.fabric
    square = Piece(f"border {plan.number} corner", fabric, side, side, 4)
    return (Demand(_path(plan.number), "border corner", square),)


def _path(number: int) -> str:
    return f"borders[{number - 1}]"


def _refuse_too_wide(border: Border, number: int, fabric: Fabric) -> None:
    if border.cut_width > fabric.cutting_width:
        raise Refusal(
            f"{_path(number)}.width",
            "a lengthwise strip of {strip} is wider than its cloth's usable width of {usable}; "
            "write a narrower border or choose crosswise grain",
            strip=border.cut_width,
            usable=fabric.cutting_width,
        )
