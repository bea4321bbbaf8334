"""The cut order: edge-to-edge cuts in a sequence that a person can follow.

The bolt is first cut crosswise from its straightened end; then each slab is cut
in turn, all slabs of one stage before the next stage, those that need the same
ruler settings one after the other.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from core.lay.lay import BOLT, Cut, Direction, Offcut, Placement, Rect, Sheet
from core.lay.slabs import Box, Slab, slabs
from core.lengths import Inches

# The narrowest offcut worth keeping, either way (common practice, no source).
WORTH_KEEPING = Fraction(2)


def cut_order(
    sheet: Sheet, cloth: Rect, placements: Sequence[Placement]
) -> tuple[tuple[Cut, ...], tuple[Offcut, ...]]:
    """The cuts that take the sheet apart into `placements`, and what is left to keep.

    Raises `core.lay.slabs.NotGuillotine` if no edge-to-edge cuts do so.
    """
    things = [(_box(placed.rect), placed) for placed in placements]
    tree = slabs(_box(cloth), things, crosswise_first=sheet.on == BOLT)
    return tuple(_cuts(sheet, tree)), tuple(_offcuts(sheet, tree))


def _box(rect: Rect) -> Box:
    return (rect.x, rect.y, rect.across, rect.along)


def _rect(box: Box) -> Rect:
    return Rect(*(Fraction(measure) for measure in box))


def _cuts(sheet: Sheet, tree: Slab[Placement]) -> Iterator[Cut]:
    stage = [tree]
    while stage:
        for slab in sorted(stage, key=_settings):
            yield from _cuts_of(sheet, slab)
        stage = [part for slab in stage for part in slab.parts]


def _settings(slab: Slab[Placement]) -> tuple[object, ...]:
    axis = 3 if slab.direction is Direction.CROSSWISE else 2
    return tuple(part.box[axis] for part in slab.parts)


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
