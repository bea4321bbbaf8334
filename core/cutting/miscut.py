"""What lies on the table when something went wrong: cloth of another size, a spoilt piece,
a strip of the wrong width.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final, TypeAlias

from core.cutting.cuts import parted
from core.cutting.order import Order
from core.cutting.progress import Bit, OnTable, on_table
from core.lay.lay import THE_BOLT, Direction
from core.lengths import Inches, Units, show, show_size
from core.reading import LARGEST
from core.refusal import Refusal
from core.steps import Becomes

WRONG_STRIP: Final = "strip cut wrong"


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
        raise Refusal("bit", "there is no such cloth in hand; choose one that is")
    for path, length in (("across", miscut.across), ("along", miscut.along)):
        if not 0 < length <= LARGEST:
            raise Refusal(path, "write what it measures, more than 0")
    bit = table.hand[miscut.bit]
    if (bit.rect.across, bit.rect.along) == (miscut.across, miscut.along):
        raise Refusal("across", "that is the size that it should have; write what it measures")
    real = replace(bit, rect=replace(bit.rect, across=miscut.across, along=miscut.along))
    hand = (*table.hand[: miscut.bit], real, *table.hand[miscut.bit + 1 :])
    return replace(table, hand=hand)


def _spoilt(table: OnTable, miscut: Spoilt) -> OnTable:
    good = tuple(mark for mark in table.pieces if mark.label != miscut.label)
    if len(good) == len(table.pieces):
        raise Refusal("label", f'no piece "{miscut.label}" is cut yet; choose one that is')
    return replace(table, pieces=good)


def _wrong_width(order: Order, done: int, table: OnTable, miscut: WrongWidth) -> OnTable:
    """The last cut undone, and made where it really went."""
    if not may_be_wrong(order, done):
        raise Refusal("width", "nothing was cut off yet; say what else went wrong")
    cut = order.cuts[done - 1]
    crosswise = cut.step.direction is Direction.CROSSWISE
    whole = cut.region.along if crosswise else cut.region.across
    if not 0 < miscut.width < whole:
        raise Refusal(
            "width",
            "the cloth in hand was {whole}; write what came off, less than that",
            whole=whole,
        )
    if miscut.width == cut.step.measure:
        raise Refusal("width", "that is the width that it should have; write what it measures")
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


def told(order: Order, done: int, miscut: Miscut, units: Units) -> str:
    """What went wrong, as one sentence."""
    match miscut:
        case OtherSize(number, across, along):
            bit = on_table(order, done).hand[number]
            name = (
                f"The {bit.name}" if not bit.name.startswith("section") else bit.name.capitalize()
            )
            return f"{name} measured {show_size(across, along, units)}."
        case Spoilt(label):
            return f"{label} was spoilt or lost."
        case WrongWidth(width, keep):
            cut = order.cuts[done - 1]
            name = cut.off.label if cut.off.becomes is Becomes.PIECE else f"the {cut.off.label}"
            use = "cut further" if keep else "lost"
            said = f"{show(width, units)} instead of {show(cut.step.measure, units)}"
            return f"{name[0].upper()}{name[1:]} came off {said} and is {use}."
