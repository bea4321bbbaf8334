"""Rows for doubling the pieces: ten sizes, 30, 60 and 120 pieces."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from functools import partial
from itertools import pairwise
from math import log2
from random import Random
from statistics import median

from core.lay.problem import LayProblem, Piece
from core.lengths import Inches
from tests.bench.jobs import each
from tests.bench.measure import Measured, measure
from tests.bench.options import Options
from tests.bench.quilts import quilt
from tests.bench.row import Row, milliseconds

COPIES = (1, 2, 4)
SMALLEST = 30
NEAR = Fraction(103, 100)


def doubling_rows(options: Options) -> Iterator[Row]:
    """Time to a lay within 3 % of the bound, and how it grows from one doubling to the next."""
    seconds = options.seconds / 2
    seeds = range(options.seed, options.seed + options.doublings)
    problems = [_ten_sizes(seed, copies) for copies in COPIES for seed in seeds]
    work = partial(measure, seconds=seconds)
    measured = list(each(work, problems, options.jobs))
    columns = [measured[i * len(seeds) : (i + 1) * len(seeds)] for i in range(len(COPIES))]
    title = f"doubling, {len(seeds)} cloths of ten sizes, 30 / 60 / 120 pieces, {seconds:g} s"
    yield from _growth_rows(
        f"{title}: growth of the time to a lay within 3 % of the bound",
        [[_near(one, one.cloth.bound_along) for one in column] for column in columns],
        "at most 2",
        sum(one.total for one in measured),
    )
    yield from _growth_rows(
        "… growth of the time to a lay within 3 % of the shortest found",
        [[_near(one, one.cloth.used_along) for one in column] for column in columns],
    )
    yield Row(
        "… median gap to the bound at the end: 30 / 60 / 120 pieces",
        " / ".join(f"{100 * median(_gap(one) for one in column):.1f} %" for column in columns),
    )


def _near(one: Measured, along: Inches) -> float | None:
    """Seconds until a lay used at most 3 % more than `along`; None if none ever did."""
    return one.reached(NEAR * along)


def _growth_rows(
    title: str, columns: list[list[float | None]], bar: str = "", seconds: float | None = None
) -> Iterator[Row]:
    """The exponents from one doubling to the next, and the times they come from."""
    exponents = [growth(few, many) for few, many in pairwise(columns)]
    known = [one for one in exponents if one is not None]
    yield Row(
        f"{title}, exponent",
        " / ".join("–" if one is None else f"{one:.2f}" for one in exponents),
        bar,
        len(known) == len(exponents) and max(known) <= 2 if bar else None,
        seconds,
    )
    yield Row(
        "… got so far, and the median time to it",
        "; ".join(
            f"{copies * SMALLEST} pieces: {sum(t is not None for t in column)} of {len(column)}, "
            f"{_median(column)}"
            for copies, column in zip(COPIES, columns, strict=True)
        ),
    )


def growth(few: list[float | None], many: list[float | None]) -> float | None:
    """The median exponent over the cloths that got so far with few pieces and with twice as many.

    >>> growth([0.1, 0.2, None], [0.4, 0.8, 1.0])
    2.0
    """
    pairs = [(a, b) for a, b in zip(few, many, strict=True) if a is not None and b is not None]
    return median(log2(b / a) for a, b in pairs) if pairs else None


def _gap(one: Measured) -> float:
    return float(one.cloth.used_along / one.cloth.bound_along) - 1


def _median(times: list[float | None]) -> str:
    known = [time for time in times if time is not None]
    return milliseconds(median(known)) if known else "–"


def _ten_sizes(seed: int, copies: int) -> LayProblem:
    """A quilt's cloth with ten sizes of three pieces, so many times over."""
    rng = Random(seed)
    cloth = replace(quilt(rng).cloths[0], on_hand=())
    pieces = tuple(
        Piece(
            f"piece {i}",
            cloth.name,
            Fraction(rng.randint(12, 80), 4),
            Fraction(rng.randint(12, 120), 4),
            3 * copies,
        )
        for i in range(10)
    )
    return LayProblem((cloth,), pieces)
