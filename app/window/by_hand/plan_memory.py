"""The plans that were shown lately, so that going back shows the picture that was there."""

from __future__ import annotations

from collections import OrderedDict

from core.plan import Plan
from core.quilt import Project

MOST = 60


class PlanMemory:
    """Plans by their project, the last ones shown."""

    def __init__(self) -> None:
        self._plans: OrderedDict[Project, Plan] = OrderedDict()

    def keep(self, plan: Plan) -> None:
        """Remember a plan; a later one of the same project takes its place."""
        self._plans[plan.project] = plan
        self._plans.move_to_end(plan.project)
        while len(self._plans) > MOST:
            self._plans.popitem(last=False)

    def of(self, project: Project) -> Plan | None:
        """The plan that was shown of a project."""
        return self._plans.get(project)
