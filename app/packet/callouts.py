"""Letters beside a picture, with a leader line to each piece that is too small to hold its own.

Pieces of one part that lie beside or under each other share a line: "D1 to D12". A
leader never runs over words; where no way is free, the piece keeps its hatch alone,
and the key says so.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from app.packet.column import BODY, LINE
from app.packet.page import Box, Item, Rule, Words
from app.packet.paper import Format
from app.paint import setting_of
from app.type_fit import CAPITALS
from app.typeface import typeface
from core.drawing.marks import Drawing, Label, Point
from core.steps import ranges

ROOM: Final = 72.0  # points of layout that the letters take beside a picture
_CLEAR: Final = 1.5
_DOT: Final = 1.2
_NEAR: Final = 1.25  # times a label's room: pieces that touch, since a room is a little smaller
_HEIGHTS: Final = (0.0, -0.3, 0.3, -0.42, 0.42)  # of a row, from its middle


@dataclass(frozen=True, slots=True)
class _Stack:
    """Rows of pieces of one part, from the top down, each from left to right."""

    rows: tuple[tuple[Label, ...], ...]

    @property
    def text(self) -> str:
        return ", ".join(ranges([label.key for row in self.rows for label in row]))


def unlettered(
    drawing: Drawing, scale: float, form: Format, least: float | None = None
) -> tuple[Label, ...]:
    """The labels of pieces that cannot be set at `scale` points to the inch, in the least type."""
    face, smallest = typeface(), least or form.least
    return tuple(
        mark
        for mark in drawing.marks
        if isinstance(mark, Label) and mark.key and setting_of(mark, scale, face, smallest) is None
    )


@dataclass(frozen=True, slots=True)
class Called:
    """What to put beside a picture, how high it stands, and the pieces that are lettered there."""

    items: tuple[Item, ...]
    height: float
    keys: frozenset[str]


def callouts(
    drawing: Drawing,
    at: Point,
    scale: float,
    form: Format,
    span: tuple[float, float],
    lowest: float,
) -> Called:
    """Letters in the strip right of the picture that lies `at`, between the heights of `span`.

    They go on below it, down to `lowest`, where the picture is too low for all of them.
    """
    blocked = _blocked(drawing, scale, form)
    stacks = _stacks(unlettered(drawing, scale, form))
    leads = [(s, y) for s in stacks if (y := _free(s, blocked, drawing.width, scale)) is not None]
    leads = sorted(leads, key=lambda lead: lead[1])[: max(0, int((lowest - span[0]) / LINE))]
    items: list[Item] = []
    edge, below = at[0] + drawing.width * scale, span[0]
    height = LINE * len(leads)
    last = max(span[1] - height, span[0])
    for place, (stack, y) in enumerate(leads):
        top = min(max(at[1] + y - LINE / 2, below), last + LINE * place)
        below, middle = top + LINE, top + LINE / 2
        items.extend(_lead(stack, at, scale, y, edge))
        items.append(Rule((edge, at[1] + y), (edge + 8, middle), 0.6))
        items.append(Words((edge + 10, middle + CAPITALS * BODY / 2), stack.text, BODY))
    led = (label.key for stack, _ in leads for row in stack.rows for label in row)
    return Called(tuple(items), height, frozenset(led))


def _stacks(labels: Sequence[Label]) -> list[_Stack]:
    """Pieces of one part that lie beside and under each other, as far as their words have room."""
    stacks: list[_Stack] = []
    for row in _rows(labels):
        stack = next((s for s in stacks if _goes_on(s, row)), None)
        if stack is not None:
            longer = _Stack((*stack.rows, row))
            if _fits(longer):
                stacks[stacks.index(stack)] = longer
                continue
        stacks.append(_Stack((row,)))
    return [stack for stack in stacks if _fits(stack)]


def _fits(stack: _Stack) -> bool:
    return typeface().width(stack.text) * BODY <= ROOM - 12


def _rows(labels: Sequence[Label]) -> list[tuple[Label, ...]]:
    """Neighbours of one part at one height, from the top down."""
    rows: dict[tuple[float, str], list[Label]] = {}
    for label in labels:
        rows.setdefault((round(label.centre[1], 2), _letters(label)), []).append(label)
    return [tuple(sorted(rows[key], key=lambda label: label.centre[0])) for key in sorted(rows)]


def _letters(label: Label) -> str:
    return label.key.rstrip("0123456789")


def _goes_on(stack: _Stack, row: tuple[Label, ...]) -> bool:
    """Whether `row` is of the stack's part, right below it and no wider set than it."""
    last, first = stack.rows[-1][0], row[0]
    near = first.centre[1] - last.centre[1] <= _NEAR * (first.room[1] + last.room[1]) / 2
    return near and _letters(last) == _letters(first) and last.centre[0] == first.centre[0]


def _blocked(drawing: Drawing, scale: float, form: Format) -> list[tuple[Point, Point]]:
    """The rectangles of all words that are set, in points from the picture's corner."""
    face, found = typeface(), []
    for mark in drawing.marks:
        if isinstance(mark, Label):
            setting = setting_of(mark, scale, face, form.least)
            if setting is not None:
                (wide, high), (x, y) = setting.extent(face.width), mark.centre
                x, y, dx, dy = x * scale, y * scale, wide / 2 + _CLEAR, high / 2 + _CLEAR
                found.append(((x - dx, y - dy), (x + dx, y + dy)))
    return found


def _free(
    stack: _Stack, blocked: Sequence[tuple[Point, Point]], width: float, scale: float
) -> float | None:
    """A height within some row at which nothing is written from its first piece to the edge."""
    for row in stack.rows:
        start, end = row[0].centre[0] * scale, width * scale
        for share in _HEIGHTS:
            y = (row[0].centre[1] + share * row[0].room[1]) * scale
            if not any(
                top < y < bottom and left < end and right > start
                for (left, top), (right, bottom) in blocked
            ):
                return y
    return None


def _lead(stack: _Stack, at: Point, scale: float, y: float, edge: float) -> Iterator[Item]:
    """The line from the pieces to the edge, with a dot on every piece."""
    first, last = stack.rows[0][0], stack.rows[-1][0]
    x = at[0] + first.centre[0] * scale
    heights = [first.centre[1] * scale, last.centre[1] * scale, y]
    yield Rule((x, at[1] + min(heights)), (x, at[1] + max(heights)), 0.6)
    yield Rule((x, at[1] + y), (edge, at[1] + y), 0.6)
    for row in stack.rows:
        middle = at[1] + row[0].centre[1] * scale
        yield Rule((x, middle), (at[0] + row[-1].centre[0] * scale, middle), 0.6)
        for label in row:
            dot = at[0] + label.centre[0] * scale
            yield Box(dot - _DOT, middle - _DOT, 2 * _DOT, 2 * _DOT, solid=True)
