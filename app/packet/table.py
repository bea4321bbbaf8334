"""Tables: rows of wrapped cells under a head that is repeated on every page."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from app.packet.column import BODY, BOTTOM, LINE, Column, lines_of
from app.packet.page import Rule
from app.packet.paper import FRAME_WIDTH
from app.type_fit import limited
from app.typeface import typeface

_GUTTER: Final = 8.0
_ROW_GAP: Final = 4.0
_MOST_LINES: Final = 5  # in one cell; a longer text is cut short


@dataclass(frozen=True, slots=True)
class ColumnHead:
    """A column's head and its share of the table's width."""

    title: str
    share: float


def table(column: Column, heads: Sequence[ColumnHead], rows: Sequence[Sequence[str]]) -> None:
    """Add a table as wide as the frame; a row stays on one page."""
    widths = _widths(heads)
    first = _cells(rows[0], widths) if rows else []
    column.need(LINE + _ROW_GAP + _height(first))
    _row(column, [[head.title] for head in heads], widths, bold=True)
    for row in rows:
        cells = _cells(row, widths)
        if column.y + _height(cells) > BOTTOM:
            column.turn()
            _row(column, [[head.title] for head in heads], widths, bold=True)
        _row(column, cells, widths)


def _widths(heads: Sequence[ColumnHead]) -> list[float]:
    shares = sum(head.share for head in heads)
    return [head.share / shares * FRAME_WIDTH for head in heads]


def _cells(row: Sequence[str], widths: Sequence[float]) -> list[list[str]]:
    measure = typeface().width
    return [
        limited(lines_of(text, width - _GUTTER), _MOST_LINES, width - _GUTTER, measure, BODY)
        for text, width in zip(row, widths, strict=True)
    ]


def _height(cells: Sequence[Sequence[str]]) -> float:
    return max((len(cell) for cell in cells), default=1) * LINE + _ROW_GAP


def _row(
    column: Column, cells: Sequence[Sequence[str]], widths: Sequence[float], *, bold: bool = False
) -> None:
    top, left = column.take(_height(cells)), 0.0
    for cell, width in zip(cells, widths, strict=True):
        for place, line in enumerate(cell):
            column.words(line, left, top + place * LINE, bold=bold)
        left += width
    foot = column.y - _ROW_GAP / 2
    column.add(Rule((0.0, foot), (FRAME_WIDTH, foot), 0.9 if bold else 0.35))
