"""Rows for the published sets, no piece turned."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from functools import partial
from statistics import fmean

from tests.bench.cpsat import cpsat_least
from tests.bench.jobs import each
from tests.bench.measure import Measured, measure, share
from tests.bench.options import Options
from tests.bench.published import Published, published
from tests.bench.rivals import PACKS, installed, rectpack_best
from tests.bench.row import Row, milliseconds, named, spread

FEW = 25  # pieces up to which the optimum is asked for
LIVE = 0.1  # seconds that a person does not wait for


def set_rows(options: Options) -> Iterator[Row]:
    """The bars for the published sets: live, then with time."""
    names = options.names
    chosen = [one for one in published() if names is None or one.name in names]
    strips = [one for one in chosen if not one.one_dimensional]
    flat = [one for one in chosen if one.one_dimensional]
    sized = f"published sets, up to {FEW} pieces"
    live = _lay(strips, LIVE, options.jobs)
    yield from _optimum_rows(sized, strips, live, LIVE)
    yield from _gap_rows(strips, live, LIVE)
    yield from _stage_rows(strips, live)
    yield from _rectpack_rows(strips, live, options.jobs)
    yield from _cpsat_rows(strips, live, LIVE, options.jobs)
    late = _lay(strips, options.seconds, options.jobs)
    yield from _optimum_rows(sized, strips, late, options.seconds)
    yield from _gap_rows(strips, late, options.seconds)
    better = _both([one for one in strips if late[one.name].cloth.used_along < one.best], late)
    yield Row("… shorter than the best known", named(better), "at least one", bool(better))
    yield from _cpsat_rows(strips, late, options.seconds, options.jobs)
    ours = _lay(flat, options.seconds, options.jobs)
    yield from _optimum_rows("one-dimensional sets", flat, ours, options.seconds)
    yield _truth_row(chosen, [live, late, ours])


def _lay(chosen: list[Published], seconds: float, jobs: int) -> dict[str, Measured]:
    work = partial(measure, seconds=seconds)
    problems = [one.problem for one in chosen]
    measured = each(work, problems, jobs)
    return dict(zip((one.name for one in chosen), measured, strict=True))


def _optimum_rows(
    title: str, chosen: list[Published], ours: dict[str, Measured], seconds: float
) -> Iterator[Row]:
    """Those whose optimum is proved; 1-D ones whatever their number of pieces."""
    few = [one for one in chosen if one.proved and (one.one_dimensional or one.pieces <= FEW)]
    missed = [one for one in few if ours[one.name].cloth.used_along != one.best]
    times = [ours[one.name].total for one in few]
    yield Row(
        f"{title}, {seconds:g} s: at the proven optimum",
        share(len(few) - len(missed), len(few)),
        "all" if seconds > LIVE else "",
        not missed if seconds > LIVE else None,
        sum(times),
    )
    yield Row("… missed (ours/optimum)", named(_both(missed, ours)))
    if few:
        yield Row("… time: median / p95", spread(times))
        proved = sum(ours[one.name].cloth.proved_least for one in few)
        yield Row("… proved least by ours", share(proved, len(few)))


def _truth_row(chosen: list[Published], solved: list[dict[str, Measured]]) -> Row:
    """No lay may be shorter than what is proved, no bound longer than what is known."""
    pairs = [(one, lays[one.name].cloth) for lays in solved for one in chosen if one.name in lays]
    wrong = [
        f"{one.name} laid {cloth.used_along}, bound {cloth.bound_along}"
        for one, cloth in pairs
        if cloth.used_along < one.low or cloth.bound_along > one.best
    ]
    title = "all published sets: a lay below the proven bound, or our bound above a known lay"
    return Row(title, named(wrong), "none", not wrong)


def _both(chosen: list[Published], ours: dict[str, Measured]) -> list[str]:
    return [f"{one.name} {ours[one.name].cloth.used_along}/{one.best}" for one in chosen]


def _gap_rows(strips: list[Published], ours: dict[str, Measured], seconds: float) -> Iterator[Row]:
    """The rest: more pieces, or no optimum known."""
    many = [one for one in strips if one.pieces > FEW]
    rest = [one for one in strips if one.pieces <= FEW and not one.proved]
    for title, some in (
        (f"published sets, more than {FEW} pieces", many),
        (f"published sets, up to {FEW} pieces, optimum not known", rest),
    ):
        if some:
            gap = fmean(float(ours[one.name].cloth.used_along) / one.best - 1 for one in some)
            asked = some is many and seconds > LIVE
            yield Row(
                f"{title} ({len(some)}), {seconds:g} s: mean gap to the best known",
                f"{100 * gap:.2f} %",
                "under 1 %" if asked else "",
                gap < 0.01 if asked else None,
                sum(ours[one.name].total for one in some),
            )
            longer = [one for one in some if ours[one.name].cloth.used_along > one.best]
            yield Row("… longer than the best known (ours/best)", named(_both(longer, ours)))


def _stage_rows(strips: list[Published], live: dict[str, Measured]) -> Iterator[Row]:
    staged = [one for one in strips if one.three_stage]
    if staged:
        ours = fmean(float(live[one.name].cloth.used_along) / one.best for one in staged)
        theirs = fmean((one.three_stage or one.best) / one.best for one in staged)
        yield Row(
            f"… {LIVE:g} s: mean length by the best known, ours / best three-stage lay "
            f"({len(staged)})",
            f"{ours:.4f} / {theirs:.4f}",
            "no longer on average",
            ours <= theirs,
        )


def _rectpack_rows(strips: list[Published], live: dict[str, Measured], jobs: int) -> Iterator[Row]:
    title = f"… {LIVE:g} s against rectpack's best of {PACKS} packs: longer on"
    if not installed("rectpack"):
        yield Row(title, "not installed", "none")
        return
    theirs = list(each(rectpack_best, strips, jobs))
    lengths = [Fraction(best) for best, _ in theirs]
    yield _against(title, strips, live, lengths, "none", sum(spent for _, spent in theirs))
    times = [spent for _, spent in theirs]
    yield Row("… rectpack's time for its packs: median / p95", spread(times))


def _cpsat_rows(
    strips: list[Published], ours: dict[str, Measured], seconds: float, jobs: int
) -> Iterator[Row]:
    """Its lays need not be edge to edge: on some sets they can be shorter than any of ours."""
    title = f"… {seconds:g} s against CP-SAT, edge to edge or not: longer on"
    if not installed("ortools"):
        yield Row(title, "not installed")
        return
    answers = list(each(partial(cpsat_least, seconds=seconds), [s.problem for s in strips], jobs))
    found = [(one, a) for one, a in zip(strips, answers, strict=True) if a.bought is not None]
    lengths = [a.bought for _, a in found if a.bought is not None]
    spent = sum(a.seconds for a in answers)
    yield _against(title, [one for one, _ in found], ours, lengths, "", spent)
    none = [one.name for one, a in zip(strips, answers, strict=True) if a.bought is None]
    slow = max((a.seconds for a in answers), default=0.0)
    yield Row("… CP-SAT finds nothing in time on", named(none))
    yield Row("… CP-SAT's longest time, with building its model", milliseconds(slow))
    edge = [
        one.name
        for one, a in found
        if a.guillotine and a.bought is not None and a.bought < ours[one.name].cloth.used_along
    ]
    yield Row("… CP-SAT's lay is shorter than ours and edge to edge on", named(edge))


def _against(
    title: str,
    strips: list[Published],
    ours: dict[str, Measured],
    theirs: list[Fraction],
    bar: str,
    spent: float,
) -> Row:
    pairs = [
        (one.name, ours[one.name].cloth.used_along, t)
        for one, t in zip(strips, theirs, strict=True)
    ]
    longer = [f"{name} {mine}/{their}" for name, mine, their in pairs if mine > their]
    shorter = sum(mine < their for _, mine, their in pairs)
    ratio = fmean(float(mine / their) for _, mine, their in pairs)
    return Row(
        title,
        f"{named(longer)} (of {len(pairs)}; shorter on {shorter}, mean ratio {ratio:.4f})",
        bar,
        not longer if bar else None,
        spent,
    )
