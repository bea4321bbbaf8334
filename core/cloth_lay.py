"""The lay of one cloth: what the parts ask of it, laid, passed by the checker, and kept."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache

from core.fabric import Fabric
from core.finish.demand import Demand
from core.lay.check import check
from core.lay.lay import Lay
from core.lay.problem import Cloth, LayProblem, Piece, Run
from core.lay.refuse import require_layable
from core.lay.solve import solve
from core.lay.stop import Stop
from core.lengths import Units
from core.refusal import Refusal

_IN_PROBLEM = re.compile(r"(pieces|runs)\[(\d+)\]")


def cloth_problem(fabric: Fabric, demands: Sequence[Demand]) -> LayProblem:
    cloth = Cloth(
        fabric.name,
        fabric.cutting_width,
        fabric.sale_unit,
        fabric.straightening,
        fabric.shrinkage_along,
        fabric.on_hand,
        fabric.buy_more,
    )
    wanted = [demand.wanted for demand in demands if demand.wanted.cloth == fabric.name]
    return LayProblem(
        (cloth,),
        tuple(item for item in wanted if isinstance(item, Piece)),
        tuple(item for item in wanted if isinstance(item, Run)),
    )


def paths_on(fabric: Fabric, demands: Sequence[Demand]) -> tuple[tuple[str, str], ...]:
    """Which part of the project asked for each name on this cloth."""
    return tuple((d.wanted.name, d.path) for d in demands if d.wanted.cloth == fabric.name)


@lru_cache(maxsize=512)
def lay_one(
    problem: LayProblem, paths: tuple[tuple[str, str], ...], iterations: int = Stop().iterations
) -> Lay:
    """The lay of one cloth, passed by the checker; kept, since edits leave most cloths alone."""
    _require_layable(problem, dict(paths))
    lay = solve(problem, stop=Stop(iterations))
    faults = check(problem, lay)
    if faults:
        said = "; ".join(fault.sentence for fault in faults)
        raise LayFault(f"the lay of {problem.cloths[0].name} is wrong: {said}")
    return lay


def _require_layable(problem: LayProblem, paths: dict[str, str]) -> None:
    """Refuse what cannot be laid, naming the part of the project that asked for it."""
    try:
        require_layable(problem)
    except Refusal as refusal:
        found = _IN_PROBLEM.match(refusal.path)
        if found is None:
            raise
        wanted = problem.pieces if found[1] == "pieces" else problem.runs
        path = paths[wanted[int(found[2])].name]
        raise Refusal(path, refusal.template, Units.INCHES, **refusal.lengths) from None


class LayFault(RuntimeError):
    """The solver made a lay that the checker refuses: a fault of the program, never shown."""
