"""The cloths to scale: each lay with its key, and a check of the scale on every page.

Long cloth goes over several pages, which overlap and carry match lines; small
pieces of cloth share a page.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final, TypeAlias

from app.packet import true_size
from app.packet.callouts import Called, callouts, unlettered
from app.packet.column import BODY, LINE, Column
from app.packet.layout import (
    OVERLAP,
    Layout,
    Room,
    ratio_on_one_page,
)
from app.packet.page import Frame, Item, Page, Picture, Rule
from app.packet.paper import USUAL, Format
from app.packet.sheet_block import (
    CLEAR,
    GAP,
    MATCH,
    Block,
    Shown,
    facts,
    parts_on,
    scale_said,
    shown_at,
)
from app.packet.sheet_key import key, key_entries, key_rows
from app.paint import LEAST
from app.typeface import typeface
from core.by_hand.sheets import sheets_of
from core.drawing.marks import Drawing, Label
from core.language import marked, told
from core.plan import Plan

_BEFORE: Final = (
    marked("From the page before: lay the dashed lines on each other."),
    marked("Lay the dashed lines on each other."),
)
_AFTER: Final = (
    marked("Goes on on the next page, from the dashed line."),
    marked("Goes on on the next page."),
)
_SHARED: Final = 8  # a cloth at 1 : 8 on half a page may share it; ours, as for the smallest


_Group: TypeAlias = tuple[tuple[Block, Shown | None], ...]


def cloth_pages(plan: Plan, form: Format = USUAL) -> tuple[Page, ...]:
    """All cloths, in the order of the fabrics."""
    blocks = [
        Block(plan, place, sheet, parts_on(plan, fabric_plan, sheet), form)
        for place, fabric_plan in enumerate(plan.fabrics)
        for sheet in sheets_of(fabric_plan)
    ]
    return tuple(page for group in _grouped(blocks) for page in _group_pages(group, form))


def _grouped(blocks: Sequence[Block]) -> Iterator[_Group]:
    """Neighbours that are easily read on one page together, each as it is shown there."""
    group: list[tuple[Block, Shown | None]] = []
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
            yield ((block, None),)
        else:
            group.append((block, shown))
            free -= wanted + GAP
    if group:
        yield tuple(group)


def _free(form: Format) -> float:
    """What a page has for cloths; in large print the check of the scale has a page of its own."""
    check = 0.0 if form.large else true_size.height(form)
    return Column("", form).bottom - check


def _small(block: Block) -> Shown | None:
    """How a cloth goes on half a page; None where it would be too small there."""
    form = block.form
    shown = shown_at(block, _free(form) / 2 - block.head() - block.foot - 2 * GAP)
    wide = Room(shown.room(form), form.height * 2, form.inch)
    across = ratio_on_one_page(shown.drawing, wide)
    limit = max(int(_SHARED / form.enlarged), across)
    fits = len(shown.layout.stretches) == 1 and shown.layout.ratio <= limit
    return shown if fits else None


def _group_pages(group: _Group, form: Format) -> tuple[Page, ...]:
    column = Column("", form)
    foot = _free(form)
    for block, small in group:
        height = foot - column.y - block.head() - block.foot - 2 * GAP
        shown = small if small and len(group) > 1 else shown_at(block, height)
        for place in range(len(shown.layout.stretches)):
            if place:
                column.add(*_check(form))
            _head(column, block, shown.layout, place)
            bare = _stretch(column, shown, place, foot - block.foot)
            if not block.key_apart:
                column.y = column.y if len(shown.layout.stretches) == 1 else foot - block.foot
                _key(column, block, bare)
                column.gap(GAP)
        if block.key_apart:
            if column.y + key_rows(block.parts, form) * LINE > column.bottom:
                column.turn(block.title)
            _key(column, block, bare)
    column.add(*_check(form))
    return column.pages()


def _key(column: Column, block: Block, bare: frozenset[str]) -> None:
    """What the letters of the cloth stand for; `bare` are those that are not on the page."""
    key(column, key_entries(block.parts, block.plan.project.units, bare))


def _check(form: Format) -> Iterator[Item]:
    """The check of the scale at a page's foot."""
    if not form.large:
        yield from true_size.true_size(_free(form), form)


def _head(column: Column, block: Block, layout: Layout, place: int) -> None:
    """Heading, scale and facts. Every page but the first is turned to."""
    pages = len(layout.stretches)
    title = block.title
    if place:
        column.turn(title)
    else:
        column.heading(title, level=0, follow=0)
    column.text(scale_said(block.plan, layout.ratio, (place + 1, pages)), bold=True)
    column.text(facts(block))


def _stretch(column: Column, shown: Shown, place: int, lowest: float) -> frozenset[str]:
    """The part of the picture that a page shows, with its match lines and letters beside it.

    Returns the pieces that are neither lettered nor led to.
    """
    drawing, layout, form = shown.drawing, shown.layout, column.form
    start, end = layout.stretches[place]
    scale, broken = shown.scale(form), len(layout.stretches) > 1
    free = shown.room(form) - drawing.width * scale
    left, top = free / 2, column.y + GAP + (MATCH if broken else 0.0)
    seen = shown.pages[place]
    frame = Frame(left - 1, top - 1, drawing.width * scale + 2, (end - start) * scale + 2)
    at = (left, top - start * scale)
    column.add(Picture(seen, at, scale, frame if broken else None))
    called = callouts(seen, at, scale, form, (top, top + (end - start) * scale), lowest)
    column.add(*called.items)
    bare = replace(seen, marks=_bare(seen, scale, form, called))
    if bare.marks:
        column.add(Picture(bare, at, scale, frame if broken else None, _last_resort(form)))
    if place:
        _match(column, left, top + OVERLAP / 2 * scale, frame)
        column.words(_said(column, _BEFORE), 0, top - MATCH)
    if place + 1 < len(layout.stretches):
        _match(column, left, top + (end - start - OVERLAP / 2) * scale, frame)
        column.words(_said(column, _AFTER), 0, frame.top + frame.height + CLEAR - 1)
    column.y = top + max((end - start) * scale, called.height) + GAP
    return frozenset(label.key for label in unlettered(bare, scale, form, _last_resort(form)))


def _bare(drawing: Drawing, scale: float, form: Format, called: Called) -> tuple[Label, ...]:
    """The labels that are neither set nor led to."""
    missed = unlettered(drawing, scale, form)
    return tuple(label for label in missed if label.key not in called.keys)


def _last_resort(form: Format) -> float:
    """Type for a letter that goes neither on its piece nor beside the picture; not so in large."""
    return form.least if form.large else LEAST


def _said(column: Column, ways: Sequence[str]) -> str:
    """The first of several ways to say it that goes on a line."""
    face, said = typeface(), [told(way) for way in ways]
    return next((way for way in said if face.width(way) * BODY <= column.width), said[-1])


def _match(column: Column, left: float, y: float, frame: Frame) -> None:
    column.add(Rule((left, y), (left + frame.width, y), 1.2, dashed=True))
