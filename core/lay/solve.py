"""Lay a problem: cloth by cloth, the least that buys, with the cuts that make it.

What counts, in this order: what is bought, the joins, the length used, the cuts,
one large offcut. Each cloth is a problem of its own, since every piece and run
names its cloth.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from fractions import Fraction
from random import Random
from types import MappingProxyType

from core.lay.around import improve_around
from core.lay.ask import ask_of
from core.lay.cuts import cut_order
from core.lay.improve import improve
from core.lay.lay import BOLT, ClothLay, Cut, Lay, Offcut, Placement, Rect, Sheet
from core.lay.names import Result, named
from core.lay.places import meet
from core.lay.problem import Cloth, LayProblem
from core.lay.several import is_shared, least_shared, shared_out
from core.lay.stop import Stop
from core.lengths import Inches

__all__ = ["Stop", "solve"]

# So many tries tell what a share of a run costs on one of its cloths.
QUICK = 8
NONE_KNOWN: Mapping[str, Inches] = MappingProxyType({})


def solve(
    problem: LayProblem,
    *,
    stop: Stop | None = None,
    seed: int = 0,
    on_better: Callable[[Lay], None] | None = None,
    bounds: Mapping[str, Inches] = NONE_KNOWN,
) -> Lay:
    """The best lay found until `stop`; the same problem, seed and iterations give the same.

    Expects a problem that `core.lay.refuse.require_layable` lets pass. What finds
    no room, because no more may be bought, is `unplaced`. `on_better` is given
    each better lay as it is found. `bounds` are lengths of cloths, by name, that no lay goes
    below; no other bound is sought round what has its place. Runs that cloths share need none.
    """
    stop = stop or Stop()
    if not any(map(is_shared, problem.runs)):
        return _solve(problem, stop, seed, on_better, bounds)
    quick = Stop(min(QUICK, stop.iterations), stop.deadline)
    apart = shared_out(problem, lambda part: _solve(part, quick, seed))
    shared = least_shared(problem, _solve(apart, quick, seed))
    return _solve(apart, stop, seed, on_better, NONE_KNOWN, shared)


def _solve(
    problem: LayProblem,
    stop: Stop,
    seed: int,
    on_better: Callable[[Lay], None] | None = None,
    known: Mapping[str, Inches] = NONE_KNOWN,
    shared: Mapping[str, Inches] = NONE_KNOWN,
) -> Lay:
    """The lay of a problem whose runs draw on one cloth each.

    `known` are bounds that need no search. Where a run was shared out, the bounds of
    this problem hold for this sharing alone; `shared` are those that hold for any.
    """
    found: dict[str, Result] = {}

    def keep(result: Result) -> None:
        name = result.task.cloth.name
        if name in shared:
            result = result._replace(bound=shared[name] / result.task.tick)
        found[name] = result

    def better(result: Result) -> None:
        keep(result)
        if on_better is not None and len(found) == len(problem.cloths):
            on_better(_lay(problem, found))

    for index, cloth in enumerate(problem.cloths):
        part = stop.part(len(problem.cloths) - index)
        keep(_one_cloth(problem, cloth, part, seed, better, known.get(cloth.name)))
    return _lay(problem, found)


def _one_cloth(
    problem: LayProblem,
    cloth: Cloth,
    stop: Stop,
    seed: int,
    better: Callable[[Result], None],
    known: Inches | None,
) -> Result:
    ask = ask_of(problem, cloth)
    if ask.flaws or any(ask.arrangements):
        return improve_around(ask, stop, seed, better, known)
    task = ask.task()
    found = improve(
        task, stop, Random(seed), lambda new: better(Result(task, new.packing, new.bound))
    )
    return Result(task, found.packing, found.bound)


def _lay(problem: LayProblem, found: dict[str, Result]) -> Lay:
    results = [found[cloth.name] for cloth in problem.cloths]
    placements, unplaced = named(problem, results)
    cloths = [
        _cloth_lay(problem, cloth, result, placed)
        for cloth, result, placed in zip(problem.cloths, results, placements, strict=True)
    ]
    return Lay(tuple(cloths), unplaced)


def _cloth_lay(
    problem: LayProblem, cloth: Cloth, result: Result, placements: tuple[Placement, ...]
) -> ClothLay:
    used = max((p.rect.end for p in placements if p.sheet.on == BOLT), default=Fraction(0))
    bought = cloth.bought(used)
    bound = min(used, result.task.inches(result.bound))
    spoilt = [(flaw.sheet, flaw.rect) for flaw in problem.flaws if flaw.cloth == cloth.name]
    sheets = tuple(_sheets(cloth, bought, placements))
    cuts: list[Cut] = []
    offcuts: list[Offcut] = []
    for sheet, rect in sheets:
        on_sheet = [placed for placed in placements if placed.sheet == sheet]
        more_cuts, more_offcuts = cut_order(
            sheet, rect, on_sheet, few_stages=problem.stages is not None
        )
        cuts += more_cuts
        offcuts += [one for one in more_offcuts if not _flawed(one, spoilt)]
    return ClothLay(
        cloth.name,
        bought,
        used,
        bound,
        not result.packing.missing and cloth.bought(bound) == bought,
        sheets,
        placements,
        tuple(offcuts),
        tuple(cuts),
    )


def _flawed(offcut: Offcut, spoilt: Sequence[tuple[Sheet, Rect]]) -> bool:
    return any(meet(offcut.sheet, offcut.rect, *flaw) for flaw in spoilt)


def _sheets(
    cloth: Cloth, bought: Inches, placements: Sequence[Placement]
) -> Iterator[tuple[Sheet, Rect]]:
    """The sheets in use, pieces on hand first."""
    zero = Fraction(0)
    in_use = {placed.sheet for placed in placements}
    for index, hand in enumerate(cloth.on_hand):
        for copy in range(1, hand.count + 1):
            sheet = Sheet(f"on_hand[{index}]", copy)
            if sheet in in_use:
                yield sheet, Rect(zero, zero, hand.across, hand.along)
    if Sheet(BOLT) in in_use:
        yield Sheet(BOLT), Rect(zero, zero, cloth.usable_width, cloth.available(bought))
