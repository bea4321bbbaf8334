"""Runs that may draw on several cloths, shared out among them.

What costs nothing comes first: room on pieces on hand, and on bolts that are
bought anyway. The rest is bought where it costs the least. Each copy of such a run
becomes one run a cloth, and the cloths are laid apart as ever. A share that saves
nothing is not taken, since each share costs a join.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterator
from dataclasses import replace
from fractions import Fraction
from functools import cache
from math import ceil
from typing import TypeAlias

from core.lay.ask import ask_of
from core.lay.bound import least_along
from core.lay.lay import Lay
from core.lay.places import cloth_of
from core.lay.problem import Cloth, LayProblem, Piece, Pin, Run
from core.lay.rest import part_of
from core.lay.ticks import task_of
from core.lengths import Inches

Solve: TypeAlias = Callable[[LayProblem], Lay]
Cost: TypeAlias = tuple[int, Fraction, int, Inches]
Shares: TypeAlias = dict[str, Inches]  # what each cloth adds to the run, its joins taken off
# A share is found to this part of an inch, or a little finer.
FINE = 4


def is_shared(run: Run) -> bool:
    """Whether a run may draw on several cloths."""
    return len(run.sources) > 1


def shared_out(problem: LayProblem, lay: Solve) -> LayProblem:
    """The problem with each run on several cloths as one run a cloth; `lay` lays one cloth."""
    lay = cache(lay)
    shared = sorted(filter(is_shared, problem.runs), key=lambda run: (-run.strip, run.name))
    names = {run.name for run in shared}
    apart = replace(
        problem,
        runs=tuple(run for run in problem.runs if not is_shared(run)),
        pins=tuple(pin for pin in problem.pins if pin.name not in names),
    )
    for run in shared:
        for copy in range(1, run.count + 1):
            pins = tuple(p for p in problem.pins if (p.name, p.run_copy) == (run.name, copy))
            apart = _Sharing(apart, run, copy, pins, lay).best()
    return apart


class _Sharing:
    """One copy of a run, to be shared out among its cloths."""

    def __init__(
        self, apart: LayProblem, run: Run, copy: int, pins: tuple[Pin, ...], lay: Solve
    ) -> None:
        self.apart, self.run, self.copy, self.pins, self.lay = apart, run, copy, pins, lay
        self.cloths = [cloth for cloth in apart.cloths if cloth.name in run.sources]
        self.step = run.strip / ceil(run.strip * FINE)
        self.pinned: Shares = defaultdict(Fraction)
        for pin in pins:
            self.pinned[cloth_of(pin, run)] += (pin.length or 0) - run.join_loss
        self.left = run.needs - run.join_loss - sum(self.pinned.values())

    def best(self) -> LayProblem:
        """The problem with this copy shared out in the way that costs least."""
        ways = {tuple(sorted(shares.items())) for shares in self._ways()}
        return min((self._with(dict(shares)) for shares in sorted(ways)), key=self._cost)

    def _ways(self) -> Iterator[Shares]:
        """All of what is left from one cloth; or first what the others give at no cost."""
        if self.left <= 0:
            yield dict(self.pinned)
            return
        free = {cloth.name: self._at_no_cost(cloth) for cloth in self.cloths}
        freest = sorted(free, key=lambda name: (-free[name], name))
        for last in freest:
            others = [name for name in freest if name != last]
            for some in range(len(others) + 1):
                left, shares = self.left, dict(self.pinned)
                for name in others[:some]:
                    share = min(left, free[name])
                    left -= share
                    shares[name] = shares.get(name, Fraction(0)) + share
                shares[last] = shares.get(last, Fraction(0)) + left
                yield {name: share for name, share in shares.items() if share > 0}

    def _at_no_cost(self, cloth: Cloth) -> Inches:
        """The most that a cloth can add while no more of it is bought."""
        most = ceil(self.left / self.step)
        bought = self._lay_of(self.apart, cloth.name).cloths[0].bought_along
        low, high = 0, most + 1
        tried = most
        while high - low > 1:
            share = self.pinned.get(cloth.name, Fraction(0)) + min(self.left, tried * self.step)
            lay = self._lay_of(self._with({cloth.name: share}), cloth.name)
            fits = not lay.unplaced and lay.cloths[0].bought_along <= bought
            low, high = (tried, high) if fits else (low, tried)
            tried = (low + high) // 2
        return min(self.left, low * self.step)

    def _with(self, shares: Shares) -> LayProblem:
        """The problem with these shares as runs of their own."""
        gained = self.run.needs - self.run.join_loss
        runs = [
            replace(part_of(self.run, self.copy, share), cloth=name, cloths=())
            for name, share in sorted(shares.items())
        ]
        if list(shares.values()) == [gained]:
            runs = [replace(run, needs=self.run.needs) for run in runs]
        names = {run.cloth: run.name for run in runs}
        pins = [
            replace(
                pin, name=names[cloth_of(pin, self.run)], cloth=cloth_of(pin, self.run), run_copy=1
            )
            for pin in self.pins
            if cloth_of(pin, self.run) in names
        ]
        return replace(self.apart, runs=(*self.apart.runs, *runs), pins=(*self.apart.pins, *pins))

    def _lay_of(self, problem: LayProblem, name: str) -> Lay:
        return self.lay(only(problem, name))

    def _cost(self, problem: LayProblem) -> Cost:
        """What finds no room, what is paid, the segments, the length used."""
        lays = [(cloth, self._lay_of(problem, cloth.name)) for cloth in self.cloths]
        priced = [
            (Fraction(1) if cloth.price is None else cloth.price) * lay.cloths[0].bought_along
            for cloth, lay in lays
        ]
        return (
            sum(gone.count for _, lay in lays for gone in lay.unplaced),
            sum(priced, Fraction(0)),
            sum(len(lay.cloths[0].placements) for _, lay in lays),
            sum((lay.cloths[0].used_along for _, lay in lays), Fraction(0)),
        )


def only(problem: LayProblem, name: str) -> LayProblem:
    """The part of a problem that is about one cloth; no run is shared."""
    every: tuple[Piece | Run, ...] = (*problem.pieces, *problem.runs)
    homes = {part.name: part for part in every}
    return LayProblem(
        tuple(cloth for cloth in problem.cloths if cloth.name == name),
        tuple(piece for piece in problem.pieces if piece.cloth == name),
        tuple(run for run in problem.runs if run.cloth == name),
        tuple(pin for pin in problem.pins if cloth_of(pin, homes[pin.name]) == name),
        tuple(flaw for flaw in problem.flaws if flaw.cloth == name),
        tuple(motif for motif in problem.motifs if homes[motif.name].cloth == name),
        problem.stages,
    )


def least_shared(problem: LayProblem, lay: Lay) -> dict[str, Inches]:
    """A length that no lay goes below, for each cloth that a shared run may draw on.

    `lay` is some lay of the problem. The bound is that of the cloth without the
    shared runs; and if none of the other cloths may be bought, that of one cloth
    with everything, on which all that is on hand lies too.
    """
    names = {name for run in problem.runs if is_shared(run) for name in run.sources}
    used = {cloth.name: cloth.used_along for cloth in lay.cloths}
    cloths = [cloth for cloth in problem.cloths if cloth.name in names]
    runs = tuple(run for run in problem.runs if names & set(run.sources))
    bounds: dict[str, Inches] = {}
    for cloth in cloths:
        own = tuple(piece for piece in problem.pieces if piece.cloth == cloth.name)
        apart = tuple(run for run in runs if run.sources == (cloth.name,))
        least = _least(cloth, own, apart, used[cloth.name])
        bounds[cloth.name] = max(least, ask_of(problem, cloth).reached)
        if not any(other.buy_more for other in cloths if other != cloth):
            every = tuple(piece for piece in problem.pieces if piece.cloth in names)
            hands = tuple(hand for other in cloths for hand in other.on_hand)
            joint = _least(replace(cloth, on_hand=hands), every, runs, used[cloth.name])
            bounds[cloth.name] = max(bounds[cloth.name], joint)
    return bounds


def _least(cloth: Cloth, pieces: tuple[Piece, ...], runs: tuple[Run, ...], used: Inches) -> Inches:
    task = task_of(cloth, pieces, runs, (used,))
    return task.inches(least_along(task, int(used / task.tick)))
