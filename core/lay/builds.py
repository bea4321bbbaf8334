"""Exact search for few pieces: small rectangles are built into larger ones.

A *build* is a rectangle that holds some of the pieces, made of two smaller
builds side by side or one behind the other; every guillotine lay is such a
build. Only so much waste may lie in a lay within a given room; builds with more
are dropped, and of two that hold the same only the smaller is kept. If the
search ends without the build that holds everything, there is no such lay: a
proof (P. Y. Wang, Oper. Res. 31 (1983), doi:10.1287/opre.31.3.573; K. V.
Viswanathan and A. Bagchi, Oper. Res. 41 (1993), doi:10.1287/opre.41.4.768).

Segments of a crosswise run lie behind any build, as wide as it is, and beside
those that are as long as the strip is wide. Not every width is tried, so with
runs the search finds lays but proves nothing.
"""

from __future__ import annotations

from bisect import bisect_left, insort
from collections.abc import Callable
from heapq import heappop, heappush
from typing import NamedTuple

from core.lay.build import Build, lay_out, lay_rows, row_alone, serves, sides_of, unfilled
from core.lay.ticks import Laid, Task

# How much size counts against waste when the next build is chosen.
GREED = 0.1
MOST_RUNS = 2
# Sizes with so fine a common measure would make its tables too long.
MOST_TICKS = 100_000


class Verdict(NamedTuple):
    """What the search within a room came to: a lay, or a proof, or neither."""

    laid: tuple[Laid, ...] | None
    impossible: bool


def can_build(task: Task) -> bool:
    """Whether this search knows the task's kind: the bolt alone, and few simple runs."""
    simple = all(s.crosswise and not s.lengthwise and s.copies == 1 for s in task.strips)
    # A run that one segment suffices for, but shorter than may be joined, needs more care.
    few = simple and len(task.strips) <= MOST_RUNS
    few = few and all(s.needs >= s.joined for s in task.strips)
    return few and not task.boards and bool(task.sizes) and task.cloth.buy_more


def within(task: Task, room: int, effort: int, stop: Callable[[], bool]) -> Verdict:
    """Search for a lay within `room`, joining two builds at most `effort` times."""
    rows = {item: shape for item in range(len(task.sizes)) if (shape := row_alone(task, item))}
    room -= sum(along * task.sizes[item].copies for item, (_, along) in rows.items())
    area = sum(
        size.across * size.along * size.copies
        for item, size in enumerate(task.sizes)
        if item not in rows
    )
    area += sum(strip.strip * max(0, strip.demand) for strip in task.strips)
    if max(task.width, room) > MOST_TICKS:
        return Verdict(None, impossible=False)
    if task.width * room < area:
        return Verdict(None, impossible=True)
    if len(rows) == len(task.sizes) and not task.strips:
        return Verdict(tuple(lay_rows(task, rows, 0)), impossible=False)
    spare = task.width * room - area
    verdict = _Yard(task, room, spare, effort, stop, frozenset(rows)).search()
    if verdict.laid is None:
        return verdict
    return Verdict((*verdict.laid, *lay_rows(task, rows, room)), impossible=False)


