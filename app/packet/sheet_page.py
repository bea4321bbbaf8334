"""A sheet of cloth a page: the lay to scale, with its key and a check of the scale.

Long cloth goes over several pages, which overlap and carry match lines.
"""

from __future__ import annotations

from collections import Counter
from typing import Final

from app.packet import true_size
from app.packet.column import BODY, BOTTOM, HEADING, LINE, Column, lines_of
from app.packet.layout import OVERLAP, Layout, better, lay_out, stretch_of
from app.packet.page import Frame, Page, Picture, Rule
from app.packet.paper import FRAME_WIDTH
from app.packet.wording import part_size
from app.type_fit import LEADING, shortened
from app.typeface import typeface
from core.drawing.cloth import Heading, draw_sheet
from core.drawing.marks import Area, Drawing
from core.lay.lay import Sheet
from core.lengths import show
from core.plan import FabricPlan, Part, Plan

_HEAD: Final = HEADING * LEADING + 4 + 2 * LINE  # the page's heading and two lines of facts
_GAP: Final = 6.0  # kept above and below the picture
_MATCH: Final = LINE  # strip for the words at a match line
_KEY_COLUMNS: Final = 2
_SWATCH: Final = (24.0, 11.0)  # points, wide and high
_SWATCH_SCALE: Final = 8.0  # points to an inch


def sheet_pages(plan: Plan, fabric_index: int, sheet: Sheet) -> tuple[Page, ...]:
    """The page or pages of one sheet of one fabric."""
    fabric_plan = plan.fabrics[fabric_index]
    parts = _parts_on(plan, fabric_plan, sheet)
    foot = -(-len(parts) // _KEY_COLUMNS) * LINE + 8 + true_size.HEIGHT
    drawing, layout = _picture(plan, fabric_index, sheet, BOTTOM - foot - _HEAD - 2 * _GAP)
    column = Column(drawing.title)
    for place in range(len(layout.stretches)):
        _head(column, plan, fabric_plan, drawing.title, layout, place)
        _stretch(column, drawing, layout, place)
        column.y = BOTTOM - foot
        _key(column, plan, parts)
        column.add(*true_size.true_size(BOTTOM - true_size.HEIGHT))
    return column.pages()


def _parts_on(plan: Plan, fabric_plan: FabricPlan, sheet: Sheet) -> tuple[tuple[Part, int], ...]:
    """The parts with pieces on the sheet, and how many of each."""
    counts = Counter(p.name for p in fabric_plan.lay.placements if p.sheet == sheet)
    return tuple((part, counts[part.name]) for part in plan.parts if counts[part.name])


def _picture(
    plan: Plan, fabric_index: int, sheet: Sheet, height: float
) -> tuple[Drawing, Layout]:
    """The cloth running down the page, or to the right where that shows it much larger."""
    down = draw_sheet(plan, fabric_index, sheet, Heading.DOWN)
    layout = lay_out(down, FRAME_WIDTH, height)
    right = draw_sheet(plan, fabric_index, sheet, Heading.RIGHT)
    lying = lay_out(right, FRAME_WIDTH, height)
    if len(lying.stretches) == 1 and better(layout, lying):
        return right, lying
    if len(layout.stretches) > 1:
        layout = lay_out(down, FRAME_WIDTH, height - 2 * _MATCH)
    return down, layout


def _head(
    column: Column, plan: Plan, fabric_plan: FabricPlan, title: str, layout: Layout, place: int
) -> None:
    """Heading, scale and facts. Every page but the first is turned to."""
    pages = len(layout.stretches)
    if place:
        column.turn(title)
    else:
        column.heading(title, level=0)
    part = f" Page {place + 1} of {pages} of this cloth." if pages > 1 else ""
    column.text(
        f"Scale 1 : {layout.ratio}. 1 in on paper is {layout.ratio} in of cloth.{part}", bold=True
    )
    column.text(_facts(plan, fabric_plan))


def _facts(plan: Plan, fabric_plan: FabricPlan) -> str:
    units, lay = plan.project.units, fabric_plan.lay
    width = f"Usable width {show(fabric_plan.fabric.usable_width, units)}."
    if not lay.used_along:
        return width
    return (
        f"{width} Buy {fabric_plan.buy.sale_text} ({show(lay.bought_along, units)}); "
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
    column.add(Picture(seen, (left, top - start * scale), scale, frame))
    if place:
        _match(column, left, top + OVERLAP / 2 * scale, frame)
        column.words("From the page before: lay the dashed lines on each other.", 0, top - _MATCH)
    if place + 1 < len(layout.stretches):
        _match(column, left, top + (end - start - OVERLAP / 2) * scale, frame)
        column.words("Goes on on the next page, from the dashed line.", 0, frame.top + frame.height)


def _match(column: Column, left: float, y: float, frame: Frame) -> None:
    column.add(Rule((left, y), (left + frame.width, y), 1.2, dashed=True))


def _key(column: Column, plan: Plan, parts: tuple[tuple[Part, int], ...]) -> None:
    """What the letters stand for: hatch, letter, count, cut size, name."""
    regular, width = typeface(), FRAME_WIDTH / _KEY_COLUMNS
    aside = _SWATCH[0] + 6
    for place, (part, count) in enumerate(parts):
        row, side = divmod(place, _KEY_COLUMNS)
        left, top = side * width, column.y + row * LINE
        column.add(_swatch(part, left, top + (LINE - _SWATCH[1]) / 2))
        size = part_size(part, plan.project.units)
        text = regular.words(f"{part.letter}: {count} × ({size}) {part.name}")
        room = width - aside - 8
        column.words(shortened(text, room, regular.width, BODY), left + aside, top)


def _swatch(part: Part, left: float, top: float) -> Picture:
    wide, high = (side / _SWATCH_SCALE for side in _SWATCH)
    corners = ((0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high))
    area = Area(corners, part.role, part.letter)
    drawing = Drawing(part.name, wide, high, (area,))
    frame = Frame(left - 1, top - 1, _SWATCH[0] + 2, _SWATCH[1] + 2)
    return Picture(drawing, (left, top), _SWATCH_SCALE, frame)
