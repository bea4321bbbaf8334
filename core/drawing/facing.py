"""A facing as it lies on the back: a strip a side, its ends meeting on the mitres.

The quilt is seen from the front, as its sides are counted: from the left side
down and round. Depths are true, at the quilt's own scale.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from core.drawing.edge import band
from core.drawing.marks import Area, Drawing, Label, Mark, Point
from core.drawing.shapes import moved
from core.finish.side_strips import SideStrip
from core.language import told
from core.lengths import show
from core.plan import Plan

_ASIDE = 0.09  # room round the quilt for words, of its larger side


def draw_facing(plan: Plan) -> Drawing | None:
    """The picture in inches of quilt; None where the edge is not faced a side at a time."""
    if plan.binding is None or plan.binding.facing is None:
        return None
    outline = plan.sizes.outline
    aside = float(max(outline.width, outline.length)) * _ASIDE
    marks = (
        Area(outline.points, "top"),
        *_strips(plan),
        *_words(plan, aside),
    )
    left, top = aside - float(outline.x), aside - float(outline.y)
    return Drawing(
        told("the facing"),
        float(outline.width) + 2 * aside,
        float(outline.length) + 2 * aside,
        tuple(moved(mark, left, top) for mark in marks),
    )


def _strips(plan: Plan) -> Iterator[Mark]:
    if plan.binding is None:
        return
    outline, deep = plan.sizes.outline, float(plan.binding.widths.second_face)
    starts = [*map(float, outline.starts), float(outline.ring)]
    for number, (start, end) in enumerate(pairwise(starts), start=1):
        yield Area(band(outline, start, end, deep), "binding", _key(plan, number))


def _strip_of(plan: Plan, side: int) -> SideStrip:
    facing = plan.binding.facing if plan.binding else None
    return next(strip for strip in (facing.strips if facing else ()) if side in strip.sides)


def _key(plan: Plan, side: int) -> str:
    """What is written on the side's strip; empty where it is cut from a longer one."""
    strip = _strip_of(plan, side)
    part = next((part for part in plan.parts if part.name == strip.name), None)
    return "" if part is None else part.label(strip.sides.index(side) + 1)


def _words(plan: Plan, aside: float) -> Iterator[Label]:
    """Each side's number and the length of its strip, beside the quilt."""
    outline, units = plan.sizes.outline, plan.project.units
    starts = [*map(float, outline.starts), float(outline.ring)]
    for number, (start, end) in enumerate(pairwise(starts), start=1):
        (x, y), (dx, dy) = outline.point_at((start + end) / 2)
        length, key = show(_strip_of(plan, number).length, units), _key(plan, number)
        side = told("side {number}", number=number)
        name = f"{side}: {key}" if key else side
        centre: Point = (x - dx * aside / 2, y - dy * aside / 2)
        room = _room(end - start, abs(dx), aside)
        yield Label(centre, (f"{name}, {length}", f"{name}\n{length}", name, str(number)), room,
                    "note")  # fmt: skip


def _room(side: float, upright: float, aside: float) -> tuple[float, float]:
    """Room along the side and across it; a slanting side has no more than a square."""
    if upright > 0.99:
        return aside * 0.9, side
    return (side, aside * 0.9) if upright < 0.01 else (aside * 0.9, aside * 0.7)
