"""Rows for comparisons: six columns against one plan, and the staircase, nothing known before."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from fractions import Fraction
from functools import partial
from statistics import median
from time import process_time

from core.cloth_lay import lay_one
from core.compare.choices import STRIP_WIDTH, USABLE_WIDTH
from core.compare.columns import compare
from core.compare.staircase import staircase
from core.plan import make_plan
from core.project_file import load
from tests.bench.options import Options
from tests.bench.program_rows import DEMO, ROOT
from tests.bench.row import Row, milliseconds

TIMES = 5
VALUES = ("2", "2 1/4", "2 1/2", "2 3/4", "3", "3 1/4")
MOST_TIMES, MOST_SECONDS, MOST_STAIRS = 4.0, 0.5, 1.0


def compare_rows(options: Options) -> Iterator[Row]:
    """The demo's comparison and staircases, as when the window has just been opened."""
    del options  # always the same demo
    project = load(ROOT / DEMO)
    one = _cold(lambda: make_plan(project))
    six = _cold(lambda: compare(project, STRIP_WIDTH, VALUES))
    most = min(MOST_TIMES * one, MOST_SECONDS)
    yield Row(
        f"six columns of {DEMO.name} / one plan of it: median of {TIMES}",
        f"{milliseconds(six)} / {milliseconds(one)}: {six / one:.1f} times",
        bar="within 4 times and 0.5 s",
        met=six <= most,
        seconds=six,
    )
    for choice, first, last in ((STRIP_WIDTH, 1, 4), (USABLE_WIDTH, 38, 45)):
        stairs = _cold(partial(staircase, project, choice, Fraction(first), Fraction(last)))
        yield Row(
            f"its staircase over the {choice.name}, {first} to {last} in: median of {TIMES}",
            milliseconds(stairs),
            bar="within 1 s",
            met=stairs <= MOST_STAIRS,
            seconds=stairs,
        )


def _cold(act: Callable[[], object]) -> float:
    """CPU seconds with no lay remembered, the median of several."""
    return median(_once(act) for _ in range(TIMES))


def _once(act: Callable[[], object]) -> float:
    lay_one.cache_clear()
    start = process_time()
    act()
    return process_time() - start
