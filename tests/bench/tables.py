"""The rows of the benchmark's table, one function a part."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from random import Random
from statistics import fmean, median

from core.lay.problem import LayProblem
from tests.bench.measure import measure, percentile, share
from tests.bench.perfect import UNIT, perfect_cuts
from tests.bench.published import Published, published
from tests.bench.quilts import quilt, random_quilts
from tests.bench.rivals import installed, rectpack_best

Row = tuple[str, str]
FEW = 25  # pieces up to which the optimum is asked for


def milliseconds(seconds: float) -> str:
    return f"{1000 * seconds:.0f} ms"


def quilts(count: int, seed: int) -> Iterator[Row]:
    """Random real quilts with the default limit of tries."""
    measured = [measure(problem) for problem in random_quilts(count, seed)]
    times = [one.total for one in measured]
    firsts = [one.first for one in measured]
    proved = sum(one.cloth.proved_least for one in measured)
    yield f"real quilts ({count}, seed {seed}): proved least", share(proved, count)
    yield "… time, median / p95", f"{milliseconds(median(times))} / {_p95(times)}"
    yield "… first legal lay, median / p95", f"{milliseconds(median(firsts))} / {_p95(firsts)}"
    if not installed("ortools"):
        yield "… against CP-SAT", "ortools is not installed: not compared"


def _p95(times: list[float]) -> str:
    return milliseconds(percentile(times, 95))


def perfect(count: int, seed: int, seconds: float) -> Iterator[Row]:
    """Perfect cuts: 4 to 30 pieces, every other one with a run."""
    for title, few in (("up to 12 pieces", True), ("13 to 30 pieces", False)):
        over: list[Fraction] = []
        gaps: list[Fraction] = []
        times: list[float] = []
        for problem, least in perfect_cuts(count, seed):
            things = len(problem.pieces) + len(problem.runs)
            if (things <= 12) == few:
                one = measure(problem, seconds)
                over.append((one.cloth.bought_along - least) / UNIT)
                gaps.append((one.cloth.bought_along - least) / least)
                times.append(one.total)
        if over:
            at_least = sum(one == 0 for one in over)
            yield (
                f"perfect cuts, {title} ({len(over)}), {seconds:g} s: at the least",
                f"{share(at_least, len(over))}, worst {max(over)} sale units over, "
                f"mean gap {100 * float(fmean(gaps)):.2f} %",
            )
            yield "… time, median / p95", f"{milliseconds(median(times))} / {_p95(times)}"


def sets(seconds: float, names: frozenset[str] | None = None) -> Iterator[Row]:
    """The published sets, no piece turned."""
    chosen = [one for one in published() if names is None or one.name in names]
    lengths = {one.name: measure(one.problem, seconds).cloth.used_along for one in chosen}
    strips = [one for one in chosen if not one.one_dimensional]
    few = [one for one in strips if one.pieces <= FEW and one.proved]
    many = [one for one in strips if one.pieces > FEW]
    yield _optimal(f"published, up to {FEW} pieces, {seconds:g} s: at the optimum", few, lengths)
    yield from _missed(few, lengths)
    if many:
        yield (
            f"published, more than {FEW} pieces ({len(many)}), {seconds:g} s: mean gap to the best",
            f"{100 * fmean(float(lengths[one.name]) / one.best - 1 for one in many):.2f} %",
        )
    better = [f"{one.name} {lengths[one.name]}" for one in strips if lengths[one.name] < one.best]
    yield "… shorter than the best known", ", ".join(better) or "none"
    stages = [one for one in strips if one.three_stage]
    if stages:
        ours = fmean(float(lengths[one.name]) / one.best for one in stages)
        theirs = fmean((one.three_stage or one.best) / one.best for one in stages)
        yield (
            "… mean length by the best known, ours / best three-stage lay",
            f"{ours:.4f} / {theirs:.4f}",
        )
    yield from _rectpack(strips, lengths)
    flat = [one for one in chosen if one.one_dimensional]
    yield _optimal(f"one-dimensional, {seconds:g} s: at the optimum", flat, lengths)
    yield from _missed(flat, lengths)


def _optimal(title: str, chosen: list[Published], lengths: dict[str, Fraction]) -> Row:
    there = sum(lengths[one.name] == one.best for one in chosen)
    return title, f"{there} of {len(chosen)}"


def _missed(chosen: list[Published], lengths: dict[str, Fraction]) -> Iterator[Row]:
    missed = [
        f"{one.name} {lengths[one.name]}/{one.best}"
        for one in chosen
        if lengths[one.name] != one.best
    ]
    if missed:
        yield "… missed (ours/optimum)", ", ".join(missed)


def _rectpack(chosen: list[Published], lengths: dict[str, Fraction]) -> Iterator[Row]:
    if not installed("rectpack"):
        yield "… against rectpack", "rectpack is not installed: not compared"
        return
    theirs = {one.name: rectpack_best(one) for one in chosen}
    longer = [one.name for one in chosen if lengths[one.name] > theirs[one.name][0]]
    shorter = sum(lengths[one.name] < theirs[one.name][0] for one in chosen)
    yield (
        "… against rectpack's best guillotine rule: shorter / longer",
        f"{shorter} / {len(longer)} of {len(chosen)} {' '.join(longer)}".rstrip(),
    )
    yield "… rectpack's time, median", milliseconds(median(t for _, t in theirs.values()))


def doubling(seed: int) -> Iterator[Row]:
    """Time of the default solve on a cloth of 30, 60 and 120 pieces."""
    times = []
    for copies in (1, 2, 4):
        problem = _thirty(seed, copies)
        one = measure(problem)
        gap = float(one.cloth.used_along / one.cloth.bound_along) - 1
        times.append(f"{30 * copies}: {milliseconds(one.total)}, {100 * gap:.1f} % over the bound")
    yield "doubling the pieces", "; ".join(times)


def _thirty(seed: int, copies: int) -> LayProblem:
    """A quilt's cloth with ten sizes of three pieces, so many times over."""
    rng = Random(seed)
    cloth = quilt(rng).cloths[0]
    [(problem, _)] = list(perfect_cuts(1, seed))
    piece = problem.pieces[0]
    pieces = tuple(
        replace(
            piece,
            name=f"piece {i}",
            across=Fraction(rng.randint(12, 80), 4),
            along=Fraction(rng.randint(12, 120), 4),
            count=3 * copies,
        )
        for i in range(10)
    )
    return LayProblem((replace(cloth, name=piece.cloth, on_hand=()),), pieces)
