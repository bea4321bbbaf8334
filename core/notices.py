"""Notices: what the person should know about a plan before cutting."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from core.edge_notices import edge_notices
from core.finish.binding_width import reach_warning
from core.finish.border import BorderPlan
from core.language import told
from core.lengths import Rounding, Units, show, show_size
from core.measure_notices import measure_notices
from core.quilt import BattingFrom, Sizing

if TYPE_CHECKING:
    from core.plan import Plan

# Our default, no source: cloth is rarely more than this narrower than the bolt says.
CLOSE_TO_FAILING = Fraction(1)


@dataclass(frozen=True, slots=True)
class Notice:
    """One sentence for the person; `path` names the field of the project it is about."""

    path: str
    text: str


def notices(plan: Plan) -> tuple[Notice, ...]:
    """All notices of a plan, in the order of its parts."""
    return (
        *_by_hand(plan),
        *_washing(plan),
        *_print(plan),
        *_borders(plan),
        *_backing(plan),
        *_batting(plan),
        *_binding(plan),
        *_sleeve(plan),
        *(Notice(path, text) for path, text in edge_notices(plan)),
        *(Notice(path, text) for path, text in measure_notices(plan)),
    )


def _by_hand(plan: Plan) -> Iterator[Notice]:
    """What was said by hand of pieces or cloths that are not there now."""
    for place, fabric_plan in enumerate(plan.fabrics):
        for aside in fabric_plan.by_hand.aside:
            yield Notice(f"fabrics[{place}].{aside.path}", aside.why)


def _washing(plan: Plan) -> Iterator[Notice]:
    for place, fabric_plan in enumerate(plan.fabrics):
        fabric = fabric_plan.fabric
        if fabric_plan.lay.placements and (fabric.shrinkage_across or fabric.shrinkage_along):
            yield Notice(
                f"fabrics[{place}].shrinkage.along",
                told(
                    "Wash and press {fabric} first: the cuts are planned on cloth that has shrunk.",
                    fabric=fabric.name,
                ),
            )


def _print(plan: Plan) -> Iterator[Notice]:
    for place, fabric_plan in enumerate(plan.fabrics):
        fabric = fabric_plan.fabric
        if fabric.one_way_print and fabric_plan.lay.placements:
            yield Notice(
                f"fabrics[{place}].one_way_print",
                told(
                    "{fabric} has one way up: check the print's direction at every piece and join.",
                    fabric=fabric.name,
                ),
            )


def _borders(plan: Plan) -> Iterator[Notice]:
    """What a coping strip reaches, since the person wrote no width for it."""
    units = plan.project.units
    for border in plan.borders:
        if border.border.sizing is Sizing.WIDTH:
            continue
        yield Notice(border.path, f"{_coping(border, units)} {_reached(border, units)}")


def _coping(border: BorderPlan, units: Units) -> str:
    number, sides, ends = border.number, border.sides_width, border.ends_width
    if not sides:
        return told(
            "Border {number} is a coping strip, {ends} wide at top and bottom, with none at the "
            "sides.",
            number=number,
            ends=show(ends, units),
        )
    if not ends:
        return told(
            "Border {number} is a coping strip, {sides} wide at the sides, with none at top and "
            "bottom.",
            number=number,
            sides=show(sides, units),
        )
    return told(
        "Border {number} is a coping strip, {sides} wide at the sides and {ends} at top and "
        "bottom.",
        number=number,
        sides=show(sides, units),
        ends=show(ends, units),
    )


def _reached(border: BorderPlan, units: Units) -> str:
    size = show_size(border.outer_width, border.outer_length, units)
    if border.blocks is None or border.border.block is None:
        return told("It brings the quilt to {size}.", size=size)
    across, along = border.blocks
    return told(
        "It brings the quilt to {size}, which holds {across} × {along} blocks of {block}.",
        size=size,
        across=across,
        along=along,
        block=show(border.border.block, units),
    )


def _backing(plan: Plan) -> Iterator[Notice]:
    backing = plan.backing
    if backing is not None and backing.off_frame:
        yield Notice(
            "backing.frame",
            told(
                "The seams cannot run along the rollers here: the print has one way up, or the "
                "seams were asked for the other way."
            ),
        )
    if backing is None or backing.repeat is None:
        return
    repeat = show(backing.repeat, plan.project.units)
    yield Notice(
        "backing",
        told(
            "The panels allow for matching a print repeat of {repeat}: trim each to match before "
            "sewing.",
            repeat=repeat,
        )
        if backing.last_resort
        else told(
            "The panels allow for matching a print repeat of {repeat}: cut them as drawn.",
            repeat=repeat,
        ),
    )


def _batting(plan: Plan) -> Iterator[Notice]:
    batting, spec = plan.batting, plan.project.batting
    if batting is None or spec is None:
        return
    units = plan.project.units
    size = show_size(batting.across, batting.along, units)
    if batting.too_small and batting.package is not None:
        yield Notice(
            "batting.package",
            told(
                "The {package} package does not cover a batting of {size}: choose a "
                "larger one, or less overage.",
                package=batting.package.name,
                size=size,
            ),
        )
    if batting.roll is not None and spec.source is BattingFrom.PACKAGE:
        yield Notice(
            "batting",
            told(
                "A batting of {size} is larger than any package of the table: buy {length} from a "
                "roll {wide} wide.",
                size=size,
                length=batting.roll.sale_text,
                wide=show(batting.roll.width, units),
            ),
        )


def _binding(plan: Plan) -> Iterator[Notice]:
    binding, spec = plan.binding, plan.project.binding
    if binding is None or spec is None:
        return
    units = plan.project.units
    if (text := reach_warning(spec, binding.widths, units)) is not None:
        width = "strip_width" if spec.strip_width is not None else "finished_width"
        yield Notice(f"binding.{width}", text)
    room = plan.project.fabric(spec.fabric).cutting_width - binding.narrowest_usable_width
    if 0 <= room < CLOSE_TO_FAILING:
        narrowest = show(binding.narrowest_usable_width, units, Rounding.UP)
        yield Notice(
            "binding",
            told(
                "If the usable width of {fabric} turns out under {narrowest}, the binding "
                "comes out short: measure the cloth before cutting.",
                fabric=spec.fabric,
                narrowest=narrowest,
            ),
        )


def _sleeve(plan: Plan) -> Iterator[Notice]:
    sleeve, spec = plan.sleeve, plan.project.sleeve
    if sleeve is not None and spec is not None and sleeve.parts > 1:
        limit, gap = (show(length, plan.project.units) for length in (spec.split_above, spec.gap))
        yield Notice(
            "sleeve",
            told(
                "The sleeve is split in two, with {gap} between for a bracket, since it would be "
                "longer than {limit} (published show rules split above 90 in).",
                gap=gap,
                limit=limit,
            ),
        )
