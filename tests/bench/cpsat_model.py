"""The lay problem of one cloth as a constraint model for OR-Tools CP-SAT.

The model knows no edge-to-edge rule, so its least may be less than any lay that
can be cut. The pieces on hand lie beside the bolt, in columns of their own, so
that one `no_overlap_2d` holds for all. Redundant for the search's sake: the area,
a cumulative along the cloth, and an order among equal things. A run may have up
to `SPARE` segments more than the fewest that could do.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import ceil, gcd, lcm
from typing import Any

from core.fabric import Grain
from core.lay.problem import LayProblem, Piece, Run
from core.lengths import Inches

# The package's own types are not asked for: it may be absent.
Package = Any
Expression = Any  # a variable, a number or a sum of them

SPARE = 6  # segments of a run beyond the fewest
PARTS = 4  # where segments lie along the cloth, lengths are chosen in so many parts of a tick


@dataclass(frozen=True, slots=True)
class Thing:
    """The variables of one rectangle; `there` is a literal, or None for what always is."""

    x: Expression
    y: Expression
    across: Expression
    along: Expression
    there: Expression
    area: Expression


class Model:
    """The CP-SAT model of a problem with one cloth, of which more may be bought."""

    def __init__(self, cp: Package, problem: LayProblem, below: Inches | None = None) -> None:
        """`below`: ask only for lays that buy less than so much."""
        [self.cloth] = problem.cloths
        self.cp, self.model = cp, cp.CpModel()
        self.tick = _tick(problem)
        self.width = self.ticks(self.cloth.usable_width)
        self.columns = self._columns()
        self.plenty = _plenty(problem, self.tick)
        self.used = self.model.new_int_var(0, self.plenty, "used")
        self.units = self._units(below)
        self.things: list[Thing] = []
        for piece in problem.pieces:
            self._pieces(piece)
        for run in problem.runs:
            for _ in range(run.count):
                self._run(run)
        self._apart()
        self.model.minimize(self.units)

    def ticks(self, length: Inches) -> int:
        return int(length / self.tick)

    def _columns(self) -> list[tuple[int, int, int]]:
        """Where each piece on hand lies: x, across, along."""
        columns, x = [], self.width
        for hand in self.cloth.on_hand:
            for _ in range(hand.count):
                columns.append((x, self.ticks(hand.across), self.ticks(hand.along)))
                x += self.ticks(hand.across)
        return columns

    def _units(self, below: Inches | None) -> Expression:
        """Sale units bought: enough for `used` once straightened and washed; none for none."""
        cloth = self.cloth
        most = ceil(cloth.bought(self.plenty * self.tick) / cloth.sale_unit)
        if below is not None:
            most = min(most, int(below / cloth.sale_unit) - 1)
        units = self.model.new_int_var(0, most, "units")
        a = cloth.sale_unit
        b = self.tick / (1 - cloth.shrinkage_along)
        c = cloth.straightening
        scale = lcm(a.denominator, b.denominator, c.denominator)
        any_used = self.model.new_bool_var("any used")
        self.model.add(self.used == 0).only_enforce_if(any_used.Not())
        self.model.add(
            units * int(a * scale) >= self.used * int(b * scale) + int(c * scale)
        ).only_enforce_if(any_used)
        return units

    def _pieces(self, piece: Piece) -> None:
        across, along = self.ticks(piece.across), self.ticks(piece.along)
        last: Thing | None = None
        for _ in range(piece.count):
            sides: tuple[Expression, Expression] = (across, along)
            if piece.may_turn and across != along:
                either = self.cp.Domain.from_values([across, along])
                side = self.model.new_int_var_from_domain(either, "across")
                sides = (side, across + along - side)
            thing = self._thing(*sides, None, across * along)
            if last is not None:
                self.model.add(last.y <= thing.y)
            last = thing

    def _run(self, run: Run) -> None:
        """Segments that are there in order, the longest first, and reach what is needed."""
        model = self.model
        strip, loss = self.ticks(run.strip), self.ticks(run.join_loss)
        needs, shortest = self.ticks(run.needs), self.ticks(run.shortest)
        longest = needs if run.grain is not Grain.CROSSWISE else min(needs, self._widest())
        most = _most_segments(needs, loss, max(shortest, loss + 1), longest)
        there = [model.new_bool_var("there") for _ in range(most)]
        lengths = [model.new_int_var(0, longest, "length") for _ in range(most)]
        model.add(there[0] == 1)
        for one, length in zip(there, lengths, strict=True):
            model.add(length == 0).only_enforce_if(one.Not())
            model.add(length >= 1).only_enforce_if(one)
            if most > 1:
                model.add(length >= shortest).only_enforce_if(one, there[1])
        for index in range(most - 1):
            model.add_implication(there[index + 1], there[index])
            model.add(lengths[index] >= lengths[index + 1])
        model.add(sum(lengths) - loss * sum(there) >= needs - loss)
        for one, length in zip(there, lengths, strict=True):
            self._segment(run.grain, strip, length, one, longest)

    def _segment(
        self, grain: Grain, strip: int, length: Expression, there: Expression, longest: int
    ) -> None:
        sides: tuple[Expression, Expression] = (length, strip)
        if grain is Grain.LENGTHWISE:
            sides = (strip, length)
        elif grain is Grain.EITHER:
            turned = self.model.new_bool_var("turned")
            high = max(strip, longest)
            sides = tuple(self.model.new_int_var(0, high, "side") for _ in range(2))
            for literal, (one, other) in ((turned, sides[::-1]), (turned.Not(), sides)):
                self.model.add(one == length).only_enforce_if(literal)
                self.model.add(other == strip).only_enforce_if(literal)
        self._thing(*sides, there, strip * length)

    def _thing(
        self, across: Expression, along: Expression, there: Expression, area: Expression
    ) -> Thing:
        """A rectangle on the bolt or on one of the pieces on hand."""
        model = self.model
        known = [] if there is None else [there]
        full = self.width + sum(width for _, width, _ in self.columns)
        x = model.new_int_var(0, full, "x")
        y = model.new_int_var(0, self.plenty, "y")
        if self.columns:
            on = [model.new_bool_var("on") for _ in range(len(self.columns) + 1)]
            model.add_exactly_one(on)
            self._on_bolt(x, y, across, along, [on[0], *known])
            for literal, (left, width, end) in zip(on[1:], self.columns, strict=True):
                model.add(x >= left).only_enforce_if(literal, *known)
                model.add(x + across <= left + width).only_enforce_if(literal, *known)
                model.add(y + along <= end).only_enforce_if(literal, *known)
        else:
            self._on_bolt(x, y, across, along, known)
        thing = Thing(x, y, across, along, there, area)
        self.things.append(thing)
        return thing

    def _on_bolt(
        self,
        x: Expression,
        y: Expression,
        across: Expression,
        along: Expression,
        literals: list[Expression],
    ) -> None:
        for demand in (x + across <= self.width, y + along <= self.used):
            constraint = self.model.add(demand)
            if literals:
                constraint.only_enforce_if(*literals)

    def _apart(self) -> None:
        model = self.model
        across, along = [], []
        full = self.width + sum(width for _, width, _ in self.columns)
        for one in self.things:
            right = model.new_int_var(0, full, "right")
            end = model.new_int_var(0, self.plenty, "end")
            across.append(self._interval(one.x, one.across, right, one.there))
            along.append(self._interval(one.y, one.along, end, one.there))
        model.add_no_overlap_2d(across, along)
        if not self.columns:
            model.add_cumulative(along, [one.across for one in self.things], self.width)
        on_hand = sum(width * end for _, width, end in self.columns)
        area = sum(one.area for one in self.things)
        model.add(area <= self.width * self.used + on_hand)

    def _interval(
        self, start: Expression, size: Expression, end: Expression, there: Expression
    ) -> Expression:
        if there is None:
            return self.model.new_interval_var(start, size, end, "side")
        return self.model.new_optional_interval_var(start, size, end, there, "side")

    def _widest(self) -> int:
        return max([self.width, *(width for _, width, _ in self.columns)])


def _most_segments(needs: int, loss: int, shortest: int, longest: int) -> int:
    fewest = max(1, -(-(needs - loss) // max(1, longest - loss)))
    return min(fewest + SPARE, max(fewest, 1 + (needs - shortest) // max(1, shortest - loss) + 1))


def _tick(problem: LayProblem) -> Inches:
    """The greatest length of which every size is a whole multiple, or a part of it."""
    [cloth] = problem.cloths
    lengths = [cloth.usable_width]
    lengths += [side for hand in cloth.on_hand for side in (hand.across, hand.along)]
    lengths += [side for piece in problem.pieces for side in (piece.across, piece.along)]
    for run in problem.runs:
        lengths += [run.strip, run.needs, run.join_loss, run.shortest]
    bottom = lcm(*(length.denominator for length in lengths))
    top = gcd(*(int(length * bottom) for length in lengths))
    free = any(run.grain is not Grain.CROSSWISE for run in problem.runs)
    return Fraction(top, bottom * (PARTS if free else 1))


def _plenty(problem: LayProblem, tick: Inches) -> int:
    """A length that holds everything, one after the other, whatever the cloth's width."""
    [cloth] = problem.cloths
    total = sum((p.count * max(p.across, p.along) for p in problem.pieces), Fraction(0))
    for run in problem.runs:
        rows = ceil(run.needs / max(tick, cloth.usable_width - run.join_loss)) + 2
        longest = run.needs if run.grain is not Grain.CROSSWISE else Fraction(0)
        total += run.count * max(run.strip * rows, longest)
    return int(total / tick) + 1
