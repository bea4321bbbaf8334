"""One solve, checked and timed."""

from __future__ import annotations

from dataclasses import dataclass
from time import perf_counter

from core.lay.check import check
from core.lay.lay import ClothLay, Lay
from core.lay.problem import LayProblem
from core.lay.solve import Stop, solve


class IllegalLay(RuntimeError):
    """The checker refuses a lay: the benchmark is worth nothing."""


@dataclass(frozen=True, slots=True)
class Measured:
    """The lay of a problem's one cloth, seconds to the first legal lay and to the last."""

    cloth: ClothLay
    first: float
    total: float


def measure(problem: LayProblem, seconds: float | None = None) -> Measured:
    """Solve with the default limit, or for so many seconds; raises `IllegalLay`."""
    start = perf_counter()
    firsts: list[float] = []

    def seen(lay: Lay) -> None:
        if not firsts:
            firsts.append(perf_counter() - start)

    lay = solve(problem, stop=None if seconds is None else Stop.after(seconds), on_better=seen)
    total = perf_counter() - start
    faults = check(problem, lay)
    if faults or lay.unplaced:
        raise IllegalLay("; ".join(fault.sentence for fault in faults) or "not all is laid")
    [cloth] = lay.cloths
    return Measured(cloth, firsts[0], total)


def share(part: int, whole: int) -> str:
    """A share in per cent.

    >>> share(19, 20)
    '95.0 %'
    """
    return f"{100 * part / whole:.1f} %" if whole else "–"


def percentile(values: list[float], per_cent: int) -> float:
    """The least value that at least so many per cent of the values do not exceed."""
    ordered = sorted(values)
    return ordered[max(0, -(-len(ordered) * per_cent // 100) - 1)]
