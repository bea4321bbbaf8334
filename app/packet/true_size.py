"""The check of a printed scale: a 1 in square, a 100 mm bar, and what to do with them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from app.packet.column import BODY, LINE, baseline, lines_of
from app.packet.page import Box, Item, Rule, Words
from app.packet.paper import Format
from core.language import marked, told

_GUTTER = 14.0
_BAR_HEIGHT = 6.0
_TICK: Final = 8.0
_TEXT: Final = marked(
    "Print at 100 % (“actual size”), not fitted to the page. Then measure: "
    "the square is 1 in each way, the bar 100 mm long."
)


def height(form: Format) -> float:
    """What `true_size` takes of a page."""
    lines = len(_lines(form))
    return max(form.inch, lines * LINE + _TICK + _BAR_HEIGHT + 2)


def true_size(top: float, form: Format) -> Iterator[Item]:
    """The check, in a strip of `height` points from `top`."""
    inch, aside = form.inch, _aside(form)
    yield Box(0.0, top, inch, inch, 0.6)
    yield Words((inch / 2 - 1.2 * BODY, baseline(top + (inch - LINE) / 2)), "1\u00a0in", BODY)
    for place, line in enumerate(_lines(form)):
        yield Words((aside, baseline(top + place * LINE)), line, BODY)
    foot, bar = top + height(form), 100 * form.mm
    yield Box(aside, foot - _BAR_HEIGHT, bar, _BAR_HEIGHT, solid=True)
    yield from _ticks(aside, foot - _BAR_HEIGHT, form)
    yield Words((aside + bar + 6, foot), "100\u00a0mm", BODY)


def _aside(form: Format) -> float:
    return form.inch + _GUTTER


def _lines(form: Format) -> list[str]:
    said = told(_TEXT)
    if form.correction != 1:
        corrected = told(
            "Lengths are printed {times} times as long, as measured for this printer.",
            times=f"{float(form.correction):.4g}",
        )
        said = f"{said} {corrected}"
    return lines_of(said, form.width - _aside(form))


def _ticks(left: float, bar_top: float, form: Format) -> Iterator[Item]:
    """A tick every 10 mm, longer in the middle."""
    for centimetre in range(11):
        x = left + 10 * centimetre * form.mm
        high = _TICK if centimetre % 5 == 0 else _TICK / 2
        yield Rule((x, bar_top), (x, bar_top - high), 0.5)
