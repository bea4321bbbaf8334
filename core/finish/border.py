"""Borders: four strips round what is there already, from the inside out.

Which strip is how long is told in `core.finish.border_sides`, how wide in
`core.finish.coping`. Crosswise strips are cut whole where all of them fit across
the cloth; else they are joined end to end and cut from the long strip, or each
is pieced by itself (`core.finish.border_parts`). Lengthwise strips are cut in
one piece; pieced ones only where no more cloth may be bought.

Strips cut from joined ones are cut `squaring` longer, since their ends are squared.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from core.edge.joins import join_loss
from core.fabric import Fabric, Grain
from core.finish.border_parts import part_pieces, parts_of, rules_of
from core.finish.border_sides import BorderStrip, Side, border_strips
from core.finish.coping import blocks_round, finished_widths
from core.finish.demand import Demand, shortest_segment
from core.language import told
from core.lay.problem import Piece, Run
from core.lengths import Inches
from core.quilt import Border, Corners, Piecing, Sizing
from core.refusal import Refusal

FabricOf = Callable[[str], Fabric]


@dataclass(frozen=True, slots=True)
class BorderPlan:
    """One border. `outer_*` is the quilt with it on, raw edge to raw edge.

    `sides_width` and `ends_width` are finished; `blocks` is how many blocks the
    outer size is, if it was made to hold some. `joins_at` gives where joins lie
    on each side as sewn, from the strip's top or left end. `last_resort` marks a
    way of cutting that is used only where nothing else can be laid.
    """

    border: Border
    number: int
    sides_width: Inches
    ends_width: Inches
    grain: Grain
    joined: bool
    strips: tuple[BorderStrip, ...]
    outer_width: Inches
    outer_length: Inches
    blocks: tuple[int, int] | None
    demands: tuple[Demand, ...]
    joins_at: tuple[tuple[Side, tuple[Inches, ...]], ...] = ()
    last_resort: bool = False

    @property
    def cut_widths(self) -> tuple[Inches, ...]:
        """The widths that its strips are cut, the sides' first; one if they are equal."""
        return tuple(dict.fromkeys(strip.cut_width for strip in self.strips))

    @property
    def cut_width(self) -> Inches:
        return self.cut_widths[0]

    @property
    def path(self) -> str:
        return f"borders[{self.number - 1}]"

    def loss(self, strip: BorderStrip) -> Inches:
        """What each join of a strip's segments uses up."""
        return join_loss(self.border.joins, strip.cut_width, self.border.seam)


def border_options(
    border: Border, number: int, width: Inches, length: Inches, fabric_of: FabricOf
) -> tuple[BorderPlan, ...]:
    """Ways to cut border `number` (from 1) round `width` × `length`, the plainest first."""
    plan = _uncut(border, number, (width, length))
    options: list[BorderPlan] = []
    if border.grain is not Grain.LENGTHWISE:
        options += _crosswise(plan, fabric_of)
    if border.grain is not Grain.CROSSWISE:
        options += _lengthwise(plan, fabric_of)
    return tuple(options)


def _uncut(border: Border, number: int, centre: tuple[Inches, Inches]) -> BorderPlan:
    path = f"borders[{number - 1}]"
    sides, ends = finished_widths(border, path, centre)
    in_blocks = border.sizing is Sizing.BLOCKS
    return BorderPlan(
        border=border,
        number=number,
        sides_width=sides,
        ends_width=ends,
        grain=Grain.CROSSWISE,
        joined=False,
        strips=border_strips(border, number, centre, (sides, ends)),
        outer_width=centre[0] + 2 * sides,
        outer_length=centre[1] + 2 * ends,
        blocks=blocks_round(border, path, centre) if in_blocks else None,
        demands=(),
    )


def _crosswise(plan: BorderPlan, fabric_of: FabricOf) -> Iterator[BorderPlan]:
    whole = all(strip.length <= fabric_of(strip.fabric).cutting_width for strip in plan.strips)
    if whole:
        yield _cut_whole(plan, Grain.CROSSWISE)
    for strip in plan.strips:
        _refuse_lost_strips(plan, strip, fabric_of)
    if whole or plan.border.piecing is Piecing.END_TO_END:
        yield _end_to_end(plan, Grain.CROSSWISE, fabric_of, last_resort=whole)
    else:
        yield _pieced_each(plan, fabric_of)


def _lengthwise(plan: BorderPlan, fabric_of: FabricOf) -> Iterator[BorderPlan]:
    for strip in plan.strips:
        _refuse_too_wide(plan, strip, fabric_of)
    yield _cut_whole(plan, Grain.LENGTHWISE)
    if not all(fabric_of(strip.fabric).buy_more for strip in plan.strips):
        yield _end_to_end(plan, Grain.LENGTHWISE, fabric_of, last_resort=True)


