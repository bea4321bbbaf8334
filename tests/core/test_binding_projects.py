"""Whole projects, one for each way of binding: planned, checked, drawn, told and written back."""

from __future__ import annotations

import json
import re
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from core.binding_choices import (
    Accent,
    AccentKind,
    BiasCut,
    BiasMethod,
    BiasSource,
    Face,
    Finishing,
    Order,
    Scrappy,
    Tails,
    WidthRule,
)
from core.drawing.bias_plan import bias_drawings
from core.drawing.edge_section import draw_edge_section
from core.drawing.marks import Area, Drawing, Label, Line
from core.fabric import Fabric, Grain, OnHand
from core.lengths import INCHES_PER_MM, Units
from core.plan import Plan, make_plan
from core.plan_json import plan_document
from core.project_file import dumps, loads
from core.quilt import Binding, Closing, Fold, Joins, Project, Quilt
from core.refusal import Refusal
from core.sewing import sewing
from tests.core.sound import assert_sound

F = Fraction
MM = INCHES_PER_MM
PLUM = Fabric("plum", F(43), F(1, 2), straightening=F(1))
CLOTHS = (
    PLUM,
    replace(PLUM, name="dots", on_hand=(OnHand(F(18), F(21), 4),)),
    replace(PLUM, name="tide", width=F(44)),
)
BIAS = {"grain": Grain.BIAS}
WAYS: dict[str, dict[str, Any]] = {
    "double fold, by machine from the back": {
        "finishing": Finishing.MACHINE, "first_face": Face.BACK,
    },
    "single fold": {"strip_width": F(3, 2), "fold": Fold.SINGLE},
    "faced": {"fold": Fold.FACED},
    "faced, joined": {"fold": Fold.FACED, "grain": Grain.EITHER},
    "a finished width on both faces": {"strip_width": None, "finished_width": F(3, 8)},
    "a finished width with the seam kept": {
        "strip_width": None, "finished_width": F(1, 2), "width_rule": WidthRule.SEAM,
    },
    "a tube from a square": BIAS,
    "a tube from a rectangle": {**BIAS, "bias": BiasCut(BiasMethod.TUBE, BiasSource.RECTANGLE)},
    "strips from a square": {**BIAS, "bias": BiasCut(BiasMethod.STRIPS, BiasSource.SQUARE)},
    "strips from a rectangle": {**BIAS, "bias": BiasCut(BiasMethod.STRIPS, BiasSource.RECTANGLE)},
    "strips from fat quarters": {
        **BIAS, "fabric": "dots", "bias": BiasCut(BiasMethod.STRIPS, BiasSource.ON_HAND),
        "shortest": F(9),
    },
    "angled joins, straight closing": {"joins": Joins.ANGLED, "closing": Closing.STRAIGHT},
    "tucked": {"closing": Closing.TUCKED},
    "two cloths, edge to edge": {"back_fabric": "tide"},
    "scrappy in turn": {"scrappy": Scrappy(Order.REPEATING, ("plum", "dots", "tide"))},
    "scrappy at random, along the cloth": {
        "grain": Grain.LENGTHWISE,
        "scrappy": Scrappy(Order.RANDOM, ("plum", "dots", "tide"), F(9), 7),
    },
    "scrappy on the bias": {
        **BIAS, "scrappy": Scrappy(Order.REPEATING, ("plum", "dots", "tide")),
    },
    "scrappy bias strips": {
        **BIAS, "bias": BiasCut(BiasMethod.STRIPS), "joins": Joins.STRAIGHT,
        "scrappy": Scrappy(Order.RANDOM, ("plum", "tide"), F(12)),
    },
    "faced in two cloths": {
        "fold": Fold.FACED, "scrappy": Scrappy(Order.REPEATING, ("plum", "dots")),
    },
    "faced in two cloths, joined": {
        "fold": Fold.FACED, "grain": Grain.EITHER,
        "scrappy": Scrappy(Order.REPEATING, ("plum", "dots")),
    },
    "a flange": {"accent": Accent(AccentKind.FLANGE, "dots")},
    "a piping on the bias": {**BIAS, "accent": Accent(AccentKind.PIPING, "dots")},
}  # fmt: skip


def project(way: str, **quilt: Any) -> Project:  # noqa: ANN401 - a quilt's other fields
    binding = Binding(**{"fabric": "plum", "strip_width": F(5, 2), **WAYS[way]})
    return Project(Quilt("Lantern", F(36), F(45), **quilt), CLOTHS, binding=binding)


def planned(way: str) -> Plan:
    return make_plan(project(way))


@pytest.mark.parametrize("way", WAYS)
def test_every_way_of_binding_plans_soundly_and_reads_back(way: str) -> None:
    made = project(way)
    assert loads(dumps(made)) == made
    assert_sound(make_plan(made))


