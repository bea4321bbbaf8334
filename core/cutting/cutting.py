"""The cutting of a whole plan: every cloth, how far it is cut, and the orders laid after miscuts.

A `Cutting` is kept beside the project and holds all that it needs, so that cloth
which is half cut is cut on as it was begun, whatever the plan has become since.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import Enum

from core.cutting.cuts import TableCut
from core.cutting.order import Marked, Order, planned_orders
from core.plan import Plan
from core.steps import CutStep


@dataclass(frozen=True, slots=True)
class ClothCutting:
    """One cloth of one kit: its orders, the planned one first, and how many cuts of each are done.

    The last order is the one being cut. `kit` counts from 1. Before the order in
    place `first` there is no going back: the cloth was cut by an older plan.
    """

    kit: int
    orders: tuple[Order, ...]
    done: tuple[int, ...] = (0,)
    first: int = 0

    @property
    def order(self) -> Order:
        """The one being cut."""
        return self.orders[-1]

    @property
    def cuts_done(self) -> int:
        """How many cuts of it are done."""
        return self.done[-1]

    @property
    def next_cut(self) -> TableCut | None:
        """The cut to make now; None when the cloth is all cut."""
        cuts = self.order.cuts
        return cuts[self.cuts_done] if self.cuts_done < len(cuts) else None

    @property
    def begun(self) -> bool:
        """Whether anything was cut or laid again."""
        return self.done != (0,)

    def cut_once(self) -> ClothCutting:
        """One cut further; at the end it stays there."""
        return self if self.next_cut is None else self._at(self.cuts_done + 1)

    def back(self) -> ClothCutting:
        """One cut back; from the start of an order laid again, to the moment before it."""
        if self.cuts_done:
            return self._at(self.cuts_done - 1)
        if len(self.orders) == self.first + 1:
            return self
        return replace(self, orders=self.orders[:-1], done=self.done[:-1])

    def laid_again(self, order: Order) -> ClothCutting:
        """Cut on by a new order."""
        return replace(self, orders=(*self.orders, order), done=(*self.done, 0))

    def _at(self, done: int) -> ClothCutting:
        return replace(self, done=(*self.done[:-1], done))


@dataclass(frozen=True, slots=True)
class Cutting:
    """All cloths, in the order of the plan, kit after kit; `kits` is how many there are."""

    cloths: tuple[ClothCutting, ...]
    kits: int = 1

    @property
    def begun(self) -> bool:
        """Whether anything was cut."""
        return any(cloth.begun for cloth in self.cloths)

    @property
    def planned(self) -> tuple[Order, ...]:
        """The orders that it began with, those of one kit."""
        return tuple(cloth.orders[0] for cloth in self.cloths if cloth.kit == 1)

    def with_cloth(self, place: int, cloth: ClothCutting) -> Cutting:
        """The same with one cloth further."""
        return replace(self, cloths=(*self.cloths[:place], cloth, *self.cloths[place + 1 :]))

    def unfinished(self) -> int:
        """The place of the first cloth with cuts to make; of the last cloth if there is none."""
        places = (n for n, cloth in enumerate(self.cloths) if cloth.next_cut is not None)
        return next(places, len(self.cloths) - 1)


class Sameness(Enum):
    """How a plan stands to a cutting that was begun."""

    SAME = "the same cuts"
    LAID_OTHERWISE = "the same pieces, laid otherwise"
    OTHER_PIECES = "other pieces"


def begin(plan: Plan) -> Cutting:
    """The cutting of a plan, nothing cut yet."""
    orders, kits = planned_orders(plan), plan.project.quilt.lays
    return Cutting(
        tuple(ClothCutting(kit, (order,)) for kit in range(1, kits + 1) for order in orders), kits
    )


def sameness(cutting: Cutting, plan: Plan) -> Sameness:
    """Whether a plan still asks for what is being cut, and lies as it is being cut."""
    fresh = begin(plan)
    if _asked(cutting) != _asked(fresh):
        return Sameness.OTHER_PIECES
    return Sameness.SAME if laid(cutting) == laid(fresh) else Sameness.LAID_OTHERWISE


def _asked(cutting: Cutting) -> list[object]:
    """What is asked of each cloth of each kit, wherever it lies."""
    orders = (cloth.orders[0] for cloth in cutting.cloths)
    return [(order.name, order.problem.pieces, order.problem.runs) for order in orders]


def laid(cutting: Cutting) -> tuple[tuple[str, tuple[Marked, ...], tuple[CutStep, ...]], ...]:
    """Where each cloth's pieces lie, and the steps as planned; the same in any units."""
    return tuple((order.name, order.pieces, order.steps) for order in cutting.planned)
