"""Questions as values: what to work out from a project, whole enough to be sent elsewhere."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TypeVar

from core.compare.choices import Choice
from core.compare.columns import Comparison, compare
from core.compare.reverse import (
    Answer,
    Enough,
    largest_quilt,
    most_copies,
    which_is_enough,
    widest_strip,
)
from core.compare.staircase import Staircase, staircase
from core.compare.withstands import Withstands, withstands
from core.lengths import Inches
from core.plan import make_plan
from core.project_file.read import fabric_names
from core.quilt import Project
from core.refusal import Refusal

Found = TypeVar("Found")


@dataclass(frozen=True, slots=True)
class SideBySide:
    """Which of these values?"""

    project: Project
    choice: Choice
    values: tuple[str, ...]
    place: int | None = None

    def answer(self) -> Comparison:
        return compare(self.project, self.choice, self.values, self.place)


@dataclass(frozen=True, slots=True)
class Steps:
    """Where are the steps between these two widths?"""

    project: Project
    choice: Choice
    first: Inches
    last: Inches
    place: int | None = None

    def answer(self) -> Staircase:
        return staircase(self.project, self.choice, self.first, self.last, self.place)


@dataclass(frozen=True, slots=True)
class InHand:
    """What the cloth in hand is good for; each answer, or why there is none."""

    strip: Answer | Refusal
    quilt: Answer | Refusal
    copies: Answer | Refusal
    enough: tuple[tuple[str, tuple[Enough, ...]], ...]
    withstands: tuple[Withstands, ...] | Refusal


@dataclass(frozen=True, slots=True)
class FromWhatIHave:
    """What is the cloth in hand good for, and how narrow or short may it be?"""

    project: Project

    def answer(self) -> InHand:
        project = self.project
        parts = [path for path, _ in fabric_names(project) if path.endswith(".fabric")]
        return InHand(
            _or_refusal(lambda: widest_strip(project)),
            _or_refusal(lambda: largest_quilt(project)),
            _or_refusal(lambda: most_copies(project)),
            tuple((path, which_is_enough(project, path)) for path in parts),
            _or_refusal(lambda: withstands(make_plan(project))),
        )


def _or_refusal(ask: Callable[[], Found]) -> Found | Refusal:
    try:
        return ask()
    except Refusal as refusal:
        return refusal
