"""Project -> Plan: the one road through the core.

A `Plan` carries everything that any view shows, so that no view computes. The
road: finishing arithmetic gives the ways in which each part can be cut; the
cheapest combination of them is laid; the independent checker passes it; the
cuts become steps.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from core.by_hand.laid import NOTHING_BY_HAND, ByHand, as_laid_by_hand
from core.cloth_lay import wanted_of
from core.fabric import Fabric, Grain
from core.finish.backing import BackingPlan
from core.finish.batting import BattingPlan, plan_batting
from core.finish.binding_plan import NAME as BINDING
from core.finish.binding_plan import BindingPlan, as_laid
from core.finish.border import BorderPlan
from core.finish.border_joins import with_joins
from core.finish.label import LabelPlan
from core.finish.sewn import Sewn, sew
from core.finish.size import Sizes
from core.finish.sleeve import SleevePlan
from core.from_backing import FromBacking, from_backing
from core.lay.lay import ClothLay, Lay, Placement, Sheet
from core.lay.problem import Run
from core.lay.repair import QUICK
from core.lay.stop import Stop
from core.lengths import Inches, sale_text
from core.notices import Notice, notices
from core.otherwise import Otherwise, otherwise
from core.quilt import Project
from core.refusal import Refusal
from core.segments import segments_of
from core.steady import steadied
from core.steps import CutStep, steps_for
from core.ways import Chosen, choose, for_one_lay

DRAFT_TRIES = 9  # of each lay: with the first proof, and before the long search begins
DRAFT_REPAIR = Stop(0)  # what does not stay as it lay is laid again once
# I and O are left out: they read as 1 and 0.
_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"


@dataclass(frozen=True, slots=True)
class Part:
    """One kind of piece to cut: its letter on every picture, what it is, how many.

    `role` is its drawing role. A run (binding, pieced border) is one part whose
    copies are its segments: `across` is then the strip width and `along` None.
    `may_turn`: its grain may run either way.
    """

    letter: str
    name: str
    role: str
    fabric: str
    across: Inches
    along: Inches | None
    count: int
    may_turn: bool = False

    def label(self, copy: int) -> str:
        """What is written on the piece: "B2", or "B" where there is only one."""
        return f"{self.letter}{copy}" if self.count > 1 else self.letter


@dataclass(frozen=True, slots=True)
class Purchase:
    """What to buy of one fabric. `cost` is None where no price is known.

    `along` is all of it: `lays` equal lengths, one for each kit where kits are cut one by one.
    """

    along: Inches
    sale_text: str
    cost: Fraction | None
    lays: int = 1


@dataclass(frozen=True, slots=True)
class FabricPlan:
    """One fabric: its lay, what to buy of it, and the cuts in order.

    `waste_share` is the share of the cloth, bought and taken from the shelf,
    that ends in no piece; offcuts worth keeping count as waste here. `fabric` is
    what one lay has of it, where kits are cut one by one.
    """

    fabric: Fabric
    lay: ClothLay
    buy: Purchase
    waste_share: Fraction
    steps: tuple[CutStep, ...]
    by_hand: ByHand = NOTHING_BY_HAND

    @property
    def cloth_area(self) -> Fraction:
        """Square inches of cloth bought (as washed) and taken from the shelf."""
        return _cloth_area(self.fabric, self.lay)


@dataclass(frozen=True, slots=True)
class Plan:
    """The whole answer.

    `finished_width` × `finished_length` is the quilt with its borders, cut to
    its outline: the box that the binding goes round.
    """

    project: Project
    finished_width: Inches
    finished_length: Inches
    parts: tuple[Part, ...]
    fabrics: tuple[FabricPlan, ...]
    borders: tuple[BorderPlan, ...]
    backing: BackingPlan | None
    batting: BattingPlan | None
    binding: BindingPlan | None
    sleeve: SleevePlan | None
    label_patch: LabelPlan | None
    warnings: tuple[Notice, ...]
    sizes: Sizes
    sewn: Sewn | None
    otherwise: tuple[Otherwise, ...] = ()
    from_backing: FromBacking | None = None

    @property
    def waste_share(self) -> Fraction:
        """The share of all cloth, bought and taken from the shelf, that ends in no piece."""
        cloth = sum((fabric.cloth_area for fabric in self.fabrics), Fraction(0))
        waste = sum((f.waste_share * f.cloth_area for f in self.fabrics), Fraction(0))
        return waste / cloth if cloth else cloth

    @property
    def cost(self) -> Fraction | None:
        """What all cloth to buy costs; None where a price is missing, or nothing is bought."""
        costs = [fabric.buy.cost for fabric in self.fabrics if fabric.buy.along]
        known = [cost for cost in costs if cost is not None]
        return sum(known, Fraction(0)) if len(known) == len(costs) and costs else None

    def part(self, name: str) -> Part:
        """The part that a placement's `name` belongs to."""
        return next(part for part in self.parts if part.name == name)

    def label(self, placement: Placement) -> str:
        """What is written on a placed piece."""
        return self.part(placement.name).label(placement.copy)


def make_plan(project: Project, previous: Plan | None = None, *, draft: bool = False) -> Plan:
    """The plan of a project; what can lies as in `previous`, where that costs nothing.

    A `draft` is a legal plan made in a fraction of the time: its lays may be longer
    and less well proved, and what another choice would buy is left out.
    Raises `Refusal`, worded in the project's units.
    """
    try:
        return _make(project, previous, draft)
    except Refusal as refusal:
        raise refusal.in_units(project.units) from None


