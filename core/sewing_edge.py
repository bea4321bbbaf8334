"""Sewing the binding on, in words: the order of its strips, the start, each kind of corner."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import groupby

from core.edge.outline import Corner, Outline
from core.edge_start import past_words
from core.finish.sewn import Sewn
from core.lengths import Inches, Units, show
from core.plan import Plan

_SQUARE = 90
_DRAWN = Fraction(1, 1000)  # stops before corners are irrational; a thousandth tells enough


def sewing_on(plan: Plan) -> Iterator[str]:
    """How to sew the binding round the edge; lengths in the plan's units."""
    sewn, binding, units = plan.sewn, plan.binding, plan.project.units
    if sewn is None or binding is None:
        return
    outline = plan.sizes.outline
    yield from _strips(sewn, units)
    yield _start(sewn, outline, units)
    yield from _corners(outline, binding.widths.seam, units)
    yield from _landings(sewn, units)
    if sewn.edge_map.least is not None:
        said = "" if sewn.edge_map.proved else " (the best that was found)"
        yield (
            f"So started, every join and the closing lies at least "
            f"{show(sewn.edge_map.least, units)} from any {_bend(outline)}{said}."
        )


def _bend(outline: Outline) -> str:
    return "corner" if outline.corners else "rounded corner's middle"


def _strips(sewn: Sewn, units: Units) -> Iterator[str]:
    made = sewn.edge_map
    if len(made.order) > 1:
        yield f"Join the strips in this order: {', '.join(made.order)}."
    if made.trim:
        yield f"Trim {show(made.trim, units)} off the free end of {made.order[0]}."


def _start(sewn: Sewn, outline: Outline, units: Units) -> str:
    """The ends meet at the closing, told by the way from the corner before it."""
    closing = sewn.edge_map.closing
    where = f"on the {closing.facing} side"
    where += past_words(closing, outline, units)
    return (
        f"The two ends meet {where}. Lay the end of {sewn.edge_map.order[0]} there and sew with "
        "the quilt to your left: down the left side, along the bottom, up the right side."
    )


def _landings(sewn: Sewn, units: Units) -> Iterator[str]:
    """Where each join lands, a side at a time, by its way to the nearest corner."""
    joins = sewn.edge_map.joins
    if not joins or joins[0].to_corner is None:
        return
    told = []
    for facing, landed in groupby(enumerate(joins, start=1), lambda join: join[1].facing):
        each = ", ".join(
            f"join {number} {show(join.to_corner or Inches(0), units)}" for number, join in landed
        )
        told.append(f"{each} ({facing})")
    yield f"From the nearest corner the joins then lie: {'; '.join(told)}."


def _corners(outline: Outline, seam: Inches, units: Units) -> Iterator[str]:
    """Equal corners are told together."""
    kinds: dict[float, list[int]] = {}
    corners = dict(enumerate(outline.corners, start=1))
    for number, corner in corners.items():
        kinds.setdefault(round(corner.angle, 3), []).append(number)
    if any(not corner.inside for corner in outline.corners):
        yield (
            "At an outside corner stop as said below and fold the strip away, its raw edge in line "
            "with the next edge; fold it back over a crease at the corner, square to that edge, "
            "and start anew from there."
        )
    for angle, numbers in kinds.items():
        corner = corners[numbers[0]]
        yield f"{_which(numbers, len(corners))} ({angle:.4g}°): {_how(corner, seam, units)}"


def _which(numbers: list[int], count: int) -> str:
    if len(numbers) == count:
        return "Every corner" if count > 1 else "The corner"
    if len(numbers) == 1:
        return f"Corner {numbers[0]}"
    return f"Corners {', '.join(map(str, numbers[:-1]))} and {numbers[-1]}"


def _how(corner: Corner, seam: Inches, units: Units) -> str:
    stop = corner.stop(seam)
    if stop is None or corner.mitre is None:
        return "cut in; clip it to just short of the seam line and sew round it without a mitre."
    square = round(corner.angle, 6) == _SQUARE  # then the stop is the seam itself, exactly
    before = show(seam if square else round(Fraction(stop) / _DRAWN) * _DRAWN, units)
    sharp = (
        "; its fold stands out past the edge: tuck it under, or trim it once it is sewn"
        if corner.angle < _SQUARE and not square
        else ""
    )
    mitre = f"the mitre lies at {corner.mitre:.4g}° to both edges"
    return f"stop sewing {before} before it; {mitre}{sharp}."
