"""The search round pins, motifs and flaws.

Each sheet with something in its place is cut into the free rectangles round it
(`core.lay.partition`), and these become boards for the ordinary search: on the
bolt as many as lie within the length that is tried, so that using them costs
nothing more. Behind all that has its place the bolt goes on; lengths that buy
less are tried too.

A bound of the lay without pins, motifs and flaws holds with them. Where it
reaches past a flaw, the flaw counts as one more thing that takes its room.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace
from fractions import Fraction
from itertools import islice
from math import ceil
from random import Random

from core.lay.ask import Ask
from core.lay.bound import least_along
from core.lay.improve import improve
from core.lay.lay import BOLT, Rect
from core.lay.names import Result, things
from core.lay.partition import overlap
from core.lay.places import Arrangement, Placed, box_of, end_of, meet, trees
from core.lay.problem import Cloth, Piece
from core.lay.shuffle import shuffles
from core.lay.slabs import Box
from core.lay.stop import Stop
from core.lay.ticks import Board, Task, task_of
from core.lengths import Inches

# Each way to cut round what has its place gets this part of the iterations, and no more;
# together they may take so many times the iterations.
PART, MOST_ITERATIONS, WHOLE = 12, 200, 4
# So many orders of the slabs are tried to leave the flaws in the waste.
MOST_ORDERS = 200
# So many shorter lengths are tried, once no less can be bought.
SHORTER = 3

Cost = tuple[Inches, Inches, int, Inches, int]


def improve_around(
    ask: Ask,
    stop: Stop,
    seed: int,
    better: Callable[[Result], None],
    known: Inches | None = None,
) -> Result:
    """The best lay found for a cloth on which something has its place, or is spoilt.

    No lay is shorter than `known`, where that is known: then no bound is sought.
    """
    search = _Search(ask, stop, seed, better, max(ask.reached, known or ask.reached))
    last = max([end_of(ask.arrangements[0]), *(flaw.rect.end for flaw in search.on_bolt)])
    result = search.first(last)
    if known is None or not any(ask.arrangements):
        search.without_places()
    search.behind(last)
    search.shorter()
    return search.best or result


class _Search:
    """The best so far, and what is known about it."""

    def __init__(
        self, ask: Ask, stop: Stop, seed: int, better: Callable[[Result], None], bound: Inches
    ) -> None:
        self.ask, self.seed, self.better = ask, seed, better
        self.stop, self.tried = stop, 0
        self.on_bolt = [flaw for flaw in ask.flaws if flaw.sheet.on == BOLT]
        self.best: Result | None = None
        self.cost: Cost | None = None
        self.bound = bound

    def first(self, last: Inches) -> Result:
        """The first lay, always legal: beside and behind what has its place."""
        placed = self.ask.arrangements[0]
        boards = next(self.ask.boards(placed, last, self.seed))
        if self.ask.stages is not None:  # what lies beside a pin may take more stages
            spoilt = {p.sheet for p in placed} | {flaw.sheet for flaw in self.ask.flaws}
            boards = tuple(board for board in boards if board.sheet not in spoilt)
        return self._lay(placed, boards, last, behind=True)

    def behind(self, last: Inches) -> None:
        """Other ways to cut round what has its place; the bolt goes on behind it."""
        for placed in self.ask.arrangements:
            end = max([end_of(placed), last])
            for boards in self.ask.boards(placed, end, self.seed):
                if self.over:
                    return
                self._lay(placed, boards, end, behind=True)

    def without_places(self) -> None:
        """Lay it all as if nothing had its place: for the bound, and where flaws can be avoided."""
        task = self.ask.task()
        found = improve(task, self.stop.part(2), Random(self.seed))
        self._raise(task.inches(found.bound))
        if any(self.ask.arrangements):
            return
        rooms = {found.packing.used, task.room_in(task.bought(found.packing.used))}
        orders = shuffles(task, found.packing.laid, sorted(rooms), Random(self.seed))
        for laid in islice(orders, MOST_ORDERS):
            result = Result(task, found.packing._replace(laid=laid), Fraction(0))
            if not self._spoilt(result):
                self._consider(result)
                return

    def shorter(self) -> None:
        """Lengths of bolt that buy less, and of those that buy the least a few shorter ones."""
        cloth = self.ask.cloth
        if not cloth.buy_more or self.cost is None:
            return
        least, tried = cloth.bought(self.bound), cloth.bought(self.bound)
        while not self.over and least < self.cost[1]:
            if self._within(cloth.available(tried)):
                tried = self.cost[1]
            else:
                least = tried + cloth.sale_unit
            units = (self.cost[1] - least) / cloth.sale_unit
            tried = least + cloth.sale_unit * (units // 2)
        for _ in range(SHORTER):
            if self.over or self.cost[3] <= self.bound:
                return
            self._within((self.bound + self.cost[3]) / 2)

    @property
    def over(self) -> bool:
        """Whether the time is up, or enough ways were tried."""
        return self.stop.reached(self.tried * self._part().iterations // WHOLE)

    def _within(self, room: Inches) -> bool:
        """Whether a lay no longer than `room` is found that is better."""
        for placed in self.ask.arrangements:
            if end_of(placed) > room:
                continue
            for boards in self.ask.boards(placed, room, self.seed):
                before = self.best
                self._lay(placed, boards, room, behind=False)
                if self.best is not before:
                    return True
                if self.over:
                    return False
        return False

    def _lay(
        self, placed: Arrangement, boards: tuple[Board, ...], end: Inches, *, behind: bool
    ) -> Result:
        cloth = self.ask.cloth
        task = self.ask.task(placed)
        task = replace(
            task,
            cloth=replace(cloth, buy_more=cloth.buy_more and behind),
            boards=boards,
            start=int(end // task.tick) if behind else 0,
        )
        found = improve(task, self._part(), Random(self.seed))
        self.tried += 1
        result = Result(task, found.packing, Fraction(0), placed)
        self._consider(result)
        return result

    def _part(self) -> Stop:
        iterations = min(MOST_ITERATIONS, max(1, self.stop.iterations // PART))
        return Stop(iterations, self.stop.deadline)

    def _consider(self, result: Result) -> None:
        cost = _cost(result)
        if self.ask.stages is not None and _stages(result) > self.ask.stages:
            return
        if self.cost is None or cost < self.cost:
            self.best, self.cost = result, cost
            self._report()

    def _report(self) -> None:
        if self.best is not None:
            self.best = self.best._replace(bound=self.bound / self.best.task.tick)
            self.better(self.best)

    def _raise(self, bound: Inches) -> None:
        """Take a bound of the lay without places, and count the flaws before it as things."""
        self.bound = max(self.bound, bound)
        if self.best is not None and self.cost is not None and not self.best.packing.missing:
            spoilt = tuple(_apart(flaw.rect for flaw in self.on_bolt if flaw.rect.end <= bound))
            pieces = (*self.ask.pieces, *_as_pieces(self.ask.cloth, spoilt))
            task = task_of(self.ask.cloth, pieces, self.ask.runs, self.ask.marks())
            known = ceil(self.cost[3] / task.tick)
            self.bound = max(self.bound, task.inches(least_along(task, known)))
        self._report()

    def _spoilt(self, result: Result) -> bool:
        return any(
            meet(one.sheet, one.rect, flaw.sheet, flaw.rect)
            for one in things(result)
            for flaw in self.ask.flaws
        )


def _apart(rects: Iterable[Rect]) -> Iterator[Rect]:
    """Of rectangles that may overlap, some that do not."""
    taken: list[Box] = []
    for rect in rects:
        if not any(overlap(box_of(rect), other) for other in taken):
            taken.append(box_of(rect))
            yield rect


def _as_pieces(cloth: Cloth, rects: Iterable[Rect]) -> Iterator[Piece]:
    for number, rect in enumerate(rects, 1):
        yield Piece(f"flaw {number}", cloth.name, rect.across, rect.along)


def _cost(result: Result) -> Cost:
    """Room missing, inches bought, joins, inches used, cuts."""
    task, packing = result.task, result.packing
    there = list(things(result))
    used = max((one.rect.end for one in there if one.sheet.on == BOLT), default=Fraction(0))
    segments = [(one.name, one.run_copy) for one in there if one.run_copy]
    missing = sum(task.area(item) * count for item, count in packing.missing)
    return (
        missing * task.tick**2,
        task.cloth.bought(used),
        len(segments) - len(set(segments)),
        used,
        _cuts(task, there),
    )


def _cuts(task: Task, there: list[Placed]) -> int:
    """How many cuts free everything, each sheet cut where its last thing ends."""
    end = max((one.rect.end for one in there if one.sheet.on == BOLT), default=Fraction(0))
    return sum(tree.cuts for tree in trees(task.cloth, there, end))


def _stages(result: Result) -> int:
    """In how many stages the sheets, as they are bought, are cut."""
    task, there = result.task, list(things(result))
    end = max((one.rect.end for one in there if one.sheet.on == BOLT), default=Fraction(0))
    bought = task.cloth.available(task.cloth.bought(end))
    return max(
        (tree.stages for tree in trees(task.cloth, there, bought, few_stages=True)), default=0
    )
