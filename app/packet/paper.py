"""Papers, the frame that fits them all, and how a packet is printed in it.

Everything printed lies in one frame: the part that A4 and Letter have in common,
less a margin of 1/2 in on each side. It is centred on the page, so a packet made
for one paper prints unscaled on the other.

Pages are laid out in points of layout. In large print, and for a printer that
prints too small or too large, these are not points of paper: `Format` says how
many of them the frame holds, and how many make an inch on paper.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from typing import Final

from app.style import PAPER_COLOUR, PAPER_GREY, Theme

POINTS_PER_INCH: Final = 72.0
POINTS_PER_MM: Final = POINTS_PER_INCH / 25.4

# ISO 216:2007: A4 is 210 mm × 297 mm. ANSI/ASME Y14.1: size A ("Letter") is 8.5 in × 11 in.
_A4 = (210 * POINTS_PER_MM, 297 * POINTS_PER_MM)
_LETTER = (8.5 * POINTS_PER_INCH, 11 * POINTS_PER_INCH)
_MARGIN = 0.5 * POINTS_PER_INCH

FRAME_WIDTH: Final = _A4[0] - 2 * _MARGIN
FRAME_HEIGHT: Final = _LETTER[1] - 2 * _MARGIN

LARGE: Final = 1.8  # the smallest words, 10 points of layout, are 18 points on paper


class Paper(StrEnum):
    """A paper to print on."""

    LETTER = "letter"
    A4 = "a4"

    @property
    def size(self) -> tuple[float, float]:
        """Width and height in points."""
        return _LETTER if self is Paper.LETTER else _A4


@dataclass(frozen=True, slots=True)
class Format:
    """How pages are printed.

    `correction` is what a printer's lengths are to be multiplied by to come out true.

    >>> Format().inch, Format(large=True).inch
    (72.0, 40.0)
    """

    paper: Paper = Paper.LETTER
    grey: bool = False
    large: bool = False
    correction: Fraction = Fraction(1)

    @property
    def enlarged(self) -> float:
        return LARGE if self.large else 1.0

    @property
    def zoom(self) -> float:
        """Points that are sent to the printer for one point of layout."""
        return self.enlarged * float(self.correction)

    @property
    def width(self) -> float:
        """Of the frame, in points of layout."""
        return FRAME_WIDTH / self.zoom

    @property
    def height(self) -> float:
        return FRAME_HEIGHT / self.zoom

    @property
    def inch(self) -> float:
        """Points of layout that come out as one inch on paper."""
        return POINTS_PER_INCH / self.enlarged

    @property
    def mm(self) -> float:
        return self.inch / 25.4

    @property
    def least(self) -> float:
        """The smallest words on pictures, in points of layout; smaller ones get a leader line."""
        return 10.0 if self.large else 7.0

    @property
    def theme(self) -> Theme:
        return PAPER_GREY if self.grey else PAPER_COLOUR


USUAL: Final = Format()
