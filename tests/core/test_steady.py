"""A plan made after another: the picture does not jump, and nothing is paid for it."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from core.plan import Plan, make_plan
from tests.core.demos import DEMOS, demo

F = Fraction


def lying(plan: Plan) -> set[tuple[object, ...]]:
    return {
        (fabric.fabric.name, p.name, p.copy, p.sheet, p.rect)
        for fabric in plan.fabrics
        for p in fabric.lay.placements
    }


@pytest.mark.parametrize("name", DEMOS)
def test_a_plan_made_again_is_the_same(name: str) -> None:
    plan = make_plan(demo(name))
    assert make_plan(demo(name), plan) == plan


@pytest.mark.parametrize("name", DEMOS)
@pytest.mark.parametrize("more", [F(1, 4), F(1), F(-1, 2)])
def test_a_longer_quilt_buys_the_same_after_another_plan(name: str, more: Fraction) -> None:
    project = demo(name)
    before = make_plan(project)
    changed = replace(project, quilt=replace(project.quilt, length=project.quilt.length + more))
    fresh, steady = make_plan(changed), make_plan(changed, before)
    assert [f.buy for f in steady.fabrics] == [f.buy for f in fresh.fabrics]
    assert [f.lay.proved_least for f in steady.fabrics] == [
        f.lay.proved_least for f in fresh.fabrics
    ]
    assert len(lying(steady) & lying(before)) >= len(lying(fresh) & lying(before))
    assert make_plan(changed, before) == steady
