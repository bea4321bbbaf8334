"""The cloths to scale: each lay with its key, and a check of the scale on every page.

Long cloth goes over several pages, which overlap and carry match lines; small
pieces of cloth share a page.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final

from app.packet import true_size
from app.packet.callouts import ROOM, Called, callouts, unlettered
from app.packet.column import BODY, HEADING, LINE, Column, lines_of
from app.packet.layout import (
    OVERLAP,
    Layout,
    Room,
    larger_turned,
    lay_out,
    ratio_on_one_page,
    stretch_of,
)
from app.packet.page import Frame, Item, Page, Picture, Rule
from app.packet.paper import USUAL, Format
from app.packet.sheet_key import key, key_entries, key_rows
from app.paint import LEAST
from app.type_fit import LEADING
from app.typeface import typeface
from core.by_hand.sheets import sheets_of
from core.drawing.cloth import draw_sheet, sheet_title
from core.drawing.frame import Heading
from core.drawing.marks import Drawing, Label
from core.lay.lay import BOLT, Sheet
from core.lengths import RULERS, show, show_size
from core.plan import FabricPlan, Part, Plan

_GAP: Final = 6.0  # kept above and below the picture
_CLEAR: Final = 5.0  # kept between the picture, whose last number may stand out, and those words
_MATCH: Final = LINE + _CLEAR  # strip for the words at a match line
_KEY_GAP: Final = 8.0
_BEFORE: Final = (
    "From the page before: lay the dashed lines on each other.",
    "Lay the dashed lines on each other.",
)
_AFTER: Final = ("Goes on on the next page, from the dashed line.", "Goes on on the next page.")
_SHORT_KEY: Final = 3  # parts
_SHARED: Final = 8  # a cloth at 1 : 8 on half a page may share it; ours, as for the smallest


@dataclass(frozen=True, slots=True)
class _Block:
    """One sheet of cloth, and the parts with pieces on it, with the count of each."""

    plan: Plan
    place: int
    sheet: Sheet
    parts: tuple[tuple[Part, int], ...]
    form: Format

    @property
    def fabric_plan(self) -> FabricPlan:
        return self.plan.fabrics[self.place]

    @property
    def title(self) -> str:
        length = dict(self.fabric_plan.lay.sheets)[self.sheet].along
        return sheet_title(self.fabric_plan.fabric, self.sheet, length, self.plan.project.units)

    @property
    def foot(self) -> float:
        """Height of the key, where it stands under the picture."""
        return 0.0 if self.key_apart else key_rows(self.parts, self.form) * LINE + _KEY_GAP

    @property
    def key_apart(self) -> bool:
        """In large print, a long key has a page of its own."""
        return self.form.large and len(self.parts) > _SHORT_KEY

    def head(self) -> float:
        """Height of the heading and what is said under it, at the most."""
        said = (_scale_said(self.plan, 100, (1, 2)), _facts(self))
        title = len(Column("", self.form).heading_lines(self.title)) * HEADING * LEADING + 4
        return title + LINE * sum(len(lines_of(text, self.form.width)) for text in said)


@dataclass(frozen=True, slots=True)
class _Shown:
    """A block's drawing and how it goes on its pages; letters beside it are `beside` points high.

    None: there is no room for letters beside it, and no need.
    """

    drawing: Drawing
    layout: Layout
    beside: float | None

    def scale(self, form: Format) -> float:
        return form.inch / self.layout.ratio

    def height(self, form: Format) -> float:
        return max(self.drawing.height * self.scale(form), self.beside or 0.0) + 2 * _GAP

    def room(self, form: Format) -> float:
        """The width that the picture may have."""
        return form.width - (0.0 if self.beside is None else ROOM)


def cloth_pages(plan: Plan, form: Format = USUAL) -> tuple[Page, ...]:
    """All cloths, in the order of the fabrics."""
    blocks = [
        _Block(plan, place, sheet, _parts_on(plan, fabric_plan, sheet), form)
        for place, fabric_plan in enumerate(plan.fabrics)
        for sheet in sheets_of(fabric_plan)
    ]
    return tuple(page for group in _grouped(blocks) for page in _group_pages(group, form))


def _grouped(blocks: Sequence[_Block]) -> Iterator[tuple[_Block, ...]]:
    """Neighbours that are easily read on one page together."""
    group: list[_Block] = []
    free = 0.0
    for block in blocks:
        shown = _small(block)
        wanted = 0.0 if shown is None else block.head() + shown.height(block.form) + block.foot
        if group and (shown is None or wanted > free):
            yield tuple(group)
            group = []
        if not group:
            free = _free(block.form)
        if shown is None:
            yield (block,)
        else:
            group.append(block)
            free -= wanted + _GAP
    if group:
        yield tuple(group)


def _free(form: Format) -> float:
    """What a page has for cloths; in large print the check of the scale has a page of its own."""
    check = 0.0 if form.large else true_size.height(form)
    return Column("", form).bottom - check


def _small(block: _Block) -> _Shown | None:
    """How a cloth goes on half a page; None where it would be too small there."""
    form = block.form
    shown = _shown(block, _free(form) / 2 - block.head() - block.foot - 2 * _GAP)
    wide = Room(shown.room(form), form.height * 2, form.inch)
    across = ratio_on_one_page(shown.drawing, wide)
    limit = max(int(_SHARED / form.enlarged), across)
    fits = len(shown.layout.stretches) == 1 and shown.layout.ratio <= limit
    return shown if fits else None


def _group_pages(group: Sequence[_Block], form: Format) -> tuple[Page, ...]:
    column = Column("", form)
    foot = _free(form)
    for block in group:
        height = foot - column.y - block.head() - block.foot - 2 * _GAP
        small = _small(block) if len(group) > 1 else None
        shown = small or _shown(block, height)
        for place in range(len(shown.layout.stretches)):
            if place:
                column.add(*_check(form))
            _head(column, block, shown.layout, place)
            bare = _stretch(column, shown, place)
            if len(shown.layout.stretches) > 1:
                column.y = foot - block.foot
            if not block.key_apart:
                key(column, key_entries(block.parts, block.plan.project.units, bare))
                column.gap(_GAP)
        if block.key_apart:
            column.turn(block.title)
            key(column, key_entries(block.parts, block.plan.project.units, bare))
    column.add(*_check(form))
    return column.pages()


def _check(form: Format) -> Iterator[Item]:
    """The check of the scale at a page's foot."""
    if not form.large:
        yield from true_size.true_size(_free(form), form)


