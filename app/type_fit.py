"""Setting words in a room: choosing a size, breaking lines, cutting short.

Everything here works from a `Measure`, the width of a text at size 1, so that
paper, SVG and screen set words by the same rules whatever draws them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import TypeAlias

Measure: TypeAlias = Callable[[str], float]

# In sizes: from one baseline to the next; a capital of DejaVu Sans; capital to descender.
LEADING, CAPITALS, LINE_HEIGHT = 1.2, 0.73, 1.0
# A room is worth turning words for when it is this many times as high as wide.
_UPRIGHT_ROOM = 1.2
# Kept free in a room, left and right of the words and above and below, in the sizes' unit.
ASIDE, ABOVE = 0.5, 0.5


@dataclass(frozen=True, slots=True)
class Sizes:
    """Type sizes that a label may have.

    A fuller text is passed over for a shorter one only to stay at `easy` or
    above; below `least` a label is left out.
    """

    least: float
    easy: float
    most: float

    def times(self, larger: float) -> Sizes:
        """All of them so many times as large."""
        return Sizes(self.least * larger, self.easy * larger, self.most * larger)


@dataclass(frozen=True, slots=True)
class Setting:
    """Lines of words at a size; `turned` a quarter turn, reading upwards."""

    lines: tuple[str, ...]
    size: float
    turned: bool = False

    def extent(self, measure: Measure) -> tuple[float, float]:
        """Width and height of the block as it stands on the page."""
        wide = max(measure(line) for line in self.lines) * self.size
        high = _lines_height(self.lines) * self.size
        return (high, wide) if self.turned else (wide, high)

    def baselines(self) -> Iterator[tuple[str, float]]:
        """Each line with its baseline's distance below the block's centre."""
        first = CAPITALS / 2 - LEADING * (len(self.lines) - 1) / 2
        for place, line in enumerate(self.lines):
            yield line, (first + LEADING * place) * self.size


def fit(
    texts: Iterable[str], room: tuple[float, float], measure: Measure, sizes: Sizes
) -> Setting | None:
    """The fullest of `texts` that reads easily in `room`, else the fullest that goes in at all.

    >>> fit(["A1\\n8 × 40", "A1"], (40, 30), lambda text: 0.6 * len(text), Sizes(5, 9, 16))
    Setting(lines=('A1', '8 × 40'), size=10.833333333333334, turned=False)
    >>> fit(["A1\\n8 × 40", "A1"], (12, 14), lambda text: 0.6 * len(text), Sizes(5, 9, 16))
    Setting(lines=('A1',), size=9.166666666666668, turned=False)
    """
    fullest = None
    for text in texts:
        setting = _largest(tuple(text.split("\n")), room, measure, sizes)
        if setting.size >= sizes.easy:
            return setting
        if fullest is None and setting.size >= sizes.least:
            fullest = setting
    return fullest


def _largest(
    lines: tuple[str, ...], room: tuple[float, float], measure: Measure, sizes: Sizes
) -> Setting:
    """Upright if that reads easily or the room does not stand; else turned where that is larger."""
    ems = max(map(measure, lines)), _lines_height(lines)
    upright = _size(ems, room, sizes.most)
    stands = room[1] > _UPRIGHT_ROOM * room[0]
    turned = _size(ems, room[::-1], sizes.most) if stands else 0.0
    if upright >= sizes.easy or upright >= turned:
        return Setting(lines, upright)
    return Setting(lines, turned, turned=True)


def _size(ems: tuple[float, float], room: tuple[float, float], most: float) -> float:
    """The largest size at which a block of so many ems goes in the room."""
    wide, high = room[0] - 2 * ASIDE, room[1] - 2 * ABOVE
    return max(0.0, min(high / ems[1], wide / ems[0] if ems[0] else most, most))


def _lines_height(lines: Sequence[str]) -> float:
    """Height of a block of lines at size 1."""
    return LINE_HEIGHT + LEADING * (len(lines) - 1)


def wrap(text: str, width: float, measure: Measure, size: float) -> list[str]:
    """`text` in lines no wider than `width`; a word that is wider is broken.

    >>> wrap("two short words", 10, len, 1)
    ['two short', 'words']
    >>> wrap("incomprehensible", 10, len, 1)
    ['incomprehe', 'nsible']
    """
    lines: list[str] = []
    line = ""
    for word in text.split(" "):
        longer = f"{line} {word}" if line else word
        if measure(longer) * size <= width:
            line = longer
            continue
        if line:
            lines.append(line)
        *full, line = _broken(word, width, measure, size)
        lines.extend(full)
    return [*lines, line]


def _broken(word: str, width: float, measure: Measure, size: float) -> Sequence[str]:
    """`word` in parts no wider than `width`, each at least one character."""
    parts = [""]
    for char in word:
        if parts[-1] and measure(parts[-1] + char) * size > width:
            parts.append("")
        parts[-1] += char
    return parts


def shortened(text: str, width: float, measure: Measure, size: float) -> str:
    """`text`, or as much of its start as `width` holds, with an ellipsis.

    >>> shortened("a long name", 8, len, 1)
    'a long…'
    """
    if measure(text) * size <= width:
        return text
    kept = text
    while kept and measure(f"{kept}…") * size > width:
        kept = kept[:-1]
    return f"{kept.rstrip()}…"


def limited(
    lines: Sequence[str], most: int, width: float, measure: Measure, size: float
) -> list[str]:
    """At most `most` lines, the last with an ellipsis where some were dropped."""
    if len(lines) <= most:
        return list(lines)
    return [*lines[: most - 1], shortened(f"{lines[most - 1]} …", width, measure, size)]
