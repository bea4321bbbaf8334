"""A plan made after another: its cloths laid like before, where that costs nothing."""

from __future__ import annotations

from dataclasses import replace

from core.cloth_lay import cloth_problem
from core.lay.lay import Lay
from core.lay.repair import QUICK, repair
from core.lay.stop import Stop
from core.quilt import Project
from core.ways import Chosen, for_one_lay, matched


def steadied(project: Project, chosen: Chosen, before: Lay, stop: Stop = QUICK) -> Chosen:
    """The same choice, each cloth as like `before` as the fresh lay's cost allows.

    `stop` says how long what does not stay is laid again. A backing that matched its
    print still does; else the fresh lay is kept.
    """
    lay = chosen.lay
    for place, fabric in enumerate(project.fabrics):
        problem = cloth_problem(for_one_lay(fabric, project.quilt.lays), chosen.demands)
        [kept] = repair(problem, Lay((lay.cloths[place],)), before, stop=stop).cloths
        lay = replace(lay, cloths=(*lay.cloths[:place], kept, *lay.cloths[place + 1 :]))
    steady = replace(chosen, lay=lay)
    return steady if matched(steady) else chosen
