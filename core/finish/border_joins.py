"""Where the joins of a border lie once it is sewn.

Strips cut from a long joined one are cut in the order of `long_strips`: the
joins lie where the segments, joined in the order of their labels, happen to end.
Each cut strip is `squaring` longer than it is sewn, half of that at either end.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from core.finish.border import BorderPlan, long_strips
from core.finish.border_parts import places_of_joins
from core.finish.border_sides import BorderStrip, Side
from core.lay.lay import Placement
from core.lengths import Inches

JoinsAt = tuple[Side, tuple[Inches, ...]]


def with_joins(plan: BorderPlan, placements: Iterable[Placement]) -> BorderPlan:
    """The plan with the places of its joins, of several copies those of the first."""
    if not plan.joined:
        return plan
    pieced = tuple(_pieced_each(plan))
    if not any(strip.parts for strip in plan.strips):
        pieced = tuple(_from_long_strips(plan, tuple(placements)))
    return replace(plan, joins_at=pieced)


def _pieced_each(plan: BorderPlan) -> Iterator[JoinsAt]:
    """One of a pair is turned end for end, so that off-centre joins lie across from each other."""
    for strip in plan.strips:
        loss, slack = plan.loss(strip), plan.border.squaring / 2
        places = tuple(at - slack for at in places_of_joins(strip.parts, loss))
        turned = tuple(sorted(strip.length - at for at in places))
        for number, side in enumerate(strip.sides):
            yield side, turned if number else places


def _from_long_strips(plan: BorderPlan, placements: tuple[Placement, ...]) -> Iterator[JoinsAt]:
    for name, strips in long_strips(plan).items():
        segments = sorted((p for p in placements if p.name == name), key=lambda p: p.copy)
        first = segments[0].run_copy if segments else None
        lengths = tuple(
            p.rect.along if p.turned else p.rect.across for p in segments if p.run_copy == first
        )
        yield from _cut(plan, strips, places_of_joins(lengths, plan.loss(strips[0])))


def _cut(
    plan: BorderPlan, strips: tuple[BorderStrip, ...], joins: tuple[Inches, ...]
) -> Iterator[JoinsAt]:
    slack = plan.border.squaring
    start = slack * 0
    for strip in strips:
        for side in strip.sides:
            places = (at - start - slack / 2 for at in joins)
            yield side, tuple(at for at in places if 0 < at < strip.length)
            start += strip.length + slack
