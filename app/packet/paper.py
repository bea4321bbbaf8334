"""Papers, and the frame that fits them all.

Everything printed lies in one frame: the part that A4 and Letter have in common,
less a margin of 1/2 in on each side. It is centred on the page, so a packet made
for one paper prints unscaled on the other.
"""

from __future__ import annotations

from enum import StrEnum
from typing import Final

POINTS_PER_INCH: Final = 72.0
POINTS_PER_MM: Final = POINTS_PER_INCH / 25.4

# ISO 216:2007: A4 is 210 mm × 297 mm. ANSI/ASME Y14.1: size A ("Letter") is 8.5 in × 11 in.
_A4 = (210 * POINTS_PER_MM, 297 * POINTS_PER_MM)
_LETTER = (8.5 * POINTS_PER_INCH, 11 * POINTS_PER_INCH)
_MARGIN = 0.5 * POINTS_PER_INCH

FRAME_WIDTH: Final = _A4[0] - 2 * _MARGIN
FRAME_HEIGHT: Final = _LETTER[1] - 2 * _MARGIN


class Paper(StrEnum):
    """A paper to print on."""

    LETTER = "letter"
    A4 = "a4"

    @property
    def size(self) -> tuple[float, float]:
        """Width and height in points."""
        return _LETTER if self is Paper.LETTER else _A4
