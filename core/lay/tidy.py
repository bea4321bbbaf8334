"""A found lay put in order, without changing what it costs.

Slabs move within their parent: equal ones together and the largest first, waste
to the far end, where it makes one piece. A segment of a joined run with only
waste after it in its own narrow row or column keeps all of that: cutting the
rest off would leave a scrap as narrow as the strip.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from fractions import Fraction
from typing import Final

from core.lay.lay import Direction
from core.lay.slabs import Box, Measure, Slab, slabs
from core.lay.ticks import Laid, Task

Leaf = Slab[Laid]
NARROW: Final = Fraction(4)  # inches; our default: an offcut no wider is hardly worth keeping


def tidied(task: Task, laid: Sequence[Laid], used: int) -> tuple[Laid, ...]:
    """The same things laid in a tidier order, board by board."""
    kept: list[Laid] = []
    growing = _growing(task, laid)
    for number, board in enumerate(task.boards):
        things = _on(number, laid)
        if things:
            tree = slabs((0, 0, board.across, board.along), things)
            _lay(tree, growing, 0, 0, kept)
    if used:
        _lay(bolt_tree(task, laid, used), growing, 0, 0, kept)
    return tuple(kept)


def bolt_tree(task: Task, laid: Sequence[Laid], used: int) -> Leaf:
    """The cut tree of what lies on the bolt."""
    box = (0, 0, task.width, used)
    return slabs(box, _on(task.bolt, laid), crosswise_first=True)


def _on(board: int, laid: Sequence[Laid]) -> list[tuple[Box, Laid]]:
    return [((one.x, one.y, one.across, one.along), one) for one in laid if one.board == board]


def _growing(task: Task, laid: Sequence[Laid]) -> frozenset[int]:
    """The runs whose segments may grow: narrow ones that are joined, and so trimmed later."""
    segments = Counter((one.item, one.run_copy) for one in laid if one.item >= len(task.sizes))
    first = len(task.sizes)
    return frozenset(
        item
        for (item, _), count in segments.items()
        if count > 1 and task.inches(task.strips[item - first].strip) <= NARROW
    )


def _lay(slab: Leaf, growing: frozenset[int], x: Measure, y: Measure, kept: list[Laid]) -> None:
    """Lay the tree again with its near corner at (x, y)."""
    if slab.thing is not None:
        kept.append(slab.thing._replace(x=int(x), y=int(y)))
        return
    crosswise = slab.direction is Direction.CROSSWISE
    parts = sorted(
        (part for part in slab.parts if not part.waste),
        key=lambda part: _rank(part, growing, crosswise=crosswise),
    )
    spare = sum(part.box[3 if crosswise else 2] for part in slab.parts if part.waste)
    for part in parts:
        _lay(part, growing, x, y, kept)
        if crosswise:
            y += part.box[3]
        else:
            x += part.box[2]
    if parts and spare and _grows(parts[-1], growing, lengthwise=crosswise):
        last, more = kept[-1], int(spare)
        kept[-1] = (
            last._replace(along=last.along + more)
            if crosswise
            else last._replace(across=last.across + more)
        )


def _rank(part: Leaf, growing: frozenset[int], *, crosswise: bool) -> tuple[object, ...]:
    """Long slabs first; a segment that may grow last, next to the waste."""
    size = part.box[3] if crosswise else part.box[2]
    return (_grows(part, growing, lengthwise=crosswise), -size, _first(part))


def _first(part: Leaf) -> int:
    while part.thing is None:
        part = next(inner for inner in part.parts if not inner.waste)
    return part.thing.item


def _grows(part: Leaf, growing: frozenset[int], *, lengthwise: bool) -> bool:
    """Whether this is one segment, along its slab's way, that may take the waste after it."""
    thing = part.thing
    return thing is not None and thing.item in growing and thing.turned == lengthwise
