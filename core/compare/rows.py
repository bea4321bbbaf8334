"""What is compared: one row a measure, its best value marked, and what the others lose."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from typing import TypeAlias

from core.compare.columns import Comparison
from core.finish.binding_plan import BindingPlan
from core.finish.edge_layers import Layers
from core.language import marked, told
from core.plan import Plan

Value: TypeAlias = Fraction | int


class Measured(StrEnum):
    """What a row's values are."""

    LENGTH = "length"
    SALE = "sale"
    COUNT = "count"
    MONEY = "money"
    SHARE = "share"
    YES = "yes"


class Better(StrEnum):
    """Which value of a row is the best; `NEITHER` where it is a matter of taste."""

    LESS = "less"
    MORE = "more"
    NEITHER = "neither"


@dataclass(frozen=True, slots=True)
class Cell:
    """A value; `best` of its row, or worse than the best by `loses`. None: nothing to show."""

    value: Value | None
    best: bool = False
    loses: Value | None = None


@dataclass(frozen=True, slots=True)
class Row:
    """One measure over all columns. `sale_unit` is set where lengths are sold in one.

    The program goes by its `name`, a person reads what is `said`; `cloth` is what is bought.
    """

    name: str
    measured: Measured
    cells: tuple[Cell, ...]
    sale_unit: Fraction | None = None
    less_is_better: bool = True
    cloth: str | None = None

    @property
    def said(self) -> str:
        """What it is called."""
        if self.cloth is None:
            return told(self.name)
        return told("buy {fabric}", fabric=self.cloth)

    @property
    def alike(self) -> bool:
        """Whether all columns that have a value have the same one."""
        return len({cell.value for cell in self.cells} - {None}) < 2


def rows(comparison: Comparison) -> tuple[Row, ...]:
    """The rows of a comparison; those that no column has a value for are left out."""
    plans = [column.plan for column in comparison.columns]
    made = (*_purchases(plans), *(_row(*measure, plans) for measure in _MEASURES))
    return tuple(row for row in made if any(cell.value is not None for cell in row.cells))


def _purchases(plans: Sequence[Plan | None]) -> Iterator[Row]:
    """A row for each cloth that is bought in any column."""
    names = [fabric.fabric.name for plan in plans if plan for fabric in plan.fabrics]
    for name in dict.fromkeys(names):
        bought = [None if plan is None else _bought(plan, name) for plan in plans]
        if any(bought):
            unit = next(
                fabric.fabric.sale_unit
                for plan in plans
                if plan
                for fabric in plan.fabrics
                if fabric.fabric.name == name
            )
            cells = _cells(bought, Better.LESS)
            yield Row(f"buy {name}", Measured.SALE, cells, unit, cloth=name)


def _bought(plan: Plan, name: str) -> Fraction | None:
    return next((f.buy.along for f in plan.fabrics if f.fabric.name == name), None)


def _row(
    name: str,
    measured: Measured,
    better: Better,
    value: Callable[[Plan], Value | None],
    plans: Sequence[Plan | None],
) -> Row:
    cells = _cells([None if plan is None else value(plan) for plan in plans], better)
    return Row(name, measured, cells, less_is_better=better is not Better.MORE)


def _cells(values: Sequence[Value | None], better: Better) -> tuple[Cell, ...]:
    """Cells with the best marked, unless all are as good."""
    known = [value for value in values if value is not None]
    if better is Better.NEITHER or len(set(known)) < 2:
        return tuple(Cell(value) for value in values)
    best = min(known) if better is Better.LESS else max(known)
    return tuple(_cell(value, best) for value in values)


def _cell(value: Value | None, best: Value) -> Cell:
    if value is None or value == best:
        return Cell(value, best=value is not None)
    return Cell(value, loses=value - best if value > best else best - value)


def _of_binding(value: Callable[[BindingPlan], Value | None]) -> Callable[[Plan], Value | None]:
    return lambda plan: None if plan.binding is None else value(plan.binding)


def _most(layers: Layers | None) -> int | None:
    """The thickest place: the most layers of cloth that lie on each other."""
    if layers is None:
        return None
    return max(layers.first_face, layers.edge, layers.second_face)


def _used(plan: Plan) -> Value:
    return sum((fabric.lay.used_along for fabric in plan.fabrics), Fraction(0))


def _proved(plan: Plan) -> Value:
    return int(all(fabric.lay.proved_least for fabric in plan.fabrics if fabric.lay.placements))


_LENGTH, _COUNT, _LESS = Measured.LENGTH, Measured.COUNT, Better.LESS
_MEASURES: tuple[tuple[str, Measured, Better, Callable[[Plan], Value | None]], ...] = (
    (marked("cost of all cloth"), Measured.MONEY, _LESS, lambda plan: plan.cost),
    (marked("length of bolt used"), _LENGTH, _LESS, _used),
    (marked("waste"), Measured.SHARE, _LESS, lambda plan: plan.waste_share),
    (marked("proved least"), Measured.YES, Better.NEITHER, _proved),
    (marked("pieces to cut"), _COUNT, _LESS, lambda plan: sum(part.count for part in plan.parts)),
    (
        marked("cuts to make"),
        _COUNT,
        _LESS,
        lambda plan: sum(len(f.lay.cuts) for f in plan.fabrics),
    ),
    (marked("binding strips"), _COUNT, _LESS, _of_binding(lambda binding: binding.strips)),
    (marked("binding joins"), _COUNT, _LESS, _of_binding(lambda binding: binding.joins)),
    (
        marked("binding lost in joins"),
        _LENGTH,
        _LESS,
        _of_binding(lambda binding: binding.joins * binding.join_loss),
    ),
    (
        marked("binding to spare"),
        _LENGTH,
        Better.NEITHER,
        _of_binding(lambda binding: binding.spare),
    ),
    (
        marked("first face"),
        _LENGTH,
        Better.NEITHER,
        _of_binding(lambda binding: binding.first_face_width),
    ),
    (
        marked("second face"),
        _LENGTH,
        Better.NEITHER,
        _of_binding(lambda binding: binding.second_face_width),
    ),
    (marked("reach"), _LENGTH, Better.NEITHER, _of_binding(lambda binding: binding.reach)),
    (
        marked("nearest join to a corner"),
        _LENGTH,
        Better.MORE,
        lambda plan: plan.sewn.edge_map.least if plan.sewn else None,
    ),
    (
        marked("layers along the edge"),
        _COUNT,
        Better.NEITHER,
        _of_binding(lambda b: _most(b.layers[0])),
    ),
    (marked("layers at a join"), _COUNT, _LESS, _of_binding(lambda b: _most(b.layers[1]))),
    (
        marked("layers at a corner"),
        _COUNT,
        _LESS,
        _of_binding(lambda b: _most(b.layers[2])),
    ),
    (
        marked("narrowest usable width"),
        _LENGTH,
        _LESS,
        _of_binding(lambda binding: binding.narrowest_usable_width),
    ),
)
