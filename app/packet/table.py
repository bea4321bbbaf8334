"""Tables: rows of wrapped cells under a head that is repeated on every page.

A column that needs less than its share of the width leaves the rest to the others.

In large print, where columns would be too narrow, each row is a list of its own.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from app.packet.column import BODY, LINE, Column, lines_of
from app.packet.page import Rule
from app.type_fit import limited
from app.typeface import typeface
from core.language import told

_GUTTER: Final = 8.0
_ROW_GAP: Final = 4.0
_MOST_LINES: Final = 10  # in one cell; a longer text is cut short
_INDENT: Final = 12.0
_FIRST: Final = 3  # rows that stay with the head


@dataclass(frozen=True, slots=True)
class ColumnHead:
    """A column's head and its share of the table's width, where the columns need all of it."""

    title: str
    share: float


def told_heads(heads: Sequence[ColumnHead]) -> tuple[ColumnHead, ...]:
    """Heads whose titles stand in a table, in the language spoken."""
    return tuple(replace(head, title=told(head.title)) for head in heads)


def table(column: Column, heads: Sequence[ColumnHead], rows: Sequence[Sequence[str]]) -> None:
    """Add a table as wide as the frame; a row stays on one page."""
    if column.form.large:
        _listed(column, heads, rows)
        return
    widths = _widths(heads, rows, column.width)
    first = _cells(rows[0], widths) if rows else []
    titles = _cells([head.title for head in heads], widths, bold=True)
    column.need(_height(titles) + _height(first))
    _row(column, titles, widths, bold=True)
    for row in rows:
        cells = _cells(row, widths)
        if column.y + _height(cells) > column.bottom:
            column.turn()
            _row(column, titles, widths, bold=True)
        _row(column, cells, widths)


def start_height(
    column: Column, heads: Sequence[ColumnHead], rows: Sequence[Sequence[str]]
) -> float:
    """What the head and the first rows take, for a heading that should stay with them."""
    if column.form.large:
        return 4 * LINE
    widths = _widths(heads, rows, column.width)
    titles = _cells([head.title for head in heads], widths, bold=True)
    return _height(titles) + sum(_height(_cells(row, widths)) for row in rows[:_FIRST])


def _listed(column: Column, heads: Sequence[ColumnHead], rows: Sequence[Sequence[str]]) -> None:
    """Each row: its first cell as a line in bold, then a line for every other cell."""
    for row in rows:
        name, *others = row
        column.need(min(3 * LINE, column.bottom / 2))
        column.text(f"{heads[0].title} {name}".strip(), bold=True)
        for head, text in zip(heads[1:], others, strict=True):
            column.text(f"{head.title}: {text}".replace("\n", ", "), indent=_INDENT)
        column.gap(_ROW_GAP)


def _widths(
    heads: Sequence[ColumnHead], rows: Sequence[Sequence[str]], whole: float
) -> list[float]:
    """As wide as what stands in them; columns that ask for more than there is share the rest.

    Where all have what they ask for, though not each within its share, what is left is shared.
    """
    wanted = [
        max(_needs(head.title, bold=True), *(_needs(row[place]) for row in rows))
        for place, head in enumerate(heads)
    ]
    every, spare = sum(head.share for head in heads), whole - sum(wanted)
    within = all(w <= h.share / every * whole for w, h in zip(wanted, heads, strict=True))
    if spare >= 0 and not within:
        return [w + h.share / every * spare for w, h in zip(wanted, heads, strict=True)]
    widths: dict[int, float] = {}
    while True:
        free = whole - sum(widths.values())
        shares = {place: h.share for place, h in enumerate(heads) if place not in widths}
        each = free / (sum(shares.values()) or 1)
        modest = {p: wanted[p] for p, share in shares.items() if wanted[p] <= share * each}
        if not modest or len(modest) == len(shares):
            break
        widths |= modest
    return [widths.get(place, head.share * each) for place, head in enumerate(heads)]


def _needs(text: str, *, bold: bool = False) -> float:
    """The width of a cell that is not wrapped."""
    face = typeface(bold=bold)
    return max(face.width(line) for line in face.words(text).split("\n")) * BODY + _GUTTER + 0.1


def _cells(row: Sequence[str], widths: Sequence[float], *, bold: bool = False) -> list[list[str]]:
    measure = typeface(bold=bold).width
    return [
        limited(
            lines_of(text, width - _GUTTER, bold=bold), _MOST_LINES, width - _GUTTER, measure, BODY
        )
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
    column.add(Rule((0.0, foot), (column.width, foot), 0.9 if bold else 0.35))