@pytest.mark.parametrize(
    "way",
    ["two cloths, edge to edge", "scrappy in turn", "scrappy on the bias", "a flange", "faced"],
)
def test_several_quilts_are_cut_at_once(way: str) -> None:
    assert_sound(make_plan(project(way, copies=3)))


@pytest.mark.parametrize("way", WAYS)
def test_the_plan_s_json_says_how_it_is_made(way: str) -> None:
    plan = planned(way)
    said = json.loads(json.dumps(plan_document(plan)))["binding"]
    assert F(said["strip_width"]) == plan.binding.widths.strip  # type: ignore[union-attr]
    for key, word in (
        ("bias", "a tube"), ("bias", "strips from"), ("scrappy", "scrappy"),
        ("two_cloth", "two cloths, edge"), ("facing", "faced"),
    ):  # fmt: skip
        if word in way:
            assert said[key], (way, key)
    assert (said["ends"] is None) == (said["facing"] is not None)
    face = "second_face" if said["facing"] else "first_face"
    assert said["layers"]["at_corner"][face] > said["layers"]["along_edge"][face]


TOLD = {
    "double fold, by machine from the back": ("on the back of the quilt", "1/8 in from the fold"),
    "single fold": ("1/4 in of one long edge under",),
    "faced": ("turn them wholly to the back",),
    "faced, joined": ("2 of 45 in (the sides)", "2 of 37 in (top and bottom)"),
    "a tube from a square": ("mark 6 strips 2 1/2 in wide", "one strip out of step"),
    "strips from fat quarters": ("trim their ends to slant the same way",),
    "angled joins, straight closing": ("with angled joins", "two seams, and join them straight"),
    "tucked": ("turn 3/8 in of it under", "2 in lies inside the fold"),
    "scrappy on the bias": ("Cut 6 segments of", "on their slanted ends in this order"),
    "faced in two cloths, joined": ("Cut from that of plum 2 of 45 in (the sides)",),
    "two cloths, edge to edge": ("edge to edge with a 1/4 in seam", "plum goes to the front"),
    "a flange": ("1/8 in will show past the seam",),
    "a piping on the bias": ("round a cord 1/8 in thick",),
}


@pytest.mark.parametrize("way", TOLD)
def test_the_sewing_is_told_with_this_project_s_numbers(way: str) -> None:
    [said] = [making.sentences for making in sewing(planned(way)) if making.title == "Binding"]
    for words in TOLD[way]:
        assert words in " ".join(said), said


def test_the_scrappy_order_is_told_by_letters() -> None:
    plan = planned("scrappy in turn")
    assert plan.binding is not None
    assert plan.binding.scrappy is not None
    count = len(plan.binding.scrappy.order)
    [said] = [making.sentences for making in sewing(plan) if making.title == "Binding"]
    [order] = [text for text in said if "in this order" in text]
    letters = order.split("order: ")[1].split(";")[0].split(" ")
    assert letters == [("A", "B", "C")[place % 3] for place in range(count)]


def test_no_two_neighbours_of_a_scrappy_ring_are_of_one_cloth() -> None:
    # Of 29 segments of 10 1/8 in 28 would go round and end on the first cloth; of 28, 27 do.
    way = {"scrappy": Scrappy(Order.REPEATING, ("plum", "dots", "tide"))}
    binding = Binding("plum", F(5, 2), **way)  # type: ignore[arg-type]
    plan = make_plan(Project(Quilt("", F(46), F(58)), CLOTHS, binding=binding))
    assert plan.binding is not None
    assert plan.binding.scrappy is not None
    assert plan.sewn is not None
    order = plan.binding.scrappy.order[: len(plan.sewn.edge_map.order)]
    assert all(one != other for one, other in zip(order, (*order[1:], order[0]), strict=True))


def words_of(drawing: Drawing) -> str:
    return " ".join(mark.texts[0] for mark in drawing.marks if isinstance(mark, Label))


@pytest.mark.parametrize("way", WAYS)
def test_the_section_is_in_true_proportion(way: str) -> None:
    plan = planned(way)
    drawing = draw_edge_section(plan)
    assert drawing is not None
    assert plan.binding is not None
    quilt = next(mark for mark in drawing.marks if isinstance(mark, Area))
    edge, surface = quilt.points[0]
    assert quilt.points[2][1] - surface == pytest.approx(1 / 8)  # the edge's thickness
    [strip] = [m for m in drawing.marks if isinstance(m, Line) and m.role == "binding"]
    below = [x for x, y in strip.points if y > surface + 1 / 8]
    assert max(below) - edge == pytest.approx(float(plan.binding.second_face_width), abs=1 / 64)
    seam = float(plan.binding.widths.seam)
    assert any(x - edge == pytest.approx(seam) for x, _ in strip.points)


