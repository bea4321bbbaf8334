"""A stand-in language: every text told in Greek letters, so that what was not told shows.

It is no language, but it is longer than English, as most are.
"""

from __future__ import annotations

import re
from gettext import NullTranslations

_LATIN = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"
_GREEK = "αβγδεφγηιξκλμνοπθρστυωωχψζΑΒΓΔΕΦΓΗΙΞΚΛΜΝΟΠΘΡΣΤΥΩΩΧΨΖ"
_LETTERS = str.maketrans(_LATIN, _GREEK)
_VALUE = re.compile(r"(\{[^{}]*\}|<[^<>]*>|&[a-z]+;|%(?:\(\w+\))?[rs])")
_WORD = re.compile(r"[A-Za-z]{3,}")


class StandIn(NullTranslations):
    """Tells every text in other letters; values, and what is between < and >, stay."""

    def gettext(self, message: str) -> str:
        return in_greek(message)

    def pgettext(self, context: str, message: str) -> str:
        return in_greek(message)

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        return in_greek(msgid1 if n == 1 else msgid2)


class WithComma(NullTranslations):
    """A language that writes decimals with a comma."""

    def pgettext(self, context: str, message: str) -> str:
        return "," if context == "in a decimal" else message


def in_greek(text: str) -> str:
    """The text in other letters.

    >>> in_greek("Cut {count} <b>now</b>")
    'Γυτ {count} <b>νοω</b>'
    """
    parts = _VALUE.split(text)
    return "".join(part if _VALUE.fullmatch(part) else part.translate(_LETTERS) for part in parts)


def untold(text: str) -> list[str]:
    """The words of a text that were not told: three Latin letters or more.

    >>> untold("Γυτ 3 strips A1, 5 in"), untold("Γυτ <b>3</b>")
    (['strips'], [])
    """
    return _WORD.findall(re.sub(r"<[^<>]*>|&[a-z]+;", " ", text))
