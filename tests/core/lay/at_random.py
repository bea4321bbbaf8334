"""Lay problems from a number: small, many-sided, the same every time.

Cloth on hand, bolts, pieces and runs; half of them (a tenth, where a run is of
several cloths) with pins (where a quick lay put something, or moved a little),
flaws and motifs.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from random import Random

from core.fabric import Grain, OnHand
from core.lay.lay import ClothLay, Placement, Rect
from core.lay.problem import Cloth, Flaw, LayProblem, Motif, Piece, Pin, Run
from core.lay.refuse import require_layable
from core.lay.solve import Stop, solve
from core.refusal import Refusal

F = Fraction
NAMES = ("plum", "dots")


def problem_at(number: int) -> LayProblem:
    """The problem with this number; it can always be laid."""
    rng = Random(number)
    cloths = tuple(_cloth(rng, name) for name in NAMES[: rng.choice((1, 1, 2))])
    pieces = [
        piece
        for number in range(rng.randint(0, 4))
        if (piece := _piece(rng, f"piece {number}", rng.choice(cloths)))
    ]
    runs = [_run(rng, f"run {number}", cloths) for number in range(rng.randint(0, 2))]
    stages = rng.choice((None, None, None, 2, 3))
    problem = LayProblem(cloths, tuple(pieces), tuple(runs), stages=stages)
    # A run of several cloths is laid dozens of times, and each time round every place.
    shared = any(len(run.cloths) > 1 for run in runs)
    return _with_places(rng, problem) if rng.random() < (0.1 if shared else 0.5) else problem


def _quarters(rng: Random, low: int, high: int) -> Fraction:
    return F(rng.randint(low * 4, high * 4), 4)


def _cloth(rng: Random, name: str) -> Cloth:
    hands = [
        OnHand(_quarters(rng, 8, 30), _quarters(rng, 8, 40), rng.randint(1, 2))
        for _ in range(rng.choice((0, 0, 1, 2)))
    ]
    return Cloth(
        name,
        rng.choice((F(20), F(83, 2), F(42))),
        rng.choice((F(9, 2), F(9), F(1000, 254))),
        rng.choice((F(0), F(1))),
        rng.choice((F(0), F(3, 100))),
        tuple(hands),
        rng.random() < 0.8,
        rng.choice((None, F(8), F(12))),
    )


def _piece(rng: Random, name: str, cloth: Cloth) -> Piece | None:
    size = _quarters(rng, 1, int(cloth.usable_width)), _quarters(rng, 1, 40)
    return Piece(name, cloth.name, *size, rng.randint(1, 6), rng.random() < 0.5)


def _run(rng: Random, name: str, cloths: tuple[Cloth, ...]) -> Run:
    """A run of one cloth, or of all of them."""
    return Run(
        name,
        rng.choice(cloths).name,
        _quarters(rng, 1, 6),
        _quarters(rng, 5, 150),
        rng.choice((F(1, 2), F(5, 2))),
        rng.choice((F(0), F(8), F(12))),
        rng.choice((Grain.CROSSWISE, Grain.LENGTHWISE, Grain.EITHER)),
        rng.choice((1, 1, 2)),
        rng.choice(((), tuple(cloth.name for cloth in cloths))),
    )


def _with_places(rng: Random, problem: LayProblem) -> LayProblem:
    """The problem with pins, flaws and motifs, as many as can be minded."""
    lay = solve(problem, stop=Stop(2), seed=rng.randrange(5))
    left = {gone.name for gone in lay.unplaced}
    for cloth in lay.cloths:
        for placed in cloth.placements:
            if placed.name not in left and rng.random() < 0.3:
                more = rng.choice((_pinned, _motif))(rng, problem, placed, cloth.name)
                problem = _if_layable(problem, more)
        for flaw in _flaws(rng, cloth):
            problem = _if_layable(problem, replace(problem, flaws=(*problem.flaws, flaw)))
    return problem


def _if_layable(problem: LayProblem, more: LayProblem) -> LayProblem:
    try:
        require_layable(more)
    except Refusal:
        return problem
    return more


def _pinned(rng: Random, problem: LayProblem, placed: Placement, cloth: str) -> LayProblem:
    rect = placed.rect
    pin = Pin(
        placed.name,
        rect.x + rng.choice((0, 0, 0, F(1, 2), 3)),
        rect.y + rng.choice((0, 0, 0, F(1, 2), 5)),
        placed.sheet,
        placed.turned,
    )
    if placed.run_copy is None:
        pin = replace(pin, copy=rng.choice((None, placed.copy)))
    else:
        length = rect.along if placed.turned else rect.across
        pin = replace(pin, length=length, run_copy=placed.run_copy, cloth=cloth)
    return replace(problem, pins=(*problem.pins, pin))


def _motif(rng: Random, problem: LayProblem, placed: Placement, _: str) -> LayProblem:
    rect = placed.rect
    part = F(rng.choice((1, 2, 3)), 4)
    region = Rect(
        rect.x + rect.across * (1 - part) / 2,
        rect.y + rect.along * (1 - part) / 2 + rng.choice((0, 1)),
        rect.across * part,
        rect.along * part,
    )
    return replace(problem, motifs=(*problem.motifs, Motif(placed.name, region, placed.sheet)))


def _flaws(rng: Random, cloth: ClothLay) -> Iterator[Flaw]:
    for sheet, rect in cloth.sheets:
        for _ in range(rng.choice((0, 0, 1, 1, 2))):
            size = _quarters(rng, 1, 4), _quarters(rng, 1, 4)
            x, y = (
                _quarters(rng, 0, max(0, int(whole - side)))
                for whole, side in zip((rect.across, rect.along), size, strict=True)
            )
            yield Flaw(cloth.name, Rect(x, y, *size), sheet)
