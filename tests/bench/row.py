"""A row of the benchmark's table, and the few ways in which its figures are written."""

from __future__ import annotations

from dataclasses import dataclass
from statistics import median

from tests.bench.measure import percentile


@dataclass(frozen=True, slots=True)
class Row:
    """What was measured, the bar it is held against, and whether it is met.

    `bar` is empty and `met` None where nothing is demanded. `seconds` is the CPU
    time that went into the row; None where another row has it. `problem` is one
    to look at, as JSON that `python3 -m app lay` reads.
    """

    title: str
    measured: str
    bar: str = ""
    met: bool | None = None
    seconds: float | None = None
    problem: str | None = None

    @property
    def verdict(self) -> str:
        return {True: "met", False: "not met", None: ""}[self.met]


def milliseconds(seconds: float) -> str:
    """A short time in words.

    >>> milliseconds(0.0042), milliseconds(0.42)
    ('4.2 ms', '420 ms')
    """
    digits = 1 if seconds < 0.0995 else 0
    return f"{1000 * seconds:.{digits}f} ms"


def spread(times: list[float]) -> str:
    return f"{milliseconds(median(times))} / {milliseconds(percentile(times, 95))}"


def named(names: list[str], none: str = "none") -> str:
    return f"{len(names)}: {', '.join(names)}" if names else none
