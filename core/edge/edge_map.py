"""The edge map: where the joins and the closing land round the quilt, and how to start.

Sewn round an outline, the binding's ends meet at the *closing*. Of the joined
strips some is trimmed off the first segment and the rest off the last, so join
k lies c_k − trim past the closing, where c_k is the length of the first k
segments less what the joins and half the closing take. A join or closing in a
corner makes a lump that will not mitre; so the closing's place, the trim and
the order of unequal segments are chosen (`core.edge.edge_search`) to make the
least distance from any of them to any corner as large as it can be.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction
from math import lcm

from core.edge.edge_search import Found, Ring, Search, Strips
from core.edge.outline import Outline
from core.edge.spans import on_ring
from core.lengths import Inches
from core.shape import Facing


@dataclass(frozen=True, slots=True)
class Chain:
    """The binding's strips before they are sewn on, in inches.

    `segments` with their names in the order in which they were cut, `loss` at
    each join, and what the `closing` takes. `least` is the least way along the
    edge from the closing to a join. `reorder` is whether they may change places.
    """

    segments: tuple[tuple[str, Inches], ...]
    loss: Inches
    closing: Inches
    least: Inches
    reorder: bool = True


@dataclass(frozen=True, slots=True)
class Landing:
    """Where a join or the closing lands: its place on the outline, and the side (from 0).

    `to_corner` is the way along the edge to the nearest corner, or to the middle
    of a rounded one; None where the outline has none.
    """

    place: Inches
    side: int
    facing: Facing
    to_corner: Inches | None


@dataclass(frozen=True, slots=True)
class EdgeMap:
    """The binding as sewn. `trim` comes off the first segment before it is laid down.

    `order` names the segments in the order to join them. `least` is the least
    distance of `closing` and `joins` to a corner, None on an outline without
    one; `proved` whether no start, order and trim does better.
    """

    closing: Landing
    joins: tuple[Landing, ...]
    order: tuple[str, ...]
    trim: Inches
    least: Inches | None
    proved: bool


def best_map(outline: Outline, chain: Chain, facing: Facing | None = None) -> EdgeMap | None:
    """The edge map with the largest least distance, its closing on a side that faces `facing`.

    None where no side faces that way, or the strips leave no such closing.
    """
    scale = _ticks_an_inch(outline, chain)
    return _searched(outline, chain, _ring(outline, facing, scale), scale)


def map_from(outline: Outline, chain: Chain, place: Inches) -> EdgeMap | None:
    """The edge map whose closing lies at `place`, its joins as far from corners as they can.

    None where the strips leave no closing.
    """
    scale = lcm(_ticks_an_inch(outline, chain), place.denominator)
    at = int(place * scale)
    ring = replace(_ring(outline, None, scale), given=True)
    return _searched(
        outline, chain, replace(ring, allowed=on_ring(((at, at),), ring.length)), scale
    )


def _searched(outline: Outline, chain: Chain, ring: Ring, scale: int) -> EdgeMap | None:
    search = Search(ring, _strips(chain, scale))
    found = search.run()
    return None if found is None else _told(outline, chain, found, search, Fraction(1, scale))


def _ticks_an_inch(outline: Outline, chain: Chain) -> int:
    """Halves of given lengths are whole in half of these, so the largest distance is in these."""
    lengths = (
        *(chain.loss, chain.closing, chain.least),
        *(side.length / 2 for side in outline.sides),
        *(length for _, length in chain.segments),
    )
    return 4 * lcm(*(length.denominator for length in lengths))


def _strips(chain: Chain, scale: int) -> Strips:
    return Strips(
        tuple(int(length * scale) for _, length in chain.segments),
        int(chain.loss * scale),
        int(chain.closing * scale),
        int(chain.least * scale),
        chain.reorder,
    )


def _ring(outline: Outline, facing: Facing | None, scale: int) -> Ring:
    length = int(outline.ring * scale)
    corners = tuple(int(place * scale) for place in outline.bends)
    sides = (
        (int(start * scale), int((start + side.length) * scale))
        for start, side in zip(outline.starts, outline.sides, strict=True)
        if facing is None or (side.facing is facing and not side.turning)
    )
    return Ring(length, corners, on_ring(sides, length))


def _told(outline: Outline, chain: Chain, found: Found, search: Search, tick: Inches) -> EdgeMap:
    """What was found, in inches and with the segments' names."""
    ring = search.ring

    def landing(place: int) -> Landing:
        place %= ring.length
        side = outline.side_at(place * tick)
        near = ring.distance(place) * tick if ring.corners else None
        return Landing(place * tick, side, outline.sides[side].facing, near)

    closing = landing(found.start + found.trim)
    joins = tuple(landing(found.start + join) for join in search.strips.joins(found.order[:-1]))
    return EdgeMap(
        closing=closing,
        joins=joins,
        order=tuple(chain.segments[place][0] for place in found.order),
        trim=found.trim * tick,
        least=min(one.to_corner or Fraction(0) for one in (closing, *joins))
        if ring.corners
        else None,
        proved=search.proved,
    )
