"""Perfect cuts: lays with no waste by construction, so that the least is known.

A rectangle as wide as the cloth is cut edge to edge at random, in quarter
inches, into pieces; with a run, some of the cuts take off a strip instead. The
run's strips are as long as they happen to be and lose nothing but the joins.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from random import Random

from core.lay.problem import Cloth, LayProblem, Piece, Run

F = Fraction
UNIT = F(9, 2)
SHORTEST = F(12)
Box = tuple[int, int]  # across, along, in quarters of an inch


def perfect_cuts(count: int, seed: int) -> Iterator[tuple[LayProblem, Fraction]]:
    """`count` problems of 4 to 30 pieces with the least length; every other one has a run."""
    rng = Random(seed)
    for number in range(count):
        yield perfect_cut(rng, 4 + number % 27, with_run=number % 2 == 1)


def perfect_cut(rng: Random, pieces: int, *, with_run: bool) -> tuple[LayProblem, Fraction]:
    across = 4 * 42
    along = 18 * rng.randint(2, 10)  # whole sale units
    strip = rng.choice((8, 10, 12))
    boxes: list[Box] = [(across, along)]
    segments: list[int] = []
    wanted = rng.randint(2, 6) if with_run else 0
    while len(boxes) < pieces:
        box = boxes.pop(max(range(len(boxes)), key=lambda i: boxes[i][0] * boxes[i][1]))
        if len(segments) < wanted and box[0] >= 4 * SHORTEST and box[1] > strip + 8:
            segments.append(box[0])
            boxes.append((box[0], box[1] - strip))
        else:
            boxes += _halves(rng, box)
    cloth = Cloth("cloth", F(across, 4), UNIT)
    laid = tuple(Piece(f"piece {i}", "cloth", F(a, 4), F(b, 4)) for i, (a, b) in enumerate(boxes))
    loss = F(strip, 4)
    needs = F(sum(segments), 4) - (len(segments) - 1) * loss
    run = Run("run", "cloth", F(strip, 4), needs, loss, SHORTEST)
    return LayProblem((cloth,), laid, (run,) if segments else ()), F(along, 4)


def _halves(rng: Random, box: Box) -> tuple[Box, Box]:
    across, along = box
    if across >= along:
        at = rng.randint(across // 4, across - across // 4)
        return (at, along), (across - at, along)
    at = rng.randint(along // 4, along - along // 4)
    return (across, at), (across, along - at)
