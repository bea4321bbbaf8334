"""The true-size page: guides for strip, join and seam at 1 : 1, and the edge at 4 : 1."""

from __future__ import annotations

from typing import Final

from app.packet import true_size
from app.packet.column import LINE, Column
from app.packet.page import Page, Picture
from app.packet.paper import USUAL, Format
from core.drawing.edge_section import draw_edge_section
from core.drawing.gauges import draw_sewing_gauge, draw_strip_guide
from core.drawing.marks import Drawing
from core.lengths import show
from core.plan import Plan

_TITLE: Final = "True size"
_ENLARGED: Final = 4  # times, of the edge cut through, where the page holds that
_BLANK: Final = 0.1  # inches of that drawing at its right, which the page may cut off


def true_size_pages(plan: Plan, form: Format = USUAL) -> tuple[Page, ...]:
    """The check of the printer, and what this project's binding is measured by."""
    column = Column(_TITLE, form)
    column.mark(_TITLE, 0)
    column.title(_TITLE)
    column.add(*true_size.true_size(column.take(true_size.height(form)), form))
    column.gap(LINE)
    column.text(
        "If the bar comes out longer or shorter, measure it, and print again with that length as "
        "the printer's measure: all that is drawn to size then comes out true."
    )
    column.gap(LINE / 2)
    _binding(column, plan)
    return column.pages()


def _binding(column: Column, plan: Plan) -> None:
    if plan.binding is None:
        return
    units, widths = plan.project.units, plan.binding.widths
    longest = column.width / column.form.inch
    _drawn(
        column,
        "The strip, and 45° across it",
        draw_strip_guide(widths.strip, units, longest),
        1,
    )
    # At a square corner the seam lines meet a seam before it; others are told with the edge map.
    _drawn(column, "Sewing gauge", draw_sewing_gauge(widths.seam, widths.seam), 1)
    seam = show(widths.seam, units)
    column.text(
        f"The heavy lines are the quilt's edge. Sew {seam} from it, on the dashes, and stop at the "
        f"dot, {seam} before a square corner."
    )

    section = draw_edge_section(plan)
    if section is not None:
        most = int((longest + _BLANK * _ENLARGED) / section.width)
        _drawn(column, section.title, section, max(1, min(_ENLARGED, most)))


def _drawn(column: Column, title: str, drawing: Drawing, times: int) -> None:
    """A picture at `times` its true size, which its heading states."""
    scale = column.form.inch * times
    high = drawing.height * scale
    column.heading(f"{title}, {times} : 1", level=1, follow=min(high, column.bottom / 2))
    column.add(Picture(drawing, (0.0, column.take(high)), scale))
    column.gap(LINE / 2)
