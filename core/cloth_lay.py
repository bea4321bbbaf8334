"""The lay of one cloth: what the parts ask of it, laid, passed by the checker, and kept."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache

from core.by_hand.minded import minded
from core.fabric import Fabric
from core.finish.demand import Demand, Wanted
from core.lay.check import check
from core.lay.lay import Lay
from core.lay.problem import Cloth, LayProblem, Piece, Run
from core.lay.refuse import require_layable
from core.lay.solve import solve
from core.lay.stop import Stop
from core.lengths import Units
from core.refusal import Refusal

_IN_PROBLEM = re.compile(r"(pieces|runs)\[(\d+)\]")
_BY_HAND = re.compile(r"((?:pins|flaws|motifs)(?:\[\d+\])?)(.*)")


class CannotMind(Refusal):
    """What was said by hand cannot be done."""


def cloth_of(fabric: Fabric) -> Cloth:
    """A fabric as the lay takes it."""
    return Cloth(
        fabric.name,
        fabric.cutting_width,
        fabric.sale_unit,
        fabric.straightening,
        fabric.shrinkage_along,
        fabric.on_hand,
        fabric.buy_more,
    )


def cloth_problem(fabric: Fabric, demands: Sequence[Demand]) -> LayProblem:
    """What is asked of a fabric, as a lay problem of its own."""
    wanted = wanted_of(fabric, demands)
    said = minded(fabric, wanted)
    return LayProblem(
        (cloth_of(fabric),),
        tuple(item for item in wanted if isinstance(item, Piece)),
        tuple(item for item in wanted if isinstance(item, Run)),
        tuple(pin for _, pin in said.pins),
        tuple(flaw for _, flaw in said.flaws),
        tuple(motif for _, motif in said.motifs),
    )


def wanted_of(fabric: Fabric, demands: Sequence[Demand]) -> tuple[Wanted, ...]:
    """What is cut from a fabric."""
    return tuple(demand.wanted for demand in demands if demand.wanted.cloth == fabric.name)


def paths_on(
    fabric: Fabric, fabric_path: str, demands: Sequence[Demand]
) -> tuple[tuple[str, str], ...]:
    """Which part of the project asked for each name on this cloth, or said each thing by hand."""
    asked = ((d.wanted.name, d.path) for d in demands if d.wanted.cloth == fabric.name)
    return (*asked, *minded(fabric, wanted_of(fabric, demands)).paths(fabric_path))


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
        by_hand = _BY_HAND.match(refusal.path)
        if by_hand is not None:
            path = paths[by_hand[1]] + by_hand[2]
            raise CannotMind(path, refusal.template, Units.INCHES, **refusal.lengths) from None
        found = _IN_PROBLEM.match(refusal.path)
        if found is None:
            raise
        wanted = problem.pieces if found[1] == "pieces" else problem.runs
        path = paths[wanted[int(found[2])].name]
        raise Refusal(path, refusal.template, Units.INCHES, **refusal.lengths) from None


class LayFault(RuntimeError):
    """The solver made a lay that the checker refuses: a fault of the program, never shown."""
