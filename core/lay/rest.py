"""What is left to lay when some things have their place already.

Of a run with a pinned segment each copy becomes a run of its own, shorter by what
is pinned; its name carries the number of the copy after a line break, which no
name in a file can hold.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import replace

from core.lay.places import Arrangement
from core.lay.problem import Piece, Run
from core.lengths import Inches

_BREAK = "\n"


def rest_of(
    pieces: Sequence[Piece], runs: Sequence[Run], placed: Arrangement
) -> tuple[tuple[Piece, ...], tuple[Run, ...]]:
    """The pieces and runs without what is placed."""
    gone = Counter(one.name for one in placed)
    lengths: dict[tuple[str, int], list[Inches]] = defaultdict(list)
    for one in placed:
        lengths[one.name, one.run_copy].append(one.length)
    left = (replace(piece, count=piece.count - gone[piece.name]) for piece in pieces)
    more: list[Run] = []
    for run in runs:
        if gone[run.name]:
            more += _copies_left(run, lengths)
        else:
            more.append(run)
    return tuple(piece for piece in left if piece.count), tuple(more)


def _copies_left(run: Run, lengths: dict[tuple[str, int], list[Inches]]) -> Iterator[Run]:
    for copy in range(1, run.count + 1):
        there = lengths.get((run.name, copy), [])
        missing = run.needs - sum(there) + (len(there) - 1) * run.join_loss
        if there and missing > 0:
            yield part_of(run, copy, missing)
        elif not there:
            yield replace(run, name=f"{run.name}{_BREAK}{copy}", count=1)


def part_of(run: Run, copy: int, gain: Inches) -> Run:
    """The part of one copy that must add `gain` to its length, each of its joins taken off."""
    needs = max(gain + run.join_loss, run.shortest)
    return replace(run, name=f"{run.name}{_BREAK}{copy}", needs=needs, count=1)


def copy_of(name: str, run_copy: int) -> tuple[str, int]:
    """The run's own name, and which of its copies this is.

    >>> copy_of("binding" + chr(10) + "2", 1), copy_of("binding", 3)
    (('binding', 2), ('binding', 3))
    """
    run, *copies = name.split(_BREAK)
    return run, int(copies[0]) if copies else run_copy
