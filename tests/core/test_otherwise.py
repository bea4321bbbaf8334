"""What cutting a border along the other grain would buy: the numbers are those of its own plan."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from core.fabric import Fabric, Grain
from core.plan import Plan, make_plan
from core.quilt import (
    Backing,
    Binding,
    Border,
    Frame,
    Joins,
    Piecing,
    Project,
    Quilt,
    Seams,
)

F = Fraction
PLUM = Fabric("plum", F(43), F(1, 2), price_per_yard=F(12), straightening=F(1))
DOTS = Fabric("dots", F(43), F(1, 2))
CROSSWISE = Border("plum", F(4))
PROJECT = Project(Quilt("", F(60), F(70)), (PLUM, DOTS), (CROSSWISE,), Backing("dots"),
                  binding=Binding("plum", F(5, 2)))  # fmt: skip


def planned(grain: Grain, **changes: object) -> Plan:
    border = replace(CROSSWISE, grain=grain, **changes)  # type: ignore[arg-type]
    return make_plan(replace(PROJECT, borders=(border,)))


@pytest.mark.parametrize(
    ("grain", "other"), [(Grain.CROSSWISE, Grain.LENGTHWISE), (Grain.LENGTHWISE, Grain.CROSSWISE)]
)
def test_what_is_said_is_what_the_other_plan_buys(grain: Grain, other: Grain) -> None:
    here, there = planned(grain), planned(other)
    [said] = here.otherwise
    more = there.fabrics[0].buy.along - here.fabrics[0].buy.along
    assert said.how.startswith(f"Cut {other.value}")
    assert (said.path, said.more, said.cost) == ("borders[0]", (("plum", more),), more / 3)


def test_it_is_said_in_the_shop_s_words() -> None:
    [said] = planned(Grain.CROSSWISE).otherwise
    assert said.sentence(PROJECT).startswith("Cut lengthwise in one piece, with no joins, it would")
    assert "yd more of plum (" in said.sentence(PROJECT)
    [back] = planned(Grain.LENGTHWISE).otherwise
    assert back.sentence(PROJECT).startswith("Cut crosswise, joined from strips, it would take")
    assert " less of plum" in back.sentence(PROJECT)


def test_what_is_proved_least_is_not_said_to_be_about_right() -> None:
    kits = replace(PROJECT, quilt=replace(PROJECT.quilt, copies=4), backing=None, binding=None)
    [said] = make_plan(kits).otherwise
    assert not said.about
    assert "it would take about" in replace(said, about=True).sentence(kits)


def test_a_border_from_the_backing_s_cloth_costs_less_than_its_length() -> None:
    """Lengthwise strips lie beside the backing's narrow panel: one lay, no cloth of their own."""
    lap = replace(PROJECT, quilt=Quilt("", F(42), F(60)), binding=None)
    border = replace(CROSSWISE, grain=Grain.LENGTHWISE)
    own = make_plan(replace(lap, borders=(border,)))
    shared = make_plan(replace(lap, borders=(replace(border, fabric="dots"),)))
    assert shared.fabrics[0].buy.along == 0
    saved = sum(f.buy.along for f in own.fabrics) - sum(f.buy.along for f in shared.fabrics)
    assert saved > 0


def test_strips_that_are_whole_crosswise_have_nothing_to_gain() -> None:
    small = replace(PROJECT, quilt=Quilt("", F(30), F(36)))
    assert make_plan(small).otherwise == ()


def test_a_border_too_wide_to_lie_along_has_no_other_way() -> None:
    wide = replace(
        CROSSWISE, fabric="narrow", width=F(16), piecing=Piecing.CENTRED, joins=Joins.STRAIGHT
    )
    narrow = Fabric("narrow", F(16), F(0))
    plan = make_plan(replace(PROJECT, fabrics=(PLUM, DOTS, narrow), borders=(wide,)))
    assert plan.otherwise == ()


@pytest.mark.parametrize(
    ("frame", "seams"), [(Frame.TOP, Seams.CROSSWISE), (Frame.SIDE, Seams.LENGTHWISE)]
)
def test_seams_run_along_the_rollers_and_the_plan_says_what_the_other_way_takes(
    frame: Frame, seams: Seams
) -> None:
    def backed(backing: Backing) -> Plan:
        return make_plan(Project(Quilt("", F(60), F(75)), (PLUM,), backing=backing))

    on_frame = backed(Backing("plum", frame=frame))
    assert on_frame.backing is not None
    assert on_frame.backing.seams is seams
    other = Seams.LENGTHWISE if seams is Seams.CROSSWISE else Seams.CROSSWISE
    across = backed(Backing("plum", seams=other))
    more = across.fabrics[0].buy.along - on_frame.fabrics[0].buy.along
    [said] = on_frame.otherwise
    assert said.how == "With seams across the rollers"
    assert said.more == ((("plum", more),) if more else ())


def test_a_one_way_print_that_cannot_run_along_the_rollers_is_told() -> None:
    one_way = replace(PLUM, one_way_print=True)
    backing = Backing("plum", frame=Frame.TOP)
    plan = make_plan(Project(Quilt("", F(60), F(75)), (one_way,), backing=backing))
    assert plan.backing is not None
    assert plan.backing.off_frame
    assert "backing.frame" in {notice.path for notice in plan.warnings}
