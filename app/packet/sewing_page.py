"""Sewing the strips: the binding with its numbers, and how cut pieces become parts."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from app.packet.binding_facts import binding_facts
from app.packet.column import LINE, Column
from app.packet.page import Page, Picture
from app.packet.paper import USUAL, Format
from app.wording import upper_first
from core.drawing.back import draw_back
from core.drawing.bias_plan import bias_drawings
from core.drawing.edge_map import draw_edge_map
from core.drawing.join import draw_join
from core.drawing.marks import Drawing
from core.language import marked, told
from core.plan import Plan
from core.sewing import sewing

_TITLE: Final = marked("Sewing the strips")
_GAP: Final = 10.0
_BETWEEN: Final = 4.0  # from one part to the next, beside what a heading keeps free
_WIDEST: Final = 440.0  # points
_HIGHEST: Final = 260.0  # points that a picture may take
_LEAST: Final = 170.0  # points left on a page that a picture is drawn smaller for
_ABOVE: Final = 4.0  # between a picture and its title


def sewing_pages(plan: Plan, form: Format = USUAL) -> tuple[Page, ...]:
    """The binding and the other parts; none where there is nothing to sew."""
    title = told(_TITLE)
    column = Column(title, form)
    column.mark(title, 0)
    column.title(title)
    start = column.y
    _binding(column, plan)
    _pictures(column, plan)
    _parts(column, plan)
    return column.pages() if column.y > start else ()


def _binding(column: Column, plan: Plan) -> None:
    if plan.binding is None or plan.project.binding is None:
        return
    facts = tuple(binding_facts(plan.project.binding, plan.binding, plan.project.units))
    column.heading(told("The binding"), level=1, follow=column.items_height(facts))
    column.items(facts)
    column.gap(_GAP)


def _pictures(column: Column, plan: Plan) -> None:
    """The edge as it is sewn, the back where something is on it, and a join: two in a row."""
    titled = (
        (told("The edge, as it is sewn"), draw_edge_map(plan)),
        (told("The back"), draw_back(plan)),
        (told("A join of the binding"), _join(plan)),
    )
    drawn = [(title, drawing) for title, drawing in titled if drawing is not None]
    across = 1 if column.form.large else 2
    for first in range(0, len(drawn), across):
        _row(column, drawn[first : first + across], column.width / across)
    for drawing in bias_drawings(plan):
        _row(column, [(upper_first(drawing.title), drawing)], min(_WIDEST, column.width))


def _join(plan: Plan) -> Drawing | None:
    spec, binding = plan.project.binding, plan.binding
    if spec is None or binding is None or not binding.joins:
        return None
    widths = binding.widths
    return draw_join(spec.joins, widths.strip, widths.seam, plan.project.units)


def _row(column: Column, drawn: Sequence[tuple[str, Drawing]], width: float) -> None:
    """Pictures side by side, each under its title."""
    most, free = min(_HIGHEST, column.bottom * 0.7), column.bottom - column.y - LINE - _ABOVE - _GAP
    most = min(most, free) if free >= _LEAST else most
    scales = [
        min((width - 3 * _GAP) / drawing.width, most / drawing.height) for _, drawing in drawn
    ]
    high = max(drawing.height * scale for (_, drawing), scale in zip(drawn, scales, strict=True))
    top = column.take(LINE + _ABOVE + high + _GAP)
    for place, ((title, drawing), scale) in enumerate(zip(drawn, scales, strict=True)):
        column.words(title, place * width, top, bold=True)
        # In the middle: words beside a narrow quilt may stand out past its picture.
        left = place * width + (width - drawing.width * scale) / 2
        column.add(Picture(drawing, (left, top + LINE + _ABOVE), scale))


def _parts(column: Column, plan: Plan) -> None:
    """How cut pieces become borders, backing and sleeve."""
    for making in sewing(plan):
        column.heading(making.title, level=1, follow=column.items_height(making.sentences))
        column.items(making.sentences)
        column.gap(_BETWEEN)
