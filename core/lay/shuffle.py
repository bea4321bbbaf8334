"""The same lay with its slabs in another order, as often as one likes.

Any order of the slabs within a parent can be cut as well; where the waste comes
to lie differs, and a flaw may then fall into it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from random import Random

from core.lay.lay import Direction
from core.lay.slabs import Box, Measure, Slab, slabs
from core.lay.ticks import Laid, Task

Leaf = Slab[Laid]


def shuffles(
    task: Task, laid: Sequence[Laid], rooms: Sequence[int], rng: Random
) -> Iterator[tuple[Laid, ...]]:
    """The lay in random orders, without end; each of `rooms` in turn is the bolt's length."""
    boxes = dict(enumerate((0, 0, board.across, board.along) for board in task.boards))
    hands = [_tree(boxes[number], number, laid) for number in boxes]
    bolts = [_tree((0, 0, task.width, room), task.bolt, laid) for room in rooms]
    while True:
        for bolt in bolts:
            trees = [tree for tree in (*hands, bolt) if tree is not None]
            yield tuple(one for tree in trees for one in _again(tree, 0, 0, rng))


def _tree(box: Box, board: int, laid: Sequence[Laid]) -> Leaf | None:
    things = [((one.x, one.y, one.across, one.along), one) for one in laid if one.board == board]
    return slabs(box, things, crosswise_first=True) if things else None


def _again(slab: Leaf, x: Measure, y: Measure, rng: Random) -> Iterator[Laid]:
    """The slab with its near corner at (x, y), its parts in any order."""
    if slab.thing is not None:
        yield slab.thing._replace(x=int(x), y=int(y))
    parts = list(slab.parts)
    rng.shuffle(parts)
    for part in parts:
        yield from _again(part, x, y, rng)
        if slab.direction is Direction.CROSSWISE:
            y += part.box[3]
        else:
            x += part.box[2]
