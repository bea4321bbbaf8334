"""The staircase on paper: the picture, and every step in words under it."""

from __future__ import annotations

from typing import Final

from app.comparing import alike_text, room_text, step_range, step_text
from app.packet.column import Column
from app.packet.page import Page, Picture
from app.packet.paper import USUAL, Format
from app.packet.print_pages import print_pages
from app.packet.table import ColumnHead, table, told_heads
from core.compare.staircase import Staircase, Step
from core.drawing.staircase import draw_staircase
from core.language import marked, told
from core.quilt import Project

_HEADS: Final = (ColumnHead(marked("from … to"), 1.0), ColumnHead(marked("buys"), 3.0))


def staircase_bytes(project: Project, stairs: Staircase, form: Format) -> bytes:
    """The staircase as a PDF; the same project gives the same bytes."""
    return print_pages(staircase_pages(project, stairs, form), _title(project, stairs), form)


def staircase_pages(project: Project, stairs: Staircase, form: Format = USUAL) -> tuple[Page, ...]:
    """One page, more only where the steps are very many."""
    column = Column(_title(project, stairs), form)
    column.title(_title(project, stairs))
    column.mark(_title(project, stairs), 0)
    column.text(room_text(stairs, project.units))
    drawing = draw_staircase(project, stairs)
    scale = column.width / drawing.width
    column.gap(8)
    column.add(Picture(drawing, (0.0, column.take(drawing.height * scale)), scale))
    column.gap(8)
    present = stairs.present_step
    rows = [
        [
            _range(project, step, now=step is present),
            step_text(project, step, stairs.moving),
        ]
        for step in stairs.steps
    ]
    table(column, told_heads(_HEADS), rows)
    column.text(alike_text(project, stairs))
    return column.pages()


def _range(project: Project, step: Step, *, now: bool) -> str:
    said = step_range(step, project.units)
    return told("{value} (now)", value=said) if now else said


def _title(project: Project, stairs: Staircase) -> str:
    return told(
        "{quilt}: what each {choice} buys",
        quilt=project.quilt.name or told("A quilt"),
        choice=told(stairs.choice.name),
    )