def _make(project: Project, previous: Plan | None, draft: bool) -> Plan:
    tries = DRAFT_TRIES if draft else None
    chosen = choose(project, tries)
    if previous is not None:
        before = Lay(tuple(fabric.lay for fabric in previous.fabrics))
        chosen = steadied(project, chosen, before, DRAFT_REPAIR if draft else QUICK)
    parts = _parts(chosen)
    batting = project.batting
    width, length = chosen.sizes.finished
    binding = _binding_as_laid(project, chosen)
    plan = Plan(
        project=project,
        finished_width=width,
        finished_length=length,
        parts=parts,
        fabrics=tuple(
            _fabric_plan(fabric, lay, parts, chosen, project.quilt.lays)
            for fabric, lay in zip(project.fabrics, chosen.lay.cloths, strict=True)
        ),
        borders=tuple(_border_as_laid(border, chosen) for border in chosen.borders),
        backing=chosen.backing,
        batting=(
            plan_batting(batting, *chosen.sizes.layers, project.quilt.copies) if batting else None
        ),
        binding=binding,
        sleeve=chosen.sleeve,
        label_patch=chosen.label,
        warnings=(),
        sizes=chosen.sizes,
        sewn=_sewn(project, chosen, parts, binding),
        otherwise=() if draft else tuple(otherwise(project, chosen)),
        from_backing=None if draft else from_backing(project, chosen),
    )
    return replace(plan, warnings=notices(plan))


def _parts(chosen: Chosen) -> tuple[Part, ...]:
    laid = [placement.name for cloth in chosen.lay.cloths for placement in cloth.placements]
    parts: list[Part] = []
    for demand in chosen.demands:
        wanted, letter = demand.wanted, _letter(len(parts))
        across, along = (
            (wanted.strip, None) if isinstance(wanted, Run) else (wanted.across, wanted.along)
        )
        count = laid.count(wanted.name)
        turns = wanted.grain is Grain.EITHER if isinstance(wanted, Run) else wanted.may_turn
        part = Part(letter, wanted.name, demand.role, wanted.cloth, across, along, count, turns)
        parts.append(part)
    return tuple(parts)


def _letter(place: int) -> str:
    """A, B, … Z, then AA, AB, …

    >>> _letter(0), _letter(24)
    ('A', 'AA')
    """
    turn, place = divmod(place, len(_LETTERS))
    return (_LETTERS[turn - 1] if turn else "") + _LETTERS[place]


def _fabric_plan(
    fabric: Fabric, lay: ClothLay, parts: tuple[Part, ...], chosen: Chosen, lays: int
) -> FabricPlan:
    shared = for_one_lay(fabric, lays)
    by_hand = as_laid_by_hand(shared, wanted_of(fabric, chosen.demands), lay.placements)
    by_name = {part.name: part for part in parts}
    labels = {(p.sheet, p.rect): by_name[p.name].label(p.copy) for p in lay.placements}
    offcuts = frozenset((offcut.sheet, offcut.rect) for offcut in lay.offcuts)
    steps = steps_for(lay.cuts, labels, offcuts, fabric.straightening)
    buy, waste = _purchase(fabric, lay, lays), _waste_share(fabric, lay)
    return FabricPlan(shared, lay, buy, waste, steps, by_hand)


def _purchase(fabric: Fabric, lay: ClothLay, lays: int) -> Purchase:
    along, price = lay.bought_along * lays, fabric.price_per_inch
    each = sale_text(lay.bought_along, fabric.sale_unit)
    text = f"{lays} × {each}" if lays > 1 and along else each
    return Purchase(along, text, None if price is None else price * along, lays)


def _cloth_area(fabric: Fabric, lay: ClothLay) -> Fraction:
    bought = lay.bought_along * (1 - fabric.shrinkage_along) * fabric.cutting_width
    on_hand = (rect.across * rect.along for sheet, rect in lay.sheets if sheet != Sheet())
    return bought + sum(on_hand, Fraction(0))


def _waste_share(fabric: Fabric, lay: ClothLay) -> Fraction:
    used = sum((p.rect.across * p.rect.along for p in lay.placements), Fraction(0))
    return 1 - used / _cloth_area(fabric, lay) if lay.placements else Fraction(0)


def _border_as_laid(border: BorderPlan, chosen: Chosen) -> BorderPlan:
    """The border with its joins where the laid segments put them."""
    return with_joins(border, (p for cloth in chosen.lay.cloths for p in cloth.placements))


def _sewn(
    project: Project, chosen: Chosen, parts: tuple[Part, ...], binding: BindingPlan | None
) -> Sewn | None:
    """How the laid strips go round the edge; of several copies, as `_binding_as_laid`."""
    if binding is None or project.binding is None:
        return None
    by_name = {part.name: part for part in parts}
    segments = segments_of(
        binding, _worst_copy(chosen), lambda name, copy: by_name[name].label(copy)
    )
    return sew(project.binding, binding, chosen.sizes.outline, segments)


def _worst_copy(chosen: Chosen) -> tuple[Placement, ...]:
    """The segments of the binding; of several copies, of the one with the most joins."""
    segments: dict[int, list[Placement]] = {}
    for cloth in chosen.lay.cloths:
        for placement in cloth.placements:
            if placement.name == BINDING and placement.run_copy is not None:
                segments.setdefault(placement.run_copy, []).append(placement)
    most = max(map(len, segments.values()), default=0)
    return next((tuple(laid) for laid in segments.values() if len(laid) == most), ())


def _binding_as_laid(project: Project, chosen: Chosen) -> BindingPlan | None:
    """The binding with its laid segments; of several copies, the one with the most joins."""
    if chosen.binding is None or project.binding is None:
        return None
    segments = _worst_copy(chosen)
    if not segments:
        return chosen.binding
    usable = project.fabric(project.binding.fabric).cutting_width
    return as_laid(chosen.binding, segments, usable)
