"""A cut at the table in words: what to measure, how the cloth lies, what falls off."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from core.cutting.cuts import TableCut
from core.cutting.cutting import ClothCutting, Cutting
from core.cutting.order import Order
from core.lay.lay import Direction
from core.lengths import Units, show, show_size
from core.steps import CLOTH, Becomes, Fall, reminder
from core.table import Table

LOOK_EVERY: Final = 3  # cuts; as the cut order on paper
_FOLDS: Final = ("", "Fold it once, selvage to selvage.", "Fold it twice, selvage to selvage.")


@dataclass(frozen=True, slots=True)
class CutWords:
    """What is said of one cut: `do` in large type, `hold` how the cloth lies, `gives`
    what comes off and what is left, `mind` what to look to, or nothing.
    """

    do: str
    hold: str
    gives: str
    mind: str


def cut_words(order: Order, cut: TableCut, units: Units, table: Table) -> CutWords:
    """The words of a cut, its lengths in `units`, as it is made on `table`."""
    return CutWords(
        _do(cut, units),
        _hold(cut, table),
        " ".join(_gives(order, cut, units)),
        _mind(cut, units),
    )


def source_name(name: str) -> str:
    """The cloth in hand with its article, where it wants one."""
    return f"the {name}" if name == CLOTH else name


def _do(cut: TableCut, units: Units) -> str:
    by, source = show(cut.step.measure, units), source_name(cut.step.source)
    if cut.step.straightening:
        return f"Straighten the cut end: trim about {by} off, selvage to selvage."
    if cut.step.direction is Direction.CROSSWISE:
        return f"Cut {source} across, {by} from its straight end."
    return f"Cut {source} along the grain, {by} from its near edge."


def _hold(cut: TableCut, table: Table) -> str:
    held = cut.alone.hold(table)
    ruler = "" if held.moves == 1 else f"Lay the ruler {held.moves} times along the cut."
    return f"{_FOLDS[held.folds]} {ruler}".strip()


def _gives(order: Order, cut: TableCut, units: Units) -> Iterator[str]:
    if cut.step.straightening:
        yield "The raw end is waste."
        return
    yield f"Off comes {_fallen(order, cut.off, units)}."
    if cut.rest is None:
        size = show_size(cut.left.across, cut.left.along, units)
        yield f"Go on with what is left of {source_name(cut.step.source)}, {size}."
    elif cut.rest.becomes is Becomes.WASTE:
        yield "What is left is waste."
    else:
        yield f"Left is {_fallen(order, cut.rest, units)}."


def _fallen(order: Order, fall: Fall, units: Units) -> str:
    """A piece with its letter and name, or what else it is, with its size."""
    size = show_size(fall.rect.across, fall.rect.along, units)
    if fall.becomes is Becomes.WASTE:
        return "waste"
    if fall.becomes is Becomes.OFFCUT:
        return f"an offcut to keep, {size}"
    if fall.becomes is Becomes.SECTION:
        return f"{fall.label}, {size}, to be cut further"
    mark = next(mark for mark in order.pieces if mark.label == fall.label)
    return f"{fall.label}, {mark.placed.name}, {size}"


def _mind(cut: TableCut, units: Units) -> str:
    """Now and then, whether the edge is still square; on paper it is said once for all cuts."""
    return reminder(cut.step, units) if cut.turn > 1 and cut.turn % LOOK_EVERY == 1 else ""


def progress_words(cutting: Cutting, cloth: ClothCutting) -> str:
    """How far a cloth is cut: "cut 7 of 31, cloth plum"."""
    kit = f", kit {cloth.kit} of {cutting.kits}" if cutting.kits > 1 else ""
    total = len(cloth.order.cuts)
    number = min(cloth.cuts_done + 1, total)
    if cloth.next_cut is None:
        return f"cloth {cloth.order.name}{kit}: all cut"
    return f"cut {number} of {total}, cloth {cloth.order.name}{kit}"


def sheet_words(order: Order, cut: TableCut) -> str:
    """Which piece of cloth a cut is made on."""
    return next(one.title for one in order.sheets if one.sheet == cut.step.sheet)


def to_buy(order: Order) -> str:
    """What an order laid again wants bought, in one sentence."""
    if order.bought == Fraction(0):
        return f"What is left of {order.name} is enough: nothing more is to be bought."
    return f"What is left of {order.name} is not enough: buy {order.sale} more of {order.name}."
