"""What is cut beside the backing, what it adds to the cloth bought, and what offcuts would hold."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from core.fabric import Fabric
from core.plan import Plan, make_plan
from core.quilt import Backing, Binding, Label, Panels, Project, Quilt, Seams, Sleeve
from core.sewing import sewing

F = Fraction
DOTS = Fabric("dots", F(43), F(1, 2), straightening=F(1))
PLUM = replace(DOTS, name="plum")
PROJECT = Project(
    Quilt("", F(50), F(60)),
    (DOTS, PLUM),
    backing=Backing("dots", seams=Seams.LENGTHWISE, panels=Panels.WHOLE),
)


def planned(**changes: object) -> Plan:
    return make_plan(replace(PROJECT, **changes))  # type: ignore[arg-type]


def said(plan: Plan) -> str:
    return " ".join(sewing(plan)[0].sentences)


def test_parts_that_lie_on_what_the_panels_leave_add_nothing() -> None:
    """Panels of 42 and 17 × 68 leave 25 × 68: sleeve and label lie there."""
    alone, shared = planned(), planned(sleeve=Sleeve("dots"), label=Label("dots"))
    assert shared.fabrics[0].buy.along == alone.fabrics[0].buy.along
    assert shared.from_backing is not None
    assert (shared.from_backing.names, shared.from_backing.more) == (("sleeve", "label"), F(0))
    assert "from what the panels leave: no more is bought for it" in said(shared)


def test_what_must_be_bought_besides_is_said_in_numbers() -> None:
    binding = Binding("dots", F(5, 2), allowance=F(100))
    small = replace(PROJECT, quilt=Quilt("", F(33), F(33)), binding=binding)
    plan = make_plan(small)
    alone = make_plan(replace(small, binding=None))
    assert plan.from_backing is not None
    assert plan.from_backing.more == plan.fabrics[0].buy.along - alone.fabrics[0].buy.along > 0
    assert "which adds" in said(plan)


def test_offcuts_are_offered_to_parts_of_another_cloth() -> None:
    plan = planned(sleeve=Sleeve("plum"), label=Label("plum"), binding=Binding("plum", F(5, 2)))
    assert plan.from_backing is not None
    offcuts = {offcut.rect for offcut in plan.fabrics[0].lay.offcuts}
    offered = dict(plan.from_backing.offers)
    assert offered
    assert set(offered.values()) <= offcuts
    assert len(set(offered.values())) == len(offered), "an offcut is offered once"
    for name in offered:
        assert f"which would hold the {name} too" in said(plan)


def test_nothing_is_offered_that_an_offcut_cannot_hold() -> None:
    wide = replace(PROJECT, quilt=Quilt("", F(76), F(90)), sleeve=Sleeve("plum"))
    plan = make_plan(wide)
    assert plan.from_backing is not None
    for _, rect in plan.from_backing.offers:
        assert max(rect.across, rect.along) >= 18


def test_a_quilt_without_a_backing_leaves_nothing() -> None:
    assert planned(backing=None, binding=Binding("plum", F(5, 2))).from_backing is None
