"""The plan as JSON: the keys that other tools rely on, with lengths that `Fraction` reads."""

from __future__ import annotations

import json
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings

from core.fabric import Grain
from core.plan import Plan, make_plan
from core.plan_json import plan_document
from core.quilt import Project
from core.refusal import Refusal
from tests.core.demos import DEMOS, demo
from tests.strategies import projects

LENGTH, TEXT, COUNT, FLAG, LIST = "length", str, int, bool, list
FABRIC = {
    "name": TEXT, "bought_along": LENGTH, "used_along": LENGTH, "bound_along": LENGTH,
    "proved_least": FLAG, "placements": LIST, "offcuts": LIST, "cuts": LIST, "buy": dict,
    "waste_share": LENGTH,
}  # fmt: skip
PLACEMENT = {
    "name": TEXT, "copy": COUNT, "on": TEXT, "x": LENGTH, "y": LENGTH, "across": LENGTH,
    "along": LENGTH, "turned": FLAG,
}  # fmt: skip
BACKING = {"across": LENGTH, "along": LENGTH, "panels": COUNT, "seams": TEXT, "panel_along": LENGTH}
BINDING = {
    "perimeter": LENGTH, "needs": LENGTH, "strips": COUNT, "strip_length": LENGTH,
    "joined_length": LENGTH, "spare": LENGTH, "joins": COUNT, "narrowest_usable_width": LENGTH,
    "first_face_width": LENGTH, "second_face_width": LENGTH, "reach": LENGTH,
}  # fmt: skip
PIECE = {"name": TEXT, "across": LENGTH, "along": LENGTH, "count": COUNT}


def conforms(document: dict[str, Any], contract: dict[str, object]) -> None:
    """Fail for a key that is missing or of another type; more keys are allowed."""
    for key, kind in contract.items():
        value = document[key]
        if kind == LENGTH:
            assert isinstance(value, str), key
            Fraction(value)
        else:
            assert type(value) is kind, key


def demo_document(name: str) -> dict[str, Any]:
    text = json.dumps(plan_document(make_plan(demo(name))), allow_nan=False)
    read: dict[str, Any] = json.loads(text)
    return read


@pytest.mark.parametrize("name", DEMOS)
def test_the_contract_is_kept(name: str) -> None:
    document = demo_document(name)
    for fabric in document["fabrics"]:
        conforms(fabric, FABRIC)
        conforms(fabric["buy"], {"along": LENGTH, "sale_text": TEXT})
        assert fabric["buy"]["cost"] is None or Fraction(fabric["buy"]["cost"]) >= 0
        for placement in fabric["placements"]:
            conforms(placement, PLACEMENT)
            assert placement["on"] == "bolt" or placement["on"].startswith("on_hand[")
        for offcut in fabric["offcuts"]:
            conforms(offcut, {"on": TEXT, "across": LENGTH, "along": LENGTH})
        for cut in fabric["cuts"]:
            conforms(cut, {"on": TEXT, "direction": TEXT, "at": LENGTH})
    for border in document["borders"]:
        for piece in border["pieces"]:
            conforms(piece, PIECE)
    conforms(document["backing"], BACKING)
    conforms(document["batting"], {"across": LENGTH, "along": LENGTH})
    conforms(document["binding"], BINDING)
    assert isinstance(document["warnings"], list)


def test_the_largest_demo_has_every_part() -> None:
    document = demo_document("harbour-lights")
    assert all(document[key] for key in ("borders", "backing", "batting", "binding", "sleeve"))
    conforms(document["sleeve"], {"depth": LENGTH, "cut_width": LENGTH, "length": LENGTH})
    assert document["batting"]["package"] == "twin"


def test_absent_parts_are_null() -> None:
    project = demo("harbour-lights")
    bare = replace(project, borders=(), backing=None, batting=None, binding=None)
    bare = replace(bare, sleeve=None, label=None)
    document = plan_document(make_plan(bare))
    assert [document[key] for key in ("backing", "batting", "binding", "sleeve", "label")] == [
        None
    ] * 5
    assert document["borders"] == []
    assert [fabric["placements"] for fabric in document["fabrics"]] == [[], [], []]


def test_the_numbers_are_those_of_the_plan() -> None:
    plan = make_plan(demo("harbour-lights"))
    document = plan_document(plan)
    assert plan.binding is not None
    assert Fraction(document["binding"]["needs"]) == plan.binding.needs
    assert Fraction(document["quilt"]["finished_width"]) == plan.finished_width
    for fabric, written in zip(plan.fabrics, document["fabrics"], strict=True):
        assert Fraction(written["buy"]["along"]) == fabric.buy.along
        assert Fraction(written["waste_share"]) == fabric.waste_share
        assert len(written["placements"]) == len(fabric.lay.placements)


def test_lengthwise_strips_have_their_length_along_the_cloth() -> None:
    project = demo("harbour-lights")
    border = replace(project.borders[1], grain=Grain.LENGTHWISE)
    plan = make_plan(replace(project, borders=(project.borders[0], border)))
    side = plan_document(plan)["borders"][1]["pieces"][0]
    assert Fraction(side["across"]) == plan.borders[1].cut_width
    assert Fraction(side["along"]) == plan.borders[1].strips[0].length


@pytest.mark.parametrize(
    ("price", "cost"), [("1", "1.88"), ("0.01", "0.02"), ("12.50", "23.44"), (None, None)]
)
def test_money_is_to_the_nearest_cent_halves_up(price: str | None, cost: str | None) -> None:
    project = demo("harbour-lights")
    fabric = replace(project.fabrics[0], price_per_yard=None if price is None else Fraction(price))
    plan = make_plan(replace(project, fabrics=(fabric, *project.fabrics[1:])))
    assert plan.fabrics[0].buy.sale_text == "1 7/8 yd"
    assert plan_document(plan)["fabrics"][0]["buy"]["cost"] == cost


def planned(project: Project) -> Plan | None:
    try:
        return make_plan(project, draft=True)
    except Refusal:
        return None


@settings(max_examples=60, suppress_health_check=[HealthCheck.too_slow])
@given(projects())
def test_any_plan_keeps_the_contract(project: Project) -> None:
    if (plan := planned(project)) is None:
        return
    document = json.loads(json.dumps(plan_document(plan), allow_nan=False))
    for fabric in document["fabrics"]:
        conforms(fabric, FABRIC)
    for key, contract in (("backing", BACKING), ("binding", BINDING)):
        if document[key] is not None:
            conforms(document[key], contract)
