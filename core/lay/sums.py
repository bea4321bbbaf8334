"""Sums of lengths along: things pushed towards the straightened end rest on each other.

N. Christofides and C. Whitlock, Oper. Res. 25 (1977), doi:10.1287/opre.25.1.30.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from math import ceil

from core.lay.needs import Hold, Needs


def least_sum(needs: Needs, bound: Fraction, most: int) -> Fraction:
    """The least sum of lengths along from `bound` on; `most` if there is none up to it.

    Where a segment of any length may lie along the cloth, that is `bound` itself.
    """
    if needs.free_along:
        return bound
    above = _sums(needs.sums_along(most), most) >> ceil(bound)
    if not above:
        return Fraction(most)
    return Fraction(ceil(bound) + (above & -above).bit_length() - 1)


def settled(needs: Needs) -> Needs:
    """The needs, with pieces on hand only as long as things laid one behind the other can fill."""
    if needs.free_along or not needs.boards:
        return needs
    most = max(hold.along for hold in needs.boards)
    sums = _sums(needs.sums_along(most), most)
    holds = (_filled(hold, sums) for hold in needs.boards)
    return needs._replace(boards=tuple(hold for hold in holds if hold.along))


def _filled(hold: Hold, sums: int) -> Hold:
    along = (sums & ((1 << (hold.along + 1)) - 1)).bit_length() - 1
    return hold._replace(along=along)


def _sums(lengths: Iterable[tuple[int, int]], most: int) -> int:
    """All sums up to `most`, a bit for each, of lengths that come so often."""
    sums, whole = 1, (1 << (most + 1)) - 1
    for length, copies in lengths:
        step, left = 1, min(copies, most // length)
        while left:
            step = min(step, left)
            sums |= (sums << (length * step)) & whole
            left -= step
            step *= 2
    return sums
