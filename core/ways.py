"""Ways: of all the ways in which the parts can be cut, the one that buys the least.

A border may be cut crosswise or lengthwise, a backing seamed either way. Each
part gives its options; every combination is laid, cloth by cloth (a cloth that
two combinations share is laid once), and the cheapest is kept.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from itertools import product
from math import prod
from typing import TypeAlias

from core.fabric import Fabric
from core.finish.backing import BackingPlan, backing_options
from core.finish.binding import BindingPlan, plan_binding
from core.finish.border import BorderPlan, border_options
from core.finish.demand import Demand, Wanted, for_copies
from core.finish.sleeve import SleevePlan, plan_sleeve
from core.lay.check import check
from core.lay.lay import ClothLay, Lay, Unplaced
from core.lay.problem import Cloth, LayProblem, Piece, Run
from core.lay.refuse import require_layable
from core.lay.solve import solve
from core.lengths import Inches, Units
from core.quilt import Project
from core.refusal import Refusal

PartPlan: TypeAlias = BorderPlan | BackingPlan | BindingPlan | SleevePlan
Combination: TypeAlias = tuple[PartPlan, ...]
Score: TypeAlias = tuple[int, int, Fraction, Fraction, int, Fraction]

_IN_PROBLEM = re.compile(r"(pieces|runs)\[(\d+)\]")
MOST_COMBINATIONS = 32  # beyond this, parts are chosen one after the other


@dataclass(frozen=True, slots=True)
class Chosen:
    """The combination that was kept, what it asks for, and its lay."""

    combination: Combination
    demands: tuple[Demand, ...]
    lay: Lay
    finished: tuple[Inches, Inches]

    @property
    def borders(self) -> tuple[BorderPlan, ...]:
        return tuple(part for part in self.combination if isinstance(part, BorderPlan))

    @property
    def backing(self) -> BackingPlan | None:
        return next((p for p in self.combination if isinstance(p, BackingPlan)), None)

    @property
    def binding(self) -> BindingPlan | None:
        return next((p for p in self.combination if isinstance(p, BindingPlan)), None)

    @property
    def sleeve(self) -> SleevePlan | None:
        return next((p for p in self.combination if isinstance(p, SleevePlan)), None)


def choose(project: Project) -> Chosen:
    """The cheapest way to cut the project, laid and checked."""
    options, finished = _options(project)
    best = min(_candidates(project, options, finished), key=lambda found: _score(project, found))
    if best.lay.unplaced:
        raise _not_enough(project, best)
    if not _matched(best):
        raise Refusal("backing", "no lay matches the print at the seams; choose another cloth")
    return best


def _options(
    project: Project,
) -> tuple[list[tuple[PartPlan, ...]], tuple[Inches, Inches]]:
    """Each part's options, and the quilt's size with all borders on."""
    quilt = project.quilt
    width, length = quilt.width, quilt.length
    options: list[tuple[PartPlan, ...]] = []
    for number, border in enumerate(project.borders, start=1):
        ways = border_options(border, number, width, length, project.fabric(border.fabric))
        width, length = ways[0].outer_width, ways[0].outer_length
        options.append(ways)
    if (backing := project.backing) is not None:
        options.append(backing_options(backing, width, length, project.fabric(backing.fabric)))
    if (binding := project.binding) is not None:
        fabric = project.fabric(binding.fabric)
        options.append((plan_binding(binding, width, length, quilt.edge_thickness, fabric),))
    if (sleeve := project.sleeve) is not None:
        options.append((plan_sleeve(sleeve, width, project.fabric(sleeve.fabric)),))
    return options, (width, length)


def _candidates(
    project: Project, options: list[tuple[PartPlan, ...]], finished: tuple[Inches, Inches]
) -> Iterator[Chosen]:
    """Every combination where they are few; else part by part, the others held."""
    if prod(len(ways) for ways in options) <= MOST_COMBINATIONS:
        for combination in product(*options):
            yield _lay_out(project, combination, finished)
        return
    held = [ways[0] for ways in options]
    for place, ways in enumerate(options):
        tried = [
            _lay_out(project, (*held[:place], way, *held[place + 1 :]), finished) for way in ways
        ]
        best = min(range(len(ways)), key=lambda i: _score(project, tried[i]))
        held[place] = ways[best]
        yield tried[best]


def _lay_out(project: Project, combination: Combination, finished: tuple[Inches, Inches]) -> Chosen:
    single = [demand for part in combination for demand in part.demands]
    demands = for_copies(single, project.quilt.copies)
    cloths: list[ClothLay] = []
    unplaced: list[Unplaced] = []
    for fabric in project.fabrics:
        lay = _lay_one(_cloth_problem(fabric, demands), _paths(fabric, demands))
        cloths.extend(lay.cloths)
        unplaced.extend(lay.unplaced)
    return Chosen(combination, demands, Lay(tuple(cloths), tuple(unplaced)), finished)


def _cloth_problem(fabric: Fabric, demands: Sequence[Demand]) -> LayProblem:
    cloth = Cloth(
        fabric.name,
        fabric.cutting_width,
        fabric.sale_unit,
        fabric.straightening,
        fabric.shrinkage_along,
        fabric.on_hand,
        fabric.buy_more,
    )
    wanted = [demand.wanted for demand in demands if demand.wanted.cloth == fabric.name]
    return LayProblem(
        (cloth,),
        tuple(item for item in wanted if isinstance(item, Piece)),
        tuple(item for item in wanted if isinstance(item, Run)),
    )


def _paths(fabric: Fabric, demands: Sequence[Demand]) -> tuple[tuple[str, str], ...]:
    """Which part of the project asked for each name on this cloth."""
    return tuple((d.wanted.name, d.path) for d in demands if d.wanted.cloth == fabric.name)


@lru_cache(maxsize=512)
def _lay_one(problem: LayProblem, paths: tuple[tuple[str, str], ...]) -> Lay:
    """The lay of one cloth, passed by the checker; kept, since edits leave most cloths alone."""
    _require_layable(problem, dict(paths))
    lay = solve(problem)
    faults = check(problem, lay)
    if faults:
        said = "; ".join(fault.sentence for fault in faults)
        raise LayFault(f"the lay of {problem.cloths[0].name} is wrong: {said}")
    return lay


def _require_layable(problem: LayProblem, paths: dict[str, str]) -> None:
    """Refuse what cannot be laid, naming the part of the project that asked for it."""
    try:
        require_layable(problem)
    except Refusal as refusal:
        found = _IN_PROBLEM.match(refusal.path)
        if found is None:
            raise
        wanted = problem.pieces if found[1] == "pieces" else problem.runs
        path = paths[wanted[int(found[2])].name]
        raise Refusal(path, refusal.template, Units.INCHES, **refusal.lengths) from None


class LayFault(RuntimeError):
    """The solver made a lay that the checker refuses: a fault of the program, never shown."""


def _score(project: Project, found: Chosen) -> Score:
    """Smaller is better: all placed and matched, then cost, length bought, pieces, length used.

    Pieces count before the length used, since a seam saved is worth more than
    a longer offcut of cloth that is paid for already.
    """
    cost = Fraction(0)
    for fabric, cloth in zip(project.fabrics, found.lay.cloths, strict=True):
        price = Fraction(1) if fabric.price_per_yard is None else fabric.price_per_yard
        cost += price * cloth.bought_along
    return (
        len(found.lay.unplaced) + (0 if _matched(found) else 1),
        sum(1 for part in found.combination if getattr(part, "last_resort", False)),
        cost,
        sum((cloth.bought_along for cloth in found.lay.cloths), Fraction(0)),
        sum(len(cloth.placements) for cloth in found.lay.cloths),
        sum((cloth.used_along for cloth in found.lay.cloths), Fraction(0)),
    )


def _matched(found: Chosen) -> bool:
    """Whether backing panels that must match a print all start on the same point of it."""
    backing = found.backing
    if backing is None or backing.repeat is None or backing.last_resort:
        return True
    names = {demand.wanted.name for demand in backing.demands}
    starts = {
        placement.rect.y % backing.repeat
        for cloth in found.lay.cloths
        for placement in cloth.placements
        if placement.name in names
    }
    return len(starts) <= 1


def _not_enough(project: Project, found: Chosen) -> Refusal:
    """Why not all could be laid: too little cloth where the areas say so, else no lay found."""
    name = found.lay.unplaced[0].name
    demand = next(demand for demand in found.demands if demand.wanted.name == name)
    cloth = demand.wanted.cloth
    place = [fabric.name for fabric in project.fabrics].index(cloth)
    wanted = (_area(d.wanted) for d in found.demands if d.wanted.cloth == cloth)
    on_hand = (piece.across * piece.along * piece.count for piece in project.fabrics[place].on_hand)
    too_little = sum(wanted, Fraction(0)) > sum(on_hand, Fraction(0))
    said = (
        f"the {cloth} on hand is not enough for the {name}"
        if too_little
        else f"no way was found to cut the {name} and all else from the {cloth} on hand"
    )
    return Refusal(
        f"fabrics[{place}].on_hand",
        f"{said}, and no more may be bought; add cloth on hand or allow buying more",
    )


def _area(wanted: Wanted) -> Fraction:
    """Square inches of cloth that a piece or run takes at the least, all copies."""
    if isinstance(wanted, Run):
        return wanted.strip * wanted.needs * wanted.count
    return wanted.across * wanted.along * wanted.count
