"""How a long run is best divided: whole rows, and segments that share a row with others.

A segment that leaves no room in its row for another takes the whole row anyway.
The others must be short enough to share one, and each costs a join.
"""

from __future__ import annotations

from typing import NamedTuple

from core.lay.ticks import Strip


class Division(NamedTuple):
    """`whole` rows and `shared` segments; counting rows as rows, it takes `length`."""

    whole: int
    shared: int
    length: int


def divided(strip: Strip, width: int, alone: int) -> Division:
    """The division that takes the least; segments longer than `alone` count as whole rows."""
    if strip.needs <= alone:
        return Division(0, 1, strip.needs)
    rows = max(1, -(-strip.demand // max(1, width - strip.loss)))
    best = Division(rows, 0, rows * width)
    if alone <= strip.loss or alone < strip.joined:
        return best
    for whole in range(rows):
        rest = strip.demand - whole * (width - strip.loss)
        shared = -(-rest // (alone - strip.loss))
        length = whole * width + max(shared * strip.joined, rest + shared * strip.loss)
        if length < best.length:
            best = Division(whole, shared, length)
    return best


class Range(NamedTuple):
    """How short and how long the next shared segment may be."""

    least: int
    most: int


def next_shared(strip: Strip, demand: int, left: int, alone: int) -> Range:
    """The next of `left` shared segments, so that the others can make up the demand."""
    others = left - 1
    least = max(strip.joined, demand - others * (alone - strip.loss) + strip.loss)
    most = demand - others * (strip.joined - strip.loss) + strip.loss
    return Range(least, max(least, min(alone, most)))
