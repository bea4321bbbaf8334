"""A sheet of cloth a page: the lay to scale, with its key and a check of the scale.

Long cloth goes over several pages, which overlap and carry match lines.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from app.packet import swatch, true_size
from app.packet.column import BODY, BOTTOM, HEADING, LINE, Column
from app.packet.layout import OVERLAP, Layout, larger_turned, lay_out, ratio_on_one_page, stretch_of
from app.packet.page import Frame, Page, Picture, Rule
from app.packet.paper import FRAME_WIDTH
from app.paint import setting_of
from app.type_fit import LEADING, shortened
from app.typeface import typeface
from app.wording import part_size
from core.drawing.cloth import Heading, draw_sheet
from core.drawing.marks import Drawing, Label
from core.lay.lay import BOLT, Sheet
from core.lengths import RULERS, show, show_size
from core.plan import FabricPlan, Part, Plan

_HEAD: Final = HEADING * LEADING + 4 + 2 * LINE  # the page's heading and two lines of facts
_GAP: Final = 6.0  # kept above and below the picture
_MATCH: Final = LINE  # strip for the words at a match line
_TOO_SMALL: Final = " (hatch only)"
_ONE_COLUMN: Final = 4  # parts that the key lists one below the other


@dataclass(frozen=True, slots=True)
class _KeyEntry:
    """One line of the key; the name gives way where the line is too long."""

    role: str
    before: str
    name: str
    after: str


def sheet_pages(plan: Plan, fabric_index: int, sheet: Sheet) -> tuple[Page, ...]:
    """The page or pages of one sheet of one fabric."""
    fabric_plan = plan.fabrics[fabric_index]
    parts = _parts_on(plan, fabric_plan, sheet)
    foot = _key_rows(parts) * LINE + 8 + true_size.HEIGHT
    drawing, layout = _picture(plan, fabric_index, sheet, BOTTOM - foot - _HEAD - 2 * _GAP)
    entries = _key_entries(plan, parts, drawing, layout.scale)
    column = Column(drawing.title)
    for place in range(len(layout.stretches)):
        _head(column, plan, fabric_plan, sheet, layout, place)
        _stretch(column, drawing, layout, place)
        column.y = BOTTOM - foot
        _key(column, entries)
        column.add(*true_size.true_size(BOTTOM - true_size.HEIGHT))
    return column.pages()


def _parts_on(plan: Plan, fabric_plan: FabricPlan, sheet: Sheet) -> tuple[tuple[Part, int], ...]:
    """The parts with pieces on the sheet, and how many of each."""
    counts = Counter(p.name for p in fabric_plan.lay.placements if p.sheet == sheet)
    return tuple((part, counts[part.name]) for part in plan.parts if counts[part.name])


def _picture(plan: Plan, fabric_index: int, sheet: Sheet, height: float) -> tuple[Drawing, Layout]:
    """The cloth running down the page, or to the right where that shows it much larger."""
    down = draw_sheet(plan, fabric_index, sheet, Heading.DOWN)
    layout = lay_out(down, FRAME_WIDTH, height)
    right = draw_sheet(plan, fabric_index, sheet, Heading.RIGHT)
    ratio = ratio_on_one_page(right, FRAME_WIDTH, height)
    if larger_turned(layout, ratio):
        return right, Layout(ratio, ((0.0, right.height),))
    if len(layout.stretches) > 1:
        layout = lay_out(down, FRAME_WIDTH, height - 2 * _MATCH)
    return down, layout


def _head(
    column: Column, plan: Plan, fabric_plan: FabricPlan, sheet: Sheet, layout: Layout, place: int
) -> None:
    """Heading, scale and facts. Every page but the first is turned to."""
    pages = len(layout.stretches)
    if place:
        column.turn(column.head)
    else:
        column.heading(column.head, level=0)
    unit = RULERS[plan.project.units].unit
    part = f" Page {place + 1} of {pages} of this cloth." if pages > 1 else ""
    column.text(
        f"Scale 1 : {layout.ratio}. 1 {unit} on paper is {layout.ratio} {unit} of cloth.{part}",
        bold=True,
    )
    column.text(_facts(plan, fabric_plan, sheet))


def _facts(plan: Plan, fabric_plan: FabricPlan, sheet: Sheet) -> str:
    """What to measure before the first cut."""
    units, lay = plan.project.units, fabric_plan.lay
    if sheet.on != BOLT:
        rect = dict(lay.sheets)[sheet]
        return (
            f"Before cutting, check that it measures {show_size(rect.across, rect.along, units)}."
        )
    return (
        f"Usable width {show(fabric_plan.fabric.cutting_width, units)}. "
        f"Buy {fabric_plan.buy.sale_text} ({show(lay.bought_along, units)}); "
        f"the lay takes {show(lay.used_along, units)}."
    )


def _stretch(column: Column, drawing: Drawing, layout: Layout, place: int) -> None:
    """The part of the picture that this page shows, with its match lines."""
    start, end = layout.stretches[place]
    scale, broken = layout.scale, len(layout.stretches) > 1
    left = (FRAME_WIDTH - drawing.width * scale) / 2
    top = _HEAD + _GAP + (_MATCH if broken else 0.0)
    seen = stretch_of(drawing, start, end) if broken else drawing
    frame = Frame(left - 1, top - 1, drawing.width * scale + 2, (end - start) * scale + 2)
    at = (left, top - start * scale)
    column.add(Picture(seen, at, scale, frame if broken else None))
    if place:
        _match(column, left, top + OVERLAP / 2 * scale, frame)
        column.words("From the page before: lay the dashed lines on each other.", 0, top - _MATCH)
    if place + 1 < len(layout.stretches):
        _match(column, left, top + (end - start - OVERLAP / 2) * scale, frame)
        column.words("Goes on on the next page, from the dashed line.", 0, frame.top + frame.height)


def _match(column: Column, left: float, y: float, frame: Frame) -> None:
    column.add(Rule((left, y), (left + frame.width, y), 1.2, dashed=True))


def _key_rows(parts: Sequence[object]) -> int:
    return len(parts) if len(parts) <= _ONE_COLUMN else -(-len(parts) // 2)


def _key(column: Column, entries: Sequence[_KeyEntry]) -> None:
    """What the letters stand for: hatch, letter, count, name, cut size."""
    face, rows = typeface(), _key_rows(entries)
    width = FRAME_WIDTH if rows == len(entries) else FRAME_WIDTH / 2
    room = width - swatch.WIDTH - 14
    for place, entry in enumerate(entries):
        side, row = divmod(place, rows)
        left, top = side * width, column.y + row * LINE
        column.add(swatch.swatch(entry.role, left, top))
        left_over = room - face.width(entry.before + entry.after) * BODY
        name = shortened(face.words(entry.name), left_over, face.width, BODY)
        text = f"{entry.before}{name}{entry.after}"
        column.words(text, left + swatch.WIDTH + 6, top)


def _key_entries(
    plan: Plan, parts: Sequence[tuple[Part, int]], drawing: Drawing, scale: float
) -> tuple[_KeyEntry, ...]:
    """An entry a part; it says so where a piece is drawn too small to hold its letter."""
    face = typeface()
    bare = {
        mark.key
        for mark in drawing.marks
        if isinstance(mark, Label) and mark.key and setting_of(mark, scale, face) is None
    }
    entries = []
    for part, count in parts:
        unlettered = any(part.label(copy) in bare for copy in range(1, part.count + 1))
        size = part_size(part, plan.project.units)
        after = face.words(f", {size}{_TOO_SMALL if unlettered else ''}")
        entries.append(_KeyEntry(part.role, f"{part.letter} × {count}: ", part.name, after))
    return tuple(entries)
