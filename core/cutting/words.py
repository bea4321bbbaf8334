"""A cut at the table in words: what to measure, how the cloth lies, what falls off."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from core.cloth_names import told_cloth, told_sheet
from core.cutting.cuts import TableCut
from core.cutting.cutting import ClothCutting, Cutting
from core.cutting.order import Order
from core.language import marked, told
from core.lay.lay import Direction, Sheet
from core.lengths import Units, show, show_size
from core.part_names import told_part
from core.steps import CLOTH, Becomes, Fall, reminder
from core.table import Table

LOOK_EVERY: Final = 3  # cuts; as the cut order on paper
_FOLDS: Final = (
    "",
    marked("Fold it once, selvage to selvage."),
    marked("Fold it twice, selvage to selvage."),
)


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
    return told("the cloth") if name == CLOTH else told_cloth(name)


def _do(cut: TableCut, units: Units) -> str:
    by, source = show(cut.step.measure, units), source_name(cut.step.source)
    if cut.step.straightening:
        return told("Straighten the cut end: trim about {by} off, selvage to selvage.", by=by)
    if cut.step.direction is Direction.CROSSWISE:
        return told("Cut {source} across, {by} from its straight end.", source=source, by=by)
    return told("Cut {source} along the grain, {by} from its near edge.", source=source, by=by)


def _hold(cut: TableCut, table: Table) -> str:
    held = cut.alone.hold(table)
    folded = told(_FOLDS[held.folds])
    if held.moves == 1:
        return folded
    ruler = told("Lay the ruler {count} times along the cut.", count=held.moves)
    return f"{folded} {ruler}".strip()


def _gives(order: Order, cut: TableCut, units: Units) -> Iterator[str]:
    if cut.step.straightening:
        yield told("The raw end is waste.")
        return
    yield told("Off comes {piece}.", piece=_fallen(order, cut.off, units))
    if cut.rest is None:
        yield told(
            "Go on with what is left of {source}, {size}.",
            source=source_name(cut.step.source),
            size=show_size(cut.left.across, cut.left.along, units),
        )
    elif cut.rest.becomes is Becomes.WASTE:
        yield told("What is left is waste.")
    else:
        yield told("Left is {piece}.", piece=_fallen(order, cut.rest, units))


def _fallen(order: Order, fall: Fall, units: Units) -> str:
    """A piece with its letter and name, or what else it is, with its size."""
    size = show_size(fall.rect.across, fall.rect.along, units)
    if fall.becomes is Becomes.WASTE:
        return told("waste")
    if fall.becomes is Becomes.OFFCUT:
        return told("an offcut to keep, {size}", size=size)
    if fall.becomes is Becomes.SECTION:
        return told(
            "{section}, {size}, to be cut further", section=told_cloth(fall.label), size=size
        )
    mark = next(mark for mark in order.pieces if mark.label == fall.label)
    return f"{fall.label}, {told_part(mark.placed.name)}, {size}"


def _mind(cut: TableCut, units: Units) -> str:
    """Now and then, whether the edge is still square; on paper it is said once for all cuts."""
    return reminder(cut.step, units) if cut.turn > 1 and cut.turn % LOOK_EVERY == 1 else ""


def progress_words(cutting: Cutting, cloth: ClothCutting) -> str:
    """How far a cloth is cut: "cut 7 of 31, cloth plum"."""
    fabric, total = cloth.order.name, len(cloth.order.cuts)
    kit = {"kit": cloth.kit, "kits": cutting.kits} if cutting.kits > 1 else {}
    if cloth.next_cut is None:
        said = marked("cloth {fabric}: all cut")
        of_kit = marked("cloth {fabric}, kit {kit} of {kits}: all cut")
        return told(of_kit if kit else said, fabric=fabric, **kit)
    said = marked("cut {number} of {total}, cloth {fabric}")
    of_kit = marked("cut {number} of {total}, cloth {fabric}, kit {kit} of {kits}")
    return told(
        of_kit if kit else said, number=cloth.cuts_done + 1, total=total, fabric=fabric, **kit
    )


def cloth_of_kit(cutting: Cutting, cloth: ClothCutting) -> str:
    """What a cloth is called, with its kit where there are several."""
    if cutting.kits == 1:
        return cloth.order.name
    return told("{fabric}, kit {kit}", fabric=cloth.order.name, kit=cloth.kit)


def sheet_words(order: Order, sheet: Sheet, units: Units) -> str:
    """Which piece of cloth a sheet of the order is, its size in `units`."""
    one = next(one for one in order.sheets if one.sheet == sheet)
    size = show_size(one.rect.across, one.rect.along, units)
    return one.title or told_sheet(order.name, one.called, size, sheet.copy, one.equal)


def to_buy(order: Order) -> str:
    """What an order laid again wants bought, in one sentence."""
    if order.bought == Fraction(0):
        return told(
            "What is left of {fabric} is enough: nothing more is to be bought.", fabric=order.name
        )
    return told(
        "What is left of {fabric} is not enough: buy {length} more of {fabric}.",
        fabric=order.name,
        length=order.sale,
    )
