"""The comparison on paper: the table of values, and the cloth drawn at one scale for all."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from app.comparing import cell_note, value_text
from app.packet.column import BODY, HEADING, LINE, Column
from app.packet.page import Page, Picture
from app.packet.paper import USUAL, Format
from app.packet.print_pages import print_pages
from app.packet.table import ColumnHead, table
from app.type_fit import LEADING, shortened
from app.typeface import typeface
from core.by_hand.sheets import sheets_of
from core.compare.columns import Column as Value
from core.compare.columns import Comparison
from core.compare.rows import Row, rows
from core.drawing.cloth import draw_sheet
from core.drawing.edge_sections import draw_edge_sections
from core.drawing.frame import Heading
from core.drawing.marks import Drawing
from core.language import told
from core.lengths import Units, typeset

_NAME_SHARE: Final = 1.5  # of the first column, beside 1 for each value
_GAP: Final = 8.0
_MOST_ENLARGED: Final = 2.0  # times, of the bound edge
_SMALLEST: Final = 60.0  # points of height left below which the pictures go on a page of their own


def comparison_bytes(comparison: Comparison, form: Format) -> bytes:
    """The comparison as a PDF; the same comparison gives the same bytes."""
    return print_pages(comparison_pages(comparison, form), _title(comparison), form)


def comparison_pages(comparison: Comparison, form: Format = USUAL) -> tuple[Page, ...]:
    """One page where the pictures fit under the table, else two."""
    units = _units(comparison)
    column = Column(_title(comparison), form)
    column.title(_title(comparison))
    column.mark(_title(comparison), 0)
    _values(column, comparison, units)
    for value in comparison.columns:
        if value.refusal is not None:
            column.text(f"{value.said}: {value.refusal}")
    if comparison.notice is not None:
        column.text(comparison.notice)
    _sections(column, comparison)
    _pictures(column, comparison)
    return column.pages()


def _units(comparison: Comparison) -> Units:
    return next((plan.project.units for plan in comparison.plans), Units.INCHES)


def _title(comparison: Comparison) -> str:
    name = next((plan.project.quilt.name for plan in comparison.plans), "")
    return told(
        "{quilt}: {choice}",
        quilt=name or told("A quilt"),
        choice=comparison.choice.said,
    )


def _values(column: Column, comparison: Comparison, units: Units) -> None:
    """The table; the best of a row says so, and the others by how much they miss it."""
    heads = [ColumnHead("", _NAME_SHARE)]
    for value in comparison.columns:
        said = told("{value} (now)", value=value.said) if value.present else value.said
        heads.append(ColumnHead(typeset(said), 1.0))
    every = rows(comparison)
    table(column, heads, [_cells(row, units) for row in every if not row.alike])
    alike = [f"{row.said} {_shared(row, units)}" for row in every if row.alike]
    if alike:
        column.text(told("Alike for all: {values}.", values="; ".join(alike)))


def _shared(row: Row, units: Units) -> str:
    return next(value_text(row, c.value, units) for c in row.cells if c.value is not None)


def _cells(row: Row, units: Units) -> list[str]:
    cells = []
    for cell in row.cells:
        note = cell_note(row, cell, units)
        text = value_text(row, cell.value, units)
        cells.append(f"{text}\n{note}" if note else text)
    return [row.said, *cells]


def _sections(column: Column, comparison: Comparison) -> None:
    """The bound edges where they differ, at one scale."""
    drawing = draw_edge_sections(comparison)
    if drawing is None:
        return
    scale = min(column.width / drawing.width, _MOST_ENLARGED * column.form.inch)
    height = drawing.height * scale
    column.heading(drawing.title, follow=height)
    column.add(Picture(drawing, (0.0, column.take(height)), scale))


def _pictures(column: Column, comparison: Comparison) -> None:
    """Under each value the cloth that differs, all at the scale of the largest."""
    place = comparison.differing
    if place is None:
        column.gap(_GAP)
        column.text(told("All values lay the cloth in the same way."))
        return
    stacks = [_drawings(value, place) for value in comparison.columns]
    name = comparison.plans[0].fabrics[place].fabric.name
    room = column.bottom - column.y - HEADING * LEADING - LINE - 3 * _GAP
    if room < _SMALLEST:
        column.turn()
    width = column.width / len(stacks)
    free = column.bottom - column.y - HEADING * LEADING - LINE - 3 * _GAP
    inch = column.form.inch
    ratio = _ratio(stacks, (width - _GAP) / inch, free / inch, _GAP / inch)
    column.heading(f"{name}, 1 : {ratio}", follow=_SMALLEST)
    top = column.y + LINE
    for number, (value, stack) in enumerate(zip(comparison.columns, stacks, strict=True)):
        left = number * width
        column.words(_short(value.said, width - _GAP), left, column.y)
        for picture in _stacked(stack, left, top, inch / ratio):
            column.add(picture)


def _drawings(value: Value, place: int) -> tuple[Drawing, ...]:
    if value.plan is None:
        return ()
    sheets = sheets_of(value.plan.fabrics[place])
    return tuple(draw_sheet(value.plan, place, sheet, Heading.DOWN) for sheet in sheets)


def _ratio(stacks: Sequence[Sequence[Drawing]], width: float, height: float, gap: float) -> int:
    """The least n at which every stack fits its column at 1 : n; inches on paper."""
    ratio = 1.0
    for stack in stacks:
        free = max(gap, height - gap * len(stack))
        tall = sum(drawing.height for drawing in stack)
        wide = max((drawing.width for drawing in stack), default=0.0)
        ratio = max(ratio, tall / free, wide / width)
    return -int(-ratio // 1)


def _stacked(stack: Sequence[Drawing], left: float, top: float, scale: float) -> Iterator[Picture]:
    for drawing in stack:
        yield Picture(drawing, (left, top), scale)
        top += drawing.height * scale + _GAP


def _short(text: str, width: float) -> str:
    face = typeface()
    return shortened(face.words(text), width, face.width, BODY)
