"""The published sets: strips of cloth one unit at a time, no piece turned.

Each file in `tests/data/bench` names its source. `guillotine_bounds` are a
proved lower bound and the best lay known with edge-to-edge cuts.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from typing import Any

from core.lay.problem import Cloth, LayProblem, Piece

DATA = Path(__file__).parents[1] / "data" / "bench"


@dataclass(frozen=True, slots=True)
class Published:
    """One instance: `best` is the shortest lay known, `proved` that nothing is shorter."""

    name: str
    width: int
    items: tuple[tuple[int, int, int], ...]  # across, along, copies
    best: int
    low: int  # proved: no edge-to-edge lay is shorter
    three_stage: int | None
    one_dimensional: bool

    @property
    def proved(self) -> bool:
        return self.low == self.best

    @property
    def pieces(self) -> int:
        return sum(copies for _, _, copies in self.items)

    @property
    def problem(self) -> LayProblem:
        cloth = Cloth("cloth", Fraction(self.width), Fraction(1))
        pieces = tuple(
            Piece(f"piece {i}", "cloth", Fraction(across), Fraction(along), copies)
            for i, (across, along, copies) in enumerate(self.items)
        )
        return LayProblem((cloth,), pieces)


def published() -> Iterator[Published]:
    """All instances in the folder, by name."""
    for path in sorted(DATA.glob("*.json")):
        data: dict[str, Any] = json.loads(path.read_text(encoding="utf-8"))
        optimum = data["optimal_guillotine_height"]
        low, best = data.get("guillotine_bounds") or [optimum, optimum]
        yield Published(
            data["name"],
            data["width"],
            tuple((item["w"], item["h"], item["n"]) for item in data["items"]),
            best,
            low,
            data.get("best_found_3stage_height"),
            "lp_bound" in data,
        )
