"""How the cut pieces become parts: every piece is named, and the lengths are the plan's."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import HealthCheck, given, settings

from core.fabric import Fabric, Grain
from core.lengths import show
from core.plan import make_plan
from core.quilt import Backing, Border, Corners, Project, Quilt, Sleeve
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
        (Corners.MITRED, "Fold each corner at 45°"),
    ],
)
def test_each_kind_of_corner_has_its_order_of_sewing(corners: Corners, words: str) -> None:
    border = Border("plum", F(3), corners, grain=Grain.LENGTHWISE)
    assert words in made(borders=(border,))["Border 1"]


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
        plan = make_plan(project)
    except Refusal:
        return
    makings = sewing(plan)
    assert len(makings) == len(plan.borders) + bool(plan.backing) + bool(plan.sleeve)
    for making in makings:
        assert making.sentences
        assert all(sentence.endswith(".") for sentence in making.sentences)
    for border, making in zip(plan.borders, makings, strict=False):
        if border.joined:
            part = plan.part(f"border {border.number} strip")
            assert part.letter in making.sentences[0]
            for strip in border.strips:
                assert show(strip.length, project.units) in making.sentences[0]
