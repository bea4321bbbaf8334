"""The cut order: every cut of every cloth as a numbered line with a box to tick."""

from __future__ import annotations

from typing import Final

from app.packet.column import LINE, Column, lines_of
from app.packet.page import Page, Picture
from app.packet.paper import USUAL, Format
from core.drawing.cloth import sheet_title
from core.drawing.cut_step import draw_cut
from core.language import marked, told
from core.lay.lay import Sheet
from core.plan import FabricPlan, Plan
from core.steps import FOLDED, CutStep, reminder, sentence

_NUMBER_AT: Final = 20.0
_TEXT_AT: Final = 46.0
_BETWEEN: Final = 5.0  # points between one cut and the next
_PICTURE: Final = 152.0  # points wide, beside the words
_LARGER: Final = 220.0  # below them, in large print
_GUTTER: Final = 12.0
_HALF_PAGE: Final = 200.0  # points, in any format
_TITLE: Final = marked("The cut order")
_HOW: Final = marked(
    "Work from the top. All cuts run edge to edge of the cloth in hand. Tick each one off; one "
    "that says “each from the fresh edge” after the last of its cuts. The near edge is the one "
    "with the ruler on the picture, and the straight end the one it starts from: keep every "
    "section lying as it is drawn. The pictures are not to scale; the heavy edge is the one to "
    "measure from. Selvages are not counted: trim them off first, or measure from inside them."
)


def cut_order_pages(plan: Plan, form: Format = USUAL) -> tuple[Page, ...]:
    """The checklist, cloth by cloth and sheet by sheet; a line is never broken over pages."""
    title = told(_TITLE)
    column = Column(title, form)
    column.mark(title, 0)
    column.title(title)
    column.text(f"{told(_HOW)} {told(FOLDED)}")
    column.gap(LINE)
    for fabric_plan in plan.fabrics:
        if fabric_plan.lay.placements:
            _fabric(column, plan, fabric_plan)
    return column.pages()


def _fabric(column: Column, plan: Plan, fabric_plan: FabricPlan) -> None:
    sheet: Sheet | None = None
    for step in fabric_plan.steps:
        if step.sheet != sheet:
            sheet = step.sheet
            length = dict(fabric_plan.lay.sheets)[sheet].along
            title = sheet_title(fabric_plan.fabric, sheet, length, plan.project.units)
            column.heading(title, level=1, follow=min(_height(column, plan, step), _HALF_PAGE))
        _step(column, plan, step)
    _done(column, plan, fabric_plan)


def _picture(column: Column) -> float:
    """How wide a picture is."""
    return min(_LARGER if column.form.large else _PICTURE, column.width - _TEXT_AT)


def _lines(column: Column, plan: Plan, step: CutStep) -> list[str]:
    aside = 0.0 if column.form.large else _picture(column) + _GUTTER
    return lines_of(_said(plan, step), column.width - _TEXT_AT - aside)


def _height(column: Column, plan: Plan, step: CutStep) -> float:
    """What a step takes: its words with the picture beside them, or below them in large print."""
    drawing, said = draw_cut(plan, step), len(_lines(column, plan, step)) * LINE
    high = drawing.height * _picture(column) / drawing.width
    return (said + high if column.form.large else max(said, high)) + _BETWEEN


def _step(column: Column, plan: Plan, step: CutStep) -> None:
    """The words with the picture at their right, or below them in large print."""
    drawing, below, wide = draw_cut(plan, step), column.form.large, _picture(column)
    high = drawing.height * wide / drawing.width
    lines = _lines(column, plan, step)
    column.need(min(_height(column, plan, step), column.bottom))
    start = column.y
    for place, line in enumerate(lines):
        top = column.take(LINE)
        if place == 0:
            column.tick_box(0, top)
            column.words(f"{step.number}.", _NUMBER_AT, top, bold=True)
        column.words(line, _TEXT_AT, top)
    at = (_TEXT_AT, column.take(high)) if below else (column.width - wide, start)
    column.add(Picture(drawing, at, wide / drawing.width))
    column.y = max(column.y, start + high) if not below else column.y
    column.gap(_BETWEEN)


def _said(plan: Plan, step: CutStep) -> str:
    """The step, with what to mind where it has many cuts."""
    said = sentence(step, plan.project.units, plan.project.cutting_table)
    return f"{said} {reminder(step, plan.project.units)}".strip()


def _done(column: Column, plan: Plan, fabric_plan: FabricPlan) -> None:
    """What should now lie on the table."""
    labels = ", ".join(plan.label(placement) for placement in fabric_plan.lay.placements)
    said = told(
        "{cloth} is all cut when you have: {letters}.",
        cloth=fabric_plan.fabric.name,
        letters=labels,
    )
    lines = lines_of(said, column.width - _TEXT_AT)
    column.need(min(len(lines) * LINE, column.bottom))
    for place, line in enumerate(lines):
        top = column.take(LINE)
        if place == 0:
            column.tick_box(0, top)
        column.words(line, _TEXT_AT, top)
    column.gap(LINE)
