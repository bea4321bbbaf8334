"""Piece tags: a label for every piece, to cut out and pin on."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from app.packet.column import BODY, LINE, Column, baseline, lines_of
from app.packet.page import Box, Item, Page, Picture, Words
from app.packet.paper import USUAL, Format
from app.type_fit import shortened
from app.typeface import typeface
from core.drawing.tag import SIDE, draw_piece
from core.language import marked, told
from core.lay.lay import Placement
from core.lengths import show_size
from core.part_names import told_part
from core.plan import FabricPlan, Plan

_TITLE: Final = marked("Piece tags")
_WIDEST: Final = 150.0  # points
_LETTER: Final = 18.0
_INSET: Final = 6.0
_PICTURE: Final = 24.0
_HEAD: Final = _PICTURE + 3.0  # height of the letter and the picture beside it


def tag_pages(plan: Plan, form: Format = USUAL) -> tuple[Page, ...]:
    """A tag a piece, fabric by fabric, in the order in which they are lettered."""
    title = told(_TITLE)
    column = Column(title, form)
    column.mark(title, 0)
    column.title(title)
    column.text(
        told(
            "Cut the tags out and pin each to its piece as it is cut. The size is across × along "
            "the cloth; the arrow is the lengthwise grain, with one head where the print has one "
            "way up."
        )
    )
    column.gap(LINE / 2)
    pieces = [(fabric, placed) for fabric in plan.fabrics for placed in _in_order(plan, fabric)]
    across = int(form.width // _WIDEST) + 1
    wide = form.width / across
    for first in range(0, len(pieces), across):
        row = pieces[first : first + across]
        lines = max(len(_lines(plan, fabric, placed, wide)) for fabric, placed in row)
        high = _HEAD + lines * LINE + 2 * _INSET
        top = column.take(high)
        for place, (fabric, placed) in enumerate(row):
            column.add(*_tag(plan, fabric, placed, (place * wide, top, wide, high)))
    return column.pages() if pieces else ()


def _in_order(plan: Plan, fabric: FabricPlan) -> list[Placement]:
    places = {part.name: place for place, part in enumerate(plan.parts)}
    return sorted(fabric.lay.placements, key=lambda placed: (places[placed.name], placed.copy))


def _tag(
    plan: Plan, fabric: FabricPlan, placed: Placement, room: tuple[float, float, float, float]
) -> Iterator[Item]:
    left, top, wide, high = room
    yield Box(left, top, wide, high, 0.4)
    part, bold = plan.part(placed.name), typeface(bold=True)
    start, inner = left + _INSET, wide - 2 * _INSET
    letter = shortened(plan.label(placed), inner - _PICTURE, bold.width, _LETTER)
    yield Words((start, top + _INSET + _LETTER * 0.85), letter, _LETTER, bold=True)
    one_way = fabric.fabric.one_way_print
    drawing = draw_piece(placed.rect, part.role, one_way=one_way)
    scale = _PICTURE / SIDE
    corner = (left + wide - _INSET - drawing.width * scale, top + _INSET)
    yield Picture(drawing, corner, scale)
    below = top + _INSET + _HEAD
    for place, line in enumerate(_lines(plan, fabric, placed, wide)):
        yield Words((start, baseline(below + place * LINE)), line, BODY)


def _lines(plan: Plan, fabric: FabricPlan, placed: Placement, wide: float) -> list[str]:
    """Part, size and cloth, each in as many lines as it takes."""
    size = show_size(placed.rect.across, placed.rect.along, plan.project.units)
    texts = (told_part(placed.name), size, fabric.fabric.name)
    return [line for text in texts for line in lines_of(text, wide - 2 * _INSET)]
