"""A found lay put in order, without changing what it costs.

Slabs move within their parent: equal ones together and the largest first, waste
to the far end, where it makes one piece. A crosswise segment with only waste
beside it in its row keeps the whole row: cutting the rest off would leave a
scrap as narrow as the strip.
"""

from __future__ import annotations

from collections.abc import Sequence

from core.lay.lay import Direction
from core.lay.slabs import Measure, Slab, slabs
from core.lay.ticks import Laid, Task

Leaf = Slab[Laid]


def tidied(task: Task, laid: Sequence[Laid], used: int) -> tuple[Laid, ...]:
    """The same things laid in a tidier order, board by board."""
    kept: list[Laid] = []
    for number in range(task.bolt + 1):
        things = [
            ((one.x, one.y, one.across, one.along), one) for one in laid if one.board == number
        ]
        if not things:
            continue
        across, along = task.width, used
        if number < task.bolt:
            across, along = task.boards[number].across, task.boards[number].along
        tree = slabs((0, 0, across, along), things, crosswise_first=number == task.bolt)
        _lay(tree, len(task.sizes), 0, 0, kept)
    return tuple(kept)


def _lay(slab: Leaf, sizes: int, x: Measure, y: Measure, kept: list[Laid]) -> None:
    """Lay the tree again with its near corner at (x, y)."""
    if slab.thing is not None:
        kept.append(slab.thing._replace(x=int(x), y=int(y)))
        return
    crosswise = slab.direction is Direction.CROSSWISE
    parts = sorted(
        (part for part in slab.parts if not part.waste),
        key=lambda part: _rank(part, sizes, crosswise=crosswise),
    )
    spare = sum(part.box[2] for part in slab.parts if part.waste)
    for part in parts:
        _lay(part, sizes, x, y, kept)
        if crosswise:
            y += part.box[3]
        else:
            x += part.box[2]
    if parts and not crosswise and spare and _is_row(parts[-1], sizes):
        kept[-1] = kept[-1]._replace(across=int(kept[-1].across + spare))


def _rank(part: Leaf, sizes: int, *, crosswise: bool) -> tuple[object, ...]:
    """Long slabs first; beside each other, a run's segment last, next to the waste."""
    size = part.box[3] if crosswise else part.box[2]
    return (not crosswise and _is_row(part, sizes), -size, _first(part))


def _first(part: Leaf) -> int:
    while part.thing is None:
        part = next(inner for inner in part.parts if not inner.waste)
    return part.thing.item


def _is_row(part: Leaf, sizes: int) -> bool:
    """Whether this is one crosswise segment of a run, as high as its slab."""
    return part.thing is not None and part.thing.item >= sizes and not part.thing.turned
