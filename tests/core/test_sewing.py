"""How the cut pieces become parts: every piece is named, and the lengths are the plan's."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import HealthCheck, given, settings

from core.fabric import Fabric, Grain
from core.lengths import show
from core.plan import make_plan
from core.quilt import Backing, Border, Corners, First, Piecing, Project, Quilt, Sleeve
from core.refusal import Refusal
from core.sewing import sewing
from tests.strategies import projects

F = Fraction
PLUM = Fabric("plum", F(43), F(1, 2))
LAP = Project(Quilt("", F(50), F(60)), (PLUM,))


def made(**changes: object) -> dict[str, str]:
    """What is said of each part, as one text."""
    plan = make_plan(replace(LAP, **changes))  # type: ignore[arg-type]
    return {making.title: " ".join(making.sentences) for making in sewing(plan)}


def test_a_pieced_border_says_what_to_cut_from_the_long_strip() -> None:
    said = made(borders=(Border("plum", F(3)),))["Border 1"]
    assert "with diagonal joins" in said
    assert "2 of 60 in (side)" in said
    assert "2 of 56 in (top and bottom)" in said


@pytest.mark.parametrize(
    ("corners", "words"),
    [
        (Corners.BUTTED, "then the top and bottom across their ends"),
        (Corners.SQUARES, "Sew a corner square"),
        (Corners.PINWHEEL, "a partial seam"),
        (Corners.ROUND, "Sew on the left strip, then top, right and bottom"),
        (Corners.MITRED, "Fold each corner at 45°"),
    ],
)
def test_each_kind_of_corner_has_its_order_of_sewing(corners: Corners, words: str) -> None:
    border = Border("plum", F(3), corners, grain=Grain.LENGTHWISE)
    assert words in made(borders=(border,))["Border 1"]


@pytest.mark.parametrize(
    ("corners", "words"),
    [
        (Corners.BUTTED, "Sew the top and bottom on first, then the two sides across their ends."),
        (Corners.SQUARES, "to each end of the side strips"),
        (Corners.ROUND, "Sew on the top strip, then right, bottom and left"),
    ],
)
def test_ends_first_is_said(corners: Corners, words: str) -> None:
    border = Border("plum", F(3), corners, grain=Grain.LENGTHWISE, first=First.ENDS)
    assert words in made(borders=(border,))["Border 1"]


@pytest.mark.parametrize(
    ("piecing", "words"),
    [
        (
            Piecing.CENTRED,
            "from 2 parts, A1 to A4 (half), with diagonal joins, so that the join "
            "lies in the middle. Square it to 60 in.",
        ),
        (Piecing.OFF_CENTRE, "turn every second strip end for end"),
    ],
)
def test_a_strip_pieced_by_itself_says_where_its_join_lies(piecing: Piecing, words: str) -> None:
    assert words in made(borders=(Border("plum", F(3), piecing=piecing),))["Border 1"]


def test_strips_in_one_piece_are_not_joined() -> None:
    assert "Join" not in made(borders=(Border("plum", F(3), grain=Grain.LENGTHWISE),))["Border 1"]


def test_the_backing_says_its_seams_and_its_size() -> None:
    said = made(backing=Backing("plum"))["Backing"]
    assert "1/2 in seams" in said
    assert said.endswith("The backing measures 58 × 68 in.")


def test_a_backing_in_one_piece_has_no_seam_to_sew() -> None:
    wide = replace(PLUM, width=F(108))
    assert made(fabrics=(wide,), backing=Backing("plum"))["Backing"] == (
        "The backing measures 58 × 68 in."
    )


def test_a_long_sleeve_is_joined_first() -> None:
    assert "lies 4 in deep" in made(sleeve=Sleeve("plum"))["Hanging sleeve"]


def test_a_bare_top_needs_nothing_sewn_on() -> None:
    assert made() == {}


@settings(max_examples=80, suppress_health_check=[HealthCheck.too_slow])
@given(projects())
def test_every_part_of_any_plan_is_said_with_its_letters(project: Project) -> None:
    try:
        plan = make_plan(project, draft=True)
    except Refusal:
        return
    makings = sewing(plan)
    parts = (plan.backing, plan.sleeve, plan.label_patch, plan.binding, plan.sewn)
    assert len(makings) == len(plan.borders) + sum(part is not None for part in parts)
    for making in makings:
        assert making.sentences
        assert all(sentence.endswith(".") for sentence in making.sentences)
    for border, making in zip(plan.borders, makings, strict=False):
        if border.joined:
            said = " ".join(making.sentences)
            pieced = [strip for strip in border.strips if strip.parts]
            assert all(show(strip.length, project.units) in said for strip in pieced)
            whole_run = f"border {border.number} strip"
            runs = [part for part in plan.parts if part.name.startswith(whole_run)]
            assert bool(runs) != bool(pieced)
            assert all(part.letter in said for part in runs)
            if runs:
                assert all(show(s.length, project.units) in said for s in border.strips)
