"""How wide the columns of a table are: every word whole, and nothing out of sight that need be."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from fractions import Fraction
from math import ceil

from PySide6.QtGui import QFontMetrics

_AFTER_A_NUMBER = re.compile(r"(?<=[\d¼½¾⅓⅔⅛⅜⅝⅞₀-₉]) (?=(?:in|cm|mm|m|yd)\b|×)")
NO_BREAK = "\u00a0"


def bound(text: str) -> str:
    """`text` whose numbers keep their unit, or the × behind them, on their line.

    >>> bound("2½ yd (90 in)").split(" ")
    ['2½\\xa0yd', '(90\\xa0in)']
    """
    return _AFTER_A_NUMBER.sub(NO_BREAK, text)


def shares(
    wanted: Sequence[int], least: Sequence[int], wide: int, ease: int, room: int
) -> list[int]:
    """Pixels of each column; the `wide` one takes what the others leave, but `ease`.

    Where that is too much for the room, the others give way down to their least, and
    then the wide one, if all can be in sight.

    >>> shares([20, 90, 50], [20, 30, 30], 1, 40, 200)
    [20, 130, 50]
    >>> shares([20, 90, 50], [20, 30, 30], 1, 40, 100)
    [20, 40, 40]
    >>> shares([20, 90, 50], [20, 30, 30], 1, 40, 82), shares([20, 90, 50], [20, 30, 30], 1, 40, 60)
    ([20, 32, 30], [20, 40, 30])
    """
    widths = list(wanted)
    widths[wide] = max(room - (sum(wanted) - wanted[wide]), ease)
    gives = [max(0, width - narrow) for width, narrow in zip(widths, least, strict=True)]
    gives[wide] = 0
    over, most = sum(widths) - room, sum(gives)
    if over > 0 and most:
        part = min(Fraction(over, most), Fraction(1))
        widths = [width - ceil(give * part) for width, give in zip(widths, gives, strict=True)]
    if sum(least) <= room < sum(widths):
        widths[wide] -= sum(widths) - room
    return widths


def wanted_and_least(texts: Iterable[str], metrics: QFontMetrics, most: int) -> tuple[int, int]:
    """Pixels that texts want, each on lines of its own, and those of their widest word.

    A number and its unit are one word. Neither is more than `most`.
    """
    once = set(texts)
    lines = {line for text in once for line in text.split("\n")}
    words = {word for line in lines for word in bound(line).split(" ")}
    wanted, least = (
        max(map(metrics.horizontalAdvance, pieces), default=0) for pieces in (lines, words)
    )
    return min(wanted, most), min(least, most)
