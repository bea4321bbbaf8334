"""The pictures of a plan, each with a file name that every system takes."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from app.paint_png import paint_png
from app.paint_svg import paint_svg
from app.style import PICTURE
from core.by_hand.sheets import sheets_of
from core.drawing.back import draw_back
from core.drawing.cloth import draw_sheet
from core.drawing.edge_map import draw_edge_map
from core.drawing.frame import Heading
from core.drawing.marks import Drawing
from core.drawing.quilt import draw_quilt
from core.plan import Plan

_LONGEST = 80  # characters


class Named(NamedTuple):
    """A picture with its file name; `flat`: nothing on it lies on anything but the cloth."""

    name: str
    drawing: Drawing
    flat: bool


def pictures(plan: Plan) -> Iterator[Named]:
    """The quilt, its edge and its back, and each sheet of cloth in use."""
    yield Named("quilt", draw_quilt(plan), flat=False)
    if (edge := draw_edge_map(plan)) is not None:
        yield Named("edge", edge, flat=False)
    if (back := draw_back(plan)) is not None:
        yield Named("quilt-from-the-back", back, flat=False)
    for index, fabric in enumerate(plan.fabrics):
        used: set[str] = set()
        for sheet in sheets_of(fabric):
            drawing = draw_sheet(plan, index, sheet, Heading.RIGHT)
            name = _unused(file_name(f"{index + 1} {drawing.title}"), used)
            yield Named(name, drawing, flat=True)


def _unused(name: str, used: set[str]) -> str:
    """The name, or a numbered one where another cloth's, cut short, is the same."""
    ways = (name, *(f"{name}-{number}" for number in range(2, len(used) + 2)))
    free = next(way for way in ways if way not in used)
    used.add(free)
    return free


def svg_files(plan: Plan) -> Iterator[tuple[str, bytes]]:
    """Every picture as SVG at true size, with a file name."""
    for name, drawing, flat in pictures(plan):
        yield f"{name}.svg", paint_svg(drawing, PICTURE, layered=flat).encode("utf-8")


def png_files(plan: Plan) -> Iterator[tuple[str, bytes]]:
    """Every picture as PNG, with a file name."""
    for name, drawing, _ in pictures(plan):
        yield f"{name}.png", paint_png(drawing, PICTURE)


def file_name(title: str) -> str:
    """A title as a file name.

    >>> file_name("1 plum/green, from the bolt")
    '1-plum-green-from-the-bolt'
    """
    return re.sub(r"[^\w]+", "-", title).strip("-").lower()[:_LONGEST] or "cloth"
