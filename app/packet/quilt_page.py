"""The first page: the quilt, what to buy, what to cut, and what to know before cutting."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from app.packet.column import BODY, LINE, Column, lines_of
from app.packet.page import Page, Picture, Rule
from app.packet.paper import USUAL, Format
from app.packet.quilt_facts import quilt_facts
from app.packet.swatch import WIDTH, swatch
from app.packet.table import ColumnHead, start_height, table, told_heads
from app.type_fit import shortened
from app.typeface import typeface, visible
from app.wording import cost, part_size, purchase
from core.drawing.quilt import draw_quilt
from core.language import marked, told, told_as
from core.lay.lay import BOLT
from core.lengths import show, show_size
from core.part_names import told_part
from core.plan import FabricPlan, Plan

_TITLE: Final = marked("The quilt")
_FACTS_AT: Final = 264.0
_ASIDE: Final = WIDTH + 6
_GAP: Final = 10.0
_WHO: Final = 0.62  # of the width, for the name; the rest is for the date
_WRITE: Final = 22.0  # from one line to write on to the next
_MOST_NOTES: Final = 8


@dataclass(frozen=True, slots=True)
class _Room:
    """The points that the picture may take, and the least lines for notes."""

    width: float
    height: float
    notes: int


_USUAL: Final = _Room(250.0, 205.0, 3)
_TIGHT: Final = _Room(250.0, 160.0, 1)
_BUY = (
    ColumnHead(marked("Fabric"), 21),
    ColumnHead(marked("Buy"), 20),
    ColumnHead(marked("Lay takes"), 13),
    ColumnHead(marked("From the shelf"), 20),
    ColumnHead(marked("Cost"), 9),
    ColumnHead(marked("Proved least"), 17),
)


def quilt_pages(plan: Plan, form: Format = USUAL, name: str = "") -> tuple[Page, ...]:
    """The first page, and its continuation where a plan says more than a page holds.

    `name` is whose packet it is; without one there is a line to write it on. The
    picture and the room for notes give way where that saves a page.
    """
    usual = _pages(plan, form, name, _USUAL)
    if len(usual) == 1:
        return usual
    tight = _pages(plan, form, name, _TIGHT)
    return tight if len(tight) < len(usual) else usual


def _pages(plan: Plan, form: Format, name: str, room: _Room) -> tuple[Page, ...]:
    column = Column(told(_TITLE), form)
    column.mark(told(_TITLE), 0)
    column.title(plan.project.quilt.name or told("A quilt"))
    _whose(column, name)
    _quilt(column, plan, room)
    _buy(column, plan)
    _cut(column, plan)
    _spelled(column, plan)
    _warnings(column, plan)
    return column.pages()


def _whose(column: Column, name: str) -> None:
    """Whose packet it is, and when: written by hand, since a file knows no date."""
    face, half = typeface(), column.width * _WHO
    top, whose = column.take(_WRITE), told("For")
    _to_write(column, whose, 0.0, half - _GAP, top)
    if name:
        start = face.width(f"{whose} ") * BODY
        shown = shortened(face.words(name), half - start - 2 * _GAP, face.width, BODY)
        column.words(shown, start + 4, top, bold=True)
    _to_write(column, told("Date"), half, column.width, top)
    column.gap(_GAP)


def _to_write(column: Column, word: str, left: float, right: float, top: float) -> None:
    """A word and a line to write on, in the strip that starts at `top`."""
    column.words(word, left, top)
    start = left + typeface().width(f"{word} ") * BODY
    column.add(Rule((start, top + LINE + 1), (right, top + LINE + 1), 0.5))


def _quilt(column: Column, plan: Plan, most: _Room) -> None:
    """The picture; beside it, or in large print below it, the sizes and lines for notes."""
    drawing = draw_quilt(plan)
    scale = min(most.width / drawing.width, most.height / drawing.height)
    wide, high = drawing.width * scale, drawing.height * scale
    below = column.form.large
    left = 0.0 if below else _FACTS_AT
    rows = tuple(_fact_lines(plan, column.width - left - _ASIDE))
    beside = len(rows) * LINE + LINE + most.notes * _WRITE
    top = column.take(high + _GAP if below else max(high, beside) + _GAP)
    room = column.width if below else most.width
    column.add(Picture(drawing, ((room - wide) / 2, top), scale))
    for place, (role, line, bold) in enumerate(rows):
        strip = column.take(LINE) if below else top + place * LINE
        if role:
            column.add(swatch(role, left, strip))
        column.words(line, left + _ASIDE, strip, bold=bold)
    if below:
        _notes(column, left, column.take(beside - len(rows) * LINE), most.notes)
    else:
        free = int((column.y - _GAP - top - len(rows) * LINE - LINE) / _WRITE)
        _notes(column, left, top + len(rows) * LINE, min(free, _MOST_NOTES))


def _notes(column: Column, left: float, top: float, lines: int) -> None:
    """Lines to write on."""
    notes = told("Notes")
    column.words(notes, left, top + 4)
    start = left + typeface().width(f"{notes} ") * BODY
    for line in range(lines):
        y = top + LINE + 4 + line * _WRITE
        column.add(Rule((left if line else start, y), (column.width, y), 0.35))


def _fact_lines(plan: Plan, width: float) -> Iterator[tuple[str, str, bool]]:
    """The facts in lines that fit beside the picture, a role with the first of each."""
    for fact in quilt_facts(plan):
        lines = lines_of(fact.text, width, bold=fact.bold)
        for place, line in enumerate(lines):
            yield fact.role if place == 0 else "", line, fact.bold


def _buy(column: Column, plan: Plan) -> None:
    rows = [_buy_row(plan, fabric_plan) for fabric_plan in plan.fabrics]
    summed = plan.cost is not None and len(rows) > 1
    if summed and not column.form.large:
        rows.append((told("All cloth"), "", "", "", cost(plan.cost), ""))
    heads = told_heads(_BUY)
    column.heading(told("What to buy"), level=1, follow=start_height(column, heads, rows))
    table(column, heads, rows)
    if summed and column.form.large:
        column.text(told("All cloth: {cost}", cost=cost(plan.cost)), bold=True)
    if any(not fabric_plan.lay.proved_least for fabric_plan in plan.fabrics):
        column.text(
            told(
                "Proved least: no lay of these pieces can be bought in less. Not proved: a better "
                "lay may exist."
            )
        )
    column.gap(_GAP)


def _buy_row(plan: Plan, fabric_plan: FabricPlan) -> tuple[str, ...]:
    units, lay, buy = plan.project.units, fabric_plan.lay, fabric_plan.buy
    return (
        fabric_plan.fabric.name,
        purchase(fabric_plan, units),
        show(lay.used_along, units) if lay.used_along else "–",
        _from_the_shelf(plan, fabric_plan),
        cost(buy.cost if buy.along else None),
        told("yes") if lay.proved_least else told("not proved"),
    )


def _from_the_shelf(plan: Plan, fabric_plan: FabricPlan) -> str:
    """The pieces on hand that the lay uses, equal ones counted."""
    used = Counter(
        (rect.across, rect.along) for sheet, rect in fabric_plan.lay.sheets if sheet.on != BOLT
    )
    units = plan.project.units
    return (
        "\n".join(
            told("{count} of {size}", count=count, size=show_size(across, along, units))
            for (across, along), count in used.items()
        )
        or "–"
    )


def _cut_heads() -> tuple[ColumnHead, ...]:
    return (
        ColumnHead(told_as("of a piece", "Letter"), 9),
        ColumnHead(told("Part"), 34),
        ColumnHead(told("Cut size"), 27),
        ColumnHead(told("Count"), 10),
        ColumnHead(told("Fabric"), 22),
    )


def _cut(column: Column, plan: Plan) -> None:
    if not plan.parts:
        return
    units = plan.project.units
    rows = [
        (part.letter, told_part(part.name), part_size(part, units), str(part.count), part.fabric)
        for part in plan.parts
    ]
    heads = _cut_heads()
    column.heading(told("What to cut"), level=1, follow=start_height(column, heads, rows))
    table(column, heads, rows)
    column.gap(_GAP)


def _spelled(column: Column, plan: Plan) -> None:
    """A word on letters that the typeface lacks, where a name has some."""
    if respelled(plan):
        column.text(
            told(
                "Names in letters that this packet's type lacks are given in Latin letters, as "
                "they sound, or by the letters' Unicode numbers. The file's keywords have them as "
                "written."
            )
        )
        column.gap(_GAP)


def respelled(plan: Plan) -> tuple[str, ...]:
    """The names that the packet does not show as they are written."""
    names = (plan.project.quilt.name, *(fabric.name for fabric in plan.project.fabrics))
    return tuple(name for name in names if typeface().spelled(name) != visible(name))


def _warnings(column: Column, plan: Plan) -> None:
    if not plan.warnings:
        return
    column.heading(told("Before you cut"), level=1)
    column.items([warning.text for warning in plan.warnings], "!")
    column.gap(_GAP)
