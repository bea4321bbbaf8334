"""The least length by trying everything, for problems tiny enough.

Slow and simple on purpose: it shares nothing with the search. A set of things
can be cut from the boxes found by putting two smaller such boxes beside or
behind each other; every guillotine lay is built so.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from functools import cache
from itertools import combinations_with_replacement, product

from core.fabric import Grain
from core.lay.problem import LayProblem, Run

Shape = tuple[Fraction, Fraction]


def least_along(problem: LayProblem) -> Fraction:
    """The least length of bolt, with segments in whole inches; the cloth has nothing on hand."""
    [cloth] = problem.cloths
    pieces = [
        ((piece.across, piece.along), piece.may_turn)
        for piece in problem.pieces
        for _ in range(piece.count)
    ]
    copies = [run for run in problem.runs for _ in range(run.count)]
    ways = [list(_segmentings(run, int(cloth.usable_width))) for run in copies]
    found = []
    for chosen in product(*ways):
        things = pieces + [(shape, False) for shapes in chosen for shape in shapes]
        found.append(_least(things, cloth.usable_width))
    return min(along for along in found if along is not None)


def _segmentings(run: Run, width: int) -> Iterator[tuple[Shape, ...]]:
    """The ways to make a run of at most three segments, none longer than it need be."""
    longest = width if run.grain is Grain.CROSSWISE else max(width, int(run.needs))
    for joined in (1, 2, 3):
        least = 1 if joined == 1 else max(1, int(run.shortest))
        for lengths in combinations_with_replacement(range(least, longest + 1), joined):
            reach = sum(lengths) - (joined - 1) * run.join_loss
            if reach < run.needs or (reach >= run.needs + 1 and lengths[-1] > least):
                continue
            lying = (False, True) if run.grain is Grain.EITHER else (run.grain is Grain.LENGTHWISE,)
            for turned in product(lying, repeat=joined):
                yield tuple(
                    (run.strip, Fraction(length)) if along else (Fraction(length), run.strip)
                    for length, along in zip(lengths, turned, strict=True)
                )


def _least(things: list[tuple[Shape, bool]], width: Fraction) -> Fraction | None:
    """The least length of a box no wider than `width` that holds all things."""

    @cache
    def boxes(subset: int) -> frozenset[Shape]:
        members = [i for i in range(len(things)) if subset >> i & 1]
        if len(members) == 1:
            (across, along), may_turn = things[members[0]]
            shapes = {(across, along)} | ({(along, across)} if may_turn else set())
        else:
            shapes = set()
            part = (subset - 1) & subset
            while part:
                for one in boxes(part):
                    for other in boxes(subset ^ part):
                        shapes.add((one[0] + other[0], max(one[1], other[1])))
                        shapes.add((max(one[0], other[0]), one[1] + other[1]))
                part = (part - 1) & subset
        return frozenset(_best(shape for shape in shapes if shape[0] <= width))

    return min((along for _, along in boxes((1 << len(things)) - 1)), default=None)


def _best(shapes: Iterator[Shape]) -> Iterator[Shape]:
    """Only shapes that no other betters in both directions."""
    shortest: Fraction | None = None
    for across, along in sorted(shapes):
        if shortest is None or along < shortest:
            shortest = along
            yield across, along
