"""The quilt seen from the back: the backing's panels and seams, the sleeve and the label.

The backing is shown as it is sewn, before it is trimmed; the line inside it is
the quilt's edge. Left and right are as seen from the back.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import TypeAlias

from core.drawing.marks import Drawing, Line, Mark
from core.drawing.real_cloth import sewn_from
from core.drawing.shapes import area, free_of, label, moved
from core.finish.backing import ACCENT, BackingPlan
from core.finish.overage import overages
from core.language import told
from core.lay.lay import Rect
from core.lay.problem import Piece
from core.part_names import told_part
from core.plan import Plan
from core.quilt import Seams

_SewnOn: TypeAlias = tuple[str, Rect]  # the part's name and its place
_MARGIN = Fraction(2)
# Where things are drawn; published gaps above a sleeve are 1/4, 1/2 and 1 in.
_BELOW_THE_EDGE, _IN_FROM_THE_CORNER = Fraction(1, 2), Fraction(2)


def draw_back(plan: Plan) -> Drawing | None:
    """The picture of the back, in inches; None where nothing is planned for it."""
    quilt = Rect(Fraction(0), Fraction(0), *plan.sizes.layers)
    outer = quilt
    marks: list[Mark] = []
    sewn_on = (*_sleeves(plan, quilt), *_patches(plan, quilt))
    if plan.backing is not None and plan.project.backing is not None:
        front = overages(plan.project.backing).grown(quilt)
        outer = _seen_from_behind(front, quilt)
        marks += _panels(plan, plan.backing, front, quilt, sewn_on)
    for name, rect in sewn_on:
        marks += _sewn_on(plan, name, rect)
    if not marks:
        return None
    marks.append(_edge(plan, quilt))
    name = told("{quilt}, from the back", quilt=plan.project.quilt.name or told("the quilt"))
    x, y = outer.x - _MARGIN, outer.y - _MARGIN
    wide, long = outer.across + 2 * _MARGIN, outer.along + 2 * _MARGIN
    shifted = tuple(moved(mark, -float(x), -float(y)) for mark in sewn_from(marks, plan))
    return Drawing(name, float(wide), float(long), shifted)


def _edge(plan: Plan, quilt: Rect) -> Line:
    """The line that the quilt is trimmed to."""
    outline = plan.sizes.outline
    right, top = float(outline.x + quilt.across), float(outline.y)
    points = tuple((right - x, y - top) for x, y in outline.points)
    return Line((*points, points[0]), "edge")


def _seen_from_behind(rect: Rect, quilt: Rect) -> Rect:
    return Rect(quilt.across - rect.right, rect.y, rect.across, rect.along)


def _panels(
    plan: Plan, backing: BackingPlan, front: Rect, quilt: Rect, sewn_on: Sequence[_SewnOn]
) -> Iterator[Mark]:
    """Each panel as it shows, with its letter; seams are where they meet."""
    start, last = Fraction(0), len(backing.widths) - 1
    for place, width in enumerate(backing.widths):
        shows = width - backing.seam * ((place > 0) + (place < last))
        panel = (
            Rect(front.x, front.y + start, front.across, shows)
            if backing.seams is Seams.CROSSWISE
            else Rect(front.x + start, front.y, shows, front.along)
        )
        if not last:
            panel = front
        name = _panel_name(backing, place)
        letter = plan.part(name).letter
        for strip in _strips(backing, place, panel):
            behind = _seen_from_behind(strip, quilt)
            yield area(behind, "backing", letter)
            room = _room(behind, quilt, [rect for _, rect in sewn_on])
            yield label(room, (letter,), "backing", letter)
        start += shows


def _room(panel: Rect, quilt: Rect, covered: Sequence[Rect]) -> Rect:
    """Where a panel's letter goes within the quilt's edge: its middle, or what is free."""
    free = panel.within(quilt) or panel
    third = Rect(free.x + free.across / 3, free.y + free.along / 3, free.across / 3, free.along / 3)
    if any(free.within(rect) for rect in covered) and not any(
        third.within(rect) for rect in covered
    ):
        return third
    return free_of(free, covered)


def _panel_name(backing: BackingPlan, place: int) -> str:
    """The name of the pieces that the panel at `place` is cut from."""
    if place == backing.accent_at:
        return ACCENT
    pieces = [d.wanted for d in backing.demands if isinstance(d.wanted, Piece)]
    named = {piece.name: piece for piece in pieces if piece.name != ACCENT}
    if place == 0 and "first backing panel" in named:
        return "first backing panel"
    if place == len(backing.widths) - 1 and backing.pieced_last > 1:
        return "backing short strip"
    width = backing.widths[place]
    others = (n for n, piece in named.items() if piece.across == width)
    return next(
        name for name in others if name not in ("first backing panel", "backing short strip")
    )


def _strips(backing: BackingPlan, place: int, panel: Rect) -> Iterator[Rect]:
    """The panel, or the short strips that it is pieced from."""
    count = backing.pieced_last if place == len(backing.widths) - 1 else 1
    crosswise = backing.seams is Seams.CROSSWISE
    for strip in range(count):
        if crosswise:
            each = panel.across / count
            yield Rect(panel.x + strip * each, panel.y, each, panel.along)
        else:
            each = panel.along / count
            yield Rect(panel.x, panel.y + strip * each, panel.across, each)


def _sleeves(plan: Plan, quilt: Rect) -> Iterator[_SewnOn]:
    """Each part of the hanging sleeve, side by side below the upper edge."""
    sleeve, spec = plan.sleeve, plan.project.sleeve
    if sleeve is None or spec is None:
        return
    whole = sleeve.length * sleeve.parts + spec.gap * (sleeve.parts - 1)
    for part in range(sleeve.parts):
        x = (quilt.across - whole) / 2 + part * (sleeve.length + spec.gap)
        yield (
            "sleeve",
            Rect(x, _BELOW_THE_EDGE, sleeve.length, min(sleeve.depth, quilt.along)),
        )


def _patches(plan: Plan, quilt: Rect) -> Iterator[_SewnOn]:
    """The label, in the lower left corner or as near to it as the quilt has room for."""
    spec = plan.project.label
    if spec is not None:
        x = min(_IN_FROM_THE_CORNER, (quilt.across - spec.width) / 2)
        y = quilt.along - spec.length - min(_IN_FROM_THE_CORNER, (quilt.along - spec.length) / 2)
        yield "label", Rect(x, y, spec.width, spec.length)


def _sewn_on(plan: Plan, name: str, rect: Rect) -> Iterator[Mark]:
    """A sleeve or a label, with its letter; its name is its role too."""
    letter = plan.part(name).letter
    yield area(rect, name, letter)
    yield label(rect, (f"{letter}  {told_part(name)}", letter), name, letter)
