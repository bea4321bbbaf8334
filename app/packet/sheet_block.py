"""One cloth of the packet: what is drawn of it, how small, with what said about it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

from app.packet.callouts import ROOM, callouts, unlettered
from app.packet.column import HEADING, LINE, Column, lines_of
from app.packet.layout import (
    Layout,
    Room,
    larger_turned,
    lay_out,
    ratio_on_one_page,
    stretch_of,
)
from app.packet.paper import Format
from app.packet.sheet_key import key_rows
from app.type_fit import LEADING
from core.drawing.cloth import draw_sheet, sheet_title
from core.drawing.frame import Heading
from core.drawing.marks import Drawing
from core.language import told
from core.lay.lay import BOLT, Sheet
from core.lengths import RULERS, show, show_size
from core.plan import FabricPlan, Part, Plan

GAP: Final = 6.0  # kept above and below the picture
CLEAR: Final = 5.0  # kept between the picture, whose last number may stand out, and those words
MATCH: Final = LINE + CLEAR  # strip for the words at a match line
_KEY_GAP: Final = 8.0
_SHORT_KEY: Final = 3  # parts


@dataclass(frozen=True, slots=True)
class Block:
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
        said = (scale_said(self.plan, 100, (1, 2)), facts(self))
        title = len(Column("", self.form).heading_lines(self.title)) * HEADING * LEADING + 4
        return title + LINE * sum(len(lines_of(text, self.form.width)) for text in said)


@dataclass(frozen=True, slots=True)
class Shown:
    """A block's drawing and how it goes on its pages; letters beside it are `beside` points high.

    None: there is no room for letters beside it, and no need.
    """

    drawing: Drawing
    layout: Layout
    beside: float | None

    def scale(self, form: Format) -> float:
        return form.inch / self.layout.ratio

    def height(self, form: Format) -> float:
        return max(self.drawing.height * self.scale(form), self.beside or 0.0) + 2 * GAP

    @property
    def pages(self) -> tuple[Drawing, ...]:
        """What each page shows of the drawing."""
        stretches = self.layout.stretches
        if len(stretches) == 1:
            return (self.drawing,)
        return tuple(stretch_of(self.drawing, start, end) for start, end in stretches)

    def room(self, form: Format) -> float:
        """The width that the picture may have."""
        return form.width - (0.0 if self.beside is None else ROOM)


def parts_on(plan: Plan, fabric_plan: FabricPlan, sheet: Sheet) -> tuple[tuple[Part, int], ...]:
    """The parts with pieces on the sheet, and how many of each."""
    counts = Counter(p.name for p in fabric_plan.lay.placements if p.sheet == sheet)
    return tuple((part, counts[part.name]) for part in plan.parts if counts[part.name])


def shown_at(block: Block, height: float) -> Shown:
    """At full width; narrower, with letters beside it, where a piece cannot hold its own."""
    form = block.form
    drawing, layout = _picture(block, Room(form.width, height, form.inch))
    whole = Shown(drawing, layout, None)
    if not any(unlettered(seen, whole.scale(form), form) for seen in whole.pages):
        return whole
    shown = Shown(*_picture(block, Room(form.width - ROOM, height, form.inch)), 0.0)
    scale, span = shown.scale(form), (0.0, height)
    called = [callouts(seen, (0.0, 0.0), scale, form, span, height).height for seen in shown.pages]
    return replace(shown, beside=max(called))


def _picture(block: Block, room: Room) -> tuple[Drawing, Layout]:
    """The cloth running down the page, or to the right where that shows it much larger."""
    down = draw_sheet(block.plan, block.place, block.sheet, Heading.DOWN)
    layout = lay_out(down, room)
    right = draw_sheet(block.plan, block.place, block.sheet, Heading.RIGHT)
    ratio = ratio_on_one_page(right, room)
    if larger_turned(layout, ratio, room.smallest_readable):
        return right, Layout(ratio, ((0.0, right.height),))
    if len(layout.stretches) > 1:
        layout = lay_out(down, Room(room.width, room.height - 2 * MATCH, room.inch))
    return down, layout


def scale_said(plan: Plan, ratio: int, page: tuple[int, int]) -> str:
    unit = RULERS[plan.project.units].unit
    number, pages = page
    scale = told(
        "Scale 1 : {ratio}. 1 {unit} on paper is {ratio} {unit} of cloth.", ratio=ratio, unit=unit
    )
    if pages == 1:
        return scale
    page_of = told("Page {number} of {count} of this cloth.", number=number, count=pages)
    return f"{scale} {page_of}"


def facts(block: Block) -> str:
    """What to measure before the first cut, and what to keep clear of."""
    return " ".join((_measured(block), *_flaws(block)))


def _flaws(block: Block) -> Iterator[str]:
    """Where the flaws of this piece of cloth lie, and how large they are."""
    units = block.plan.project.units
    for flaw in block.fabric_plan.fabric.flaws:
        if flaw.sheet == block.sheet:
            rect = flaw.rect
            yield told(
                "Keep clear of the {flaw}, {size}, {across} from the near edge and {along} from "
                "the straight end.",
                flaw=flaw.called,
                size=show_size(rect.across, rect.along, units),
                across=show(rect.x, units),
                along=show(rect.y, units),
            )


def _measured(block: Block) -> str:
    units, lay = block.plan.project.units, block.fabric_plan.lay
    if block.sheet.on != BOLT:
        rect = dict(lay.sheets)[block.sheet]
        return told(
            "Before cutting, check that it measures {size}.",
            size=show_size(rect.across, rect.along, units),
        )
    return told(
        "Usable width {width}. Buy {sale} ({bought}); the lay takes {used}.",
        width=show(block.fabric_plan.fabric.cutting_width, units),
        sale=block.fabric_plan.buy.sale_text,
        bought=show(lay.bought_along, units),
        used=show(lay.used_along, units),
    )
