"""Sheets and rectangles in a file: the keys that a pin, a flaw and a motif share."""

from __future__ import annotations

from typing import Any, Final

from core.lay.lay import BOLT, Rect, Sheet
from core.reading import Fields

MOST_PIECES: Final = 2000  # a plan for one quilt, or a class's kits, has a few hundred
MOST_FLAWS: Final = 100


def read_sheet(fields: Fields) -> Sheet:
    """The sheet that `on` and `on_copy` name; the bolt, if they are left out."""
    return Sheet(fields.text("on", BOLT), fields.count("on_copy", 1, most=MOST_PIECES))


def read_region(fields: Fields) -> Rect:
    """The rectangle at `x`, `y`, `across` × `along`."""
    return Rect(
        fields.length("x", zero=True),
        fields.length("y", zero=True),
        fields.length("across"),
        fields.length("along"),
    )


def sheet_document(sheet: Sheet) -> dict[str, Any]:
    """A sheet as JSON."""
    return {"on": sheet.on, "on_copy": sheet.copy}


def rect_document(rect: Rect) -> dict[str, str]:
    """A rectangle as JSON, in exact inches."""
    return {
        "x": str(rect.x),
        "y": str(rect.y),
        "across": str(rect.across),
        "along": str(rect.along),
    }
