"""The cut order: edge-to-edge cuts in a sequence that a person can follow.

The bolt is first cut crosswise from its straightened end; then each slab is cut
in turn, all slabs of one stage before the next stage, those that need the same
ruler setting one after the other.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from core.lay.lay import BOLT, Cut, Direction, Offcut, Placement, Rect, Sheet
from core.lay.slabs import Box, Measure, Slab, slabs
from core.lengths import Inches

# The narrowest offcut worth keeping, either way (common practice, no source).
WORTH_KEEPING = Fraction(2)


def cut_order(
    sheet: Sheet, cloth: Rect, placements: Sequence[Placement], *, few_stages: bool = False
) -> tuple[tuple[Cut, ...], tuple[Offcut, ...]]:
    """The cuts that take the sheet apart into `placements`, and what is left to keep.

    With `few_stages` the direction of the cuts changes as seldom as it can.
    Raises `core.lay.slabs.NotGuillotine` if no edge-to-edge cuts do so.
    """
    things = [(_box(placed.rect), placed) for placed in placements]
    tree = slabs(_box(cloth), things, crosswise_first=sheet.on == BOLT, few_stages=few_stages)
    return tuple(_cuts(sheet, tree)), tuple(_offcuts(sheet, tree))


def _box(rect: Rect) -> Box:
    return (rect.x, rect.y, rect.across, rect.along)


def _rect(box: Box) -> Rect:
    return Rect(*(Fraction(measure) for measure in box))


def _cuts(sheet: Sheet, tree: Slab[Placement]) -> Iterator[Cut]:
    stage, setting = [tree], None
    while stage:
        for slab in _in_turn(stage, setting):
            for cut in _cuts_of(sheet, slab):
                setting = cut.measure
                yield cut
        stage = [part for slab in stage for part in slab.parts]


def _in_turn(
    stage: Sequence[Slab[Placement]], setting: Measure | None
) -> Iterator[Slab[Placement]]:
    """The slabs of one stage, next always one that is cut at the setting that stands."""
    left = sorted((slab for slab in stage if slab.parts), key=_settings)
    while left:
        slab = next((slab for slab in left if _settings(slab)[0] == setting), left[0])
        left.remove(slab)
        setting = _settings(slab)[-1]
        yield slab


def _settings(slab: Slab[Placement]) -> tuple[Measure, ...]:
    axis = 3 if slab.direction is Direction.CROSSWISE else 2
    return tuple(part.box[axis] for part in slab.parts[:-1])


def _cuts_of(sheet: Sheet, slab: Slab[Placement]) -> Iterator[Cut]:
    """Cut the slab's parts off one by one, each measured from the edge just cut."""
    if slab.direction is None:
        return
    crosswise = slab.direction is Direction.CROSSWISE
    x, y, across, along = (Fraction(measure) for measure in slab.box)
    right, end = x + across, y + along
    for part in slab.parts[:-1]:
        region = Rect(x, y, right - x, end - y)
        if crosswise:
            y += part.box[3]
        else:
            x += part.box[2]
        yield Cut(sheet, region, slab.direction, y if crosswise else x)


def _offcuts(sheet: Sheet, slab: Slab[Placement]) -> Iterator[Offcut]:
    if slab.waste:
        rect = _rect(slab.box)
        if _worth_keeping(rect.across, rect.along):
            yield Offcut(sheet, rect)
    for part in slab.parts:
        yield from _offcuts(sheet, part)


def _worth_keeping(across: Inches, along: Inches) -> bool:
    return min(across, along) >= WORTH_KEEPING
