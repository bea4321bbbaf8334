"""What lies on the table after so many cuts, as rectangles."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from core.cutting.cuts import TableCut, parted
from core.cutting.order import Marked, Order
from core.lay.lay import Rect, Sheet
from core.lengths import Inches
from core.steps import CLOTH, Becomes, Fall


@dataclass(frozen=True, slots=True)
class Bit:
    """A rectangle of cloth that may still be cut: `name` is "cloth", "section 2", "offcut".

    `raw` is what is still to come off its end to straighten it; `rect` is without it.
    """

    name: str
    sheet: Sheet
    rect: Rect
    raw: Inches = Fraction(0)


@dataclass(frozen=True, slots=True)
class OnTable:
    """Cloth in hand, the pieces that are cut well, and what is of no more use."""

    hand: tuple[Bit, ...]
    pieces: tuple[Marked, ...]
    waste: tuple[Bit, ...] = ()


def on_table(order: Order, done: int) -> OnTable:
    """What lies there after the first `done` cuts of an order.

    Raises `ValueError` if the cuts do not fit the cloth, which no order of a plan does.
    """
    table = _Table(order)
    for cut in order.cuts[:done]:
        bit = table.take(cut.step.sheet, cut.step.source)
        if not _fits(cut, bit):
            raise ValueError(f"step {cut.step.number} is not for the cloth in hand")
        table.lay_down(cut.step.sheet, cut.off)
        if cut.rest is None:
            table.hand.append(Bit(cut.step.source, cut.step.sheet, cut.left))
        else:
            table.lay_down(cut.step.sheet, cut.rest)
    return OnTable(tuple(table.hand), tuple(table.pieces), tuple(table.waste))


def _fits(cut: TableCut, bit: Bit) -> bool:
    """Whether a cut parts the cloth in hand, as it is, into what is said to fall off."""
    whole = replace(bit.rect, y=bit.rect.y - bit.raw, along=bit.rect.along + bit.raw)
    off, left = parted(cut.region, cut.step.direction, cut.step.measure)
    parts = cut.off.rect, left if cut.rest is None else cut.rest.rect
    return whole == cut.region and parts == (off, left) and left.across > 0 and left.along > 0


class _Table:
    """The table while the cuts go on."""

    def __init__(self, order: Order) -> None:
        self._marked = {mark.label: mark for mark in order.pieces}
        taken = {(mark.placed.sheet, mark.placed.rect) for mark in order.pieces}
        self.hand = [
            Bit(CLOTH, one.sheet, one.rect, one.raw)
            for one in order.sheets
            if (one.sheet, one.rect) not in taken
        ]
        sizes = {(one.sheet, one.rect) for one in order.sheets}
        whole = (m for m in order.pieces if (m.placed.sheet, m.placed.rect) in sizes)
        self.pieces = [*order.had, *whole]
        self.waste: list[Bit] = []

    def take(self, sheet: Sheet, name: str) -> Bit:
        found = [bit for bit in self.hand if (bit.sheet, bit.name) == (sheet, name)]
        if len(found) != 1:
            raise ValueError(f"there is no {name} on the table")
        self.hand.remove(found[0])
        return found[0]

    def lay_down(self, sheet: Sheet, fall: Fall) -> None:
        if fall.becomes is Becomes.PIECE:
            self.pieces.append(self._marked[fall.label])
        elif fall.becomes is Becomes.WASTE:
            self.waste.append(Bit(fall.label, sheet, fall.rect))
        else:
            self.hand.append(Bit(fall.label, sheet, fall.rect))
