"""A column of matter that runs on from page to page and never clips.

Whatever is added is set below what is there; where it does not fit, the column
turns to a new page, which repeats the running head. Sizes are points of layout.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from app.packet.page import Box, Entry, Item, Page, Words
from app.packet.paper import USUAL, Format
from app.type_fit import CAPITALS, LEADING, limited, shortened, wrap
from app.typeface import Typeface, typeface
from core.language import told

BODY: Final = 10.5
HEADING: Final = 13.0
TITLE: Final = 20.0
FOOT: Final = 10.0
LINE: Final = 1.3 * BODY  # from one baseline of running text to the next

FOOT_HEIGHT: Final = 22.0
_TITLE_LINES, _HEADING_LINES = 2, 4
_BEFORE_HEADING = 8.0
_HANG = 1.4 * BODY


class Column:
    """Pages in the making. `y` is where the next thing goes."""

    def __init__(self, head: str, form: Format = USUAL) -> None:
        self.head, self.form = head, form
        self.width = form.width
        self.bottom = form.height - FOOT_HEIGHT  # where the matter of a page ends
        self.y = 0.0
        self._pages: list[tuple[list[Item], list[Entry]]] = [([], [])]

    def pages(self) -> tuple[Page, ...]:
        return tuple(Page(tuple(items), tuple(entries)) for items, entries in self._pages)

    def add(self, *items: Item) -> None:
        self._pages[-1][0].extend(items)

    def turn(self, head: str | None = None) -> None:
        """Start a new page under `head` (none given: the running head, continued)."""
        self._pages.append(([], []))
        self.y = 0.0
        for line in self.heading_lines(
            told("{heading}, continued", heading=self.head) if head is None else head
        ):
            self._line(line, HEADING)
        self.y += 4

    def fresh(self) -> None:
        """Start a new page without a head, unless nothing is on this one yet."""
        if self._pages[-1][0]:
            self._pages.append(([], []))
            self.y = 0.0

    def need(self, height: float) -> None:
        """Turn the page unless `height` is still free on this one."""
        if self.y + height > self.bottom:
            self.turn()

    def take(self, height: float) -> float:
        """The top of a strip of `height`, which is then used up."""
        self.need(height)
        top = self.y
        self.y += height
        return top

    def gap(self, height: float) -> None:
        """Space that a page may end in; none at the top of the first page."""
        if self.y:
            self.y = min(self.y + height, self.bottom)

    def mark(self, title: str, level: int) -> None:
        """Put an entry into the outline that leads here."""
        self._pages[-1][1].append(Entry(title, level, self.y))

    def title(self, text: str) -> None:
        """A large heading, in two lines at the most."""
        bold = typeface(bold=True)
        lines = wrap(bold.words(text), self.width, bold.width, TITLE)
        for line in limited(lines, _TITLE_LINES, self.width, bold.width, TITLE):
            self._line(line, TITLE)
        self.y += 6

    def heading(self, text: str, *, level: int | None = None, follow: float = 3 * LINE) -> None:
        """A heading that stays with the `follow` points of matter after it."""
        lines = self.heading_lines(text)
        self.gap(_BEFORE_HEADING)
        self.need(len(lines) * HEADING * LEADING + 4 + follow)
        if level is not None:
            self.mark(text, level)
        for line in lines:
            self._line(line, HEADING)
        self.y += 4

    def heading_lines(self, text: str) -> list[str]:
        """A heading in as many lines as it takes, within reason."""
        bold = typeface(bold=True)
        lines = wrap(bold.words(text), self.width, bold.width, HEADING)
        return limited(lines, _HEADING_LINES, self.width, bold.width, HEADING)

    def text(self, text: str, *, bold: bool = False, indent: float = 0.0) -> None:
        """A paragraph; it may run over the page's end between lines."""
        for line in lines_of(text, self.width - indent, bold=bold):
            self.words(line, indent, self.take(LINE), bold=bold)

    def items(self, texts: Sequence[str], sign: str = "•") -> None:
        """Paragraphs hung on bullets; a paragraph stays in one piece where a page can hold it."""
        for text in texts:
            lines = lines_of(text, self.width - _HANG)
            self.need(min(len(lines) * LINE, self.bottom / 2))
            for place, line in enumerate(lines):
                top = self.take(LINE)
                if place == 0:
                    self.words(sign, 0, top)
                self.words(line, _HANG, top)

    def items_height(self, texts: Sequence[str]) -> float:
        """What of `items` stays with its heading: all, but little in large print."""
        if self.form.large:
            return 3 * LINE
        lines = sum(len(lines_of(text, self.width - _HANG)) for text in texts)
        return min(lines * LINE, self.bottom / 2)

    def words(self, text: str, left: float, top: float, *, bold: bool = False) -> None:
        """One line of running text in the strip whose top is `top`."""
        self.add(Words((left, baseline(top)), text, BODY, bold))

    def tick_box(self, left: float, top: float) -> None:
        """A box to tick, beside the line of running text whose strip starts at `top`."""
        side = 11.0
        self.add(Box(left, top + (LINE - side) / 2, side, side))

    def _line(self, text: str, size: float) -> None:
        face = typeface(bold=True)
        fitted = shortened(face.words(text), self.width, face.width, size)
        height = size * LEADING
        self.add(Words((0.0, self.y + (height + CAPITALS * size) / 2), fitted, size, True))
        self.y += height


def baseline(top: float) -> float:
    """Where the letters of a line of running text stand, in the strip that starts at `top`."""
    return top + (LINE + CAPITALS * BODY) / 2


def lines_of(text: str, width: float, *, bold: bool = False) -> list[str]:
    """`text` as lines of running text, drawable and no wider than `width`."""
    face: Typeface = typeface(bold=bold)
    return [
        line
        for paragraph in face.words(text).split("\n")
        for line in wrap(paragraph, width, face.width, BODY)
    ]
