"""Swatches: a little of a part's fill and hatch, beside its name."""

from __future__ import annotations

from typing import Final

from app.packet.column import LINE
from app.packet.page import Frame, Picture
from core.drawing.marks import Area, Drawing

WIDTH: Final = 24.0
_HEIGHT: Final = 10.5
_SCALE: Final = 8.0  # points to an inch of the little drawing


def swatch(role: str, left: float, top: float) -> Picture:
    """A swatch beside the line of running text whose strip starts at `top`."""
    wide, high, above = WIDTH / _SCALE, _HEIGHT / _SCALE, top + (LINE - _HEIGHT) / 2
    corners = ((0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high))
    drawing = Drawing(role, wide, high, (Area(corners, role),))
    return Picture(
        drawing, (left, above), _SCALE, Frame(left - 1, above - 1, WIDTH + 2, _HEIGHT + 2)
    )
