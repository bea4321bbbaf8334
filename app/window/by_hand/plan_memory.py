"""The plans that were shown lately, so that going back shows the picture that was there."""

from __future__ import annotations

from collections import OrderedDict

from core.plan import Plan
from core.quilt import Project

MOST = 60


class PlanMemory:
    """Plans by their project, the last ones shown."""

    def __init__(self) -> None:
        self._plans: OrderedDict[Project, tuple[Plan, bool]] = OrderedDict()

    def keep(self, plan: Plan, *, whole: bool) -> None:
        """Remember a plan, `whole` or a draft; a later one of the same project takes its place."""
        self._plans[plan.project] = plan, whole
        self._plans.move_to_end(plan.project)
        while len(self._plans) > MOST:
            self._plans.popitem(last=False)

    def of(self, project: Project, *, whole: bool = False) -> Plan | None:
        """The plan that was shown of a project; no draft if it must be `whole`."""
        plan, is_whole = self._plans.get(project, (None, False))
        return plan if is_whole or not whole else None
