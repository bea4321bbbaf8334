"""What a project holds by hand: written, read, minded, left aside, carried to plan and picture."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from core.by_hand.said import HandFlaw, HandMotif, HandPin
from core.drawing.cloth import draw_sheet
from core.drawing.frame import Heading
from core.drawing.marks import Label
from core.edit import put, remove
from core.lay.lay import Placement, Rect, Sheet
from core.lengths import Units
from core.plan import Plan, make_plan
from core.plan_json import plan_document
from core.project_file import dumps, load, loads
from core.quilt import Kits, Project
from core.refusal import Refusal
from tests.core.demos import demo
from tests.core.sound import assert_sound

F = Fraction
PATH = Path(__file__).resolve().parents[2] / "data" / "by-hand.crossgrain"
NIGHT, LAMP, TIDE = 0, 1, 2
FLAW = {"x": "30", "y": "10", "across": "3", "along": "4"}


@pytest.fixture(scope="module")
def project() -> Project:
    return load(PATH)


@pytest.fixture(scope="module")
def plan(project: Project) -> Plan:
    return make_plan(project)


def pin(name: str = "border 2 side", x: str = "0", y: str = "0", **more: object) -> dict[str, Any]:
    return {"name": name, "x": x, "y": y, "copy": 1, **more}


def pinned(project: Project, *pins: dict[str, Any], fabric: int = NIGHT) -> Project:
    return put(put(project, f"fabrics[{fabric}].pins", list(pins)), f"fabrics[{fabric}].flaws", [])


def placed(plan: Plan, fabric: int, name: str, copy: int = 1) -> Placement:
    laid = plan.fabrics[fabric].lay.placements
    return next(one for one in laid if (one.name, one.copy) == (name, copy))


def words(plan: Plan, fabric: int, sheet: Sheet = Sheet()) -> list[str]:  # noqa: B008 - frozen
    drawing = draw_sheet(plan, fabric, sheet, Heading.RIGHT)
    return [mark.texts[0] for mark in drawing.marks if isinstance(mark, Label)]


def test_what_is_said_is_written_and_read_back(project: Project) -> None:
    assert loads(dumps(project)) == project
    metric = replace(project, units=Units.CENTIMETRES)
    assert loads(dumps(metric)) == metric
    night = project.fabrics[NIGHT]
    assert night.pins[0] == HandPin("border 2 side", F(31, 2), F(0), copy=2)
    assert night.flaws == (HandFlaw(Rect(F(8), F(20), F(3), F(4)), word="stain"),)
    assert project.fabrics[TIDE].motifs[0].name == "label"
    assert project.fabrics[TIDE].motifs[1].name is None


def test_a_project_of_which_nothing_is_said_by_hand_has_no_such_keys(project: Project) -> None:
    assert "pins" not in dumps(pinned(project, fabric=NIGHT)).split('"fabrics"')[1].split("lamp")[0]


def test_the_plan_minds_it_all(plan: Plan) -> None:
    assert_sound(plan)
    second = placed(plan, NIGHT, "border 2 side", 2)
    assert (second.rect.x, second.rect.y) == (F(31, 2), F(0))
    assert any(p.rect.along == 60 and p.rect.x == 33 for p in plan.fabrics[NIGHT].lay.placements)
    label = placed(plan, TIDE, "label").rect
    assert label.holds(Rect(F(30), F(120), F(4), F(3)))
    assert plan.fabrics[NIGHT].by_hand.pin_of(second) == 0
    assert plan.fabrics[TIDE].by_hand.motifs_of(placed(plan, TIDE, "label")) == (0,)


def test_a_pin_whose_piece_is_no_more_is_left_aside_with_a_notice(plan: Plan) -> None:
    said = [notice for notice in plan.warnings if "left aside" in notice.text]
    assert [notice.path for notice in said] == ["fabrics[0].pins[1]"]
    assert said[0].text == "The pin of border 2 side 7 is left aside: there are only 2 now."


@pytest.mark.parametrize(
    ("said", "why"),
    [
        (pin("border 9 side"), "no such piece is cut from night sky now"),
        (pin(length="20"), "it is cut in one piece now"),
        (pin("binding", copy=None), "it is joined from strips now"),
        (pin("binding", copy=None, length="60", run_copy=2), "there is only 1 now"),
        (pin(on="on_hand[3]"), "that piece of night sky is not on hand now"),
    ],
)
def test_why_a_pin_is_left_aside(project: Project, said: dict[str, Any], why: str) -> None:
    plan = make_plan(pinned(project, said), draft=True)
    assert why in plan.fabrics[NIGHT].by_hand.aside[0].why
    assert plan.fabrics[NIGHT].by_hand.pins == ()


def test_a_smaller_quilt_with_fewer_pieces_still_has_a_plan(project: Project) -> None:
    plan = make_plan(remove(project, "borders[1]"), draft=True)
    assert [n.path for n in plan.warnings if "left aside" in n.text] == [
        "fabrics[0].pins[0]",
        "fabrics[0].pins[1]",
    ]


@pytest.mark.parametrize(
    ("pins", "path", "said"),
    [
        ([pin(x="40")], "fabrics[0].pins[0].x", "reaches to 44 1/2 in across"),
        ([pin(), pin(copy=2, x="4")], "fabrics[0].pins[1]", 'lies over the pinned "border 2 side"'),
        (
            [pin(copy=9), pin(), pin(copy=2, x="4")],
            "fabrics[0].pins[2]",
            "pin one of them elsewhere",
        ),
        ([pin(), pin(x="20")], "fabrics[0].pins[1].copy", "is pinned already"),
    ],
)
def test_what_cannot_be_laid_is_refused_at_its_place(
    project: Project, pins: list[dict[str, Any]], path: str, said: str
) -> None:
    with pytest.raises(Refusal) as refused:
        make_plan(pinned(project, *pins))
    assert refused.value.path == path
    assert said in refused.value.sentence


def test_a_pin_on_a_flaw_is_refused_in_the_projects_units(project: Project) -> None:
    flawed = put(pinned(project, pin()), "fabrics[0].flaws", [{**FLAW, "x": "2"}])
    with pytest.raises(Refusal, match=r"fabrics\[0\]\.pins\[0\]: the pinned .* lies on a flaw"):
        make_plan(flawed)
    metric = replace(pinned(project, pin(x="40")), units=Units.CENTIMETRES)
    with pytest.raises(Refusal, match=r"reaches to 113\.03 cm"):
        make_plan(metric)


@pytest.mark.parametrize(
    ("path", "value", "named"),
    [
        ("fabrics[0].pins[0].on", "table", "fabrics[0].pins[0].on"),
        ("fabrics[0].pins[0].x", "-1", "fabrics[0].pins[0].x"),
        ("fabrics[0].pins[0].colour", "red", "fabrics[0].pins[0].colour"),
        ("fabrics[0].flaws[0].across", "0", "fabrics[0].flaws[0].across"),
        ("fabrics[0].flaws[0].word", 3, "fabrics[0].flaws[0].word"),
        ("fabrics[2].motifs[0].name", "", "fabrics[2].motifs[0].name"),
        ("fabrics[2].motifs", {}, "fabrics[2].motifs"),
    ],
)
def test_a_value_that_cannot_be_is_refused_by_name(
    project: Project, path: str, value: object, named: str
) -> None:
    with pytest.raises(Refusal) as refused:
        put(project, path, value)
    assert refused.value.path == named


def test_a_pin_chooses_the_way_of_cutting_that_has_its_piece(project: Project) -> None:
    # Cut either way, the border would be joined from strips; only in one piece is it pinned.
    either = put(project, "borders[1].grain", "either")
    plan = make_plan(pinned(either, pin(x="20")), draft=True)
    assert placed(plan, NIGHT, "border 2 side").rect.x == 20


def test_a_piece_that_was_put_down_is_not_cut_in_another_size_to_buy_less(
    project: Project,
) -> None:
    plain = put(put(project, "fabrics[2].one_way_print", False), "fabrics[2].motifs", [])
    panels = make_plan(put(plain, "backing.seams", "lengthwise"), draft=True).part("backing panel")
    assert panels.along is not None
    held = pin("backing panel", across=f"{panels.across}", along=f"{panels.along}")
    known, unknown = (
        make_plan(pinned(plain, said, fabric=TIDE), draft=True)
        for said in (held, pin("backing panel"))
    )
    assert (known.part("backing panel").across, known.part("backing panel").along) == (
        panels.across,
        panels.along,
    )
    assert unknown.part("backing panel").along != panels.along
    assert known.fabrics[TIDE].buy.along > unknown.fabrics[TIDE].buy.along
    written = dumps(known.project)
    assert loads(written) == known.project
    assert '"across"' not in dumps(unknown.project).split('"pins"')[1].split("]")[0]


def test_a_flaw_beside_the_cloth_is_left_aside_and_one_half_on_it_is_cut_to_it(
    project: Project,
) -> None:
    flaws = [{**FLAW, "x": "41"}, {**FLAW, "x": "42"}]
    plan = make_plan(put(pinned(project), "fabrics[0].flaws", flaws), draft=True)
    assert [aside.path for aside in plan.fabrics[NIGHT].by_hand.aside] == ["flaws[1]"]
    assert_sound(plan)


def test_a_pinned_piece_may_hold_its_own_motif(project: Project) -> None:
    label = pin("label", x="28", y="119")
    plan = make_plan(put(project, "fabrics[2].pins", [label]), draft=True)
    assert plan.fabrics[TIDE].by_hand.motifs_of(placed(plan, TIDE, "label")) == (0,)
    elsewhere = put(project, "fabrics[2].pins", [pin("label", x="28", y="1")])
    said = make_plan(elsewhere, draft=True).fabrics[TIDE].by_hand.aside
    assert [aside.why for aside in said] == [
        "The motif for label is left aside: every such piece has its place already."
    ]


def test_what_is_said_of_a_piece_on_hand_goes_with_it(project: Project) -> None:
    on_hand = [{"across": "20", "along": "20", "count": 1}, *([{"across": "42", "along": "9"}] * 2)]
    three = put(project, "fabrics[1].on_hand", on_hand)
    flaws = [{**FLAW, "on": f"on_hand[{place}]"} for place in range(3)]
    three = put(three, "fabrics[1].flaws", flaws)
    left = remove(three, "fabrics[1].on_hand[1]").fabrics[LAMP]
    assert [flaw.sheet.on for flaw in left.flaws] == ["on_hand[0]", "on_hand[1]"]
    assert len(left.on_hand) == 2


def test_of_kits_cut_one_by_one_each_has_its_own_share_of_what_is_on_hand(project: Project) -> None:
    on_hand = [{"across": "20", "along": "20"}, {"across": "42 1/2", "along": "9", "count": 2}]
    kits = put(project, "fabrics[1].on_hand", on_hand)
    kits = put(put(kits, "quilt.copies", 2), "quilt.kits", Kits.EACH.value)
    kits = put(kits, "fabrics[1].flaws", [{**FLAW, "y": "4", "on": "on_hand[1]"}])
    lamp = make_plan(kits, draft=True).fabrics[LAMP]
    assert lamp.fabric.flaws[0].sheet == Sheet("on_hand[0]")
    assert all(not p.rect.within(lamp.fabric.flaws[0].rect) for p in lamp.lay.placements)


def test_the_json_says_what_each_came_to(plan: Plan) -> None:
    night, _, tide = plan_document(plan)["fabrics"]
    assert [pin["label"] for pin in night["pins"]] == ["B2", None, "G1"]
    assert night["flaws"] == [
        {
            "word": "stain",
            "on": "bolt",
            "on_copy": 1,
            "x": "8",
            "y": "20",
            "across": "3",
            "along": "4",
        }
    ]
    assert [motif["label"] for motif in tide["motifs"]] == ["J", None]


def test_the_picture_says_it_in_words(plan: Plan) -> None:
    night = words(plan, NIGHT)
    assert "stain\nkeep clear" in night
    assert any(text.startswith("B2\n") and text.endswith("(pinned)") for text in night)
    assert any(
        text.startswith("J\n") and text.endswith("(with motif)") for text in words(plan, TIDE)
    )
    assert "flaw\nkeep clear" in words(plan, LAMP, Sheet("on_hand[0]"))


def test_a_motif_that_no_piece_holds_says_what_it_is_for(project: Project) -> None:
    motif = HandMotif("kite", Rect(F(1), F(64), F(2), F(2)))
    fabric = replace(project.fabrics[NIGHT], motifs=(motif,))
    plan = make_plan(replace(project, fabrics=(fabric, *project.fabrics[1:])), draft=True)
    assert "motif for kite" in words(plan, NIGHT)


def test_a_motif_amid_the_cloth_of_the_panels_buys_no_more_than_without_it() -> None:
    """Room for a whole panel is kept before the label; the sleeve is joined from both sides."""
    lights = demo("harbour-lights")
    motif = {"x": "8 1/8", "y": "117 5/8", "across": "3 3/8", "along": "4", "name": "label"}
    tide = make_plan(put(lights, "fabrics[2].motifs", [motif])).fabrics[TIDE]
    assert tide.buy.along == make_plan(lights).fabrics[TIDE].buy.along
    assert tide.lay.proved_least
