"""What of a packet is wanted, for whom, and how it is printed."""

from __future__ import annotations

import re
from collections.abc import Collection
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from typing import Final

from app.packet.paper import USUAL, Format
from core.compare.choices import STRIP_WIDTH, usual_values
from core.compare.columns import Comparison, compare
from core.compare.staircase import Staircase, staircase, usual_range
from core.language import marked, told
from core.lengths import INCHES_PER_MM, Inches, LengthError, Units, exact_text, parse
from core.quilt import Project
from core.reading import LONGEST_NAME
from core.refusal import Refusal


class Pages(StrEnum):
    """The kinds of pages, in the order in which they are bound."""

    QUILT = "quilt"
    CLOTHS = "cloths"
    CUTS = "cuts"
    TAGS = "tags"
    SEWING = "sewing"
    TRUE_SIZE = "true-size"
    COMPARISON = "comparison"
    STAIRCASE = "staircase"
    CAUTIONS = "cautions"

    @property
    def said(self) -> str:
        """What the kind is called where it is chosen."""
        return told(_SAID[self])


_SAID: Final = {
    Pages.QUILT: marked("The quilt, and what to buy"),
    Pages.CLOTHS: marked("Every cloth, to scale"),
    Pages.CUTS: marked("The cut order"),
    Pages.TAGS: marked("Piece tags"),
    Pages.SEWING: marked("Sewing the strips"),
    Pages.TRUE_SIZE: marked("True-size page"),
    Pages.COMPARISON: marked("Strip widths compared"),
    Pages.STAIRCASE: marked("The staircase of strip widths"),
    Pages.CAUTIONS: marked("Cautions"),
}
# What costs no further planning; a comparison and a staircase are made when they are asked for.
USUAL_PAGES: Final = tuple(
    kind for kind in Pages if kind not in (Pages.COMPARISON, Pages.STAIRCASE)
)
MOST_NAMES: Final = 200
MOST_COPIES: Final = 50
MOST_PACKETS: Final = 400  # in one file: some five thousand pages, and half a minute
_BAR: Final = 100 * INCHES_PER_MM
_FURTHEST: Final = Fraction(1, 10)


@dataclass(frozen=True, slots=True)
class PacketChoice:
    """Which pages, for whom (a packet a name, in one file), how many of each, and their format."""

    pages: tuple[Pages, ...] = USUAL_PAGES
    names: tuple[str, ...] = ()
    copies: int = 1
    form: Format = USUAL

    def __post_init__(self) -> None:
        packets = len(self.names) * self.copies
        if packets > MOST_PACKETS:
            raise Refusal(
                "--copies",
                told(
                    "{copies} for each name are {count} packets; write fewer, up to {most} in all",
                    copies=self.copies, count=packets, most=MOST_PACKETS,
                ),
            )  # fmt: skip


THE_USUAL: Final = PacketChoice()


@dataclass(frozen=True, slots=True)
class Asked:
    """What was planned for the pages that compare; None where nobody asked for it."""

    comparison: Comparison | None = None
    stairs: Staircase | None = None

    def missing(self, pages: Collection[Pages]) -> tuple[Pages, ...]:
        """Those of the pages that compare something which is not there."""
        there = {Pages.COMPARISON: self.comparison, Pages.STAIRCASE: self.stairs}
        return tuple(kind for kind in there if kind in pages and there[kind] is None)


NOTHING_ASKED: Final = Asked()


@dataclass(frozen=True, slots=True)
class AskedFor:
    """What do these pages compare? A question that can be answered elsewhere."""

    project: Project
    pages: tuple[Pages, ...]

    def answer(self) -> Asked:
        """Raises `Refusal`."""
        return asked_of(self.project, self.pages)


def asked_of(project: Project, pages: tuple[Pages, ...]) -> Asked:
    """What these pages compare: strip widths, the usual ones. Raises `Refusal`."""
    comparison = stairs = None
    if Pages.COMPARISON in pages:
        comparison = compare(project, STRIP_WIDTH, usual_values(project, STRIP_WIDTH))
    if Pages.STAIRCASE in pages:
        stairs = staircase(project, STRIP_WIDTH, *usual_range(STRIP_WIDTH, project.units))
    return Asked(comparison, stairs)


def pages_named(text: str) -> tuple[Pages, ...]:
    """The kinds that a list with commas names, in binding order. Raises `Refusal`.

    >>> [str(kind) for kind in pages_named("cuts, quilt")]
    ['quilt', 'cuts']
    """
    words = {word.strip() for word in text.split(",")} - {""}
    known = ", ".join(Pages)
    for word in sorted(words):
        if word not in list(Pages):
            raise Refusal(
                "--pages",
                told(
                    "there is no page called {word}; write some of {known}", word=word, known=known
                ),
            )
    if not words:
        raise Refusal("--pages", told("no page is chosen; write some of {known}", known=known))
    return tuple(kind for kind in Pages if kind in words)


def names_listed(text: str) -> tuple[str, ...]:
    """The names of a list with commas, semicolons or a line each; one said twice counts once.

    Raises `Refusal`.

    >>> names_listed("Ada, Ben; Cleo")
    ('Ada', 'Ben', 'Cleo')
    """
    names = tuple(dict.fromkeys(filter(None, map(str.strip, re.split(r"[,;\n]", text)))))
    if any(len(name) > LONGEST_NAME or not name.isprintable() for name in names):
        raise Refusal(
            "--for",
            told(
                "write names of at most {most} letters, with commas between them", most=LONGEST_NAME
            ),
        )
    if len(names) > MOST_NAMES:
        raise Refusal(
            "--for",
            told(
                "{count} names are too many; write at most {most}",
                count=len(names),
                most=MOST_NAMES,
            ),
        )
    return names


def copies_counted(text: str) -> int:
    """How many of each packet. Raises `Refusal`."""
    number = text.strip()
    if not (number.isascii() and number.isdigit() and 1 <= int(number[:9]) <= MOST_COPIES):
        raise Refusal(
            "--copies",
            told("write a whole number from 1 to {most}", most=MOST_COPIES),
        )
    return int(number)


def correction_of(text: str, units: Units) -> Fraction:
    """What to multiply lengths by, given how long the 100 mm bar came out. Raises `Refusal`.

    >>> correction_of("98 mm", Units.INCHES)
    Fraction(50, 49)
    """
    try:
        measured: Inches = parse(text, units)
    except LengthError as error:
        raise Refusal("--bar", str(error)) from None
    if not measured or abs(_BAR / measured - 1) > _FURTHEST:
        raise Refusal(
            "--bar",
            told(
                "write how long the printed 100 mm bar measures, from {least} to {most}, with "
                "its unit"
            ),
            units=Units.CENTIMETRES,
            least=_BAR / (1 + _FURTHEST),
            most=_BAR / (1 - _FURTHEST),
        )
    return _BAR / measured


def bar_of(correction: Fraction) -> str:
    """How long the 100 mm bar came out, in millimetres; empty where it came out true.

    >>> bar_of(correction_of("98 mm", Units.INCHES)), bar_of(Fraction(1))
    ('98', '')
    """
    return "" if correction == 1 else exact_text(_BAR / correction, Units.MILLIMETRES)
