"""Whether rectangles can be cut apart edge to edge; for lays that others made.

Shares no code with the cut order or the checker.
"""

from __future__ import annotations

from collections.abc import Sequence

Box = tuple[int, int, int, int]  # x, y, across, along


def is_guillotine(boxes: Sequence[Box]) -> bool:
    """Whether cuts, each from edge to edge of the cloth in hand, free every box.

    >>> is_guillotine([(0, 0, 2, 1), (0, 1, 2, 1)])
    True

    Five boxes in a pinwheel cannot be cut apart:

    >>> is_guillotine([(0, 0, 2, 1), (2, 0, 1, 2), (1, 2, 2, 1), (0, 1, 1, 2), (1, 1, 1, 1)])
    False
    """
    waiting = [list(boxes)]
    while waiting:
        section = waiting.pop()
        if len(section) > 1:
            halves = _cut(section, 0) or _cut(section, 1)
            if halves is None:
                return False
            waiting += halves
    return True


def _cut(section: list[Box], side: int) -> tuple[list[Box], list[Box]] | None:
    """The section in two, if some straight line crosses no box; any such line will do."""
    ordered = sorted(section, key=lambda box: box[side])
    reach = ordered[0][side] + ordered[0][side + 2]
    for index, box in enumerate(ordered[1:], 1):
        if box[side] >= reach:
            return ordered[:index], ordered[index:]
        reach = max(reach, box[side] + box[side + 2])
    return None
