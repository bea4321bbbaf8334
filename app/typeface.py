"""The program's typeface: DejaVu Sans, the same file on screen, on paper and in SVG.

Letters that it lacks, and those that run from right to left (which a PDF would
set in the wrong order and unjoined), are spelled out as their Unicode numbers:
never drawn as an empty box, never left out.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from itertools import groupby
from typing import TYPE_CHECKING

from app.assets import asset
from core.lengths import typeset
from core.refusal import Refusal

if TYPE_CHECKING:
    from reportlab.pdfbase.ttfonts import TTFont

FAMILY = "DejaVu Sans"
_RIGHT_TO_LEFT = ("R", "AL", "AN")  # bidirectional classes, Unicode Standard Annex 9
_UNSEEN = ("Cc", "Cf")  # general categories: control and format
# Where a line should not break: before a unit, in a size, and between a name and its number.
_TOGETHER = re.compile(
    r"(?<=[\d₀-₉½¼¾⅛⅜⅝⅞]) (?=(?:in|yd|cm|mm|m)\b|×)|(?<=×) (?=[\d≈])"
    r"|(?<=section) (?=\d)|(?<=border) (?=\d)|(?<=piece) (?=\d)|(?<=\d) (?=of \d)"
)
_NO_BREAK = "\u00a0"


@dataclass(frozen=True, slots=True, eq=False)
class Typeface:
    """One weight. `name` is what the PDF library knows it by."""

    name: str
    font: TTFont

    def width(self, text: str) -> float:
        """Width of `text` at size 1."""
        return float(self.font.stringWidth(text, 1))

    def covers(self, char: str) -> bool:
        """Whether this face draws `char` as it should look."""
        return char == "\n" or (
            ord(char) in self.font.face.charToGlyph
            and unicodedata.bidirectional(char) not in _RIGHT_TO_LEFT
        )

    def words(self, text: str) -> str:
        """`text` as this face draws it: fractions set, numbers kept with what they count."""
        return _TOGETHER.sub(_NO_BREAK, self.spelled(typeset(text)))

    def spelled(self, text: str) -> str:
        """`text` with every letter that cannot be drawn written as its Unicode number."""
        return "".join(
            "".join(run) if covered else _numbers(run)
            for covered, run in groupby(visible(text), self.covers)
        )


def visible(text: str) -> str:
    """`text` composed, without the characters that only steer how others are shown."""
    composed = unicodedata.normalize("NFC", text)
    return "".join(c for c in composed if c == "\n" or unicodedata.category(c) not in _UNSEEN)


def _numbers(chars: Iterable[str]) -> str:
    return f"[{' '.join(f'U+{ord(char):04X}' for char in chars)}]"


@cache
def typeface(*, bold: bool = False) -> Typeface:
    """The regular or bold weight, ready for measuring and for a PDF."""
    from reportlab.pdfbase.pdfmetrics import registerFont
    from reportlab.pdfbase.ttfonts import TTFError, TTFont

    name = "DejaVuSans-Bold" if bold else "DejaVuSans"
    try:
        font = TTFont(name, str(asset(f"fonts/{name}.ttf")), shapable=False)
    except (OSError, TTFError) as error:
        raise Refusal(
            "", f"the program's font {name}.ttf cannot be read; install the program again"
        ) from error
    registerFont(font)
    return Typeface(name, font)
