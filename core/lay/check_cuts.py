"""The cuts carried out: a simulator that knows only rectangles and cuts.

The cloth in hand is a heap of rectangles, at first the sheets. A cut takes one
of them, whole, and puts two back. In the end every thing laid must be in the
heap, exactly, and so must every offcut; what remains is waste.
"""

from __future__ import annotations

from collections.abc import Iterator

from core.lay.fault import Fault, FaultKind
from core.lay.lay import ClothLay, Cut, Direction, Rect, Sheet

# Each rectangle with the stage, and the direction, of the cut that made it.
InHand = dict[tuple[Sheet, Rect], tuple[int, Direction | None]]


def cutting_faults(laid: ClothLay, stages: int | None = None) -> Iterator[Fault]:
    """What goes wrong when the cuts of one cloth's lay are made in order."""
    in_hand: InHand = dict.fromkeys(laid.sheets, (0, None))
    for number, cut in enumerate(laid.cuts, 1):
        if (cut.sheet, cut.region) not in in_hand:
            yield Fault(
                FaultKind.CUTS,
                (laid.name,),
                f"cut {number} of {laid.name} is of a rectangle that is not in hand",
            )
        elif not _strictly_inside(cut):
            yield Fault(
                FaultKind.CUTS, (laid.name,), f"cut {number} of {laid.name} misses its rectangle"
            )
        else:
            stage, direction = in_hand.pop((cut.sheet, cut.region))
            stage += cut.direction is not direction
            in_hand |= {(cut.sheet, half): (stage, cut.direction) for half in _halves(cut)}
            if stages is not None and stage > stages:
                yield Fault(
                    FaultKind.STAGES,
                    (laid.name,),
                    f"cut {number} of {laid.name} is of stage {stage}, and {stages} are allowed",
                )
    yield from _left_in_hand(laid, in_hand)


def _left_in_hand(laid: ClothLay, in_hand: InHand) -> Iterator[Fault]:
    for placed in laid.placements:
        if (placed.sheet, placed.rect) not in in_hand:
            yield Fault(
                FaultKind.CUTS,
                (placed.name,),
                f"the cuts do not free {placed.name} {placed.copy} exactly",
            )
        in_hand.pop((placed.sheet, placed.rect), None)
    for offcut in laid.offcuts:
        if (offcut.sheet, offcut.rect) not in in_hand:
            yield Fault(FaultKind.OFFCUT, (laid.name,), f"{laid.name}: an offcut is not left over")
        in_hand.pop((offcut.sheet, offcut.rect), None)


def _strictly_inside(cut: Cut) -> bool:
    region = cut.region
    if cut.direction is Direction.CROSSWISE:
        return region.y < cut.at < region.y + region.along
    return region.x < cut.at < region.x + region.across


def _halves(cut: Cut) -> tuple[Rect, Rect]:
    x, y, across, along = cut.region.x, cut.region.y, cut.region.across, cut.region.along
    if cut.direction is Direction.CROSSWISE:
        first = cut.at - y
        return Rect(x, y, across, first), Rect(x, cut.at, across, along - first)
    first = cut.at - x
    return Rect(x, y, first, along), Rect(cut.at, y, across - first, along)
