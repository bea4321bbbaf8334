"""Exact lengths: text to inches and back.

A length in this program is a `fractions.Fraction` of inches, never a float, so
that "does it fit" is decided exactly. Text becomes a length once, in `parse`;
a length becomes text in `show` (to a ruler's marks, "≈" before rounded text) or
in `exact_text` (for files, never rounded).
"""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from functools import lru_cache
from math import ceil, floor
from typing import TypeAlias

from core.language import told
from core.numerals import decimal, mixed, told_decimal

Inches: TypeAlias = Fraction

# 1 yd = 0.9144 m exactly since 1 July 1959: National Bureau of Standards,
# Addendum (22 January 1960) to Circular 572.
INCHES_PER_MM = Fraction(10, 254)


class Units(StrEnum):
    """What a bare number means, and how lengths are shown."""

    INCHES = "in"
    CENTIMETRES = "cm"
    MILLIMETRES = "mm"


_INCHES_PER: dict[str, Inches] = {
    "in": Fraction(1),
    "ft": Fraction(12),
    "yd": Fraction(36),
    "mm": INCHES_PER_MM,
    "cm": 10 * INCHES_PER_MM,
    "m": 1000 * INCHES_PER_MM,
}
_SPELLINGS = {
    "in": ("in", "inch", "inches", '"'),
    "ft": ("ft", "foot", "feet", "'"),
    "yd": ("yd", "yds", "yard", "yards"),
    "mm": ("mm",),
    "cm": ("cm",),
    "m": ("m", "metre", "metres", "meter", "meters"),
}
_UNIT_OF = {word: unit for unit, words in _SPELLINGS.items() for word in words}
_MARKS = str.maketrans(
    "\u2044\u2215\u2033\u201d\u201c\u2032\u2019\u2018\u2010\u2011\u2013\u2212",
    "//\"\"\"'''----",
)
_RAISED, _LOWERED = "⁰¹²³⁴⁵⁶⁷⁸⁹", "₀₁₂₃₄₅₆₇₈₉"
_RAISED_RUN = re.compile(f"[{_RAISED}]+")
_FLAT = str.maketrans(_RAISED + _LOWERED, "0123456789" * 2)
_NUMBER = r"(?:\d+\s*/\s*\d+|\d+(?:\s+|-)\d+\s*/\s*\d+|\d*[.,]\d+|\d+)"
_TERM = re.compile(rf"\s*(?P<number>{_NUMBER})\s*(?P<unit>[a-z]+|\"|'|)(?:\.(?!\d))?\s*", re.ASCII)
_MIXED = re.compile(r"(?:(?P<whole>\d+)(?:\s+|-))?(?P<top>\d+)\s*/\s*(?P<bottom>\d+)", re.ASCII)
_THOUSANDS = re.compile(r"[1-9]\d{0,2},\d{3}")
_LONGEST_TEXT = 60
_FINEST_PART = 10**6  # of an inch: four decimals of a millimetre; finer is a slip of the pen


class LengthError(ValueError):
    """Text that is not one clear length; the message says how to write it."""


def parse(text: str, units: Units = Units.INCHES) -> Inches:
    """The length that `text` states, in inches; a bare number counts in `units`.

    Reads whole numbers, decimals (point or comma), fractions, mixed numbers and
    unit marks, alone or from large to small (`3' 6 1/2"`, `1 yd 4 in`). Raises
    `LengthError` for anything that could be read in two ways.

    >>> parse("50 1/2"), parse("50½") == parse("50-1/2") == parse("50.5") == parse("50,5")
    (Fraction(101, 2), True)
    >>> parse("128 cm"), parse("1 1/4 yd"), parse("3' 6 1/2\\"")
    (Fraction(6400, 127), Fraction(45, 1), Fraction(85, 2))
    >>> parse("1,250")
    Traceback (most recent call last):
    core.lengths.LengthError: "1,250" could mean 1 1/4 or 1250; write 1.25 or 1250
    """
    if not isinstance(text, str):
        refused = told(
            "write the length as text, such as '3/8' or '2.5', not {value}", value=repr(text)
        )
        raise LengthError(refused)
    if len(text) > _LONGEST_TEXT:
        raise LengthError(told("that is too long for a length; write it like 50 1/2 or 128 cm"))
    plain, said = _plain(text), text.strip()
    if plain.startswith("-") and plain.lstrip("- ")[:1].isdigit():
        raise LengthError(told('"{text}" is negative; write it without the minus', text=said))
    total, smallest = Fraction(0), None
    position = 0
    while position < len(plain) or smallest is None:
        term = _TERM.match(plain, position)
        if term is None:
            raise LengthError(_unreadable(text))
        unit = _unit(term["unit"], text, units, first=smallest is None and term.end() == len(plain))
        if smallest is not None and unit >= smallest:
            raise LengthError(_unreadable(text))
        total, smallest = total + _number(term["number"], text) * unit, unit
        position = term.end()
    if total.denominator > _FINEST_PART:
        raise LengthError(told('"{text}" is finer than any ruler; write fewer digits', text=said))
    return total