def _parts_on(plan: Plan, fabric_plan: FabricPlan, sheet: Sheet) -> tuple[tuple[Part, int], ...]:
    """The parts with pieces on the sheet, and how many of each."""
    counts = Counter(p.name for p in fabric_plan.lay.placements if p.sheet == sheet)
    return tuple((part, counts[part.name]) for part in plan.parts if counts[part.name])


def _shown(block: _Block, height: float) -> _Shown:
    """At full width; narrower, with letters beside it, where a piece cannot hold its own."""
    form = block.form
    drawing, layout = _picture(block, Room(form.width, height, form.inch))
    if not unlettered(drawing, form.inch / layout.ratio, form):
        return _Shown(drawing, layout, None)
    drawing, layout = _picture(block, Room(form.width - ROOM, height, form.inch))
    called = callouts(drawing, (0.0, 0.0), form.inch / layout.ratio, form, (0.0, height))
    return _Shown(drawing, layout, called.height)


def _picture(block: _Block, room: Room) -> tuple[Drawing, Layout]:
    """The cloth running down the page, or to the right where that shows it much larger."""
    down = draw_sheet(block.plan, block.place, block.sheet, Heading.DOWN)
    layout = lay_out(down, room)
    right = draw_sheet(block.plan, block.place, block.sheet, Heading.RIGHT)
    ratio = ratio_on_one_page(right, room)
    if larger_turned(layout, ratio, room.smallest_readable):
        return right, Layout(ratio, ((0.0, right.height),))
    if len(layout.stretches) > 1:
        layout = lay_out(down, Room(room.width, room.height - 2 * _MATCH, room.inch))
    return down, layout


