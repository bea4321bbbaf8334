"""Random real quilts: cloth, borders, backing, binding and sleeve in the sizes people make.

The sizes are ours, made up to look like quilts (common practice, no source);
the lay problems come straight from them, one cloth each.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from random import Random

from core.fabric import Grain, OnHand
from core.lay.problem import Cloth, LayProblem, Piece, Run

F = Fraction
WIDTHS = (F(40), F(41), F(42), F(42), F(83, 2), F(43), F(58), F(106))
UNITS = (F(9, 2), F(9, 2), F(9), F(9), F(18), F(36), F(500, 127))
STRIPS = (F(2), F(9, 4), F(9, 4), F(5, 2), F(5, 2), F(11, 4), F(3))
HANDS = (OnHand(F(18), F(21)), OnHand(F(9), F(42)), OnHand(F(20), F(30)), OnHand(F(41), F(12)))


def random_quilts(count: int, seed: int) -> Iterator[LayProblem]:
    """`count` lay problems, the same for the same seed."""
    rng = Random(seed)
    for _ in range(count):
        yield quilt(rng)


def quilt(rng: Random) -> LayProblem:
    """One cloth and what one quilt (seldom two or three) asks of it."""
    cloth = Cloth(
        "cloth",
        rng.choice(WIDTHS),
        rng.choice(UNITS),
        rng.choice((F(0), F(1), F(3, 2))),
        rng.choice((F(0), F(0), F(3, 100))),
        tuple(rng.sample(HANDS, rng.choice((0, 0, 0, 0, 1, 2)))),
    )
    width = _quarter(rng, 36, 96)
    length = max(width, _quarter(rng, 40, 108))
    copies = rng.choice((1, 1, 1, 1, 1, 1, 2, 3))
    pieces: list[Piece] = []
    runs: list[Run] = []
    parts = rng.sample(("binding", "borders", "second", "backing", "sleeve", "blocks"), 4)
    for part in parts[: rng.choice((1, 2, 2, 3, 3, 4))]:
        _add(rng, cloth, part, (width, length), pieces, runs)
    if not pieces and not runs:
        _add(rng, cloth, "binding", (width, length), pieces, runs)
    return LayProblem(
        (cloth,),
        tuple(replace(piece, count=piece.count * copies) for piece in pieces),
        tuple(replace(run, count=run.count * copies) for run in runs),
    )


def _quarter(rng: Random, low: int, high: int) -> Fraction:
    return Fraction(rng.randint(low * 4, high * 4), 4)


def _add(
    rng: Random,
    cloth: Cloth,
    part: str,
    size: tuple[Fraction, Fraction],
    pieces: list[Piece],
    runs: list[Run],
) -> None:
    width, length = size
    if part == "binding":
        strip = rng.choice(STRIPS)
        runs.append(_run(rng, "binding", strip, 2 * (width + length) + 10 + strip, Grain.CROSSWISE))
    elif part in ("borders", "second"):
        _border(rng, cloth, part, size, pieces, runs)
    elif part == "backing":
        _backing(cloth, (width + 8, length + 8), pieces)
    elif part == "sleeve":
        runs.append(Run("sleeve", "cloth", F(17, 2), width - 2, F(1, 2), F(18)))
    else:
        side = _quarter(rng, 2, 12)
        pieces.append(Piece("block", "cloth", side, side, rng.randint(4, 24), may_turn=True))


def _run(
    rng: Random, name: str, strip: Fraction, needs: Fraction, grain: Grain, count: int = 1
) -> Run:
    """A run with diagonal or straight joins."""
    loss = rng.choice((strip, F(1, 2)))
    return Run(name, "cloth", strip, needs, loss, F(18), grain, count)


def _border(
    rng: Random,
    cloth: Cloth,
    part: str,
    size: tuple[Fraction, Fraction],
    pieces: list[Piece],
    runs: list[Run],
) -> None:
    """Four sides: whole pieces along the cloth, strips across it, or whichever serves."""
    width, length = size
    strip = rng.choice((F(2), F(5, 2), F(7, 2), F(4), F(9, 2), F(5), F(13, 2))) + F(1, 2)
    way = rng.choice(("pieces", "crosswise", "crosswise", "crosswise", "either"))
    for side, needs in (("side", length), ("end", width + 2 * strip - 1)):
        name = f"{part} {side}"
        if way == "pieces" or needs <= cloth.usable_width:
            across, along = (strip, needs) if way == "pieces" else (needs, strip)
            pieces.append(Piece(name, "cloth", across, along, 2))
        else:
            grain = Grain.CROSSWISE if way == "crosswise" else Grain.EITHER
            runs.append(_run(rng, name, strip, needs, grain, 2))


def _backing(cloth: Cloth, size: tuple[Fraction, Fraction], pieces: list[Piece]) -> None:
    """Panels along the cloth, as wide as it is but for the last."""
    width, length = size
    usable = cloth.usable_width
    seam = F(1)
    whole = int((width - seam) // (usable - seam)) if width > usable else 0
    if whole:
        pieces.append(Piece("panel", "cloth", usable, length, whole))
    rest = width - whole * (usable - seam)
    if rest > seam:
        pieces.append(Piece("last panel", "cloth", min(usable, rest), length))
