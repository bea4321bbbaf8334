"""A plan that was changed after cutting began, cut from what is left.

Pieces that the changed plan still asks for, in the same size and under the same
letter, are cut already; the others are cloth in hand like any other.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import Final

from core.cutting.cutting import ClothCutting, Cutting, begin
from core.cutting.order import Marked, Order
from core.cutting.progress import Bit, OnTable, on_table
from core.cutting.remaining import lay_again
from core.finish.binding_plan import segment_length
from core.language import marked, told
from core.lay.lay import Sheet
from core.lay.stop import Stop
from core.plan import Plan
from core.refusal import Refusal

BECAUSE: Final = marked("The plan was changed.")
_CUT: Final = Sheet("cut")  # where flaws of the cloth that it came from do not count
_NUMBER = re.compile(r"\d*$", re.ASCII)


@dataclass(frozen=True, slots=True)
class ChangedPlan:
    """A question for the solver: the cutting of `plan` on what `cutting` has left."""

    cutting: Cutting
    plan: Plan
    iterations: int = Stop().iterations

    def answer(self) -> Cutting:
        """Every cloth that was begun laid again. Raises `Refusal` where there is no room."""
        fresh = begin(self.plan)
        before = {(cloth.kit, cloth.order.name): cloth for cloth in self.cutting.cloths}
        try:
            cloths = tuple(
                self._carried(cloth, before.get((cloth.kit, cloth.order.name)))
                for cloth in fresh.cloths
            )
        except Refusal as refusal:
            raise refusal.in_units(self.plan.project.units) from None
        return replace(fresh, cloths=cloths)

    def _carried(self, cloth: ClothCutting, before: ClothCutting | None) -> ClothCutting:
        if before is None or not before.begun:
            return cloth
        table = fitting(cloth.order, on_table(before.order, before.cuts_done))
        flaws = before.order.problem.flaws
        problem = replace(cloth.order.problem, flaws=flaws, motifs=())
        order = replace(cloth.order, problem=problem)
        again = lay_again(order, table, self.plan.project.units, self.iterations)
        again = replace(again, because=told(BECAUSE))
        return replace(cloth, orders=(cloth.order, again), done=(0, 0), first=1)


def fitting(order: Order, table: OnTable) -> OnTable:
    """What lies on a table, seen from another order: what it asks for, and cloth to cut from."""
    wanted = tuple(mark for mark in table.pieces if _is_wanted(order, mark))
    others = (mark for mark in table.pieces if mark not in wanted)
    cloth = (Bit(f"piece {mark.label}", _CUT, mark.placed.rect) for mark in others)
    return replace(table, hand=(*table.hand, *cloth), pieces=wanted)


def _is_wanted(order: Order, mark: Marked) -> bool:
    """Whether an order asks for just this piece, under this letter."""
    placed, rect = mark.placed, mark.placed.rect
    letters = [part.letter for part in order.parts if part.name == placed.name]
    if letters != [_NUMBER.sub("", mark.label)]:
        return False
    sides = (rect.along, rect.across) if placed.turned else (rect.across, rect.along)
    for piece in order.problem.pieces:
        if piece.name == placed.name:
            label = order.part(placed).label(placed.copy)
            turned = piece.may_turn or not placed.turned
            same = turned and sides == (piece.across, piece.along) and label == mark.label
            return same and placed.run_copy is None and placed.copy <= piece.count
    for run in order.problem.runs:
        if run.name == placed.name and placed.run_copy is not None:
            long = segment_length(placed) >= min(run.shortest, run.needs)
            return sides[1] == run.strip and placed.run_copy <= run.count and long
    return False
