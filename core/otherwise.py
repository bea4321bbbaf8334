"""What the other way of cutting a part would buy: a border along the other grain, a
backing with seams that cross the frame's rollers.

Said in numbers, so that the person can weigh joins against cloth. All other parts
are held as the plan has them.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from core.cloth_lay import CannotMind
from core.fabric import Fabric, Grain
from core.finish.backing import BackingPlan
from core.finish.border import BorderPlan, border_options
from core.language import marked, told, told_list
from core.lengths import Inches, sale_text
from core.money import money
from core.quilt import Frame, Project
from core.refusal import Refusal
from core.ways import Chosen, PartPlan, haste, lay_out, part_options


@dataclass(frozen=True, slots=True)
class Otherwise:
    """The part at `path` cut otherwise: what is then bought more of each fabric.

    `how` says in English how it is cut. `more` is negative where less is bought; `cost` is
    None where no price is known.
    The other way is laid in haste; where that is not proved least, what is said is
    `about` right.
    """

    path: str
    how: str
    more: tuple[tuple[str, Inches], ...]
    cost: Fraction | None
    about: bool = False

    def sentence(self, project: Project) -> str:
        """In words, each length as its fabric is sold."""
        values = {"how": told(self.how), "bought": self._bought(project)}
        if self.about:
            return told("{how} it would take about {bought}.", **values)
        return told("{how} it would take {bought}.", **values)

    def _bought(self, project: Project) -> str:
        said = [_by(project.fabric(name), more) for name, more in self.more if more]
        if not said:
            return told("as much cloth")
        if not self.cost:
            return told_list(said)
        price = {"bought": told_list(said), "price": money(abs(self.cost))}
        if self.cost > 0:
            return told("{bought} ({price} more)", **price)
        return told("{bought} ({price} less)", **price)


def _by(fabric: Fabric, more: Inches) -> str:
    values = {"length": sale_text(abs(more), fabric.sale_unit), "fabric": fabric.name}
    if more > 0:
        return told("{length} more of {fabric}", **values)
    return told("{length} less of {fabric}", **values)


def otherwise(project: Project, chosen: Chosen) -> Iterator[Otherwise]:
    """For each border, and a backing on a frame, what its other way would buy."""
    width, length = project.quilt.width, project.quilt.length
    for plan in chosen.borders:
        if (other := _other_way(project, plan, width, length)) is not None:
            found = _instead(project, chosen, plan, other)
            if found is not None:
                yield _compared(project, plan.path, _how(other), chosen, found)
        width, length = plan.outer_width, plan.outer_length
    if project.backing is not None and project.backing.frame is not Frame.NONE:
        yield from _off_the_frame(project, chosen)


def _instead(project: Project, chosen: Chosen, part: PartPlan, other: PartPlan) -> Chosen | None:
    """The lay with one part cut another way; None if not all finds room, or a pin is in the way."""
    combination = tuple(other if p is part else p for p in chosen.combination)
    try:
        found = lay_out(project, combination, chosen.sizes, haste(project), chosen)
    except CannotMind:
        return None
    return None if found.lay.unplaced else found


def _how(border: BorderPlan) -> str:
    if border.grain is Grain.LENGTHWISE:
        return marked("Cut lengthwise in one piece, with no joins,")
    if border.joined:
        return marked("Cut crosswise, joined from strips,")
    return marked("Cut crosswise, in one piece,")


def _off_the_frame(project: Project, chosen: Chosen) -> Iterator[Otherwise]:
    """What seams across the rollers would take, where those along them were preferred."""
    backing, (options, _) = chosen.backing, part_options(project)
    ways = next(ways for ways in options if isinstance(ways[0], BackingPlan))
    others = [
        _instead(project, chosen, backing, way)
        for way in ways
        if backing is not None
        and isinstance(way, BackingPlan)
        and way.off_frame
        and not (backing.off_frame or way.last_resort)
    ]
    laid = [found for found in others if found is not None]
    if laid:
        least = min(laid, key=lambda found: sum(c.bought_along for c in found.lay.cloths))
        how = marked("With seams across the rollers")
        yield _compared(project, "backing", how, chosen, least)


def _other_way(
    project: Project, plan: BorderPlan, width: Inches, length: Inches
) -> BorderPlan | None:
    """The border cut along the other grain, if that can be and would save a join."""
    if plan.grain is Grain.CROSSWISE and not plan.joined:
        return None
    grain = Grain.LENGTHWISE if plan.grain is Grain.CROSSWISE else Grain.CROSSWISE
    border = replace(plan.border, grain=grain)
    try:
        return border_options(border, plan.number, width, length, project.fabric)[0]
    except Refusal:  # too wide for its cloth: there is no other way
        return None


def _compared(project: Project, path: str, how: str, chosen: Chosen, found: Chosen) -> Otherwise:
    more: list[tuple[str, Inches]] = []
    costs: list[Fraction | None] = []
    lays = zip(project.fabrics, chosen.lay.cloths, found.lay.cloths, strict=True)
    for fabric, now, then in lays:
        by = (then.bought_along - now.bought_along) * project.quilt.lays
        if by:
            more.append((fabric.name, by))
            costs.append(_cost(fabric, by))
    known = [cost for cost in costs if cost is not None]
    cost = sum(known, Fraction(0)) if len(known) == len(costs) else None
    about = not all(cloth.proved_least for cloth in found.lay.cloths if cloth.placements)
    return Otherwise(path, how, tuple(more), cost, about)


def _cost(fabric: Fabric, along: Inches) -> Fraction | None:
    return None if fabric.price_per_inch is None else fabric.price_per_inch * along
