"""Rows for random real quilts, with the solver's own limit of tries."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from functools import partial
from math import ceil

from core.lay.problem import LayProblem
from tests.bench.cpsat import Answer, cpsat_least
from tests.bench.jobs import each
from tests.bench.measure import Measured, measure, percentile, share
from tests.bench.options import Options
from tests.bench.problem_json import problem_text
from tests.bench.quilts import random_quilts
from tests.bench.rivals import installed
from tests.bench.row import Row, milliseconds, named, spread

FIRST = 0.01  # seconds to the first legal lay
Asked = tuple[int, LayProblem, Measured]


def quilt_rows(options: Options) -> Iterator[Row]:
    """The bars for real quilts; quilts are counted from 0 in the order of their seed."""
    count, seed = options.quilts, options.seed
    problems = list(random_quilts(count, seed))
    measured = list(each(measure, problems, options.jobs))
    times = [one.total for one in measured]
    proved = sum(one.cloth.proved_least for one in measured)
    yield Row(
        f"{count} real quilts, seed {seed}: proved least at the sale unit",
        share(proved, count),
        "at least 95 %",
        proved >= 0.95 * count,
        sum(times),
    )
    yield Row("… sale units above the bound", _above(problems, measured))
    yield Row(
        "… time to the final answer, warm: median / p95",
        f"{spread(times)}, worst {milliseconds(max(times))}",
        "under 100 ms / under 1 s",
        percentile(times, 50) < 0.1 and percentile(times, 95) < 1,
    )
    firsts = [one.first for one in measured]
    late = sum(first > FIRST for first in firsts)
    yield Row(
        "… time to the first legal lay: median / p95",
        f"{spread(firsts)}, worst {milliseconds(max(firsts))}; later than 10 ms: {late}",
        "within 10 ms (judged at p95)",
        percentile(firsts, 95) <= FIRST,
    )
    yield from _cpsat_rows(problems, measured, options)


def _above(problems: list[LayProblem], measured: list[Measured]) -> str:
    """How many quilts buy so many sale units more than the bound asks for."""
    counts: Counter[int] = Counter()
    for problem, one in zip(problems, measured, strict=True):
        [cloth] = problem.cloths
        above = one.cloth.bought_along - cloth.bought(one.cloth.bound_along)
        counts[int(above / cloth.sale_unit)] += 1
    return ", ".join(f"{units}: {counts[units]}" for units in sorted(counts))


def _cpsat_rows(
    problems: list[LayProblem], measured: list[Measured], options: Options
) -> Iterator[Row]:
    """CP-SAT is asked for a lay that buys less: of what ours does not prove, and of a sample."""
    if not installed("ortools"):
        yield Row("… against CP-SAT with the run model", "not installed")
        return
    numbered = list(zip(range(len(problems)), problems, measured, strict=True))
    unproved = [one for one in numbered if not one[2].cloth.proved_least]
    proved = [one for one in numbered if one[2].cloth.proved_least]
    sample = proved[:: max(1, ceil(len(proved) / max(1, options.cpsat_sample)))]
    if options.cpsat_all:
        sample = proved
    limit = f"{options.cpsat_seconds:g} s on {options.cpsat_workers} workers"
    answers = list(each(partial(_less, options=options), unproved, options.jobs))
    better = [one for one, answer in zip(unproved, answers, strict=True) if answer.found]
    yield Row(
        f"… CP-SAT with the run model, {limit}, on the {len(unproved)} not proved: buys less on",
        f"{_named(better)}; shown that nothing is less, cut edge to edge or not: "
        f"{sum(answer.closed and not answer.found for answer in answers)}",
        "none, or shown that it cannot be cut edge to edge",
        not better,
        sum(answer.seconds for answer in answers),
    )
    yield from _problems("not proved, and CP-SAT buys less", unproved, answers)
    answers = list(each(partial(_less, options=options), sample, options.jobs))
    pairs = list(zip(sample, answers, strict=True))
    wrong = [one for one, answer in pairs if answer.found and answer.guillotine]
    other = [one for one, answer in pairs if answer.found and not answer.guillotine]
    yield Row(
        f"… CP-SAT, {limit}, on {len(sample)} of those proved: an edge-to-edge lay below the proof",
        f"{_named(wrong)}; below it, but not to be cut edge to edge: {_named(other)}",
        "none",
        not wrong,
        sum(answer.seconds for answer in answers),
    )
    yield from _problems("PROVED, AND CP-SAT BUYS LESS", sample, answers)


def _less(asked: Asked, options: Options) -> Answer:
    _, problem, one = asked
    seconds = options.cpsat_seconds * options.cpsat_workers
    return cpsat_least(problem, seconds, one.cloth.bought_along, options.cpsat_workers)


def _named(asked: list[Asked]) -> str:
    return named([f"quilt {number}" for number, _, _ in asked])


def _problems(title: str, asked: list[Asked], answers: list[Answer]) -> Iterator[Row]:
    """Each problem on which CP-SAT buys less, to be repeated."""
    for (number, problem, one), answer in zip(asked, answers, strict=True):
        if answer.found:
            edge = "edge to edge" if answer.guillotine else "not edge to edge"
            yield Row(
                f"… {title}: quilt {number}",
                f"ours {one.cloth.bought_along} in, CP-SAT {answer.bought} in, {edge}; "
                f"our bound {one.cloth.bound_along} in",
                problem=problem_text(problem),
            )
