"""The search for the least: many first lays, each asked to beat the best so far.

Orders and rules are varied at random from a seed; the room given to each try is
what would buy a sale unit less, or use less, or all that is bought, with fewer
joins, so that most tries fail early and cost little. It ends at the stop, or
when the bound shows that nothing less can do.

Fewer joins count before a shorter lay: the cloth is paid for, and every join is
work and a lump.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from functools import partial
from math import ceil
from random import Random
from typing import NamedTuple

from core.lay.bound import above, least_along, raised
from core.lay.builds import can_build, within
from core.lay.plain import plain_lay, stages_of
from core.lay.pursue import Pursuit
from core.lay.rows import can_fill_rows, fewer_rows, fill_rows, one_dimensional
from core.lay.start import Packing, Rules, pack
from core.lay.stop import Stop
from core.lay.ticks import Laid, Task
from core.lay.tidy import bolt_tree, tidied
from core.lay.tries import Order, Way, tries
from core.lengths import Inches

Score = tuple[int, Inches, int, int, int, int, int]
# Once nothing less can be bought, so many more tries without success are the last.
PATIENCE = 40
# Of lays that cost the same, so many are looked at for their cuts and offcuts.
MOST_TIES = 12
# Where something to be bought has found no room, so many tries are made whatever the limit.
MOST_OWED = 60
# After so many tries, and four times as many, and so on, it is worth trying to prove the lay.
EARLY = 8
# The best prices are worth their time after so many tries, with many sizes after more.
READY, FEW_SIZES, LATE = 30, 12, 128
# Every so many tries one fills rows by subset sums.
BY_ROWS = 4
# Changes to the best lay after each try: few at first, more with time; three times
# as many where there are no runs, which the other tries serve better.
FEWEST_CHANGES, MOST_CHANGES, CHANGES_GROW = 10, 200, 16
# Joins of builds for each try that was made.
EFFORT = 500
# Rows that are completed, of pieces of one length, at a time.
MOST_COMPLETED = 60_000


class Found(NamedTuple):
    """The best lay, and the bound (ticks) that it was held against."""

    packing: Packing
    bound: Fraction


def score(task: Task, packing: Packing) -> Score:
    """What counts, in this order: see `_cost`, the cuts, their settings, one large offcut."""
    tree = bolt_tree(task, packing.laid, packing.used)
    return (
        *_cost(task, packing),
        tree.cuts,
        len(tree.settings()),
        -int(tree.largest_waste),
    )


def _cost(task: Task, packing: Packing) -> tuple[int, Inches, int, int]:
    """Room missing, inches bought, joins, ticks used."""
    missing = sum(task.area(item) * count for item, count in packing.missing)
    return missing, task.bought(packing.used), joins(task, packing), packing.used


def joins(task: Task, packing: Packing) -> int:
    segments = [(laid.item, laid.run_copy) for laid in packing.laid if laid.run_copy]
    return len(segments) - len(set(segments))


def improve(
    task: Task,
    stop: Stop,
    rng: Random,
    on_better: Callable[[Found], None] | None = None,
) -> Found:
    """The best lay found for one cloth until `stop`; always at least one is tried."""
    search = _Search(task, rng, on_better)
    milestone, flat = search.early, search.flat
    if task.stages is not None:
        search.consider(plain_lay(task))
    for number, (order, rules) in enumerate(tries(task, rng, lambda: search.way)):
        if number and (search.finished or (stop.reached(number) and not search.owing(number))):
            break
        search.attempt(order, rules, rng)
        if flat or (number % BY_ROWS == 1 and can_fill_rows(task)):
            search.consider(fill_rows(task, rng))
        if number >= EARLY and not flat and not search.finished:
            changes = min(MOST_CHANGES, FEWEST_CHANGES + number // CHANGES_GROW)
            search.renew(changes if task.strips else 3 * changes)
        search.set_bound(number)
        if number == milestone:
            search.prove(number, partial(stop.reached, number))
            milestone *= 4
    search.set_bound(search.next_bound)
    return search.found()


class _Search:
    """The best so far and what is known about it."""

    def __init__(self, task: Task, rng: Random, on_better: Callable[[Found], None] | None) -> None:
        self.task, self.on_better = task, on_better
        self.best: Packing | None = None
        self.untidied: Packing | None = None
        self.best_score: Score | None = None
        self.bound = Fraction(0)
        self.fewest_joins = _fewest_joins(task)
        # With many sizes, bounds and proofs take longer than many tries.
        self.early = EARLY if len(task.sizes) <= FEW_SIZES else LATE
        self.flat = one_dimensional(task)
        self.unbound, self.next_bound = False, 0 if self.early == EARLY else READY
        self.raised_for: int | None = None
        self.fruitless = self.ties = 0
        self.way: Way | None = None
        self.pursuit = Pursuit(task, rng)

    def found(self) -> Found:
        return Found(self.best or Packing((), 0, ()), self.bound)

    def owing(self, tried: int) -> bool:
        """Whether cloth may be bought and yet something has found no room: few stages are hard."""
        return self.task.cloth.buy_more and not self.complete and tried < MOST_OWED

    @property
    def complete(self) -> bool:
        return self.best is not None and not self.best.missing

    @property
    def finished(self) -> bool:
        """Whether nothing is left to gain, or what is left is not worth the time."""
        return self.complete and self.proved and self.fruitless >= self._patience

    @property
    def _patience(self) -> int:
        """How many tries in vain are the last; more where a join might still be saved."""
        more = self.best_score is not None and self.best_score[2] > self.fewest_joins
        return PATIENCE * (1 + 2 * more)

    @property
    def proved(self) -> bool:
        return self.best is not None and self.task.bought(self.bound) == self.task.bought(
            self.best.used
        )

    def prove(self, tried: int, stop: Callable[[], bool]) -> None:
        """Raise the bound, or find the lay that buys less, by more thorough means."""
        if not self.complete or self.best is None or self.proved:
            return
        ready = tried >= (READY if self.early == EARLY else 16 * LATE)
        if ready and self.best.used != self.raised_for:
            self.raised_for = self.best.used
            self._raise(raised(self.task, self.bound, self.best.used))
        effort = EFFORT * tried
        if self.flat:
            most = min(effort, MOST_COMPLETED)
            if fewer := fewer_rows(self.task, self.best.used, most, stop):
                self._take(fewer)
        while can_build(self.task) and not self.proved:
            room = min(self.task.room_in(self.task.bought(self.bound)), self.best.used - 1)
            verdict = within(self.task, room, effort, stop)
            if verdict.laid is not None:
                self._take(Packing(verdict.laid, room, ()))
                return
            if not verdict.impossible:
                return
            self._raise(above(self.task, room, self.best.used))

    def attempt(self, order: Order, rules: Rules, rng: Random) -> None:
        self.fruitless += 1
        room = self._room(rules, rng)
        packing = pack(self.task, order, rules, room, partial=not self.complete)
        if packing is not None and self.consider(packing):
            self.way = order, rules

    def renew(self, changes: int) -> None:
        """Make so many changes to the best lay, to buy less or to use less."""
        best, used = self.untidied, self.best.used if self.best else 0
        if best is None or not self.complete or self.proved or used <= 1:
            return
        if self.task.start:  # one of many ways round what has its place: not worth its time
            return
        packing = self.pursuit.follow(best, used, self.bound, changes)
        if packing is not None:
            self.consider(packing)

    def consider(self, packing: Packing) -> bool:
        """Take a packing that costs no more than the best; whether it does not."""
        cost = _cost(self.task, packing)
        if self.best_score is not None and cost > self.best_score[:4]:
            return False
        self.ties = self.ties + 1 if self.best_score and cost == self.best_score[:4] else 0
        if self.ties <= MOST_TIES:
            self._take(packing)
        return True

    def _take(self, packing: Packing) -> None:
        """Tidy a packing and keep it if it is better."""
        used = _used(self.task, packing.laid)
        laid = tidied(self.task, packing.laid, used)
        tidy = packing._replace(laid=laid, used=_used(self.task, laid))
        if self.task.stages is not None and stages_of(self.task, tidy) > self.task.stages:
            return
        new = score(self.task, tidy)
        if self.best_score is None or new[:4] < self.best_score[:4]:
            # What tidying adds depends on inches, and the search must not.
            self.untidied = packing._replace(used=used)
        if self.best_score is None or new < self.best_score:
            self._keep(tidy, new)

    def _keep(self, packing: Packing, new: Score) -> None:
        bought = self.best_score[1] if self.best_score and self.complete else None
        if self.best_score is None or new[:4] < self.best_score[:4]:
            self.fruitless = 0
        self.best, self.best_score = packing, new
        self._report()
        # Behind what is bought anyway a bound would be one of this place only.
        if not packing.missing and self.best_score[1] != bought and not self.task.start:
            self.unbound = True

    def set_bound(self, number: int) -> None:
        """Hold a lay that buys less than the one before against a new bound, not too often."""
        if self.unbound and self.best is not None and number >= self.next_bound:
            self.unbound = False
            self.next_bound = number + min(self.early, number)
            self._raise(least_along(self.task, self.best.used))

    def _raise(self, bound: Fraction) -> None:
        if bound > self.bound:
            self.bound = bound
            self._report()

    def _report(self) -> None:
        if self.on_better is not None:
            self.on_better(self.found())

    def _room(self, rules: Rules, rng: Random) -> int:
        """The bolt that the next try may use."""
        if not self.task.cloth.buy_more:
            return 0
        if self.best is None or self.best_score is None or self.best.missing or rules.plenty:
            return self.task.plenty
        used, bought = self.best.used, self.best_score[1]
        least = ceil(self.bound)
        less = self.task.room_in(bought - self.task.cloth.sale_unit)
        if less >= least and rng.random() < 0.5:
            return less
        if self.best_score[2] > self.fewest_joins and rng.random() < 0.5:
            return self.task.room_in(bought)
        if rules.bolt_last:
            return max(least, used - rng.randrange(2))
        return rng.randint(least, max(least, used - 1))


def _used(task: Task, laid: tuple[Laid, ...]) -> int:
    return max((one.y + one.along for one in laid if one.board == task.bolt), default=0)


def _fewest_joins(task: Task) -> int:
    """No lay of the runs has fewer joins, on sheets of this width."""
    total = 0
    for strip in task.strips:
        longest = max([task.width, *(board.across for board in task.boards)])
        if not strip.lengthwise and longest > strip.loss:
            joins = -(-strip.demand // (longest - strip.loss)) - 1
            total += strip.copies * max(0, joins)
    return total
