"""The check of a printed scale: a 1 in square, a 100 mm bar, and what to do with them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from app.packet.column import BODY, LINE, baseline, lines_of
from app.packet.page import Box, Item, Rule, Words
from app.packet.paper import FRAME_WIDTH, POINTS_PER_INCH, POINTS_PER_MM

SQUARE: Final = POINTS_PER_INCH
BAR: Final = 100 * POINTS_PER_MM
HEIGHT: Final = SQUARE
_ASIDE = SQUARE + 14.0
_BAR_HEIGHT = 6.0
_TEXT = (
    "Print at 100 % (“actual size”), not fitted to the page. Then measure: "
    "the square is 1 in each way, the bar 100 mm long."
)


def true_size(top: float) -> Iterator[Item]:
    """The check, in a strip of `HEIGHT` points from `top`."""
    yield Box(0.0, top, SQUARE, SQUARE, 0.6)
    yield Words((SQUARE / 2 - 1.2 * BODY, baseline(top + (SQUARE - LINE) / 2)), "1\u00a0in", BODY)
    for place, line in enumerate(lines_of(_TEXT, FRAME_WIDTH - _ASIDE)):
        yield Words((_ASIDE, baseline(top + place * LINE)), line, BODY)
    foot = top + SQUARE
    yield Box(_ASIDE, foot - _BAR_HEIGHT, BAR, _BAR_HEIGHT, solid=True)
    yield from _ticks(foot - _BAR_HEIGHT)
    yield Words((_ASIDE + BAR + 6, foot), "100\u00a0mm", BODY)


def _ticks(bar_top: float) -> Iterator[Item]:
    """A tick every 10 mm, longer in the middle."""
    for centimetre in range(11):
        x = _ASIDE + 10 * centimetre * POINTS_PER_MM
        yield Rule((x, bar_top), (x, bar_top - (8 if centimetre % 5 == 0 else 4)), 0.5)
