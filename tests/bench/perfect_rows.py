"""Rows for perfect cuts: 4 to 30 pieces, every other one with a run."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from functools import partial
from statistics import fmean

from core.lay.problem import LayProblem
from core.lengths import Inches
from tests.bench.jobs import each
from tests.bench.measure import Measured, measure, share
from tests.bench.options import Options
from tests.bench.perfect import UNIT, perfect_cuts
from tests.bench.row import Row, named, spread

FEW = 12
Cut = tuple[int, LayProblem, Inches, Measured]  # number, problem, least, ours


def perfect_rows(options: Options) -> Iterator[Row]:
    """The bars for perfect cuts, which are counted from 0 in the order of their seed."""
    seconds = options.seconds / 2
    problems = list(perfect_cuts(options.perfect, options.seed))
    solve = partial(measure, seconds=seconds)
    measured = list(each(solve, [problem for problem, _ in problems], options.jobs))
    cuts = [
        (number, problem, least, one)
        for number, ((problem, least), one) in enumerate(zip(problems, measured, strict=True))
    ]
    few = [cut for cut in cuts if _things(cut) <= FEW]
    many = [cut for cut in cuts if _things(cut) > FEW]
    if few:
        yield from _rows(f"up to {FEW} pieces", few, seconds, all_at_least=True)
    if many:
        yield from _rows(f"{FEW + 1} to 30 pieces", many, seconds, all_at_least=False)


def _things(cut: Cut) -> int:
    _, problem, _, _ = cut
    return len(problem.pieces) + len(problem.runs)


def _rows(title: str, cuts: list[Cut], seconds: float, *, all_at_least: bool) -> Iterator[Row]:
    over = [(one.cloth.bought_along - least) / UNIT for _, _, least, one in cuts]
    gap = fmean(float(one.cloth.bought_along / least) - 1 for _, _, least, one in cuts)
    at_least = sum(units == 0 for units in over)
    times = [one.total for *_, one in cuts]
    yield Row(
        f"perfect cuts, {title}, {seconds:g} s: at the known least",
        f"{share(at_least, len(cuts))}; worst {max(over)} sale units over; "
        f"mean gap {100 * gap:.2f} %",
        "all" if all_at_least else "never over by more than one sale unit, mean gap under 2 %",
        at_least == len(cuts) if all_at_least else max(over) <= 1 and gap < 0.02,
        sum(times),
    )
    missed = [_missed(cut) for cut, units in zip(cuts, over, strict=True) if units]
    yield Row("… missed (ours/least, inches)", named(missed))
    proved = sum(one.cloth.proved_least for *_, one in cuts)
    yield Row("… proved least", share(proved, len(cuts)))
    yield Row("… time: median / p95", spread(times))


def _missed(cut: Cut) -> str:
    number, _, least, one = cut
    lengths = f"{_inches(one.cloth.bought_along)}/{_inches(least)}"
    return f"no. {number} ({_things(cut)} pieces) {lengths}"


def _inches(length: Fraction) -> str:
    return f"{float(length):g}"
