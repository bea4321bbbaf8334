"""The quilt's sizes on its way: what each of easing, take-up and squaring changes."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from core.edit import add_part
from core.fabric import Fabric
from core.measured import Measured, Squaring, TakeUp, Use
from core.plan import Plan, make_plan
from core.project_file import dumps, loads
from core.quilt import Backing, Batting, Binding, Border, Project, Quilt
from core.refusal import Refusal
from core.shape import Shape, ShapeKind

F = Fraction
PLUM = Fabric("plum", F(43), F(1, 2))
LAP = Project(
    Quilt("", F(50), F(60)),
    (PLUM,),
    backing=Backing("plum"),
    batting=Batting(),
    binding=Binding("plum", F(5, 2)),
)


def planned(**changes: object) -> Plan:
    return make_plan(replace(LAP, **changes))  # type: ignore[arg-type]


def test_take_up_in_quilting_changes_the_binding_and_not_the_layers() -> None:
    # 50 × 60 less 4 % is 48 × 57.6, up to the next sixteenth.
    plan = planned(take_up=TakeUp(quilting=F(4, 100)))
    assert plan.sizes.finished == (F(48), F(922, 16))
    assert plan.binding is not None
    assert plan.binding.perimeter == 2 * (48 + F(922, 16))
    assert plan.backing is not None
    assert (plan.backing.across, plan.backing.along) == (F(58), F(68))


def test_take_up_in_washing_changes_no_cut() -> None:
    plan, plain = planned(take_up=TakeUp(washing=F(5, 100))), planned()
    assert plan.fabrics == plain.fabrics
    assert plan.sizes.washed == (F(95, 2), F(57))
    # Wanted 90 after 5 %: make 95, which leaves 90.25 (quiltingboard.com 6723231).
    wide = replace(LAP.quilt, width=F(95))
    assert planned(quilt=wide, take_up=TakeUp(washing=F(5, 100))).sizes.washed[0] == F(361, 4)


def test_three_measures_stand_in_place_of_the_quilts_size() -> None:
    measured = Measured((F(49), F(48), F(47)), (F(62), F(61), F(60)), Use.CENTRE)
    plan = planned(measured=measured, borders=(Border("plum", F(3)),))
    assert plan.sizes.bordered == (F(54), F(67))
    said = {notice.path: notice.text for notice in plan.warnings}
    assert "ease in 1 in at the top" in said["measured"]
    assert "stretch 1 in at the bottom" in said["measured"]


def test_a_quilt_out_of_square_is_bound_round_what_can_be_trimmed_from_it() -> None:
    leaning = Squaring(F(50), F(60), F(50), F(60), F(79), F(77))
    plan = planned(squaring=leaning)
    found = plan.sizes.squareness
    assert found is not None
    assert plan.sizes.finished == (found.width, found.length)
    assert plan.sizes.layers == (F(50), F(60))
    assert any("out of square" in notice.text for notice in plan.warnings)


def test_a_polygon_is_not_squared_up() -> None:
    points = ((F(0), F(0)), (F(40), F(0)), (F(40), F(40)))
    square = Squaring(F(60), F(80), F(60), F(80), F(100), F(100))
    with pytest.raises(Refusal, match="four sides"):
        planned(outline=Shape(ShapeKind.POLYGON, points=points), squaring=square)


@pytest.mark.parametrize("kind", list(ShapeKind))
def test_layers_cover_the_box_round_every_outline(kind: ShapeKind) -> None:
    points = ((F(5), F(0)), (F(40), F(10)), (F(20), F(50)))
    quilt = replace(LAP.quilt, length=F(50) if kind is ShapeKind.CIRCLE else F(60))
    plan = planned(quilt=quilt, outline=Shape(kind, points=points))
    assert plan.backing is not None
    box = plan.sizes.laid
    assert 0 <= plan.backing.across - 8 - box.width < F(1, 16)
    assert 0 <= plan.backing.along - 8 - box.length < F(1, 16)
    assert plan.sewn is not None


@pytest.mark.parametrize("part", ["measured", "squaring", "take_up", "outline"])
def test_a_part_is_added_written_and_read_back(part: str) -> None:
    project = add_part(LAP, part)
    assert loads(dumps(project)) == project
    if part != "outline":
        assert make_plan(project).sizes.finished == (F(50), F(60))
