"""Bias strips cut one by one from a rectangle: which strips, and how much of each is of use.

The first cut runs at 45° from a corner to the opposite long side; the others
are parallel to it, w apart, which is w·√2 along an edge. The strips' ends are the
rectangle's own edges, at 45° to the strip. To be joined on, both ends must slant
the same way, so a strip is worth its longest parallelogram whose ends lie along
one direction of the grain: the shorter of its two cut edges, except where a
strip takes in two corners of the cloth. Joining such ends costs 2·s·√2.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from itertools import count, takewhile

from core.edge.root_two import root_two_down
from core.lengths import Inches


@dataclass(frozen=True, slots=True)
class BiasStrip:
    """One strip: `place` counts from the first cut, 0 and up outward, −1 and down to the corner.

    `usable` is the length of its parallelogram's long edges, down to 1/64 in.
    """

    place: int
    usable: Inches


def bias_strips(across: Inches, along: Inches, width: Inches) -> tuple[BiasStrip, ...]:
    """All strips of `width` that a rectangle gives, from the corner outward.

    >>> [float(strip.usable) for strip in bias_strips(Fraction(8), Fraction(8), Fraction(2))]
    [3.3125, 7.3125, 7.3125, 3.3125]
    """

    def strips(places: Iterable[int]) -> list[BiasStrip]:
        made = (BiasStrip(place, _usable(across, along, width, place)) for place in places)
        return list(takewhile(lambda strip: strip.usable > 0, made))

    return (*reversed(strips(count(-1, -1))), *strips(count(0)))


def _usable(across: Inches, along: Inches, width: Inches, place: int) -> Inches:
    """The longest parallelogram in the strip between x + y = c and x + y = c + w·√2.

    With c = m + place·w·√2 for the short side m, ends at x = a and x = b fit if
    b ≤ min(A, c) and a ≥ max(0, c + w·√2 − B); likewise in y. Its long edges
    measure (b − a)·√2.
    """
    first = min(across, along)

    def between(one: Inches, other: Inches) -> Inches:
        return min(
            root_two_down(one),
            root_two_down(other, -2 * width),
            root_two_down(across + along - first, -2 * (place + 1) * width),
            root_two_down(first, 2 * place * width),
        )

    return max(between(across, along), between(along, across))


def best_strips(
    strips: Iterable[BiasStrip], needs: Inches, loss: Inches, least: Inches
) -> tuple[BiasStrip, ...]:
    """The longest strips, as few as make `needs` when joined; all of use where they do not.

    None is shorter than `least`, and none adds nothing to a chain.
    """
    of_use = [strip for strip in strips if strip.usable >= least and strip.usable > loss]
    of_use.sort(key=lambda strip: (-strip.usable, strip.place))
    chosen: list[BiasStrip] = []
    length = Fraction(0)
    for strip in of_use:
        if chosen and length >= needs:
            break
        length += strip.usable - (loss if chosen else 0)
        chosen.append(strip)
    return tuple(chosen)
