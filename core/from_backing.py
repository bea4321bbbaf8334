"""What lies on the cloth beside the backing's panels, and what else its offcuts would give.

Parts cut from the backing's own cloth are one lay with it. How much they add to
what is bought is told by planning the backing alone. Where sleeve, label or
binding come from another cloth that is bought, an offcut that would hold them is offered.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from core.fabric import Grain
from core.finish.demand import Demand
from core.lay.lay import ClothLay, Rect
from core.lay.problem import Piece, Run
from core.lengths import Inches
from core.quilt import Project
from core.ways import Chosen, choose


@dataclass(frozen=True, slots=True)
class FromBacking:
    """`names` are cut beside the panels and add `more` to what is bought of `fabric`.

    `offers` are pairs: what an offcut of the backing would hold too, and that offcut.
    """

    fabric: str
    names: tuple[str, ...]
    more: Inches
    offers: tuple[tuple[str, Rect], ...]


def from_backing(
    project: Project, chosen: Chosen, most_tries: int | None = None
) -> FromBacking | None:
    """What the backing's cloth gives beside the backing; None without one.

    The backing alone is laid in so many tries at most, as `chosen` was.
    """
    if project.backing is None:
        return None
    fabric = project.backing.fabric
    beside = tuple(
        demand.wanted.name
        for demand in chosen.demands
        if demand.wanted.cloth == fabric and demand.path != "backing"
    )
    more = _added(project, chosen, fabric, most_tries) if beside else Fraction(0)
    return FromBacking(fabric, beside, more, tuple(_offers(project, chosen, fabric)))


def _added(project: Project, chosen: Chosen, fabric: str, most_tries: int | None) -> Inches:
    """What is bought of the backing's cloth beyond what the backing alone would take."""
    width, length = chosen.sizes.layers
    quilt = replace(project.quilt, width=width, length=length)
    only_backing = replace(project, quilt=quilt, borders=(), outline=None, binding=None)
    alone = choose(replace(only_backing, sleeve=None, label=None), most_tries)
    more = _lay(chosen, fabric).bought_along - _lay(alone, fabric).bought_along
    return more * project.quilt.lays


def _lay(found: Chosen, fabric: str) -> ClothLay:
    return next(cloth for cloth in found.lay.cloths if cloth.name == fabric)


def _offers(project: Project, chosen: Chosen, fabric: str) -> Iterator[tuple[str, Rect]]:
    """Each part once, with the smallest offcut that holds it; an offcut is offered once."""
    free = sorted(
        (offcut.rect for offcut in _lay(chosen, fabric).offcuts),
        key=lambda rect: rect.across * rect.along,
    )
    for demand in chosen.demands:
        bought = _lay(chosen, demand.wanted.cloth).bought_along > 0
        if demand.wanted.cloth == fabric or demand.path not in ("sleeve", "label", "binding"):
            continue
        held = next((rect for rect in free if bought and _holds(rect, demand)), None)
        if held is not None:
            free.remove(held)
            yield demand.wanted.name, held


def _holds(rect: Rect, demand: Demand) -> bool:
    """Whether the part's pieces, or strips enough for its run, lie on the rectangle."""
    wanted = demand.wanted
    if isinstance(wanted, Piece):
        turned = replace(wanted, across=wanted.along, along=wanted.across)
        ways = (wanted, turned) if wanted.may_turn else (wanted,)
        return any(
            (rect.across // way.across) * (rect.along // way.along) >= way.count for way in ways
        )
    return any(_reaches(wanted, length, width) for length, width in _strips_of(wanted, rect))


def _strips_of(run: Run, rect: Rect) -> Iterator[tuple[Inches, Inches]]:
    """The length of strips, and the width they are cut side by side from, as the grain allows."""
    if run.grain is not Grain.LENGTHWISE:
        yield rect.across, rect.along
    if run.grain is not Grain.CROSSWISE:
        yield rect.along, rect.across


def _reaches(run: Run, length: Inches, width: Inches) -> bool:
    strips = width // run.strip // run.count
    if strips == 0 or (length < run.shortest and length < run.needs):
        return False
    return strips * length - (strips - 1) * run.join_loss >= run.needs
