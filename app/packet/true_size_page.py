"""The true-size page: guides for strip, join and seam at 1 : 1, and the edge at 4 : 1."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from app.packet import true_size
from app.packet.column import HEADING, LINE, Column
from app.packet.page import Page, Picture, Words
from app.packet.paper import USUAL, Format
from app.type_fit import CAPITALS, LEADING
from app.typeface import typeface
from core.drawing.edge_section import draw_edge_section
from core.drawing.gauges import draw_sewing_gauge, draw_strip_guide
from core.drawing.marks import Drawing
from core.finish.binding_width import Widths
from core.language import marked, told
from core.lengths import show
from core.plan import Plan

_TITLE: Final = marked("True size")
_ENLARGED: Final = 4  # times, of the edge cut through, where the page holds that
_STRIP: Final = marked("The strip, and 45° across it")
_GAUGE: Final = marked("Sewing gauge")
_GUTTER: Final = 20.0  # between the two
_STRAIGHT: Final = 1.0  # inches of strip past its 45° line, at least
_UNDER: Final = HEADING * (LEADING - CAPITALS) / 2 + 4  # from a heading's letters to what follows
_BLANK: Final = 0.1  # inches of that drawing at its right, which the page may cut off


def true_size_pages(plan: Plan, form: Format = USUAL) -> tuple[Page, ...]:
    """The check of the printer, and what this project's binding is measured by."""
    title = told(_TITLE)
    column = Column(title, form)
    column.mark(title, 0)
    column.title(title)
    column.add(*true_size.true_size(column.take(true_size.height(form)), form))
    column.gap(LINE)
    column.text(
        told(
            "If the bar comes out longer or shorter, measure it, and print again with that length "
            "as the printer's measure: all that is drawn to size then comes out true."
        )
    )
    column.gap(LINE / 2)
    _binding(column, plan)
    return column.pages()


def _binding(column: Column, plan: Plan) -> None:
    if plan.binding is None:
        return
    _guides(column, plan, plan.binding.widths)
    section = draw_edge_section(plan)
    if section is not None:
        most = int((column.width / column.form.inch + _BLANK * _ENLARGED) / section.width)
        times = max(1, min(_ENLARGED, most))
        _drawn(column, [(section.title, section, 0.0)], times)


def _guides(column: Column, plan: Plan, widths: Widths) -> None:
    """The strip, and the sewing gauge at its right where the page is wide enough."""
    # At a square corner the seam lines meet a seam before it; others are told with the edge map.
    gauge, inch = draw_sewing_gauge(widths.seam, widths.seam), column.form.inch
    aside = column.width - max(gauge.width * inch, _said(told(_GAUGE)))
    free = aside - _GUTTER
    beside = free >= max((float(widths.strip) + _STRAIGHT) * inch, _said(told(_STRIP)))
    longest = (free if beside else column.width) / inch
    strip = (told(_STRIP), draw_strip_guide(widths.strip, plan.project.units, longest), 0.0)
    if beside:
        _drawn(column, [strip, (told(_GAUGE), gauge, aside)], 1)
    else:
        _drawn(column, [strip], 1)
        _drawn(column, [(told(_GAUGE), gauge, 0.0)], 1)
    seam = show(widths.seam, plan.project.units)
    column.text(
        told(
            "Sewing gauge: the heavy lines are the quilt's edge. Sew {seam} from it, on the "
            "dashes, and stop at the dot, {seam} before a square corner.",
            seam=seam,
        )
    )


def _said(title: str, times: int = 1) -> float:
    """The width of a heading."""
    return typeface(bold=True).width(_scaled(title, times)) * HEADING


def _scaled(title: str, times: int) -> str:
    return f"{title}, {times} : 1"


def _drawn(column: Column, row: Sequence[tuple[str, Drawing, float]], times: int) -> None:
    """Pictures at `times` their true size, which their headings state, each so far to the right."""
    scale = column.form.inch * times
    high = max(drawing.height for _, drawing, _ in row) * scale
    column.heading(_scaled(row[0][0], times), level=1, follow=min(high, column.bottom / 2))
    for title, _, left in row[1:]:
        at = (left, column.y - _UNDER)
        column.add(Words(at, _scaled(title, times), HEADING, bold=True))
    top = column.take(high)
    for _, drawing, left in row:
        column.add(Picture(drawing, (left, top), scale))
    column.gap(LINE / 2)
