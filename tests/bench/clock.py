"""Times in CPU seconds, so that what else the machine does distorts neither limit nor figure."""

from __future__ import annotations

from dataclasses import dataclass
from time import process_time

from core.lay.stop import Stop


@dataclass(frozen=True, slots=True)
class CpuStop(Stop):
    """A stop whose deadline lies on `time.process_time`."""

    @classmethod
    def after(cls, seconds: float, iterations: int = 10**9) -> CpuStop:
        """A stop when this process has computed for so many seconds more."""
        return cls(iterations, process_time() + seconds)

    def reached(self, iteration: int) -> bool:
        if iteration >= self.iterations:
            return True
        return self.deadline is not None and process_time() >= self.deadline

    def part(self, shares: int) -> CpuStop:
        if self.deadline is None:
            return self
        now = process_time()
        return CpuStop(self.iterations, now + max(0.0, self.deadline - now) / shares)
