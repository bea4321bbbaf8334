"""What lies on the table when something went wrong: cloth of another size, a spoilt piece,
a strip of the wrong width.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final, TypeAlias

from core.cloth_names import told_cloth
from core.cutting.cuts import parted
from core.cutting.order import Order
from core.cutting.progress import Bit, OnTable, on_table
from core.language import marked, told
from core.lay.lay import THE_BOLT, Direction
from core.lengths import Inches, Units, show, show_size
from core.reading import LARGEST
from core.refusal import Refusal
from core.steps import Becomes

WRONG_STRIP: Final = "strip cut wrong"  # told by `core.cloth_names`


@dataclass(frozen=True, slots=True)
class OtherSize:
    """The `bit`-th piece of cloth in hand measures this in truth."""

    bit: int
    across: Inches
    along: Inches


@dataclass(frozen=True, slots=True)
class Spoilt:
    """The piece with this label is spoilt or lost."""

    label: str


@dataclass(frozen=True, slots=True)
class WrongWidth:
    """What was cut off last measures `width` in truth; `keep`: it may be cut further."""

    width: Inches
    keep: bool


Miscut: TypeAlias = OtherSize | Spoilt | WrongWidth


def on_table_after(order: Order, done: int, miscut: Miscut) -> OnTable:
    """What really lies there. Raises `Refusal` whose path is the miscut's field."""
    table = on_table(order, done)
    match miscut:
        case OtherSize():
            return _other_size(table, miscut)
        case Spoilt():
            return _spoilt(table, miscut)
        case WrongWidth():
            return _wrong_width(order, done, table, miscut)


def _other_size(table: OnTable, miscut: OtherSize) -> OnTable:
    if not 0 <= miscut.bit < len(table.hand):
        raise Refusal("bit", told("there is no such cloth in hand; choose one that is"))
    for path, length in (("across", miscut.across), ("along", miscut.along)):
        if not 0 < length <= LARGEST:
            sentence = told("write what it measures, more than 0 and at most {largest}")
            raise Refusal(path, sentence, largest=LARGEST)
    bit = table.hand[miscut.bit]
    if (bit.rect.across, bit.rect.along) == (miscut.across, miscut.along):
        sentence = told("that is the size that it should have; write what it measures")
        raise Refusal("across", sentence)
    real = replace(bit, rect=replace(bit.rect, across=miscut.across, along=miscut.along))
    hand = (*table.hand[: miscut.bit], real, *table.hand[miscut.bit + 1 :])
    return replace(table, hand=hand)


def _spoilt(table: OnTable, miscut: Spoilt) -> OnTable:
    good = tuple(mark for mark in table.pieces if mark.label != miscut.label)
    if len(good) == len(table.pieces):
        raise Refusal(
            "label", told('no piece "{piece}" is cut yet; choose one that is', piece=miscut.label)
        )
    return replace(table, pieces=good)


def _wrong_width(order: Order, done: int, table: OnTable, miscut: WrongWidth) -> OnTable:
    """The last cut undone, and made where it really went."""
    if not may_be_wrong(order, done):
        raise Refusal("width", told("nothing was cut off yet; say what else went wrong"))
    cut = order.cuts[done - 1]
    crosswise = cut.step.direction is Direction.CROSSWISE
    whole = cut.region.along if crosswise else cut.region.across
    if not 0 < miscut.width < whole:
        raise Refusal(
            "width",
            told("the cloth in hand was {whole}; write what came off, less than that"),
            whole=whole,
        )
    if miscut.width == cut.step.measure:
        sentence = told("that is the width that it should have; write what it measures")
        raise Refusal("width", sentence)
    off, rest = parted(cut.region, cut.step.direction, miscut.width)
    before = on_table(order, done - 1)
    source = Bit(cut.step.source, cut.step.sheet, cut.region)
    hand = [bit for bit in before.hand if bit != source]
    strip = Bit(WRONG_STRIP, cut.step.sheet, off)
    kept, lost = ([strip], []) if miscut.keep else ([], [strip])
    return OnTable(
        (*hand, replace(source, rect=rest), *kept), before.pieces, (*before.waste, *lost)
    )


def bolt_width(order: Order, done: int, miscut: Miscut) -> Inches:
    """How wide more of the bolt is taken to be: as narrow as the bolt in hand turned out."""
    usable = order.problem.cloths[0].usable_width
    if not isinstance(miscut, OtherSize):
        return usable
    bit = on_table(order, done).hand[miscut.bit]
    whole = bit.sheet == THE_BOLT and bit.rect.across == usable
    return min(usable, miscut.across) if whole else usable


def may_be_wrong(order: Order, done: int) -> bool:
    """Whether the last cut took off something that can have the wrong width."""
    return done > 0 and not order.cuts[done - 1].step.straightening


def what_happened(order: Order, done: int, miscut: Miscut, units: Units) -> str:
    """What went wrong, as one sentence."""
    match miscut:
        case OtherSize(number, across, along):
            bit = on_table(order, done).hand[number]
            return _measured_otherwise(bit.name, show_size(across, along, units))
        case Spoilt(label):
            return told("{piece} was spoilt or lost.", piece=label)
        case WrongWidth(width, keep):
            cut = order.cuts[done - 1]
            widths = {"real": show(width, units), "planned": show(cut.step.measure, units)}
            off = cut.off
            if off.becomes is Becomes.PIECE:
                return _piece_came_off(off.label, widths, keep=keep)
            return _cloth_came_off(told_cloth(off.label), widths, keep=keep)


def _measured_otherwise(name: str, size: str) -> str:
    said = told_cloth(name)
    if name.startswith("section"):
        return told("{section} measured {size}.", section=said[0].upper() + said[1:], size=size)
    return told("The {cloth} measured {size}.", cloth=said, size=size)


def _piece_came_off(label: str, widths: dict[str, str], *, keep: bool) -> str:
    said = (
        marked("{piece} came off {real} instead of {planned} and is cut further.")
        if keep
        else marked("{piece} came off {real} instead of {planned} and is lost.")
    )
    return told(said, piece=label, **widths)


def _cloth_came_off(name: str, widths: dict[str, str], *, keep: bool) -> str:
    said = (
        marked("The {cloth} came off {real} instead of {planned} and is cut further.")
        if keep
        else marked("The {cloth} came off {real} instead of {planned} and is lost.")
    )
    return told(said, cloth=name, **widths)
