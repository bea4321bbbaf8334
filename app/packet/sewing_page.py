"""Sewing the strips: the binding with its numbers, and how cut pieces become parts."""

from __future__ import annotations

from typing import Final

from app.packet.binding_facts import binding_facts
from app.packet.column import Column
from app.packet.page import Page, Picture
from app.packet.paper import USUAL, Format
from core.drawing.back import draw_back
from core.drawing.edge_map import draw_edge_map
from core.drawing.marks import Drawing
from core.plan import Plan
from core.sewing import sewing

_TITLE: Final = "Sewing the strips"
_GAP: Final = 10.0
_PICTURE: Final = (330.0, 300.0)  # points that a picture may take


def sewing_pages(plan: Plan, form: Format = USUAL) -> tuple[Page, ...]:
    """The binding and the other parts; none where there is nothing to sew."""
    column = Column(_TITLE, form)
    column.mark(_TITLE, 0)
    column.title(_TITLE)
    start = column.y
    _binding(column, plan)
    _drawn(column, "The back", draw_back(plan))
    _parts(column, plan)
    return column.pages() if column.y > start else ()


def _binding(column: Column, plan: Plan) -> None:
    if plan.binding is None or plan.project.binding is None:
        return
    facts = tuple(binding_facts(plan.project.binding, plan.binding, plan.project.units))
    column.heading("The binding", level=1, follow=column.items_height(facts))
    column.items(facts)
    column.gap(_GAP)
    _drawn(column, "The edge, as it is sewn", draw_edge_map(plan))


def _drawn(column: Column, title: str, drawing: Drawing | None) -> None:
    """A picture in the middle under its heading; nothing where there is none."""
    if drawing is None:
        return
    wide, high = min(_PICTURE[0], column.width), min(_PICTURE[1], column.bottom / 2)
    scale = min(wide / drawing.width, high / drawing.height)
    column.heading(title, level=1, follow=drawing.height * scale)
    left = (column.width - drawing.width * scale) / 2
    column.add(Picture(drawing, (left, column.take(drawing.height * scale)), scale))
    column.gap(_GAP)


def _parts(column: Column, plan: Plan) -> None:
    """How cut pieces become borders, backing and sleeve."""
    for making in sewing(plan):
        column.heading(making.title, level=1, follow=column.items_height(making.sentences))
        column.items(making.sentences)
        column.gap(_GAP)