def _head(column: Column, block: _Block, layout: Layout, place: int) -> None:
    """Heading, scale and facts. Every page but the first is turned to."""
    pages = len(layout.stretches)
    title = block.title
    if place:
        column.turn(title)
    else:
        column.heading(title, level=0, follow=0)
    column.text(_scale_said(block.plan, layout.ratio, (place + 1, pages)), bold=True)
    column.text(_facts(block))


def _scale_said(plan: Plan, ratio: int, page: tuple[int, int]) -> str:
    unit = RULERS[plan.project.units].unit
    number, pages = page
    part = f" Page {number} of {pages} of this cloth." if pages > 1 else ""
    return f"Scale 1 : {ratio}. 1 {unit} on paper is {ratio} {unit} of cloth.{part}"


def _facts(block: _Block) -> str:
    """What to measure before the first cut."""
    units, lay = block.plan.project.units, block.fabric_plan.lay
    if block.sheet.on != BOLT:
        rect = dict(lay.sheets)[block.sheet]
        return (
            f"Before cutting, check that it measures {show_size(rect.across, rect.along, units)}."
        )
    return (
        f"Usable width {show(block.fabric_plan.fabric.cutting_width, units)}. "
        f"Buy {block.fabric_plan.buy.sale_text} ({show(lay.bought_along, units)}); "
        f"the lay takes {show(lay.used_along, units)}."
    )


def _stretch(column: Column, shown: _Shown, place: int) -> frozenset[str]:
    """The part of the picture that a page shows, with its match lines.

    Returns the pieces that are neither lettered nor led to.
    """
    drawing, layout, form = shown.drawing, shown.layout, column.form
    start, end = layout.stretches[place]
    scale, broken = shown.scale(form), len(layout.stretches) > 1
    free = shown.room(form) - drawing.width * scale
    left, top = free / 2, column.y + _GAP + (_MATCH if broken else 0.0)
    seen = stretch_of(drawing, start, end) if broken else drawing
    frame = Frame(left - 1, top - 1, drawing.width * scale + 2, (end - start) * scale + 2)
    at = (left, top - start * scale)
    column.add(Picture(seen, at, scale, frame if broken else None))
    called = callouts(seen, at, scale, form, (top, top + (end - start) * scale))
    column.add(*called.items)
    bare = replace(seen, marks=_bare(seen, scale, form, called))
    if bare.marks:
        column.add(Picture(bare, at, scale, frame if broken else None, _last_resort(form)))
    if place:
        _match(column, left, top + OVERLAP / 2 * scale, frame)
        column.words(_told(column, _BEFORE), 0, top - _MATCH)
    if place + 1 < len(layout.stretches):
        _match(column, left, top + (end - start - OVERLAP / 2) * scale, frame)
        column.words(_told(column, _AFTER), 0, frame.top + frame.height + _CLEAR - 1)
    column.y = top + max((end - start) * scale, called.height) + _GAP
    return frozenset(label.key for label in unlettered(bare, scale, form, _last_resort(form)))


def _bare(drawing: Drawing, scale: float, form: Format, called: Called) -> tuple[Label, ...]:
    """The labels that are neither set nor led to."""
    missed = unlettered(drawing, scale, form)
    return tuple(label for label in missed if label.key not in called.keys)


def _last_resort(form: Format) -> float:
    """Type for a letter that goes neither on its piece nor beside the picture; not so in large."""
    return form.least if form.large else LEAST


def _told(column: Column, ways: Sequence[str]) -> str:
    """The first of several ways to say it that goes on a line."""
    face = typeface()
    return next((way for way in ways if face.width(way) * BODY <= column.width), ways[-1])


def _match(column: Column, left: float, y: float, frame: Frame) -> None:
    column.add(Rule((left, y), (left + frame.width, y), 1.2, dashed=True))