def _plain(text: str) -> str:
    """ASCII digits, fractions and marks: `50⁷⁄₁₆ ″` reads as `50 7/16 "`."""
    level = _RAISED_RUN.sub(lambda run: f" {run[0].translate(_FLAT)}", text).translate(_FLAT)
    spaced = "".join(
        f" {flat}" if "\u2044" in (flat := unicodedata.normalize("NFKC", char)) else flat
        for char in level.translate(_MARKS)
    )
    return spaced.translate(_MARKS).strip().lower()


def _unit(word: str, text: str, units: Units, *, first: bool) -> Inches:
    """Inches in one of the unit named; only a lone number may go without."""
    if word:
        if word not in _UNIT_OF:
            refused = told('"{word}" is not a unit here; use in, ft, yd, mm, cm or m', word=word)
            raise LengthError(refused)
        return _INCHES_PER[_UNIT_OF[word]]
    if not first:
        raise LengthError(_unreadable(text))
    return _INCHES_PER[units.value]


def _number(number: str, text: str) -> Fraction:
    found, said = _MIXED.fullmatch(number), text.strip()
    if found is None:
        if _THOUSANDS.fullmatch(number):
            raise LengthError(_two_ways(number))
        return Fraction(number.replace(",", "."))
    whole, top, bottom = int(found["whole"] or 0), int(found["top"]), int(found["bottom"])
    if bottom == 0:
        raise LengthError(told('"{text}" divides by 0; write a fraction such as 1/2', text=said))
    if found["whole"] and top >= bottom:
        raise LengthError(
            told('"{text}": a fraction after a whole number must be below 1', text=said)
        )
    return whole + Fraction(top, bottom)


def _two_ways(number: str) -> str:
    value = Fraction(number.replace(",", "."))
    return told(
        '"{text}" could mean {fraction} or {thousands}; write {point} or {thousands}',
        text=number,
        fraction=mixed(value),
        thousands=number.replace(",", ""),
        point=f"{float(value):g}",
    )


def _unreadable(text: str) -> str:
    shown = text.strip()
    if not shown:
        return told("a length is missing; write one such as 50 1/2 or 128 cm")
    return told('"{text}" is not one clear length; write it like 50 1/2, 2.5 or 128 cm', text=shown)


@dataclass(frozen=True, slots=True)
class Ruler:
    """Marks that lengths are shown to: rounded to `step` unless a multiple of `finest`."""

    unit: str
    step: Inches
    finest: Inches


RULERS: dict[Units, Ruler] = {
    Units.INCHES: Ruler("in", Fraction(1, 16), Fraction(1, 64)),
    Units.CENTIMETRES: Ruler("cm", INCHES_PER_MM, INCHES_PER_MM / 10),
    Units.MILLIMETRES: Ruler("mm", INCHES_PER_MM, INCHES_PER_MM / 10),
}


class Rounding(StrEnum):
    """Which way a length goes that falls between two marks."""

    NEAREST = "nearest"
    UP = "up"
    DOWN = "down"


def show(
    length: Inches, units: Units, rounding: Rounding = Rounding.NEAREST, *, unit: bool = True
) -> str:
    """`length` to a ruler's marks, with "≈" before text that was rounded.

    >>> show(Fraction(101, 2), Units.INCHES), show(Fraction(128000, 254) / 10, Units.CENTIMETRES)
    ('50 1/2 in', '128 cm')
    >>> show(Fraction(1, 3), Units.INCHES), show(Fraction(1, 3), Units.INCHES, Rounding.UP)
    ('≈5/16 in', '≈3/8 in')
    """
    number = told_decimal(bare(length, units, rounding))
    return f"{number} {RULERS[units].unit}" if unit else number


