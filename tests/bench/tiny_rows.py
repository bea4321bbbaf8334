"""Rows for tiny problems, against trying everything."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from random import Random
from time import process_time

from core.fabric import Grain
from core.lay.problem import Cloth, LayProblem, Piece, Run
from core.lengths import Inches
from tests.bench.jobs import each
from tests.bench.measure import Measured, measure, share
from tests.bench.options import Options
from tests.bench.problem_json import problem_text
from tests.bench.row import Row
from tests.core.lay.exhaustive import least_along

CLOTH = Cloth("cloth", Fraction(8), Fraction(1))
SHOWN = 5  # of the problems whose lay is not the least
Tried = tuple[Inches, Measured, float]  # the least by trying everything, ours, CPU seconds


def tiny_rows(options: Options) -> Iterator[Row]:
    """One to four pieces and at most one run in whole inches, on a cloth 8 in wide.

    Everything is tried with segments in whole inches; a lay that divides an inch
    may be shorter, a bound may not be above.
    """
    problems = list(tiny_problems(options.tiny, options.seed))
    tried = list(each(_try, problems, options.jobs))
    solved = [
        (problem, least, ours) for problem, (least, ours, _) in zip(problems, tried, strict=True)
    ]
    wrong = [one for one in solved if _is_wrong(*one[1:])]
    yield Row(
        f"{len(problems)} tiny problems: the bound, or a lay called least, is above the least",
        f"{len(wrong)}",
        "none",
        not wrong,
        sum(seconds for *_, seconds in tried),
    )
    for problem, least, ours in wrong:
        claim = f"bound {ours.cloth.bound_along}, least {least}"
        yield Row("… A BOUND IS WRONG", claim, problem=problem_text(problem))
    longer = [one for one in solved if one[2].cloth.bought_along > CLOTH.bought(one[1])]
    yield Row("… lay at the least", share(len(tried) - len(longer), len(tried)))
    for problem, least, ours in longer[:SHOWN]:
        lengths = f"{ours.cloth.bought_along}/{CLOTH.bought(least)}"
        yield Row("… one that is not (ours/least)", lengths, problem=problem_text(problem))
    proved = sum(ours.cloth.proved_least for _, ours, _ in tried)
    yield Row("… proved least", share(proved, len(tried)))


def _is_wrong(least: Inches, ours: Measured) -> bool:
    called_least = ours.cloth.proved_least and ours.cloth.bought_along > CLOTH.bought(least)
    return ours.cloth.bound_along > least or called_least


def tiny_problems(count: int, seed: int) -> Iterator[LayProblem]:
    """`count` problems, the same for the same seed."""
    rng = Random(seed)
    grains = (Grain.CROSSWISE, Grain.LENGTHWISE, Grain.EITHER)
    for _ in range(count):
        pieces = tuple(
            Piece(
                f"piece {i}", "cloth", _whole(rng, 1, 8), _whole(rng, 1, 8), 1, rng.random() < 0.5
            )
            for i in range(rng.randint(1, 4))
        )
        run = Run(
            "run",
            "cloth",
            _whole(rng, 1, 3),
            _whole(rng, 3, 14),
            _whole(rng, 0, 2),
            _whole(rng, 0, 4),
            rng.choice(grains),
        )
        yield LayProblem((CLOTH,), pieces, (run,) if rng.random() < 0.5 else ())


def _whole(rng: Random, low: int, high: int) -> Fraction:
    return Fraction(rng.randint(low, high))


def _try(problem: LayProblem) -> Tried:
    start = process_time()
    least = least_along(problem)
    return least, measure(problem), process_time() - start
