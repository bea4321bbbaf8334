"""When a search ends: after so many iterations, at a deadline, or both."""

from __future__ import annotations

from dataclasses import dataclass
from time import monotonic


@dataclass(frozen=True, slots=True)
class Stop:
    """A limit of iterations, and a deadline on `time.monotonic` (None: no deadline).

    Only a limit of iterations gives the same lay every time.
    """

    iterations: int = 240
    deadline: float | None = None

    @classmethod
    def after(cls, seconds: float, iterations: int = 10**9) -> Stop:
        """A stop `seconds` from now."""
        return cls(iterations, monotonic() + seconds)

    def reached(self, iteration: int) -> bool:
        """Whether the search, having made `iteration` iterations, must end."""
        if iteration >= self.iterations:
            return True
        return self.deadline is not None and monotonic() >= self.deadline

    def part(self, shares: int) -> Stop:
        """The stop of the next of `shares` searches: an equal part of the time left."""
        if self.deadline is None:
            return self
        now = monotonic()
        return Stop(self.iterations, now + max(0.0, self.deadline - now) / shares)
