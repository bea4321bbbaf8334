"""How the four strips meet, what a coping strip reaches, and where joins fall."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.fabric import Fabric, Grain
from core.finish.border import BorderPlan, border_options
from core.finish.border_joins import with_joins
from core.finish.border_parts import NEAR_THE_MIDDLE, Rules, parts_of, places_of_joins
from core.finish.border_sides import Side
from core.lay.problem import Piece, Run
from core.lengths import INCHES_PER_MM
from core.plan import Plan, make_plan
from core.quilt import Border, Corners, First, Joins, Piecing, Project, Quilt, Sizing
from core.refusal import Refusal
from tests.core.finish.published import cloth

F = Fraction
PLAIN = Border("cloth", F(3), grain=Grain.LENGTHWISE)
RULES = Rules(NEAR_THE_MIDDLE, F(18))
SIDES, ENDS = First.SIDES, First.ENDS


def planned(border: Border, width: Fraction | int = 40, length: Fraction | int = 50) -> BorderPlan:
    return border_options(border, 1, F(width), F(length), lambda _: cloth(42))[0]


def lengths(plan: BorderPlan) -> dict[str, Fraction]:
    return {side.value: strip.length for strip in plan.strips for side in strip.sides}


@pytest.mark.parametrize(
    ("corners", "first", "left", "top", "right", "bottom"),
    [
        (Corners.BUTTED, SIDES, 50, 46, 50, 46),
        (Corners.BUTTED, ENDS, 56, 40, 56, 40),
        (Corners.SQUARES, ENDS, 50, 40, 50, 40),
        (Corners.PINWHEEL, SIDES, 53, 43, 53, 43),
        (Corners.ROUND, SIDES, 50, 43, 53, 46),
        (Corners.ROUND, ENDS, 56, 40, 53, 43),
        (Corners.MITRED, SIDES, 60, 50, 60, 50),
    ],
)
def test_each_strip_reaches_over_the_corners_that_it_covers(
    corners: Corners, first: First, left: int, top: int, right: int, bottom: int
) -> None:
    """A 40 × 50 centre, 3 in finished: 3 in more for each corner (worked by hand)."""
    plan = planned(replace(PLAIN, corners=corners, first=first))
    assert lengths(plan) == {"left": left, "top": top, "right": right, "bottom": bottom}


def test_a_different_cloth_each_gives_four_strips_of_their_own() -> None:
    border = replace(PLAIN, left_fabric="a", top_fabric="b", right_fabric="c", bottom_fabric="d")
    strips = planned(border).strips
    assert [(strip.name, strip.fabric) for strip in strips] == [
        ("border 1 left", "a"),
        ("border 1 right", "c"),
        ("border 1 top", "b"),
        ("border 1 bottom", "d"),
    ]


def test_strips_of_two_cloths_are_joined_cloth_by_cloth() -> None:
    border = replace(PLAIN, grain=Grain.CROSSWISE, top_fabric="b", bottom_fabric="b", squaring=F(0))
    runs = [demand.wanted for demand in planned(border, 60, 70).demands]
    assert [(run.name, run.cloth, run.needs) for run in runs if isinstance(run, Run)] == [
        ("border 1 strip 1", "cloth", F(140)),
        ("border 1 strip 2", "b", F(132)),
    ]


# --- coping strips


def test_a_coping_strip_brings_the_quilt_to_the_size_wished() -> None:
    coping = replace(PLAIN, sizing=Sizing.SIZE, to_width=F(45), to_length=F(54))
    plan = planned(coping)
    assert (plan.sides_width, plan.ends_width) == (F(5, 2), F(2))
    assert (plan.outer_width, plan.outer_length) == (F(45), F(54))
    assert plan.cut_widths == (F(3), F(5, 2))
    assert lengths(plan)["top"] == 45


def test_a_side_that_has_its_size_gets_no_strip() -> None:
    plan = planned(replace(PLAIN, sizing=Sizing.SIZE, to_length=F(54)))
    assert [strip.name for strip in plan.strips] == ["border 1 top and bottom"]
    assert (plan.outer_width, plan.outer_length) == (F(40), F(54))


@given(
    st.integers(80, 400).map(lambda quarters: F(quarters, 4)),
    st.integers(4, 60).map(lambda quarters: F(quarters, 4)),
    st.integers(1, 24).map(lambda eighths: F(eighths, 8)),
)
def test_a_coping_strip_for_blocks_is_the_least_that_lets_whole_blocks_fit(
    side: Fraction, block: Fraction, least: Fraction
) -> None:
    coping = replace(PLAIN, width=least, sizing=Sizing.BLOCKS, block=block)
    plan = border_options(coping, 1, side, side, lambda _: cloth(200))[0]
    assert plan.blocks is not None
    assert plan.outer_width - 2 * coping.seam == plan.blocks[0] * block
    assert least <= plan.sides_width < least + block / 2


@pytest.mark.parametrize(
    ("changes", "path", "words"),
    [
        ({"to_width": F(39)}, "to_width", "the quilt is 40 in wide before this strip"),
        ({"to_length": F(49)}, "to_length", "the quilt is 50 in long before this strip"),
        ({}, "to_width", "the quilt has that size already"),
        ({"to_width": F(40), "to_length": F(50)}, "to_width", "has that size already"),
        (
            {"to_width": F(44), "to_length": F(60), "corners": Corners.MITRED},
            "corners",
            "strips of 2 in and 5 in do not meet in a mitre",
        ),
    ],
)
def test_a_coping_strip_that_cannot_be_is_refused(
    changes: dict[str, object], path: str, words: str
) -> None:
    with pytest.raises(Refusal, match=words) as refused:
        planned(replace(PLAIN, sizing=Sizing.SIZE, **changes))  # type: ignore[arg-type]
    assert refused.value.path == f"borders[0].{path}"


def test_blocks_of_no_size_are_refused() -> None:
    with pytest.raises(Refusal, match="finished size of the blocks") as refused:
        planned(replace(PLAIN, sizing=Sizing.BLOCKS))
    assert refused.value.path == "borders[0].block"


# --- joins


@given(
    st.sampled_from([Piecing.CENTRED, Piecing.OFF_CENTRE]),
    st.integers(43 * 8, 140 * 8).map(lambda eighths: F(eighths, 8)),
    st.sampled_from([F(1, 2), F(7, 2)]),
)
def test_parts_reach_what_they_must_from_strips_of_the_cloth(
    piecing: Piecing, needs: Fraction, loss: Fraction
) -> None:
    parts = parts_of(piecing, needs, loss, F(42), RULES)
    assert len(parts) > 1
    assert max(parts) <= 42
    assert min(parts) >= 18
    made = sum(parts) - (len(parts) - 1) * loss
    assert made >= needs
    if min(parts) > 18:
        assert made - needs < len(parts) * F(1, 4)
    if piecing is Piecing.CENTRED:
        assert len(set(parts)) == 1


@given(st.integers(60 * 8, 82 * 8).map(lambda eighths: F(eighths, 8)))
def test_an_off_centre_join_is_never_near_the_middle(needs: Fraction) -> None:
    parts = parts_of(Piecing.OFF_CENTRE, needs, F(1, 2), F(42), RULES)
    for at in places_of_joins(parts, F(1, 2)):
        assert abs(at - needs / 2) >= min(NEAR_THE_MIDDLE, needs / 4)


@pytest.mark.parametrize(("off", "parts"), [(F(1, 8), 2), (F(9), 3)])
def test_how_far_off_the_middle_a_join_lies_may_be_said(off: Fraction, parts: int) -> None:
    # 80 in from strips of 42: two of them meet 42 - 1/4 - 40 = 1 3/4 in off the middle.
    made = parts_of(Piecing.OFF_CENTRE, F(80), F(1, 2), F(42), Rules(off, F(18)))
    assert len(made) == parts


def bordered(piecing: Piecing, joins: Joins = Joins.STRAIGHT) -> Plan:
    border = Border("cloth", F(3), joins=joins, piecing=piecing)
    fabric = Fabric("cloth", F(42), F(0))
    return make_plan(Project(Quilt("", F(60), F(70)), (fabric,), (border,)))


def pieced(piecing: Piecing, joins: Joins = Joins.STRAIGHT) -> BorderPlan:
    return bordered(piecing, joins).borders[0]


@pytest.mark.parametrize("joins", list(Joins))
def test_one_join_centred_lies_in_the_middle_of_each_strip(joins: Joins) -> None:
    plan = pieced(Piecing.CENTRED, joins)
    assert len(plan.joins_at) == 4
    for side, places in plan.joins_at:
        strip = next(strip for strip in plan.strips if side in strip.sides)
        [at] = places
        assert abs(at - strip.length / 2) <= F(1, 8), "the halves end on a ruler's mark"


def test_off_centre_joins_of_opposite_strips_do_not_face_each_other() -> None:
    places = dict(pieced(Piecing.OFF_CENTRE).joins_at)
    assert places[Side.LEFT] != places[Side.RIGHT]
    assert sum(places[Side.LEFT] + places[Side.RIGHT]) == 70


def test_joins_of_a_long_strip_lie_where_its_segments_end() -> None:
    """Straight joins; the strips 70, 70, 66, 66 are cut one after another, 1/2 in over each."""
    whole = bordered(Piecing.END_TO_END)
    [plan] = whole.borders
    starts = {Side.LEFT: F(0), Side.RIGHT: F(141, 2), Side.TOP: F(141), Side.BOTTOM: F(415, 2)}
    found = sorted(starts[side] + F(1, 4) + at for side, places in plan.joins_at for at in places)
    segments = sorted(whole.fabrics[0].lay.placements, key=lambda placed: placed.copy)
    ends = places_of_joins(tuple(placed.rect.across for placed in segments), F(1, 2))
    assert len(ends) == 6
    assert len(found) >= 5, "at most one is lost in the squaring"
    assert set(found) <= set(ends)


def test_a_strip_that_is_cut_whole_has_no_joins() -> None:
    whole = planned(PLAIN)
    assert with_joins(whole, ()) == whole


def test_metric_halves_end_on_a_millimetre() -> None:
    cm = 10 * INCHES_PER_MM
    border = Border("cloth", 8 * cm, seam=F(3, 4) * cm, squaring=cm, piecing=Piecing.CENTRED)
    plan = border_options(border, 1, 151 * cm, 173 * cm, lambda _: cloth(110 * cm))[0]
    halves = [d.wanted for d in plan.demands if isinstance(d.wanted, Piece)]
    assert [piece.name for piece in halves] == [
        "border 1 side, half",
        "border 1 top and bottom, half",
    ]
    assert all((piece.across / INCHES_PER_MM).denominator == 1 for piece in halves)
