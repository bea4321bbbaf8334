"""The same work for many things, in several processes, answers in order."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import ProcessPoolExecutor
from fractions import Fraction
from multiprocessing import get_context
from typing import TypeVar

from core.lay.problem import Cloth, LayProblem, Piece
from core.lay.solve import solve

Thing = TypeVar("Thing")
Answer = TypeVar("Answer")


def each(
    work: Callable[[Thing], Answer], things: Iterable[Thing], jobs: int = 1
) -> Iterator[Answer]:
    """`work` of every thing; it must be a module's function (or a partial of one) if jobs > 1."""
    if jobs == 1:
        warm_up()
        yield from map(work, things)
        return
    fresh = get_context("spawn")  # a copy of a process with threads may hang
    with ProcessPoolExecutor(jobs, fresh, initializer=warm_up) as pool:
        yield from pool.map(work, things)


def warm_up() -> None:
    """One solve that is not measured, so that the first measured one is like all others."""
    cloth = Cloth("cloth", Fraction(42), Fraction(9, 2))
    solve(LayProblem((cloth,), (Piece("piece", "cloth", Fraction(11), Fraction(9), 7, True),)))
