"""What the other way of cutting a border would buy: lengthwise in one piece, or crosswise.

Said in numbers, so that the person can weigh joins against cloth. All other parts
are held as the plan has them.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from core.fabric import Fabric, Grain
from core.finish.border import BorderPlan, border_options
from core.lengths import Inches, sale_text
from core.money import money
from core.quilt import Project
from core.refusal import Refusal
from core.ways import Chosen, care, lay_out


@dataclass(frozen=True, slots=True)
class Otherwise:
    """Border `number` cut along `grain` instead: what is then bought more of each fabric.

    `more` is negative where less is bought; `cost` is None where no price is known.
    """

    number: int
    grain: Grain
    joined: bool
    more: tuple[tuple[str, Inches], ...]
    cost: Fraction | None

    def sentence(self, project: Project) -> str:
        """In words, each length as its fabric is sold."""
        how = (
            "lengthwise in one piece, with no joins,"
            if self.grain is Grain.LENGTHWISE
            else f"crosswise, {'joined from strips' if self.joined else 'in one piece'},"
        )
        return f"Cut {how} it would take {self._bought(project)}."

    def _bought(self, project: Project) -> str:
        said = [
            f"{sale_text(abs(more), project.fabric(name).sale_unit)} "
            f"{'more' if more > 0 else 'less'} of {name}"
            for name, more in self.more
            if more
        ]
        if not said:
            return "as much cloth"
        price = (
            f" ({money(abs(self.cost))} {'more' if self.cost > 0 else 'less'})" if self.cost else ""
        )
        return " and ".join(said) + price


def otherwise(project: Project, chosen: Chosen) -> Iterator[Otherwise]:
    """For each border that can be cut the other way, what that would buy."""
    width, length = project.quilt.width, project.quilt.length
    for place, plan in enumerate(chosen.borders):
        if (other := _other_way(project, plan, width, length)) is not None:
            combination = tuple(
                other if i == place else p for i, p in enumerate(chosen.combination)
            )
            found = lay_out(project, combination, chosen.finished, care(project))
            if not found.lay.unplaced:
                yield _compared(project, other, chosen, found)
        width, length = plan.outer_width, plan.outer_length


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


def _compared(project: Project, other: BorderPlan, chosen: Chosen, found: Chosen) -> Otherwise:
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
    return Otherwise(other.number, other.grain, other.joined, tuple(more), cost)


def _cost(fabric: Fabric, along: Inches) -> Fraction | None:
    return None if fabric.price_per_inch is None else fabric.price_per_inch * along
