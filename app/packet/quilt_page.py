"""The first page: the quilt, what to buy, what to cut, and what to know before cutting."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import Final

from app.cautions import CAUTIONS
from app.packet.binding_facts import binding_facts
from app.packet.column import LINE, Column, items_height, lines_of
from app.packet.page import Page, Picture
from app.packet.paper import FRAME_WIDTH
from app.packet.quilt_facts import quilt_facts
from app.packet.swatch import WIDTH, swatch
from app.packet.table import ColumnHead, table
from app.typeface import typeface, visible
from app.wording import cost, part_size, purchase
from core.drawing.back import draw_back
from core.drawing.bias_plan import bias_drawings
from core.drawing.edge_map import draw_edge_map
from core.drawing.edge_section import draw_edge_section
from core.drawing.marks import Drawing
from core.drawing.quilt import draw_quilt
from core.lay.lay import BOLT
from core.lengths import show, show_size
from core.plan import FabricPlan, Plan
from core.sewing import sewing

_TITLE: Final = "The quilt"
_PICTURE: Final = (250.0, 240.0)  # points that the picture may take
_SECTION: Final = (440.0, 190.0)
_FACTS_AT: Final = 264.0
_ASIDE: Final = WIDTH + 6
_GAP: Final = 10.0
_BUY = (
    ColumnHead("Fabric", 21),
    ColumnHead("Buy", 20),
    ColumnHead("Lay takes", 13),
    ColumnHead("From the shelf", 20),
    ColumnHead("Cost", 9),
    ColumnHead("Proved least", 17),
)
_CUT = (
    ColumnHead("Letter", 9),
    ColumnHead("Part", 34),
    ColumnHead("Cut size", 27),
    ColumnHead("Count", 10),
    ColumnHead("Fabric", 22),
)


def quilt_pages(plan: Plan) -> tuple[Page, ...]:
    """The first page, and its continuation where a plan says more than a page holds."""
    column = Column(_TITLE)
    column.mark(_TITLE, 0)
    column.title(plan.project.quilt.name or "A quilt")
    _quilt(column, plan)
    _buy(column, plan)
    _cut(column, plan)
    _spelled(column, plan)
    _warnings(column, plan)
    _binding(column, plan)
    _back(column, plan)
    _sewing(column, plan)
    _cautions(column)
    return column.pages()


def _quilt(column: Column, plan: Plan) -> None:
    """The picture, and beside it the sizes."""
    drawing = draw_quilt(plan)
    scale = min(_PICTURE[0] / drawing.width, _PICTURE[1] / drawing.height)
    wide, high = drawing.width * scale, drawing.height * scale
    rows = tuple(_fact_lines(plan))
    top = column.take(max(high, len(rows) * LINE) + _GAP)
    column.add(Picture(drawing, ((_PICTURE[0] - wide) / 2, top), scale))
    for place, (role, line, bold) in enumerate(rows):
        strip = top + place * LINE
        if role:
            column.add(swatch(role, _FACTS_AT, strip))
        column.words(line, _FACTS_AT + _ASIDE, strip, bold=bold)


def _fact_lines(plan: Plan) -> Iterator[tuple[str, str, bool]]:
    """The facts in lines that fit beside the picture, a role with the first of each."""
    for fact in quilt_facts(plan):
        lines = lines_of(fact.text, FRAME_WIDTH - _FACTS_AT - _ASIDE, bold=fact.bold)
        for place, line in enumerate(lines):
            yield fact.role if place == 0 else "", line, fact.bold


def _buy(column: Column, plan: Plan) -> None:
    column.heading("What to buy", level=1, follow=5 * LINE)
    table(column, _BUY, [_buy_row(plan, fabric_plan) for fabric_plan in plan.fabrics])
    if any(not fabric_plan.lay.proved_least for fabric_plan in plan.fabrics):
        column.text(
            "Proved least: no lay of these pieces can be bought in less. Not proved: a better lay "
            "may exist."
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
        "yes" if lay.proved_least else "not proved",
    )


def _from_the_shelf(plan: Plan, fabric_plan: FabricPlan) -> str:
    """The pieces on hand that the lay uses, equal ones counted."""
    used = Counter(
        (rect.across, rect.along) for sheet, rect in fabric_plan.lay.sheets if sheet.on != BOLT
    )
    units = plan.project.units
    return (
        "\n".join(
            f"{count} of {show_size(across, along, units)}"
            for (across, along), count in used.items()
        )
        or "–"
    )


def _cut(column: Column, plan: Plan) -> None:
    if not plan.parts:
        return
    column.heading("What to cut", level=1, follow=5 * LINE)
    units = plan.project.units
    rows = [
        (part.letter, part.name, part_size(part, units), str(part.count), part.fabric)
        for part in plan.parts
    ]
    table(column, _CUT, rows)
    column.gap(_GAP)


def _spelled(column: Column, plan: Plan) -> None:
    """A word on letters that the typeface lacks, where a name has some."""
    names = (plan.project.quilt.name, *(fabric.name for fabric in plan.project.fabrics))
    if any(typeface().spelled(name) != visible(name) for name in names):
        column.text(
            "Letters that this packet's type cannot set are given by their Unicode numbers, "
            "such as [U+0928]."
        )
        column.gap(_GAP)


def _warnings(column: Column, plan: Plan) -> None:
    if not plan.warnings:
        return
    column.heading("Before you cut", level=1)
    column.items([warning.text for warning in plan.warnings], "!")
    column.gap(_GAP)


def _binding(column: Column, plan: Plan) -> None:
    if plan.binding is None or plan.project.binding is None:
        return
    facts = tuple(binding_facts(plan.project.binding, plan.binding, plan.project.units))
    column.heading("The binding", level=1, follow=items_height(facts))
    column.items(facts)
    column.gap(_GAP)
    if (drawing := draw_edge_map(plan)) is not None:
        _drawn(column, drawing, _PICTURE)
    for drawing in (draw_edge_section(plan), *bias_drawings(plan)):
        if drawing is not None:
            _drawn(column, drawing, _SECTION)


def _drawn(column: Column, drawing: Drawing, room: tuple[float, float]) -> None:
    """A picture of the binding, in the middle, as large as `room` allows."""
    scale = min(room[0] / drawing.width, room[1] / drawing.height)
    top = column.take(drawing.height * scale + _GAP)
    column.add(Picture(drawing, ((FRAME_WIDTH - drawing.width * scale) / 2, top), scale))


def _back(column: Column, plan: Plan) -> None:
    """The picture of the back, where there is something on it."""
    drawing = draw_back(plan)
    if drawing is None:
        return
    scale = min(_PICTURE[0] / drawing.width, _PICTURE[1] / drawing.height)
    high = drawing.height * scale
    column.heading("The back", level=1, follow=high)
    top = column.take(high + _GAP)
    column.add(Picture(drawing, (0, top), scale))


def _sewing(column: Column, plan: Plan) -> None:
    """How cut pieces become borders, backing, binding and sleeve."""
    for making in sewing(plan):
        column.heading(making.title, level=1, follow=items_height(making.sentences))
        column.items(making.sentences)
        column.gap(_GAP)


def _cautions(column: Column) -> None:
    column.heading("Cautions", level=1, follow=items_height(CAUTIONS))
    column.items(CAUTIONS)
