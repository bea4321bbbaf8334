"""The quilt in words, part by part: letters, sizes, packages."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from app.wording import batting_from, times
from core.finish.demand import Demand
from core.lengths import show, show_size
from core.plan import Plan
from core.quilt import Fold, Seams


@dataclass(frozen=True, slots=True)
class Fact:
    """A few words about one part; `role` is the part's drawing role, or empty."""

    text: str
    role: str = ""
    bold: bool = False


def quilt_facts(plan: Plan) -> Iterator[Fact]:
    """What is made and how large, from the front to the back."""
    yield from _whole(plan)
    yield from _borders(plan)
    yield from _binding(plan)
    yield from _layers(plan)
    yield from _sleeve(plan)
    if plan.label_patch is not None:
        yield Fact(f"{_letters(plan, plan.label_patch.demands)}: label", "label")


def _whole(plan: Plan) -> Iterator[Fact]:
    quilt, units = plan.project.quilt, plan.project.units
    finished = show_size(plan.finished_width, plan.finished_length, units)
    yield Fact(f"Finished {finished}", bold=True)
    if quilt.lays > 1:
        yield Fact(f"This packet cuts one of {quilt.lays} equal kits.", bold=True)
    elif quilt.copies > 1:
        yield Fact(f"This packet cuts {quilt.copies} of them.", bold=True)
    yield Fact(f"top, as measured {show_size(*plan.project.top, units)}", "top")


def _borders(plan: Plan) -> Iterator[Fact]:
    for border in plan.borders:
        units = plan.project.units
        widths = dict.fromkeys((border.sides_width, border.ends_width))
        wide = " and ".join(show(width, units) for width in widths if width)
        letters = _letters(plan, border.demands)
        yield Fact(f"{letters}: border {border.number}, {wide} finished", "border")


def _binding(plan: Plan) -> Iterator[Fact]:
    if plan.binding is not None:
        face = show(plan.binding.first_face_width, plan.project.units)
        letters = _letters(plan, plan.binding.demands)
        faced = plan.project.binding is not None and plan.project.binding.fold is Fold.FACED
        shows = "facing, on the back only" if faced else f"binding, {face} on this face"
        yield Fact(f"{letters}: {shows}", "binding")


def _layers(plan: Plan) -> Iterator[Fact]:
    """Batting, then backing."""
    units = plan.project.units
    if (batting := plan.batting) is not None:
        each = " for each quilt" if plan.project.quilt.copies > 1 else ""
        yield Fact(f"batting {show_size(batting.across, batting.along, units)}{each}", "batting")
        yield Fact(f"({batting_from(batting, units)})")
    if (backing := plan.backing) is not None:
        letters = _letters(plan, backing.demands)
        seams = f", seams {backing.seams}" if backing.seams is not Seams.NONE else ""
        yield Fact(
            f"{letters}: backing {show_size(backing.across, backing.along, units)}", "backing"
        )
        yield Fact(f"({times(backing.panels, 'panel')}{seams})")


def _sleeve(plan: Plan) -> Iterator[Fact]:
    if plan.sleeve is not None:
        deep = show(plan.sleeve.depth, plan.project.units)
        yield Fact(f"{_letters(plan, plan.sleeve.demands)}: hanging sleeve, {deep} deep", "sleeve")


def _letters(plan: Plan, demands: Sequence[Demand]) -> str:
    """The letters of the pieces that a part of the quilt is cut in."""
    return ", ".join(plan.part(demand.wanted.name).letter for demand in demands)
