"""What a verdict says comes true: what lies well is laid there."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from hypothesis import HealthCheck, Phase, assume, given, settings
from hypothesis import strategies as st

from core.by_hand.edits import put_down, without_taken
from core.by_hand.holding import Holding, pick_up
from core.by_hand.sheets import hand_sheets
from core.by_hand.verdict import verdict
from core.not_enough import NotEnough
from core.plan import Plan, make_plan
from core.quilt import Project
from core.refusal import Refusal
from tests.core.sound import assert_sound
from tests.strategies import projects

DEEDS = 3


def some_piece(draw: st.DataObject, plan: Plan) -> Holding:
    """A piece or segment of the plan, held somewhere on a cloth of its fabric, turned or not."""
    labels = [plan.label(p) for fabric in plan.fabrics for p in fabric.lay.placements]
    held = pick_up(plan, draw.draw(st.sampled_from(labels)))
    assert held is not None
    sheet = draw.draw(st.sampled_from(hand_sheets(plan.fabrics[held.place])))
    x, y = (Fraction(draw.draw(st.integers(0, most)), 4) for most in (160, 240))
    turned = held.turned != (held.may_turn and draw.draw(st.booleans()))
    return replace(held, sheet=sheet, x=x, y=y, turned=turned)


def planned(project: Project) -> Plan | None:
    try:
        return make_plan(project, draft=True)
    except Refusal:
        return None


@given(st.data())
@settings(
    max_examples=10,
    suppress_health_check=list(HealthCheck),
    phases=(Phase.explicit, Phase.generate),  # a plan takes long to shrink
)
def test_a_verdict_comes_true(data: st.DataObject) -> None:
    project = data.draw(projects())
    plan = planned(project)
    assume(plan is not None)
    for _ in range(DEEDS):
        assert plan is not None
        assume(any(fabric.lay.placements for fabric in plan.fabrics))
        held = some_piece(data, plan)
        if not verdict(plan, held).good:
            continue
        put = put_down(project, plan, held)
        try:
            after = make_plan(put, without_taken(plan, held), draft=True)
        except NotEnough:  # what is on hand may not be enough with the piece there
            continue
        assert_sound(after)
        project, plan = put, after
        pinned = after.fabrics[held.place].by_hand.pins
        assert any(placed.rect == held.rect for _, placed in pinned)
