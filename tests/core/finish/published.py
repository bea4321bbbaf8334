"""Published values, each beside its source, and the small quilts that they are held against.

A `Value` is one published figure. Where the exact geometry gives another, `exact`
is what it gives and `why` says why the two differ; the published figure is then
either reached with the publisher's own shortcut in a row of its own, or it is
the shortcut.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from core.fabric import Fabric, Grain
from core.finish.binding import Cloths, plan_binding
from core.finish.binding_plan import BindingPlan
from core.finish.border import BorderPlan, border_options
from core.finish.bound_edge import rectangle
from core.lengths import Inches
from core.quilt import Binding, Border, Closing, Corners, Fold, Joins

F = Fraction
STRIP, SEAM, EDGE = F(5, 2), F(1, 4), F(1, 8)


@dataclass(frozen=True)
class Value:
    """`ours()` must be `published`, or `exact` where `why` says why they differ."""

    what: str
    source: str
    published: object
    ours: Callable[[], object]
    exact: object = None
    why: str = ""

    @property
    def expected(self) -> object:
        return self.exact if self.why else self.published


def cloth(usable: Inches | int, **more: Any) -> Fabric:  # noqa: ANN401 - a fabric's other fields
    """A fabric of that usable width, sold by the eighth of a yard, with nothing lost."""
    return Fabric(**{"name": "cloth", "width": F(usable), "selvage": F(0), **more})


def one(usable: Inches | int) -> Cloths:
    """That fabric, under whatever name it is asked for."""
    return lambda name: cloth(usable, name=name)


def bound(
    width: Inches | int,
    length: Inches | int,
    usable: Inches | int,
    strip: Inches | int = STRIP,
    allowance: Inches | int = 10,
    *,
    thickness: Inches | int = EDGE,
    seam: Inches | int = SEAM,
    **choices: Any,  # noqa: ANN401 - a binding's other fields
) -> BindingPlan:
    """The binding of a quilt; diagonal joins and closing unless told otherwise."""
    binding = Binding("cloth", F(strip), allowance=F(allowance), seam=F(seam), **choices)
    return plan_binding(binding, rectangle(F(width), F(length), F(thickness)), one(usable))


def bare(
    width: Inches | int,
    length: Inches | int,
    usable: Inches | int,
    allowance: Inches | int = 0,
    strip: Inches | int = STRIP,
) -> BindingPlan:
    """The same by the common rule, which forgets what the joins and the closing use."""
    none_lost = Binding(
        "cloth",
        F(strip),
        joins=Joins.STRAIGHT,
        closing=Closing.STRAIGHT,
        allowance=F(allowance),
        seam=F(0),
    )
    return plan_binding(none_lost, rectangle(F(width), F(length), EDGE), one(usable))


def single_fold(*sizes: Inches | int, **choices: Any) -> BindingPlan:  # noqa: ANN401 - as bound
    """A single-fold binding, else as `bound`."""
    return bound(*sizes, fold=Fold.SINGLE, **choices)


def bordered(
    width: Inches | int,
    length: Inches | int,
    finished: Inches | int,
    corners: Corners = Corners.BUTTED,
    margin: Inches | int = 4,
) -> BorderPlan:
    """A border round a centre of those cut sizes, cut lengthwise in one piece."""
    border = Border(
        "cloth", F(finished), corners=corners, grain=Grain.LENGTHWISE, mitre_margin=F(margin)
    )
    [plan] = border_options(border, 1, F(width), F(length), lambda _: cloth(200))
    return plan


def strips(plan: BorderPlan) -> tuple[Inches, Inches]:
    """The lengths of the sides, and of the top and bottom."""
    sides, ends = plan.strips
    return sides.length, ends.length


def then(plan: BorderPlan, finished: Inches | int, corners: Corners) -> BorderPlan:
    """A next border round the first."""
    return bordered(plan.outer_width, plan.outer_length, finished, corners)


def outer(plan: BorderPlan) -> tuple[Inches, Inches]:
    return plan.outer_width, plan.outer_length