def test_a_tube_s_marking_plan_draws_each_strip_and_says_both_yields() -> None:
    plan = planned("a tube from a square")
    assert plan.binding is not None
    assert plan.binding.bias is not None
    [piece] = plan.binding.bias.pieces
    [drawing] = bias_drawings(plan)
    strips = [m for m in drawing.marks if isinstance(m, Area) and m.role == "binding"]
    assert len(strips) == 1 + piece.turns  # the triangle, and the strips of the band
    assert "charts print" in words_of(drawing)
    for strip in strips[1:]:
        (x1, y1), (x2, _), _, (x4, y4) = strip.points
        wide = (x2 - x1) / 2**0.5
        assert wide == pytest.approx(2.5)
        assert x1 - x4 == pytest.approx(y4 - y1)  # at 45°


def test_strips_one_by_one_are_drawn_as_wide_as_they_are_cut() -> None:
    plan = planned("strips from a square")
    assert plan.binding is not None
    assert plan.binding.bias is not None
    [piece] = plan.binding.bias.pieces
    [drawing] = bias_drawings(plan)
    strips = [m for m in drawing.marks if isinstance(m, Area) and m.role == "binding"]
    assert len(strips) == len(piece.strips)
    for strip in strips:
        sums = [x + y for x, y in strip.points]
        assert (max(sums) - min(sums)) / 2**0.5 == pytest.approx(2.5)


def test_a_metric_binding_is_told_in_centimetres_alone() -> None:
    cloth = Fabric("plum", 1100 * MM, 10 * MM, 100 * MM)
    binding = Binding(
        "plum", 60 * MM, allowance=250 * MM, seam=6 * MM, accent=Accent(AccentKind.FLANGE),
        finishing=Finishing.MACHINE, closing=Closing.TUCKED,
    )  # fmt: skip
    plan = make_plan(
        Project(
            Quilt("", 900 * MM, 1200 * MM, 3 * MM), (cloth,), binding=binding,
            units=Units.CENTIMETRES,
        )
    )  # fmt: skip
    said = " ".join(text for making in sewing(plan) for text in making.sentences)
    assert "0.3 cm from the fold" in said
    assert "≈" not in said
    assert re.findall(r"\d in (?!half)", said) == []


BAD: dict[str, tuple[dict[str, Any], str, str]] = {
    "both widths": ({"finished_width": "1/2"}, "binding.finished_width", "write only one"),
    "neither width": ({"strip_width": None}, "binding.strip_width", "this is missing"),
    "an empty scrappy list": (
        {"scrappy": {"order": "random", "cloths": []}}, "binding.scrappy.cloths", "at least two",
    ),
    "an unknown scrappy cloth": (
        {"scrappy": {"order": "random", "cloths": ["plum", "rust"]}},
        "binding.scrappy.cloths[1]", 'no fabric is called "rust"',
    ),
    "a cloth twice": (
        {"scrappy": {"order": "random", "cloths": ["plum", "plum"]}},
        "binding.scrappy.cloths[1]", "listed twice",
    ),
    "an unknown accent cloth": (
        {"accent": {"kind": "flange", "cloth": "rust"}}, "binding.accent.cloth", "no fabric",
    ),
    "tails that cannot meet": (
        {"tails": {"tail": "5", "gap": "10"}}, "binding.tails.tail", "cannot meet",
    ),
    "a closing with less to spare than it needs": (
        {"tails": {"tail": "8", "gap": "10"}, "allowance": "1"}, "binding.allowance", "to spare",
    ),
    "a strip all used up by seam and fold": (
        {"strip_width": "1 1/4"}, "binding.strip_width", "used up by its seams",
    ),
    "too little bias on hand": (
        {"fabric": "dots", "grain": "bias", "strip_width": "8", "bias": {"source": "on_hand"}},
        "binding.bias.source", "of bias strip",
    ),
    "a bias strip too wide for the cloth": (
        {"grain": "bias", "strip_width": "35"}, "binding.grain", "no square on this cloth",
    ),
}  # fmt: skip


@pytest.mark.parametrize(("change", "path", "words"), BAD.values(), ids=BAD.keys())
def test_a_binding_that_cannot_be_is_refused_in_one_sentence(
    change: dict[str, Any], path: str, words: str
) -> None:
    document = json.loads(dumps(project("tucked")))
    document["binding"] |= {"closing": "diagonal", **change}
    with pytest.raises(Refusal, match=words) as refused:
        make_plan(loads(json.dumps(document)))
    assert refused.value.path == path
    assert len(str(refused.value).splitlines()) == 1


def test_a_binding_of_an_older_file_reads_with_the_usual_choices() -> None:
    document = json.loads(dumps(project("tucked")))
    old = ("fabric", "strip_width", "fold", "grain", "joins", "closing", "allowance", "seam")
    document["binding"] = {key: document["binding"][key] for key in old}
    binding = loads(json.dumps(document)).binding
    assert binding == Binding("plum", F(5, 2), closing=Closing.TUCKED)
    assert binding.tails == Tails()
