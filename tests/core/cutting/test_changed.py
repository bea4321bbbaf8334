"""A plan changed at any moment: what still fits is kept, and all that it asks for is cut."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from core.cutting.changed import ChangedPlan, fitting
from core.cutting.cutting import Cutting, Sameness, begin, sameness
from core.cutting.kept import cutting_document, cutting_from
from core.cutting.progress import on_table
from core.plan import Plan, make_plan
from tests.core.cutting.test_remaining import area, assert_all_there, cut_by_a_stranger, size_of
from tests.core.demos import demo

FEW = 4  # tries of a lay


@pytest.fixture(scope="module")
def plan() -> Plan:
    return make_plan(demo("harbour-lights"))


@pytest.fixture(scope="module")
def wider(plan: Plan) -> Plan:
    quilt = replace(plan.project.quilt, width=plan.project.quilt.width + Fraction(2))
    return make_plan(replace(plan.project, quilt=quilt))


def cut(plan: Plan, place: int, cuts: int) -> Cutting:
    cutting = begin(plan)
    cloth = replace(cutting.cloths[place], done=(cuts,))
    return cutting.with_cloth(place, cloth)


@pytest.mark.parametrize("place", [0, 1, 2])
def test_all_that_the_changed_plan_asks_for_is_there_in_the_end(
    plan: Plan, wider: Plan, place: int
) -> None:
    for done in range(1, len(begin(plan).cloths[place].order.cuts) + 1):
        begun = cut(plan, place, done)
        changed = ChangedPlan(begun, wider, FEW).answer()
        for number, cloth in enumerate(changed.cloths):
            last = on_table(cloth.order, len(cloth.order.cuts))
            assert_all_there(cloth.order, last.pieces)
            sizes = {mark.label: size_of(mark) for mark in last.pieces}
            assert cut_by_a_stranger(cloth.order) == sizes
            assert cloth.first == (1 if number == place else 0)
        assert sameness(changed, wider) is Sameness.SAME
        assert cutting_from(cutting_document(changed)) == changed


def test_pieces_that_no_longer_fit_are_cloth_in_hand(plan: Plan, wider: Plan) -> None:
    old, new = begin(plan).cloths[0].order, begin(wider).cloths[0].order
    table = on_table(old, len(old.cuts))
    seen = fitting(new, table)
    assert area(seen) == area(table)
    assert {mark.label for mark in seen.pieces} == {m.label for m in table.pieces} - {"C1", "C2"}
    assert {bit.name for bit in seen.hand} >= {"piece C1", "piece C2"}


def test_there_is_no_going_back_before_the_change(plan: Plan, wider: Plan) -> None:
    cloth = ChangedPlan(cut(plan, 0, 4), wider, FEW).answer().cloths[0]
    assert cloth.back() == cloth
    assert cloth.cut_once().back() == cloth
