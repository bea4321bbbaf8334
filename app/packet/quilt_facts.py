"""The quilt in words, part by part: letters, sizes, packages."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from app.wording import batting_from
from core.finish.demand import Demand
from core.language import marked, told, told_count, told_list
from core.lengths import show, show_size
from core.plan import Plan
from core.quilt import Fold, Seams

_SEAMS: Final = {
    Seams.CROSSWISE: marked("seams crosswise"),
    Seams.LENGTHWISE: marked("seams lengthwise"),
}


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
        yield Fact(
            told("{letters}: label", letters=_letters(plan, plan.label_patch.demands)), "label"
        )


def _whole(plan: Plan) -> Iterator[Fact]:
    quilt, units = plan.project.quilt, plan.project.units
    finished = show_size(plan.finished_width, plan.finished_length, units)
    yield Fact(told("Finished {size}", size=finished), bold=True)
    if quilt.lays > 1:
        yield Fact(told("This packet cuts one of {count} equal kits.", count=quilt.lays), bold=True)
    elif quilt.copies > 1:
        yield Fact(told("This packet cuts {count} of them.", count=quilt.copies), bold=True)
    yield Fact(told("top, as measured {size}", size=show_size(*plan.project.top, units)), "top")


def _borders(plan: Plan) -> Iterator[Fact]:
    for border in plan.borders:
        units = plan.project.units
        widths = dict.fromkeys((border.sides_width, border.ends_width))
        wide = told_list([show(width, units) for width in widths if width])
        said = told(
            "{letters}: border {number}, {width} finished",
            letters=_letters(plan, border.demands),
            number=border.number,
            width=wide,
        )
        yield Fact(said, "border")


def _binding(plan: Plan) -> Iterator[Fact]:
    if plan.binding is not None:
        face = show(plan.binding.first_face_width, plan.project.units)
        letters = _letters(plan, plan.binding.demands)
        faced = plan.project.binding is not None and plan.project.binding.fold is Fold.FACED
        if faced:
            yield Fact(told("{letters}: facing, on the back only", letters=letters), "binding")
            return
        said = told("{letters}: binding, {width} on this face", letters=letters, width=face)
        yield Fact(said, "binding")


def _layers(plan: Plan) -> Iterator[Fact]:
    """Batting, then backing."""
    units = plan.project.units
    if (batting := plan.batting) is not None:
        size = show_size(batting.across, batting.along, units)
        said = (
            told("batting {size} for each quilt", size=size)
            if plan.project.quilt.copies > 1
            else told("batting {size}", size=size)
        )
        yield Fact(said, "batting")
        yield Fact(f"({batting_from(batting, units)})")
    if (backing := plan.backing) is not None:
        letters = _letters(plan, backing.demands)
        size = show_size(backing.across, backing.along, units)
        yield Fact(told("{letters}: backing {size}", letters=letters, size=size), "backing")
        panels = [told_count("{count} panel", "{count} panels", backing.panels)]
        seams = [told(_SEAMS[backing.seams])] if backing.seams in _SEAMS else []
        yield Fact(f"({', '.join([*panels, *seams])})")


def _sleeve(plan: Plan) -> Iterator[Fact]:
    if plan.sleeve is not None:
        deep = show(plan.sleeve.depth, plan.project.units)
        yield Fact(
            told(
                "{letters}: hanging sleeve, {depth} deep",
                letters=_letters(plan, plan.sleeve.demands),
                depth=deep,
            ),
            "sleeve",
        )


def _letters(plan: Plan, demands: Sequence[Demand]) -> str:
    """The letters of the pieces that a part of the quilt is cut in."""
    return ", ".join(plan.part(demand.wanted.name).letter for demand in demands)
