"""The gesture that draws the binding's start along the edge."""

from __future__ import annotations

from dataclasses import dataclass
from math import dist

from core.drawing.edge_map import place_under, start_shown
from core.drawing.marks import Point
from core.edge_start import start_steps
from core.lengths import Inches
from core.plan import Plan

REACH = 22.0  # pixels from the start within which it is taken hold of


@dataclass(frozen=True, slots=True)
class StartDrag:
    """From the press on the start to the release; points are the picture's, in inches."""

    plan: Plan

    @classmethod
    def begun(cls, plan: Plan | None, at: Point, zoom: float) -> StartDrag | None:
        """The gesture, if the press at a point is one on the start."""
        if plan is None or plan.sewn is None or dist(start_shown(plan), at) * zoom > REACH:
            return None
        return cls(plan)

    def place(self, at: Point) -> Inches:
        """The place on the edge that the start is drawn to."""
        small, _ = start_steps(self.plan.project.units)
        return place_under(self.plan, at, small)[0]
