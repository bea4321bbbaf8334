"""What has its place before anything is laid: pins, and pieces that hold a motif.

A pin says exactly where; a motif only what its piece must contain, so that there
are several places to choose from. An *arrangement* gives every such thing one
place: none overlaps another or a flaw, and edge-to-edge cuts can free them all.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import islice
from typing import NamedTuple, TypeAlias

from core.fabric import Fabric
from core.lay.lay import BOLT, Direction, Rect, Sheet
from core.lay.partition import overlap
from core.lay.problem import Cloth, LayProblem, Motif, Piece, Pin, Run
from core.lay.slabs import Box, NotGuillotine, Slab, slabs
from core.lengths import Inches

# So many ways to place the motifs are looked at for one that can be cut.
MOST_ARRANGEMENTS = 400


class Placed(NamedTuple):
    """A thing in its place. `copy` None: any copy; `run_copy` 0: it is a piece.

    `pinned`: it lies there because it must, not because of a motif.
    """

    name: str
    sheet: Sheet
    rect: Rect
    turned: bool = False
    copy: int | None = None
    run_copy: int = 0
    pinned: bool = False

    @property
    def length(self) -> Inches:
        """How long a segment is."""
        return self.rect.along if self.turned else self.rect.across


Arrangement: TypeAlias = tuple[Placed, ...]


def arrangements(problem: LayProblem, cloth: Cloth) -> Iterator[Arrangement]:
    """Places for all that is pinned to this cloth or holds a motif of it, nearest the end first."""
    every: tuple[Piece | Run, ...] = (*problem.pieces, *problem.runs)
    parts = {part.name: part for part in every}
    pinned = tuple(
        sorted(
            (
                pinned_at(pin, parts[pin.name])
                for pin in problem.pins
                if cloth_of(pin, parts[pin.name]) == cloth.name
            ),
            key=_from_the_end,
        )
    )
    own = (motif for motif in problem.motifs if parts[motif.name].cloth == cloth.name)
    motifs = sorted(own, key=_from_the_end)
    flaws = [(flaw.sheet, flaw.rect) for flaw in problem.flaws if flaw.cloth == cloth.name]
    ways = [list(_holding(motif, parts[motif.name], cloth, pinned)) for motif in motifs]
    for arrangement in islice(_combined(pinned, ways, flaws), MOST_ARRANGEMENTS):
        if can_be_cut(arrangement, cloth, problem.stages):
            yield arrangement


def _from_the_end(one: Placed | Motif) -> tuple[object, ...]:
    """A key that sorts by place, so that the order in a file decides nothing."""
    return one.sheet.on, one.sheet.copy, one.rect.y, one.rect.x, one.name


def cloth_of(pin: Pin, part: Piece | Run) -> str:
    """The cloth that a pin is on."""
    return part.cloth if pin.cloth is None else pin.cloth


def pinned_at(pin: Pin, part: Piece | Run) -> Placed:
    """The place that a pin gives."""
    if isinstance(part, Run):
        sides = (pin.length or Fraction(0), part.strip)
    else:
        sides = (part.across, part.along)
    across, along = sides[::-1] if pin.turned else sides
    run_copy = pin.run_copy if isinstance(part, Run) else 0
    return Placed(
        pin.name, pin.sheet, Rect(pin.x, pin.y, across, along), pin.turned, pin.copy, run_copy, True
    )


def _combined(
    placed: Arrangement, ways: Sequence[Sequence[Placed]], flaws: Sequence[tuple[Sheet, Rect]]
) -> Iterator[Arrangement]:
    """One of each motif's ways, none of which meets another or a flaw."""
    if not ways:
        yield placed
        return
    for way in ways[0]:
        others = [(one.sheet, one.rect) for one in placed]
        if not any(meet(way.sheet, way.rect, *other) for other in (*others, *flaws)):
            yield from _combined((*placed, way), ways[1:], flaws)


def _holding(
    motif: Motif, part: Piece | Run, cloth: Cloth, pinned: Arrangement
) -> Iterator[Placed]:
    """The places of a piece that contain the motif: flush with the sheet, pins, or the motif."""
    if not isinstance(part, Piece):
        return
    sides = [(part.across, part.along, False)]
    if part.may_turn and part.across != part.along:
        sides.append((part.along, part.across, True))
    width, end = sheet_size(cloth, motif.sheet) or (cloth.usable_width, None)
    near = [one.rect for one in pinned if one.sheet == motif.sheet]
    for across, along, turned in sides:
        xs = _starts(motif.rect.x, motif.rect.across, across, width)
        ys = _starts(motif.rect.y, motif.rect.along, along, end)
        if xs is None or ys is None:
            continue
        beside = [at for one in near for at in (one.right, one.x - across)]
        behind = [at for one in near for at in (one.end, one.y - along)]
        for y in _tried(ys, behind):
            for x in _tried(xs, beside):
                yield Placed(motif.name, motif.sheet, Rect(x, y, across, along), turned)


def _starts(
    at: Inches, needs: Inches, size: Inches, whole: Inches | None
) -> tuple[Inches, Inches] | None:
    """From where to where a thing may start that contains [at, at + needs]; None if it cannot."""
    low = max(Fraction(0), at + needs - size)
    high = at if whole is None else min(at, whole - size)
    return (low, high) if low <= high else None


def _tried(span: tuple[Inches, Inches], others: Sequence[Inches]) -> list[Inches]:
    low, high = span
    return [low, high, *sorted({at for at in others if low < at < high})] if low < high else [low]


def sheet_size(cloth: Cloth | Fabric, sheet: Sheet) -> tuple[Inches, Inches] | None:
    """Width and length of a piece on hand; None for the bolt, and for a sheet that is not there."""
    for index, hand in enumerate(cloth.on_hand):
        if sheet.on == f"on_hand[{index}]" and 1 <= sheet.copy <= hand.count:
            return hand.across, hand.along
    return None


def meet(sheet: Sheet, rect: Rect, other_sheet: Sheet, other: Rect) -> bool:
    """Whether two rectangles overlap on one sheet."""
    return sheet == other_sheet and overlap(box_of(rect), box_of(other))


def box_of(rect: Rect) -> Box:
    return rect.x, rect.y, rect.across, rect.along


def can_be_cut(arrangement: Arrangement, cloth: Cloth, stages: int | None) -> bool:
    """Whether edge-to-edge cuts in so many stages free all of it."""
    try:
        found = list(trees(cloth, arrangement, end_of(arrangement), few_stages=True))
    except NotGuillotine:
        return False
    # The bolt is cut across behind it all; that is a stage more unless it begins so.
    return stages is None or all(
        tree.stages + (tree.direction is not Direction.CROSSWISE) <= stages for tree in found
    )


def trees(
    cloth: Cloth, placed: Sequence[Placed], bolt: Inches, *, few_stages: bool = False
) -> Iterator[Slab[Placed]]:
    """The cut tree of each sheet with something on it; the bolt is `bolt` long."""
    for sheet in sorted({one.sheet for one in placed}, key=lambda sheet: (sheet.on, sheet.copy)):
        on_sheet = [(box_of(one.rect), one) for one in placed if one.sheet == sheet]
        across, along = sheet_size(cloth, sheet) or (cloth.usable_width, bolt)
        box = Fraction(0), Fraction(0), across, along
        yield slabs(box, on_sheet, crosswise_first=sheet.on == BOLT, few_stages=few_stages)


def end_of(arrangement: Arrangement) -> Inches:
    """Where the last thing on the bolt ends."""
    return max((one.rect.end for one in arrangement if one.sheet.on == BOLT), default=Fraction(0))
