"""The search for the least: many first lays, each asked to beat the best so far.

Orders and rules are varied at random from a seed; the room given to each try is
what would buy a sale unit less, or use less, or all that is bought, with fewer
joins, so that most tries fail early and cost little. It ends at the stop, or
when the bound shows that nothing less can do.

Fewer joins count before a shorter lay: the cloth is paid for, and every join is
work and a lump.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from fractions import Fraction
from math import ceil
from random import Random
from typing import NamedTuple

from core.lay.bound import least_along, raised
from core.lay.start import FITS, SPLITS, Packing, Rules, pack
from core.lay.stop import Stop
from core.lay.ticks import Laid, Task
from core.lay.tidy import bolt_tree, tidied
from core.lengths import Inches

Order = tuple[int, ...]
Score = tuple[int, Inches, int, int, int, int]
# Once nothing less can be bought, so many more tries without success are the last.
PATIENCE = 40
# After so many tries the lay is good enough to be worth a better bound.
EARLY = 40


class Found(NamedTuple):
    """The best lay, and the bound (ticks) that it was held against."""

    packing: Packing
    bound: Fraction


def score(task: Task, packing: Packing) -> Score:
    """What counts, in this order: see `_cost`, then the cuts and one large offcut."""
    tree = bolt_tree(task, packing.laid, packing.used)
    return *_cost(task, packing), tree.cuts, -int(tree.largest_waste)


def _cost(task: Task, packing: Packing) -> tuple[int, Inches, int, int]:
    """Room missing, inches bought, joins, ticks used."""
    missing = sum(_area(task, item) * count for item, count in packing.missing)
    return missing, task.bought(packing.used), joins(task, packing), packing.used


def joins(task: Task, packing: Packing) -> int:
    segments = [(laid.item, laid.run_copy) for laid in packing.laid if laid.run_copy]
    return len(segments) - len(set(segments))


def improve(
    task: Task, stop: Stop, rng: Random, on_better: Callable[[Found], None] | None = None
) -> Found:
    """The best lay found for one cloth until `stop`; always at least one is tried."""
    search = _Search(task, on_better)
    for number, (order, rules) in enumerate(_tries(task, rng)):
        if number and (stop.reached(number) or search.finished):
            break
        search.attempt(order, rules, rng)
        if number == EARLY:
            search.raise_bound()
    return search.found()


class _Search:
    """The best so far and what is known about it."""

    def __init__(self, task: Task, on_better: Callable[[Found], None] | None) -> None:
        self.task, self.on_better = task, on_better
        self.best: Packing | None = None
        self.best_score: Score | None = None
        self.bound = Fraction(0)
        self.fewest_joins = _fewest_joins(task)
        self.fruitless = 0

    def found(self) -> Found:
        return Found(self.best or Packing((), 0, ()), self.bound)

    @property
    def complete(self) -> bool:
        return self.best is not None and not self.best.missing

    @property
    def finished(self) -> bool:
        """Whether nothing is left to gain, or what is left is not worth the time."""
        if not self.complete or self.best is None or self.best_score is None:
            return False
        proved = self.task.bought(self.bound) == self.best_score[1]
        return proved and self.fruitless >= PATIENCE

    @property
    def proved(self) -> bool:
        return self.best is not None and self.task.bought(self.bound) == self.task.bought(
            self.best.used
        )

    def raise_bound(self) -> None:
        if self.complete and self.best is not None and not self.proved:
            self.bound = raised(self.task, self.bound, self.best.used)

    def attempt(self, order: Order, rules: Rules, rng: Random) -> None:
        self.fruitless += 1
        packing = pack(self.task, order, rules, self._room(rules, rng), partial=not self.complete)
        if packing is None:
            return
        if self.best_score is not None and _cost(self.task, packing) > self.best_score[:4]:
            return
        laid = tidied(self.task, packing.laid, packing.used)
        packing = packing._replace(laid=laid, used=_used(self.task, laid))
        new = score(self.task, packing)
        if self.best_score is None or new < self.best_score:
            self._keep(packing, new)

    def _keep(self, packing: Packing, new: Score) -> None:
        bought = self.best_score[1] if self.best_score and self.complete else None
        if self.best_score is None or new[:4] < self.best_score[:4]:
            self.fruitless = 0
        self.best, self.best_score = packing, new
        if not packing.missing and self.best_score[1] != bought:
            self.bound = max(self.bound, least_along(self.task, packing.used))
        if self.on_better is not None:
            self.on_better(self.found())

    def _room(self, rules: Rules, rng: Random) -> int:
        """The bolt that the next try may use."""
        if not self.task.cloth.buy_more:
            return 0
        if self.best is None or self.best_score is None or self.best.missing:
            return self.task.plenty
        used, bought = self.best.used, self.best_score[1]
        least = ceil(self.bound)
        less = self.task.room_in(bought - self.task.cloth.sale_unit)
        if less >= least and rng.random() < 0.5:
            return less
        if self.best_score[2] > self.fewest_joins and rng.random() < 0.5:
            return self.task.room_in(bought)
        if rules.bolt_last:
            return max(least, used - 1)
        return rng.randint(least, max(least, used - 1))


def _tries(task: Task, rng: Random) -> Iterator[tuple[Order, Rules]]:
    """First the orders and rules that usually serve, then others without end."""
    orders = list(dict.fromkeys(_orders(task)))
    for rules in (
        Rules(),
        Rules(thrifty=False),
        Rules(widest=False),
        Rules(thrifty=False, hand_first=False),
        Rules(split=0, fit=2),
        Rules(split=2, fit=1, block=1),
        Rules(bolt_last=False),
        Rules(bolt_last=False, split=4, block=2, fit=3),
    ):
        for order in orders:
            yield order, rules
    while True:
        order = orders[rng.randrange(len(orders))]
        yield _shuffled(order, rng), _any_rules(rng)


def _any_rules(rng: Random) -> Rules:
    return Rules(
        rng.randrange(len(FITS)),
        rng.randrange(len(SPLITS)),
        rng.randrange(4),
        rng.random() < 0.5,
        rng.random() < 0.6,
        rng.random() < 0.6,
        rng.random() < 0.7,
    )


def _shuffled(order: Order, rng: Random) -> Order:
    """The order with each item moved a little."""
    spread = rng.choice((0.5, 1.5, 4.0, 12.0))
    moved = [(place + rng.uniform(-spread, spread), item) for place, item in enumerate(order)]
    return tuple(item for _, item in sorted(moved))


def _orders(task: Task) -> Iterator[Order]:
    """Pieces by area, length, width and girth; runs after them, before them or among them."""
    sizes = range(len(task.sizes))
    runs = tuple(
        len(task.sizes) + place
        for place, strip in enumerate(task.strips)
        for _ in range(strip.copies)
    )
    boxes = [size[:2] for size in task.sizes] + [(task.width, s.strip) for s in task.strips]
    for key in (
        lambda item: -boxes[item][0] * boxes[item][1],
        lambda item: (-boxes[item][1], -boxes[item][0]),
        lambda item: (-boxes[item][0], -boxes[item][1]),
        lambda item: -max(boxes[item]),
        lambda item: -sum(boxes[item]),
    ):
        pieces = tuple(sorted(sizes, key=key))
        yield pieces + runs
        if runs and sizes:
            yield runs + pieces
            yield tuple(sorted((*sizes, *runs), key=key))
        if len(runs) > 1:
            yield pieces + runs[::-1]


def _area(task: Task, item: int) -> int:
    if item < len(task.sizes):
        return task.sizes[item].across * task.sizes[item].along
    strip = task.strips[item - len(task.sizes)]
    return strip.strip * strip.needs


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