@lru_cache(maxsize=1 << 12)
def bare(length: Inches, units: Units, rounding: Rounding = Rounding.NEAREST) -> str:
    """As `show`, the bare number with a decimal point in every language, for programs to read.

    Kept, since every list and picture shows the same few lengths.
    """
    ruler = RULERS[units]
    exact = (length / ruler.finest).denominator == 1
    on_mark = length if exact else rounded(length, ruler.step, rounding)
    number = (mixed if ruler.unit == "in" else decimal)(on_mark / _INCHES_PER[ruler.unit])
    return f"{'' if exact else '≈'}{number}"


def show_size(across: Inches, along: Inches, units: Units) -> str:
    """Two sides of a rectangle, across the cloth first: "42 × 2 1/2 in"."""
    return f"{show(across, units, unit=False)} × {show(along, units)}"


def rounded(length: Inches, step: Inches, rounding: Rounding) -> Inches:
    """`length` moved to a multiple of `step`."""
    turns = length / step
    if rounding is Rounding.UP:
        return ceil(turns) * step
    if rounding is Rounding.DOWN:
        return floor(turns) * step
    return floor(turns + Fraction(1, 2)) * step


def round_up(length: Inches, step: Inches) -> Inches:
    """The least multiple of `step` that is at least `length`.

    >>> round_up(Fraction(9), Fraction(9, 2)), round_up(Fraction(91, 10), Fraction(9, 2))
    (Fraction(9, 1), Fraction(27, 2))
    """
    return rounded(length, step, Rounding.UP)


def sale_text(length: Inches, sale_unit: Inches) -> str:
    """A bought length in the trade's words: metres for a metric sale unit, else yards.

    >>> sale_text(Fraction(99, 2), Fraction(9, 2))
    '1 3/8 yd'
    >>> sale_text(parse("1.2 m"), parse("10 cm"))
    '1.2 m'
    """
    if any((sale_unit / _INCHES_PER["yd"] * parts).denominator == 1 for parts in (16, 3)):
        return f"{mixed(length / _INCHES_PER['yd'])} yd"
    if (sale_unit / INCHES_PER_MM).denominator == 1:
        return f"{told_decimal(decimal(length / _INCHES_PER['m']))} m"
    return f"{mixed(length)} in"


def exact_text(length: Inches, units: Units) -> str:
    """Text that `parse` reads back as exactly `length` when bare numbers are `units`.

    >>> exact_text(Fraction(101, 2), Units.INCHES), exact_text(Fraction(6400, 127), Units.INCHES)
    ('50 1/2', '128 cm')
    >>> exact_text(Fraction(1, 3), Units.CENTIMETRES)
    '1/3 in'
    >>> [exact_text(Fraction(50, 381), units) for units in (Units.CENTIMETRES, Units.INCHES)]
    ['1/3', '1/3 cm']
    """
    if units is not Units.INCHES and (metric := _terminating(length / _INCHES_PER[units.value])):
        return metric
    centimetres = length / _INCHES_PER["cm"]
    simpler = mixed(centimetres) if centimetres.denominator < length.denominator else None
    if length.denominator <= 64 or not (metric := _terminating(centimetres) or simpler):
        inches = mixed(length)
        return inches if units is Units.INCHES else f"{inches} in"
    return metric if units is Units.CENTIMETRES else f"{metric} cm"


def _terminating(number: Fraction) -> str | None:
    """`number` as a short decimal, if it is one."""
    return decimal(number) if (number * 10**6).denominator == 1 else None


_FRACTION = re.compile(r"(?:(?<=\d) )?(?<![\d/])(\d+)/(\d+)(?![\d/])")
_RAISE = str.maketrans("0123456789", _RAISED)
_LOWER = str.maketrans("0123456789", _LOWERED)


def typeset(text: str) -> str:
    """`text` with its fractions set as fractions; `parse` reads them back.

    >>> typeset("50 1/2 × 7/16 in")
    '50¹⁄₂ × ⁷⁄₁₆ in'
    """
    return _FRACTION.sub(
        lambda found: f"{found[1].translate(_RAISE)}\u2044{found[2].translate(_LOWER)}", text
    )
