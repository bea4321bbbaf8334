"""What measuring the quilt showed, as sentences for the person."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from core.edge.outline import Outline
from core.language import told
from core.lengths import Inches, show, show_size

if TYPE_CHECKING:
    from core.plan import Plan

_LEFT = 180.0  # degrees: with the quilt on the left, the top edge is sewn leftwards


def measure_notices(plan: Plan) -> Iterator[tuple[str, str]]:
    """(path of the field, sentence) for easing, squaring and take-up."""
    yield from _easing(plan)
    yield from _squaring(plan)
    yield from _take_up(plan)
    yield from _sleeve(plan)


def _easing(plan: Plan) -> Iterator[tuple[str, str]]:
    measured, units = plan.project.measured, plan.project.units
    if measured is None:
        return
    said = [
        _ease_in(edge, show(more, units)) if more > 0 else _stretch(edge, show(-more, units))
        for edge, more in measured.ease
        if more
    ]
    if said:
        size = show_size(*plan.project.top, units)
        yield (
            "measured",
            told("The plan takes the top as {size}: {edges}.", size=size, edges=", ".join(said)),
        )


def _ease_in(edge: str, by: str) -> str:
    return {
        "top": told("ease in {by} at the top", by=by),
        "bottom": told("ease in {by} at the bottom", by=by),
        "left side": told("ease in {by} at the left side", by=by),
        "right side": told("ease in {by} at the right side", by=by),
    }[edge]


def _stretch(edge: str, by: str) -> str:
    return {
        "top": told("stretch {by} at the top", by=by),
        "bottom": told("stretch {by} at the bottom", by=by),
        "left side": told("stretch {by} at the left side", by=by),
        "right side": told("stretch {by} at the right side", by=by),
    }[edge]


def _squaring(plan: Plan) -> Iterator[tuple[str, str]]:
    found, units = plan.sizes.squareness, plan.project.units
    if found is None or found.square:
        return
    size = show_size(found.width, found.length, units)
    yield (
        "squaring",
        told(
            "The quilt is out of square: its diagonals differ by {diagonals}, its widths by "
            "{widths}, its lengths by {lengths}. The largest true rectangle to trim from it is "
            "{size}, and the binding is planned for that.",
            diagonals=show(found.diagonals, units),
            widths=show(found.widths, units),
            lengths=show(found.lengths, units),
            size=size,
        ),
    )


def _take_up(plan: Plan) -> Iterator[tuple[str, str]]:
    take_up, units = plan.project.take_up, plan.project.units
    if take_up is None or not (take_up.quilting or take_up.washing):
        return
    finished = show_size(*plan.sizes.finished, units)
    washed = show_size(*plan.sizes.washed, units)
    yield (
        "take_up",
        told(
            "Backing and batting are planned for the top before quilting, with their overage as "
            "given; the binding for {finished} after it. Washed, the quilt comes to {washed}.",
            finished=finished,
            washed=washed,
        ),
    )


def _sleeve(plan: Plan) -> Iterator[tuple[str, str]]:
    """A sleeve is as long as the quilt is wide, which a shaped quilt may not be at its top."""
    sleeve, units = plan.project.sleeve, plan.project.units
    if sleeve is None:
        return
    whole, top = plan.sizes.finished[0] - sleeve.shorter, _straight_top(plan.sizes.outline)
    if top < whole:
        full = show(whole, units)
        yield (
            "sleeve.shorter",
            told(
                "The sleeve is cut for the quilt's full width, {full} in all, and the top edge of "
                "this outline is {straight} long: hang it where the quilt is wide enough, or "
                "write how much shorter it should be.",
                full=full,
                straight=show(top, units),
            )
            if top
            else told(
                "The sleeve is cut for the quilt's full width, {full} in all, and the top edge of "
                "this outline is not straight: hang it where the quilt is wide enough, or "
                "write how much shorter it should be.",
                full=full,
            ),
        )


def _straight_top(outline: Outline) -> Inches:
    """The length of the level edge at the top; 0 if there is none."""
    level = (side.length for side in outline.sides if side.radius is None and side.heading == _LEFT)
    return max(level, default=Inches(0))
