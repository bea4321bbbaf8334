"""The program's typeface: DejaVu Sans, the same file on screen, on paper and in SVG.

Letters that it lacks are given in Latin ones, as they sound, or else as their
Unicode numbers: never drawn as an empty box, never left out.
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
from app.latin_letters import in_latin
from app.right_to_left import joined, turns
from core.lengths import typeset
from core.refusal import Refusal

if TYPE_CHECKING:
    from reportlab.pdfbase.ttfonts import TTFont

FAMILY = "DejaVu Sans"
_TURNED = ("HEBREW", "ARABIC")  # scripts that run from right to left and can be set
_UNSEEN = ("Cc", "Cf")  # general categories: control and format
# Where a line should not break: before a unit, in a size, and between a name and its number.
_TOGETHER = re.compile(
    r"(?<=[\d₀-₉½¼¾⅛⅜⅝⅞]) (?=(?:in|yd|cm|mm|m)\b|×)|(?<=×) (?=[\d≈])"
    r"|(?<=section) (?=\d)|(?<=border) (?=\d)|(?<=piece) (?=\d)|(?<=\d) (?=of \d)"
)
_PLAIN = frozenset(map(chr, range(32, 127))) | set("½¼¾⅛⅜⅝⅞⁰¹²³⁴⁵⁶⁷⁸⁹⁄₀₁₂₃₄₅₆₇₈₉×≈–“”…•°\u00a0")
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
            and (not turns(char) or unicodedata.name(char, "").startswith(_TURNED))
        )

    def words(self, text: str) -> str:
        """`text` as this face draws it: fractions set, numbers kept with what they count."""
        return _TOGETHER.sub(_NO_BREAK, self.spelled(typeset(text)))

    def spelled(self, text: str) -> str:
        """`text` with every stretch that cannot be drawn written in another way."""
        if _PLAIN.issuperset(text):  # as nearly all of a packet is
            return text
        return "".join(
            "".join(run) if covered else self._otherwise("".join(run))
            for covered, run in groupby(visible(text), self.covers)
        )

    def _otherwise(self, run: str) -> str:
        """In Latin letters if that can be, else as numbers."""
        sounds = in_latin(run)
        return _numbers(run) if sounds is None else sounds


def visible(text: str) -> str:
    """`text` composed and joined, without what only steers how other characters are shown."""
    composed = unicodedata.normalize("NFC", text)
    seen = "".join(c for c in composed if c == "\n" or unicodedata.category(c) not in _UNSEEN)
    return joined(seen)


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