class _Yard:
    """The builds so far, those still to be combined, and the ways to find partners."""

    def __init__(
        self,
        task: Task,
        room: int,
        budget: int,
        effort: int,
        stop: Callable[[], bool],
        rows: frozenset[int],
    ) -> None:
        self.task, self.room, self.budget, self.stop = task, room, budget, stop
        self.effort, self.rows = effort, rows
        self.step = [0] * len(task.sizes)
        self.everything = self.guards = 0
        shift = 0
        for item, size in enumerate(task.sizes):
            if item in rows:
                continue
            self.step[item] = 1 << shift
            self.everything += size.copies << shift
            shift += size.copies.bit_length() + 1
            self.guards += 1 << (shift - 1)
        self.none = (0,) * len(task.strips)
        self.all = tuple(max(0, strip.demand) for strip in task.strips)
        least = min((strip.least for strip in task.strips), default=task.width + 1)
        sides = [(across, copies) for across, _, copies in sides_of(task)]
        self.lost_across = unfilled(task.width, sides, least)
        sides = [(along, copies) for _, along, copies in sides_of(task)]
        sides += [(strip.strip, room) for strip in task.strips]
        self.lost_along = unfilled(room, sides, room + 1)
        self.kept: dict[int, list[Build]] = {}
        self.by_along: list[tuple[int, int, Build]] = []
        self.by_across: list[tuple[int, int, Build]] = []
        self.waiting: list[tuple[float, int, Build]] = []
        self.made = self.offered = 0

    def search(self) -> Verdict:
        for item, size in enumerate(self.task.sizes):
            for across, along in size.shapes if item not in self.rows else ():
                turned = across != size.across
                self._offer(
                    Build(across, along, self.step[item], 0, False, (), item, turned, self.none)
                )
        widths = {across for across, _, _ in sides_of(self.task)}
        for across in sorted(widths | {self.task.width - width for width in widths | {0}}):
            for run in range(len(self.all)):
                self._offer_segment(run, across)
        while self.waiting:
            build = heappop(self.waiting)[2]
            if self._whole(build):
                return Verdict(tuple(lay_out(build, 0, 0, self.task.bolt)), impossible=False)
            if self.effort < 0 or self.stop():
                return Verdict(None, impossible=False)
            if not any(build is kept for kept in self.kept[build.held]):
                continue
            insort(self.by_along, (build.along, self.made, build))
            insort(self.by_across, (build.across, self.made, build))
            self.made += 1
            self._combine(build)
            for run in range(len(self.all)):
                self._lengthen(build, run)
        return Verdict(None, impossible=not self.all)

    def _joins_to_come(self, build: Build) -> int:
        """What the segments that are still needed will lose at least."""
        return sum(
            strip.strip * strip.loss * -(-(most - gained) // max(1, self.task.width - strip.loss))
            for strip, most, gained in zip(self.task.strips, self.all, build.gained, strict=True)
        )

    def _whole(self, build: Build) -> bool:
        return build.held == self.everything and build.gained == self.all

    def _segment(self, run: int, across: int) -> Build | None:
        """One segment of a run as a build; None if it is no use."""
        strip = self.task.strips[run]
        if across < strip.least or across > self.task.width:
            return None
        gained = min(across - strip.loss, self.all[run])
        waste = strip.strip * (across - gained)
        each = tuple(gained if run == place else 0 for place in range(len(self.all)))
        item = len(self.task.sizes) + run
        return Build(across, strip.strip, 0, waste, False, (), item, False, each)

    def _offer_segment(self, run: int, across: int) -> None:
        segment = self._segment(run, across)
        if segment is not None:
            self._offer(segment)

    def _lengthen(self, build: Build, run: int) -> None:
        """Put a segment behind a build, or beside it where it fills the width."""
        strip = self.task.strips[run]
        segment = self._segment(run, build.across)
        if segment is not None and build.along + strip.strip <= self.room:
            self._join(build, segment, beside=False)
        if build.along <= strip.strip:
            segment = self._segment(run, self.task.width - build.across)
            if segment is not None:
                self._join(build, segment, beside=True)

    def _combine(self, one: Build) -> None:
        """Put every partner beside it and behind it."""
        spare = self.budget - one.waste
        low, high = one.along - spare, one.along + spare // one.across
        for along, _, other in self.by_along[bisect_left(self.by_along, (low,)) :]:
            if along > high:
                break
            if one.across + other.across <= self.task.width:
                self._join(one, other, beside=True)
        low, high = one.across - spare, one.across + spare // one.along
        for across, _, other in self.by_across[bisect_left(self.by_across, (low,)) :]:
            if across > high:
                break
            if one.along + other.along <= self.room:
                self._join(one, other, beside=False)

    def _join(self, one: Build, other: Build, *, beside: bool) -> None:
        self.effort -= 1
        held = one.held + other.held
        if (self.everything + self.guards - held) & self.guards != self.guards:
            return
        waste, gained = one.waste + other.waste, self.none
        if one.gained != self.none or other.gained != self.none:
            gained, excess = self._gained(one, other)
            waste += excess
        if beside:
            across, along = one.across + other.across, max(one.along, other.along)
            waste += (along - one.along) * one.across + (along - other.along) * other.across
        else:
            across, along = max(one.across, other.across), one.along + other.along
            waste += (across - one.across) * one.along + (across - other.across) * other.along
        if waste <= self.budget:
            parts = one, other
            self._offer(Build(across, along, held, waste, beside, parts, 0, False, gained))

    def _gained(self, one: Build, other: Build) -> tuple[tuple[int, ...], int]:
        """What two builds gain for each run, and the area that they gain too much."""
        sums = [a + b for a, b in zip(one.gained, other.gained, strict=True)]
        excess = sum(
            strip.strip * max(0, total - most)
            for strip, total, most in zip(self.task.strips, sums, self.all, strict=True)
        )
        return tuple(min(pair) for pair in zip(sums, self.all, strict=True)), excess

    def _offer(self, build: Build) -> None:
        """Keep a build unless it wastes too much or another holds the same on less."""
        across, along, held, waste = build[:4]
        if across > self.task.width or along > self.room:
            return
        lost = self.lost_across[across] * along
        if along < self.room:
            lost = max(lost, self.lost_along[along] * across)
        if self.all:
            lost += self._joins_to_come(build)
        if waste + lost > self.budget and not self._whole(build):
            return
        others = self.kept.setdefault(held, [])
        if any(serves(other, build) for other in others):
            return
        others[:] = [other for other in others if not serves(build, other)]
        others.append(build)
        self.offered += 1
        heappush(self.waiting, (self._rank(build), self.offered, build))

    def _rank(self, build: Build) -> float:
        """Large builds with little waste come first."""
        area = build.across * build.along
        return build.waste / area - GREED * area / (self.task.width * self.room)
