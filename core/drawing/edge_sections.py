"""The bound edges of a comparison, cut through, beside each other at one scale."""

from __future__ import annotations

from core.compare.columns import Comparison
from core.drawing.edge_section import draw_edge_section
from core.drawing.marks import Drawing, Label, Mark
from core.drawing.shapes import moved
from core.language import told

_CAPTION = 0.2  # inches kept over each section for its value
_GAP = 0.2


def draw_edge_sections(comparison: Comparison) -> Drawing | None:
    """A section a column that has a binding, its value over it; None where all are alike."""
    sections = [
        (column.said, section)
        for column in comparison.columns
        if column.plan is not None and (section := draw_edge_section(column.plan)) is not None
    ]
    if len({section for _, section in sections}) < 2:
        return None
    marks: list[Mark] = []
    left = 0.0
    for text, section in sections:
        middle = left + section.width / 2
        marks.append(Label((middle, _CAPTION / 2), (text,), (section.width, _CAPTION), "note"))
        marks += [moved(mark, left, _CAPTION) for mark in section.marks]
        left += section.width + _GAP
    height = _CAPTION + max(section.height for _, section in sections)
    return Drawing(told("The bound edge, cut through"), left - _GAP, height, tuple(marks))
