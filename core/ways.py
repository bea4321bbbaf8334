"""Ways: of all the ways in which the parts can be cut, the one that buys the least.

A border may be cut crosswise or lengthwise, a backing seamed either way. Each
part gives its options; every combination is laid, cloth by cloth (a cloth that
two combinations share is laid once), and the cheapest is kept.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import product
from math import prod
from typing import TypeAlias

from core.by_hand.minded import on_other_sheets, otherwise_cut
from core.cloth_lay import CannotMind, cloth_problem, lay_one, paths_on, wanted_of
from core.edge.outline import require_bindable
from core.fabric import Fabric
from core.finish.backing import BackingPlan, backing_options
from core.finish.binding import plan_binding
from core.finish.binding_plan import BindingPlan
from core.finish.border import BorderPlan, border_options
from core.finish.demand import Demand, for_copies
from core.finish.label import LabelPlan, plan_label
from core.finish.size import Sizes, sizes_of
from core.finish.sleeve import SleevePlan, plan_sleeve
from core.language import told
from core.lay.lay import ClothLay, Lay, Unplaced
from core.lay.stop import Stop
from core.not_enough import not_enough
from core.quilt import Project
from core.refusal import Refusal

PartPlan: TypeAlias = BorderPlan | BackingPlan | BindingPlan | SleevePlan | LabelPlan
Combination: TypeAlias = tuple[PartPlan, ...]
Score: TypeAlias = tuple[int, int, int, int, int, Fraction, Fraction, int, Fraction]

MOST_COMBINATIONS = 32  # beyond this, parts are chosen one after the other
# With more copies than a few in one lay, every try takes long: ways are told apart by a few
# tries, and the best is laid with fewer than usual. 30 kits were never laid the worse for it.
FEW_COPIES, IN_HASTE, TO_COMPARE, WITH_CARE = 3, 12, 40, 100


@dataclass(frozen=True, slots=True)
class Chosen:
    """The combination that was kept, what it asks for, and its lay."""

    combination: Combination
    demands: tuple[Demand, ...]
    lay: Lay
    sizes: Sizes
    aside: int = 0  # pins of pieces that it has not
    otherwise_cut: int = 0  # pinned pieces of another size than when they were put down

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

    @property
    def label(self) -> LabelPlan | None:
        return next((p for p in self.combination if isinstance(p, LabelPlan)), None)


def choose(project: Project, most_tries: int | None = None) -> Chosen:
    """The cheapest way to cut the project, laid and checked; each lay in so many tries at most."""
    _refuse_long_repeats(project)
    options, sizes = part_options(project)
    tries = min(care(project), most_tries or care(project))
    found = _candidates(project, options, sizes, tries)
    best = min(found, key=lambda found: _score(project, found))
    if best.lay.unplaced:
        raise not_enough(project, best.demands, best.lay.unplaced[0].name)
    if not matched(best):
        raise Refusal(
            "backing", told("no lay matches the print at the seams; choose another cloth")
        )
    return best


def part_options(
    project: Project,
) -> tuple[list[tuple[PartPlan, ...]], Sizes]:
    """Each part's options, and the quilt's sizes with all borders on."""
    quilt = project.quilt
    width, length = project.top
    options: list[tuple[PartPlan, ...]] = []
    for number, border in enumerate(project.borders, start=1):
        ways = border_options(border, number, width, length, project.fabric)
        width, length = ways[0].outer_width, ways[0].outer_length
        options.append(ways)
    sizes = sizes_of(project, (width, length))
    if (backing := project.backing) is not None:
        accent = project.fabric(backing.accent_fabric) if backing.accent_fabric else None
        fabric = project.fabric(backing.fabric)
        options.append(backing_options(backing, *sizes.layers, fabric, accent))
    if (binding := project.binding) is not None:
        fold = plan_binding(binding, sizes.bound(quilt.edge_thickness), project.fabric)
        path = "quilt" if project.outline is None else "outline"
        require_bindable(sizes.outline, fold.widths.seam, fold.widest_face, path)
        options.append((fold,))
    if (sleeve := project.sleeve) is not None:
        options.append((plan_sleeve(sleeve, sizes.finished[0], project.fabric(sleeve.fabric)),))
    if (label := project.label) is not None:
        options.append((plan_label(label, sizes.finished, project.fabric(label.fabric)),))
    return options, sizes


def _candidates(
    project: Project, options: list[tuple[PartPlan, ...]], sizes: Sizes, tries: int
) -> Iterator[Chosen]:
    """Combinations worth a choice; what is a last resort only where nothing else can be laid."""
    usual = [tuple(way for way in ways if not _last_resort(way)) or ways for ways in options]
    found = list(_tried(project, usual, sizes, tries))
    yield from found
    if usual != options and not any(_complete(one) for one in found):
        yield from _tried(project, options, sizes, tries)


def _tried(
    project: Project, options: list[tuple[PartPlan, ...]], sizes: Sizes, tries: int
) -> Iterator[Chosen]:
    """Every combination where they are few; else part by part, the others held.

    Of many quilts cut together each combination is laid in haste, and only the
    best with care.
    """
    count = prod(len(ways) for ways in options)
    if count > MOST_COMBINATIONS:
        yield from _part_by_part(project, options, sizes, tries)
        return
    combinations = list(product(*options))
    if project.quilt.cut_together > FEW_COPIES and count > 1:
        best = min(
            _each_laid(project, combinations, sizes, min(tries, IN_HASTE)),
            key=lambda found: _score(project, found),
        )
        combinations = [best.combination]
    yield from _each_laid(project, combinations, sizes, tries)


def _each_laid(
    project: Project, combinations: Iterable[Combination], sizes: Sizes, tries: int
) -> Iterator[Chosen]:
    """Each combination laid, but those that cannot mind what was said by hand, if others can."""
    refused: CannotMind | None = None
    laid = False
    for combination in combinations:
        try:
            found = lay_out(project, combination, sizes, tries)
        except CannotMind as refusal:
            refused = refused or refusal
        else:
            laid = True
            yield found
    if refused is not None and not laid:
        raise refused


def haste(project: Project) -> int:
    """How many tries a lay is worth that is only compared with."""
    return IN_HASTE if project.quilt.cut_together > FEW_COPIES else TO_COMPARE


def care(project: Project) -> int:
    """How many tries each lay is worth; with many copies every try takes long."""
    return WITH_CARE if project.quilt.cut_together > FEW_COPIES else Stop().iterations


def _part_by_part(
    project: Project, options: list[tuple[PartPlan, ...]], sizes: Sizes, tries: int
) -> Iterator[Chosen]:
    held = [ways[0] for ways in options]
    for place, ways in enumerate(options):
        tried = ((*held[:place], way, *held[place + 1 :]) for way in ways)
        laid = _each_laid(project, tried, sizes, tries)
        best = min(laid, key=lambda found: _score(project, found))
        held[place] = best.combination[place]
        yield best


def _last_resort(part: PartPlan) -> bool:
    return getattr(part, "last_resort", False)


def lay_out(
    project: Project,
    combination: Combination,
    sizes: Sizes,
    iterations: int = Stop().iterations,
    held: Chosen | None = None,
) -> Chosen:
    """One way to cut every part, laid cloth by cloth; each cloth is checked.

    A cloth of which the same is asked as in `held` lies as it does there.
    """
    single = [demand for part in combination for demand in part.demands]
    demands = for_copies(single, project.quilt.cut_together)
    cloths: list[ClothLay] = []
    unplaced: list[Unplaced] = []
    aside = resized = 0
    for place, fabric in enumerate(project.fabrics):
        shared = for_one_lay(fabric, project.quilt.lays)
        problem = cloth_problem(shared, demands)
        aside += len(shared.pins) - len(problem.pins)
        resized += otherwise_cut(shared, wanted_of(shared, demands))
        if held is not None and problem == cloth_problem(shared, held.demands):
            cloths.append(held.lay.cloths[place])
            continue
        lay = lay_one(problem, paths_on(shared, f"fabrics[{place}]", demands), iterations)
        cloths.extend(lay.cloths)
        unplaced.extend(lay.unplaced)
    lay = Lay(tuple(cloths), tuple(unplaced))
    return Chosen(combination, demands, lay, sizes, aside, resized)


def for_one_lay(fabric: Fabric, lays: int) -> Fabric:
    """The fabric with its pieces on hand shared out among so many equal lays."""
    shares = [replace(piece, count=piece.count // lays) for piece in fabric.on_hand]
    if all(piece.count for piece in shares):
        return replace(fabric, on_hand=tuple(shares))
    shared = replace(fabric, on_hand=tuple(piece for piece in shares if piece.count))
    left = [place for place, piece in enumerate(shares) if piece.count]
    return on_other_sheets(shared, {place: new for new, place in enumerate(left)})


def _score(project: Project, found: Chosen) -> Score:
    """Smaller is better: all placed and matched, seams as preferred, pins minded and their
    pieces as they were, cost, length bought, pieces, length used.

    Pieces count before the length used, since a seam saved is worth more than
    a longer offcut of cloth that is paid for already.
    """
    cost = Fraction(0)
    for fabric, cloth in zip(project.fabrics, found.lay.cloths, strict=True):
        price = Fraction(1) if fabric.price_per_inch is None else fabric.price_per_inch
        cost += price * cloth.bought_along
    return (
        len(found.lay.unplaced) + (0 if matched(found) else 1),
        sum(1 for part in found.combination if _last_resort(part)),
        sum(1 for part in found.combination if getattr(part, "off_frame", False)),
        found.aside,
        found.otherwise_cut,
        cost,
        sum((cloth.bought_along for cloth in found.lay.cloths), Fraction(0)),
        sum(len(cloth.placements) for cloth in found.lay.cloths),
        sum((cloth.used_along for cloth in found.lay.cloths), Fraction(0)),
    )


def _complete(found: Chosen) -> bool:
    """Whether everything found room and every print matches."""
    return not found.lay.unplaced and matched(found)


def matched(found: Chosen) -> bool:
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


def _refuse_long_repeats(project: Project) -> None:
    """A print whose repeat is longer than any cloth there is cannot be matched on it."""
    for place, fabric in enumerate(project.fabrics):
        if fabric.repeat is None or fabric.buy_more or not fabric.on_hand:
            continue
        longest = max(piece.along for piece in fabric.on_hand)
        if fabric.repeat > longest:
            raise Refusal(
                f"fabrics[{place}].repeat",
                told(
                    "the print repeats every {repeat}, but the longest piece on hand is {longest}; "
                    "write a shorter repeat, or none if nothing is to match"
                ),
                repeat=fabric.repeat,
                longest=longest,
            )