def _cut_whole(plan: BorderPlan, grain: Grain) -> BorderPlan:
    """Each strip in one piece, across the cloth or along it."""
    pieces = (_whole_piece(strip, grain) for strip in plan.strips)
    return replace(plan, grain=grain, demands=_demands(plan, pieces))


def _whole_piece(strip: BorderStrip, grain: Grain) -> Piece:
    sides = (strip.length, strip.cut_width)
    across, along = sides if grain is Grain.CROSSWISE else reversed(sides)
    return Piece(strip.name, strip.fabric, across, along, strip.count)


def _end_to_end(
    plan: BorderPlan, grain: Grain, fabric_of: FabricOf, *, last_resort: bool
) -> BorderPlan:
    """Strips of one cloth and width as one run, cut to length after joining."""
    runs = (
        Run(
            name,
            strips[0].fabric,
            strips[0].cut_width,
            sum((_with_squaring(plan, s) * s.count for s in strips), Fraction(0)),
            plan.loss(strips[0]),
            shortest_segment(fabric_of(strips[0].fabric).cutting_width, plan.border.shortest),
            grain,
        )
        for name, strips in long_strips(plan).items()
    )
    demands = _demands(plan, runs)
    return replace(plan, grain=grain, joined=True, demands=demands, last_resort=last_resort)


def long_strips(plan: BorderPlan) -> dict[str, tuple[BorderStrip, ...]]:
    """The strips that one run is cut into, in the order cut, by the run's name."""
    groups: dict[tuple[str, Inches], list[BorderStrip]] = {}
    for strip in plan.strips:
        groups.setdefault((strip.fabric, strip.cut_width), []).append(strip)
    name = f"border {plan.number} strip"
    if len(groups) == 1:
        return {name: plan.strips}
    return {f"{name} {place}": tuple(group) for place, group in enumerate(groups.values(), 1)}


def _pieced_each(plan: BorderPlan, fabric_of: FabricOf) -> BorderPlan:
    """Each strip that is longer than its cloth is wide pieced by itself, the others whole."""
    strips = tuple(
        strip
        if strip.length <= (usable := fabric_of(strip.fabric).cutting_width)
        else replace(
            strip,
            parts=parts_of(
                plan.border.piecing,
                _with_squaring(plan, strip),
                plan.loss(strip),
                usable,
                rules_of(plan.border, usable),
            ),
        )
        for strip in plan.strips
    )
    pieces = (
        piece
        for strip in strips
        for piece in (
            part_pieces(strip) if strip.parts else (_whole_piece(strip, Grain.CROSSWISE),)
        )
    )
    return replace(plan, joined=True, strips=strips, demands=_demands(plan, pieces))


def _with_squaring(plan: BorderPlan, strip: BorderStrip) -> Inches:
    return strip.length + plan.border.squaring


def _demands(plan: BorderPlan, wanted: Iterator[Piece] | Iterator[Run]) -> tuple[Demand, ...]:
    strips = tuple(Demand(plan.path, "border", one) for one in wanted)
    return (*strips, *_corners(plan))


def _corners(plan: BorderPlan) -> tuple[Demand, ...]:
    """The four corner squares, if the border has them."""
    border = plan.border
    if border.corners is not Corners.SQUARES or not (plan.sides_width and plan.ends_width):
        return ()
    across, along = plan.sides_width + 2 * border.seam, plan.ends_width + 2 * border.seam
    fabric = border.corner_fabric or border.fabric
    square = Piece(f"border {plan.number} corner", fabric, across, along, 4)
    return (Demand(plan.path, "border corner", square),)


def _refuse_lost_strips(plan: BorderPlan, strip: BorderStrip, fabric_of: FabricOf) -> None:
    if plan.loss(strip) >= fabric_of(strip.fabric).cutting_width:
        raise Refusal(
            f"{plan.path}.width",
            told("each join would use up a whole strip; choose straight joins or lengthwise grain"),
        )


def _refuse_too_wide(plan: BorderPlan, strip: BorderStrip, fabric_of: FabricOf) -> None:
    usable = fabric_of(strip.fabric).cutting_width
    if strip.cut_width > usable:
        raise Refusal(
            f"{plan.path}.width",
            told(
                "a lengthwise strip of {strip} is wider than its cloth's usable width of {usable}; "
                "write a narrower border or choose crosswise grain"
            ),
            strip=strip.cut_width,
            usable=usable,
        )
