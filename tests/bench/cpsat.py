"""OR-Tools CP-SAT on the same problems: what it finds in so many CPU seconds."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass
from importlib import import_module
from threading import Event, Thread
from time import process_time
from typing import Any

from core.lay.problem import LayProblem
from core.lengths import Inches
from tests.bench.cpsat_model import Model
from tests.bench.guillotine import Box, is_guillotine

Solver = Any  # the package may be absent
LOOK = 0.01  # seconds between looks at the clock


@dataclass(frozen=True, slots=True)
class Answer:
    """The least that CP-SAT bought, and what it showed.

    `bought` is None if it found no lay; `closed` if nothing is left to find (there
    is none, or this is the least); `guillotine` if edge-to-edge cuts free all.
    """

    bought: Inches | None
    closed: bool
    guillotine: bool
    seconds: float

    @property
    def found(self) -> bool:
        """Whether there is a lay; it may buy nothing at all."""
        return self.bought is not None


def cpsat_least(
    problem: LayProblem, seconds: float, below: Inches | None = None, workers: int = 1
) -> Answer:
    """The best lay in so many CPU seconds (all workers together), `below` what is given."""
    if below is not None and below <= 0:
        return Answer(None, True, False, 0)
    cp: Any = import_module("ortools.sat.python.cp_model")
    start = process_time()
    model = Model(cp, problem, below)
    solver = cp.CpSolver()
    solver.parameters.num_workers = workers
    solver.parameters.max_time_in_seconds = 20 * seconds  # the clock below ends it sooner
    ended = Event()
    clock = Thread(target=_stop_at, args=(solver, start + seconds, ended))
    clock.start()
    status = solver.solve(model.model)
    ended.set()
    clock.join()
    spent = process_time() - start
    closed = status in (cp.OPTIMAL, cp.INFEASIBLE)
    if status not in (cp.OPTIMAL, cp.FEASIBLE):
        return Answer(None, closed, False, spent)
    bought = solver.value(model.units) * model.cloth.sale_unit
    sheets = _sheets(model, solver)
    return Answer(bought, closed, all(is_guillotine(sheet) for sheet in sheets), spent)


def _stop_at(solver: Solver, deadline: float, ended: Event) -> None:
    """Stop the solver at a CPU time, again and again until it has heard."""
    while not ended.wait(LOOK):
        if process_time() >= deadline:
            solver.stop_search()


def _sheets(model: Model, solver: Solver) -> list[list[Box]]:
    """What was laid, one list of boxes a sheet."""
    sheets: dict[int, list[Box]] = defaultdict(list)
    for one in model.things:
        if one.there is None or solver.value(one.there):
            x, y = solver.value(one.x), solver.value(one.y)
            on = sum(x >= left for left, _, _ in model.columns)
            sheets[on].append((x, y, solver.value(one.across), solver.value(one.along)))
    return list(sheets.values())
