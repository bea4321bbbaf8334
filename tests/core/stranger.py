"""A stranger at the cutting table: follows the steps and knows rectangles, nothing else.

She is told what each piece of cloth measures. She reads the name of what to cut,
the way, the measure, how often and what comes off; never a place on the cloth.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from core.lay.lay import Direction, Sheet
from core.plan import FabricPlan, Plan
from core.steps import CLOTH, Becomes, CutStep

Size = tuple[Fraction, Fraction]  # across, along


class CannotCut(AssertionError):
    """The steps do not work on real cloth."""


def cut_out(cloths: dict[Sheet, Size], steps: Iterable[CutStep]) -> dict[str, Size]:
    """The size of every labelled piece that the steps give, cut from `cloths`."""
    hand = {(sheet, CLOTH): size for sheet, size in cloths.items()}
    pieces: dict[str, Size] = {}
    for number, step in enumerate(steps, start=1):
        if step.number != number:
            raise CannotCut(f"step {step.number} comes where step {number} should")
        _follow(step, hand, pieces)
    return pieces


def _follow(step: CutStep, hand: dict[tuple[Sheet, str], Size], pieces: dict[str, Size]) -> None:
    size = hand.pop((step.sheet, step.source), None)
    if size is None:
        raise CannotCut(f"step {step.number}: there is no {step.source}")
    if not step.straightening and (step.region.across, step.region.along) != size:
        raise CannotCut(f"step {step.number}: {step.source} has another size than is said")
    falls = list(step.falls)
    if not step.times <= len(falls) <= step.times + 1:
        raise CannotCut(f"step {step.number}: {step.times} cuts cannot give {len(falls)} things")
    for _ in range(step.times):
        off, size = _cut(size, step)
        fall = falls.pop(0)
        if not step.straightening:
            _lay_down(step.sheet, fall.becomes, fall.label, off, hand, pieces)
    if falls:
        _lay_down(step.sheet, falls[0].becomes, falls[0].label, size, hand, pieces)
    else:
        hand[step.sheet, step.source] = size


def _cut(size: Size, step: CutStep) -> tuple[Size, Size]:
    """What comes off at the near edge, and what is left in hand."""
    across, along = size
    room = along if step.direction is Direction.CROSSWISE else across
    if not 0 < step.measure < room:
        raise CannotCut(f"step {step.number}: {step.measure} cannot be cut off {room}")
    if step.direction is Direction.CROSSWISE:
        return (across, step.measure), (across, along - step.measure)
    return (step.measure, along), (across - step.measure, along)


def _lay_down(
    sheet: Sheet,
    becomes: Becomes,
    label: str,
    size: Size,
    hand: dict[tuple[Sheet, str], Size],
    pieces: dict[str, Size],
) -> None:
    if becomes is Becomes.SECTION:
        if any(name == label for _, name in hand):
            raise CannotCut(f"there are two of {label}")
        hand[sheet, label] = size
    elif becomes is Becomes.PIECE:
        if label in pieces:
            raise CannotCut(f"{label} comes off twice")
        pieces[label] = size


def cloths_of(fabric: FabricPlan) -> dict[Sheet, Size]:
    """The cloth as it lies on the table: washed, the bolt's end not straightened yet."""
    raw = {
        sheet: (rect.across, rect.along + (fabric.fabric.straightening if sheet == Sheet() else 0))
        for sheet, rect in fabric.lay.sheets
    }
    uncut = [step.straightening for step in fabric.steps]
    if Sheet() in raw and not any(uncut):
        across, along = raw[Sheet()]
        raw[Sheet()] = across, along - fabric.fabric.straightening
    return raw


def pieces_of(plan: Plan, fabric: FabricPlan) -> dict[str, Size]:
    """Every label that the plan has on a fabric, with the size it is drawn in."""
    return {
        plan.label(placed): (placed.rect.across, placed.rect.along)
        for placed in fabric.lay.placements
    }


def whole_cloths(plan: Plan, fabric: FabricPlan) -> dict[str, Size]:
    """Pieces that take a whole piece of cloth, and so need no cut."""
    sheets = dict(fabric.lay.sheets)
    return {
        plan.label(placed): (placed.rect.across, placed.rect.along)
        for placed in fabric.lay.placements
        if placed.rect == sheets[placed.sheet]
    }
