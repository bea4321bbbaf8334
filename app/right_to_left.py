"""Hebrew and Arabic letters for painters that set letters from left to right, one by one.

Words are kept in the order in which they are read, since lines are broken in that
order; a painter turns each line round as it draws it. Only stretches of letters
are turned, never a size or a count beside them, so that a name in a sentence
moves nothing else.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from functools import cache
from typing import Final

_RIGHT_TO_LEFT: Final = ("R", "AL")  # bidirectional classes, Unicode Standard Annex 9
_NUMBER: Final = re.compile(r"\d+(?:[.,/]\d+)*")
_MIRRORED: Final = str.maketrans("()[]{}<>«»", ")(][}{><»«")
_ARABIC_FORMS: Final = (*range(0xFB50, 0xFBB2), *range(0xFE80, 0xFEFD))
_LAM: Final = "\u0644"


def turns(char: str) -> bool:
    """Whether the letter is written from right to left."""
    return unicodedata.bidirectional(char) in _RIGHT_TO_LEFT


def as_seen(line: str) -> str:
    """One line in the order in which its letters stand, from the left.

    >>> as_seen("A1 שם 12 in")
    'A1 םש 12 in'
    """
    sides = "".join(
        "R" if turns(char) else unicodedata.bidirectional(char)[:1] or "N" for char in line
    )
    turned, end = "", 0
    for run in re.finditer("R(?:[^L]*R)?", sides):
        turned += line[end : run.start()] + _turned(line[run.start() : run.end()])
        end = run.end()
    return turned + line[end:]


def _turned(run: str) -> str:
    back = run[::-1].translate(_MIRRORED)
    return _NUMBER.sub(lambda number: number[0][::-1], back)


def joined(text: str) -> str:
    """`text` without points, and its Arabic letters in the forms that join their neighbours.

    >>> joined("بيت") == "\\ufe91\\ufef4\\ufe96"
    True
    """
    if not any(map(turns, text)):
        return text
    units = list(_units(text))
    forms = _forms()
    shaped = []
    for place, unit in enumerate(units):
        before = place > 0 and ("initial", units[place - 1]) in forms and ("final", unit) in forms
        after = (
            place + 1 < len(units)
            and ("initial", unit) in forms
            and ("final", units[place + 1]) in forms
        )
        shaped.append(forms.get((_KINDS[before, after], unit), unit))
    return "".join(shaped)


_KINDS: Final = {
    (False, False): "isolated",
    (True, False): "final",
    (False, True): "initial",
    (True, True): "medial",
}


def _units(text: str) -> Iterator[str]:
    """Letters, lam with the alef after it as one; points are left out where letters turn."""
    bare = [c for c in text if unicodedata.combining(c) == 0 or not _points(c)]
    place = 0
    while place < len(bare):
        pair = "".join(bare[place : place + 2])
        unit = pair if pair[0] == _LAM and ("isolated", pair) in _forms() else bare[place]
        yield unit
        place += len(unit)


def _points(char: str) -> bool:
    """Whether a mark is a vowel point of Hebrew or Arabic."""
    return unicodedata.name(char, "").startswith(("HEBREW", "ARABIC"))


@cache
def _forms() -> dict[tuple[str, str], str]:
    """(kind, letters) -> the form, from the decompositions of the Unicode Character Database."""
    forms: dict[tuple[str, str], str] = {}
    for code in _ARABIC_FORMS:
        kind, *letters = unicodedata.decomposition(chr(code)).split()
        forms.setdefault((kind[1:-1], "".join(chr(int(c, 16)) for c in letters)), chr(code))
    return forms
