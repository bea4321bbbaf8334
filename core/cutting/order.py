"""The cut order of one cloth from a moment on: as planned, or laid again after a miscut."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from core.cloth_lay import cloth_problem
from core.cloth_names import BOLT, ON_HAND
from core.cutting.cuts import TableCut, single_cuts
from core.finish.demand import Demand, for_copies
from core.lay.lay import THE_BOLT, Placement, Rect, Sheet
from core.lay.problem import LayProblem
from core.lengths import Inches
from core.plan import FabricPlan, Part, Plan
from core.steps import CutStep


@dataclass(frozen=True, slots=True)
class Marked:
    """A piece or segment with what is written on it."""

    label: str
    placed: Placement


@dataclass(frozen=True, slots=True)
class TableSheet:
    """A sheet of cloth with its size and what it is called (`core.cloth_names.told_sheet`).

    `raw` is what is still to come off its end to straighten it; `rect` is without it.
    There are `equal` ones like it on hand. `title` is "", but in a file that was kept when
    sheets were called in words, of the language that was spoken.
    """

    sheet: Sheet
    rect: Rect
    title: str = ""
    raw: Inches = Fraction(0)
    called: str = ""
    equal: int = 1


@dataclass(frozen=True, slots=True)
class Order:
    """What is cut from one cloth, from which sheets, in which steps.

    `problem` is all that the plan asks of the cloth, `parts` its letters. `sheets` is
    all the cloth that there is, also what nothing is cut from. `pieces`
    are cut by these steps, `had` were cut well before them. `bought` is to be bought
    for it, as `sale` says; `because` tells why it took an older order's place. These two
    are in words, since they are read when the order is laid and never again.
    """

    problem: LayProblem
    parts: tuple[Part, ...]
    sheets: tuple[TableSheet, ...]
    pieces: tuple[Marked, ...]
    steps: tuple[CutStep, ...]
    bought: Inches
    sale: str
    had: tuple[Marked, ...] = ()
    because: str = ""

    @property
    def name(self) -> str:
        """The cloth's."""
        return self.problem.cloths[0].name

    @property
    def cuts(self) -> tuple[TableCut, ...]:
        """Its steps, one cut at a time."""
        return single_cuts(self.steps)

    def part(self, placed: Placement) -> Part:
        """The part that a piece belongs to."""
        return next(part for part in self.parts if part.name == placed.name)


def planned_orders(plan: Plan) -> tuple[Order, ...]:
    """The cut order of each cloth that something lies on; of kits, that of one."""
    demands = demands_of(plan)
    return tuple(_order(plan, fabric, demands) for fabric in plan.fabrics if fabric.lay.placements)


def _sheets(fabric_plan: FabricPlan) -> Iterator[TableSheet]:
    """All pieces on hand, and what is bought."""
    fabric, zero = fabric_plan.fabric, Fraction(0)
    for place, piece in enumerate(fabric.on_hand):
        for copy in range(1, piece.count + 1):
            sheet = Sheet(f"on_hand[{place}]", copy)
            rect = Rect(zero, zero, piece.across, piece.along)
            yield TableSheet(sheet, rect, called=ON_HAND, equal=piece.count)
    bolt = dict(fabric_plan.lay.sheets).get(THE_BOLT)
    if bolt is not None:
        raw = sum((step.measure for step in fabric_plan.steps if step.straightening), zero)
        yield TableSheet(THE_BOLT, bolt, raw=raw, called=BOLT)


def demands_of(plan: Plan) -> tuple[Demand, ...]:
    """All that the plan asks of its cloths, in the order of its parts."""
    return for_copies(_single(plan), plan.project.quilt.cut_together)


def _single(plan: Plan) -> Iterator[Demand]:
    singles = (plan.backing, plan.binding, plan.sleeve, plan.label_patch)
    for part in (*plan.borders, *singles):
        if part is not None:
            yield from part.demands


def _order(plan: Plan, fabric_plan: FabricPlan, demands: tuple[Demand, ...]) -> Order:
    fabric = fabric_plan.fabric
    lay = fabric_plan.lay
    return Order(
        problem=cloth_problem(fabric, demands),
        parts=tuple(part for part in plan.parts if part.fabric == fabric.name),
        sheets=tuple(_sheets(fabric_plan)),
        pieces=tuple(Marked(plan.label(placed), placed) for placed in lay.placements),
        steps=fabric_plan.steps,
        bought=lay.bought_along,
        sale=fabric_plan.buy.sale_text,
    )
