"""One solve, checked and timed in CPU seconds."""

from __future__ import annotations

from dataclasses import dataclass
from time import process_time

from core.lay.check import check
from core.lay.lay import ClothLay, Lay
from core.lay.problem import LayProblem
from core.lay.solve import solve
from core.lengths import Inches
from tests.bench.clock import CpuStop


class IllegalLay(RuntimeError):
    """The checker refuses a lay: the benchmark is worth nothing."""


@dataclass(frozen=True, slots=True)
class Measured:
    """The lay of a problem's one cloth, and when: the first legal lay, each shorter one, the end.

    `shorter` has the seconds and the length used whenever that became less.
    """

    cloth: ClothLay
    first: float
    total: float
    shorter: tuple[tuple[float, Inches], ...]

    def reached(self, along: Inches) -> float | None:
        """Seconds until a lay used no more than `along`; None if none ever did."""
        return next((seconds for seconds, used in self.shorter if used <= along), None)


def measure(problem: LayProblem, seconds: float | None = None) -> Measured:
    """Solve with the default limit of tries, or for so many seconds; raises `IllegalLay`."""
    start = process_time()
    seen: list[tuple[float, Inches]] = []

    def better(lay: Lay) -> None:
        used = lay.cloths[0].used_along
        if not seen or used < seen[-1][1]:
            seen.append((process_time() - start, used))

    lay = solve(problem, stop=None if seconds is None else CpuStop.after(seconds), on_better=better)
    total = process_time() - start
    faults = check(problem, lay)
    if faults or lay.unplaced:
        raise IllegalLay("; ".join(fault.sentence for fault in faults) or "not all is laid")
    [cloth] = lay.cloths
    return Measured(cloth, seen[0][0], total, tuple(seen))


def share(part: int, whole: int) -> str:
    """A share in per cent.

    >>> share(19, 20)
    '95.0 % (19 of 20)'
    """
    return f"{100 * part / whole:.1f} % ({part} of {whole})" if whole else "–"


def percentile(values: list[float], per_cent: int) -> float:
    """The least value that at least so many per cent of the values do not exceed."""
    ordered = sorted(values)
    return ordered[max(0, -(-len(ordered) * per_cent // 100) - 1)]
