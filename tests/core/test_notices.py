"""Notices: what a person is told before cutting, and when."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from core.binding_choices import Finishing
from core.fabric import Fabric, Grain
from core.lengths import Units
from core.plan import make_plan
from core.quilt import Backing, Batting, Binding, Project, Quilt, Sleeve
from core.refusal import Refusal
from core.shape import Facing, Shape, ShapeKind

F = Fraction
PLUM = Fabric("plum", F(43), F(1, 2))
LAP = Project(Quilt("", F(50), F(60)), (PLUM,))


def told(**changes: object) -> dict[str, str]:
    """The notices by the field that they are about."""
    plan = make_plan(replace(LAP, **changes))  # type: ignore[arg-type]
    assert len({notice.path for notice in plan.warnings}) == len(plan.warnings)
    return {notice.path: notice.text for notice in plan.warnings}


def test_a_plain_quilt_is_told_nothing() -> None:
    parts = {"backing": Backing("plum"), "batting": Batting(), "binding": Binding("plum", F(5, 2))}
    assert told(**parts) == {}


@pytest.mark.parametrize(
    ("strip", "finishing", "said"),
    [
        (F(5, 2), Finishing.HAND, None),
        (F(15, 8), Finishing.HAND, None),  # reaches exactly 1/16
        (F(2), Finishing.MACHINE, None),  # reaches exactly 1/8
        (F(15, 8), Finishing.MACHINE, "reaches only 1/16 in past the seam: to finish by machine"),
        (F(7, 4), Finishing.HAND, "lands on the seam and not past it: to finish by hand"),
        (F(13, 8), Finishing.HAND, "stops 1/16 in short of the seam"),
    ],
)
def test_a_small_reach_is_told(strip: Fraction, finishing: Finishing, said: str | None) -> None:
    notice = told(binding=Binding("plum", strip, finishing=finishing)).get("binding.strip_width")
    assert (notice is None) == (said is None)
    assert said is None or said in (notice or "")


def test_a_corner_sharper_than_45_degrees_is_told() -> None:
    corners = ((0, 0), (0, 60), (20, 60))  # atan(1/3) = 18.4°
    points = tuple((F(x), F(y)) for x, y in corners)
    shape = Shape(ShapeKind.POLYGON, points=points)
    notice = told(binding=Binding("plum", F(5, 2)), outline=shape)
    assert "Corner 1 is only 18.4° sharp" in notice["outline.points"]


@pytest.mark.parametrize(
    ("shape", "said"),
    [
        (None, None),
        (Shape(ShapeKind.CLIPPED, clip=F(6)), "is 38 in long"),
        (Shape(ShapeKind.OVAL), "is not straight"),
    ],
)
def test_a_sleeve_longer_than_the_top_edge_is_told(shape: Shape | None, said: str | None) -> None:
    notice = told(sleeve=Sleeve("plum"), outline=shape).get("sleeve.shorter")
    assert (notice is None) == (said is None)
    assert said is None or said in (notice or "")


def test_the_width_that_a_reach_notice_names_is_enough() -> None:
    notice = told(binding=Binding("plum", F(15, 8), finishing=Finishing.MACHINE))
    assert "Cut the strip 2 in wide" in notice["binding.strip_width"]
    assert "binding.strip_width" not in told(
        binding=Binding("plum", F(2), finishing=Finishing.MACHINE)
    )


def test_a_print_with_one_way_up_is_told_only_where_it_is_cut() -> None:
    one_way = replace(PLUM, one_way_print=True)
    spare = replace(one_way, name="spare")
    said = told(fabrics=(one_way, spare), binding=Binding("plum", F(5, 2)))
    assert "fabrics[0].one_way_print" in said
    assert "fabrics[1].one_way_print" not in said


CLOSE = Quilt("", F(50), F(63))  # needs 238 1/2 in; six strips of 42 and five joins give 239 1/2


def test_a_binding_that_just_fits_the_cloth_is_told() -> None:
    binding = Binding("plum", F(5, 2))
    assert "turns out under ≈41 7/8 in" in told(quilt=CLOSE, binding=binding)["binding"]
    assert "binding" not in told(quilt=Quilt("", F(50), F(58)), binding=binding)


@pytest.mark.parametrize(("usable", "strips"), [(F(42), 6), (F(335, 8), 6), (F(669, 16), 7)])
def test_the_plan_holds_down_to_the_width_that_is_told(usable: Fraction, strips: int) -> None:
    fabric = replace(PLUM, width=usable + 1)
    plan = make_plan(replace(LAP, quilt=CLOSE, fabrics=(fabric,), binding=Binding("plum", F(5, 2))))
    assert plan.binding is not None
    assert plan.binding.strips == strips


def test_a_batting_beyond_all_packages_is_told() -> None:
    assert (
        "larger than any package of the table"
        in told(quilt=Quilt("", F(114), F(120)), batting=Batting())["batting"]
    )


def test_a_wide_sleeve_is_told_to_be_split() -> None:
    assert "split in two" in told(quilt=Quilt("", F(92), F(60)), sleeve=Sleeve("plum"))["sleeve"]


def test_a_print_to_match_is_told_with_its_washed_repeat() -> None:
    fabric = replace(PLUM, repeat=F(10), shrinkage_along=F(1, 20))
    assert "repeat of 9 1/2 in" in told(fabrics=(fabric,), backing=Backing("plum"))["backing"]


def test_notices_are_worded_in_the_units_of_the_project() -> None:
    said = told(units=Units.CENTIMETRES, binding=Binding("plum", F(7, 4)))
    assert "cm" in said["binding.strip_width"]
    assert " in " not in said["binding.strip_width"].replace(" in two", "")


@pytest.mark.parametrize(("across", "along"), [(F(1, 25), F(0)), (F(0), F(1, 25))])
def test_cloth_that_shrinks_is_to_be_washed_first(across: Fraction, along: Fraction) -> None:
    shrinking = replace(PLUM, shrinkage_across=across, shrinkage_along=along)
    notices = told(fabrics=(shrinking,), binding=Binding("plum", F(5, 2)))
    assert "Wash and press plum first" in notices["fabrics[0].shrinkage.along"]
    assert "fabrics[0].shrinkage.along" not in told(fabrics=(shrinking,))


def test_curves_ask_for_bias_and_inside_corners_for_a_clip() -> None:
    rounded = Shape(ShapeKind.ROUNDED)
    straight = told(outline=rounded, binding=Binding("plum", F(5, 2)))
    assert "smallest radius of 4 in" in straight["binding.grain"]
    bias = told(outline=rounded, binding=Binding("plum", F(5, 2), grain=Grain.BIAS))
    assert "binding.grain" not in bias
    scalloped = told(
        outline=Shape(ShapeKind.SCALLOPED), binding=Binding("plum", F(5, 2), grain=Grain.BIAS)
    )
    assert "fold no mitre" in scalloped["outline"]


def test_joins_that_must_lie_near_a_corner_are_told_with_what_could_be_had() -> None:
    far = Binding("plum", F(5, 2), least_to_corner=F(24))
    assert "24 in were wished" in told(binding=far)["binding.least_to_corner"]
    best = make_plan(replace(LAP, binding=far)).sewn
    assert best is not None
    for side in Facing:
        said = told(binding=replace(far, start_side=side))["binding.least_to_corner"]
        better = best.edge_map.closing.facing is not side
        assert ("Closing on the" in said) or not better or "No start" in said


def test_a_side_that_the_quilt_lacks_is_told() -> None:
    triangle = Shape(ShapeKind.POLYGON, points=((F(0), F(0)), (F(40), F(0)), (F(40), F(40))))
    said = told(outline=triangle, binding=Binding("plum", F(5, 2), start_side=Facing.LEFT))
    assert "cannot be closed on the left side" in said["binding.start_side"]


def test_a_start_by_hand_that_is_too_near_a_corner_is_told_with_what_could_be_had() -> None:
    near = Binding("plum", F(5, 2), start_at=F(1))
    said = told(binding=near)
    assert (
        "comes as near as 1 in to a corner, where 2 1/2 in were wished" in said["binding.start_at"]
    )
    assert "Closing on the" in said["binding.start_at"]
    assert "binding.start_at" not in told(binding=replace(near, start_at=F(12)))


def test_a_start_beyond_the_edge_is_refused() -> None:
    far = Binding("plum", F(5, 2), start_at=F(900))
    with pytest.raises(Refusal, match=r"^binding.start_at: the edge is .* round; write less"):
        make_plan(replace(LAP, binding=far))
