"""Pieces of one length in so few rows: each row is completed in all ways that waste little.

In a given number of rows only so much width can be wasted. The widest piece that
is left begins a row, and every set of others that leaves no more than what may
still be wasted is tried beside it, the fullest first: bin completion (R. E. Korf,
"A new algorithm for optimal bin packing", AAAI 2002; from memory).
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import islice

Row = tuple[int, ...]
# A row is completed in at most so many ways.
MOST_WAYS = 12
# Of so many sets these are the fullest.
MOST_LOOKED_AT = 2000


def in_rows(
    widths: Sequence[int], width: int, rows: int, effort: int, stop: Callable[[], bool]
) -> list[Row] | None:
    """`widths` in so many rows of `width`; None if none is found, or `effort` rows were tried.

    >>> in_rows([6, 5, 5, 4, 3, 2, 2], 9, 3, 100, lambda: False)
    [(6, 3), (5, 4), (5, 2, 2)]
    >>> in_rows([6, 6, 6], 9, 2, 100, lambda: False) is None
    True
    """
    spare = rows * width - sum(widths)
    left = sorted(widths, reverse=True)
    return _Completion(width, effort, stop).rows(left, spare) if spare >= 0 else None


class _Completion:
    """The search, and how much of it may still be done."""

    def __init__(self, width: int, effort: int, stop: Callable[[], bool]) -> None:
        self.width, self.effort, self.stop = width, effort, stop

    def rows(self, left: list[int], spare: int) -> list[Row] | None:
        """Rows of what is left (the widest first), which may waste `spare` together."""
        if not left:
            return []
        first, others = left[0], left[1:]
        for row in self._ways(others, self.width - first, spare):
            self.effort -= 1
            if self.effort < 0 or self.stop():
                return None
            waste = self.width - first - sum(row)
            found = self.rows(_without(others, row), spare - waste)
            if found is not None:
                return [(first, *row), *found]
        return None

    def _ways(self, others: list[int], room: int, spare: int) -> list[Row]:
        """Sets that leave at most `spare` of the room: the fullest first, then the fewest."""
        sets = islice(_sets(others, 0, room, spare), MOST_LOOKED_AT)
        return sorted(set(sets), key=lambda row: (-sum(row), len(row)))[:MOST_WAYS]


def _sets(others: list[int], start: int, room: int, spare: int) -> Iterator[Row]:
    """Sets of others from `start` on, to which none of the narrower ones could be added."""
    if room <= spare and (start == len(others) or others[-1] > room):
        yield ()
    for place in range(start, len(others)):
        one = others[place]
        if one <= room and (place == start or one != others[place - 1]):
            for rest in _sets(others, place + 1, room - one, spare):
                yield (one, *rest)


def _without(others: list[int], row: Row) -> list[int]:
    left = list(others)
    for one in row:
        left.remove(one)
    return left
