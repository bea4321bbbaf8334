"""A cutting that is closed and opened again is the same; a spoilt file is refused."""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from core.cutting.cutting import Cutting, Sameness, begin, sameness
from core.cutting.kept import cutting_document, cutting_from, mark_of
from core.cutting.miscut import Spoilt
from core.cutting.remaining import LaidAgain
from core.cutting.words import sheet_words
from core.lengths import Units
from core.plan import Plan, make_plan
from core.quilt import Kits
from core.refusal import Refusal
from tests.core.demos import DEMOS, demo
from tests.stand_in import untold

Document = dict[str, Any]


@pytest.fixture(scope="module")
def plan() -> Plan:
    return make_plan(demo("harbour-lights"))


def half_cut(plan: Plan) -> Cutting:
    """Some cuts, then a spoilt piece, then a cut of the order laid again."""
    cutting = begin(plan)
    cloth = cutting.cloths[0]
    while cloth.next_cut is not None:
        cloth = cloth.cut_once()
    label = cloth.order.pieces[0].label
    order = LaidAgain(cloth.order, cloth.cuts_done, Spoilt(label), Units.INCHES).answer()
    return cutting.with_cloth(0, cloth.laid_again(order).cut_once())


@pytest.mark.parametrize("name", DEMOS)
def test_a_cutting_not_begun_comes_back(name: str) -> None:
    cutting = begin(make_plan(demo(name)))
    assert cutting_from(json.loads(json.dumps(cutting_document(cutting)))) == cutting


def test_a_cutting_with_a_miscut_comes_back(plan: Plan) -> None:
    cutting = half_cut(plan)
    assert cutting_from(json.loads(json.dumps(cutting_document(cutting)))) == cutting


def titles(cutting: Cutting) -> list[str]:
    """What every sheet is called, of all orders."""
    return [
        sheet_words(order, one.sheet, Units.INCHES)
        for cloth in cutting.cloths
        for order in cloth.orders
        for one in order.sheets
    ]


def test_a_cutting_is_told_in_the_language_it_is_opened_in(
    plan: Plan, request: pytest.FixtureRequest
) -> None:
    document = json.loads(json.dumps(cutting_document(half_cut(plan))))
    assert "night sky, from the bolt" in titles(cutting_from(document))
    request.getfixturevalue("stand_in")
    names = [fabric.name for fabric in plan.project.fabrics]
    for title in titles(cutting_from(document)):
        assert untold(next(title.removeprefix(n) for n in names if title.startswith(n))) == []


def test_a_file_that_was_kept_with_words_is_opened(plan: Plan) -> None:
    document = json.loads(json.dumps(cutting_document(half_cut(plan))))
    orders = [*document["planned"], *(o for c in document["cloths"] for o in c["laid_again"])]
    sheets = [sheet for order in orders for sheet in order["sheets"]]
    for sheet in sheets:
        del sheet["called"], sheet["equal"]
        sheet["title"] = "Sternennacht, vom Ballen"
    assert set(titles(cutting_from(document))) == {"Sternennacht, vom Ballen"}


def test_what_many_kits_begin_with_is_written_once(plan: Plan) -> None:
    quilt = replace(plan.project.quilt, copies=3, kits=Kits.EACH)
    kits = begin(make_plan(replace(plan.project, quilt=quilt)))
    assert (kits.kits, len(kits.cloths)) == (3, 3 * len(kits.planned))
    document = cutting_document(kits)
    assert len(document["planned"]) == len(kits.planned)
    assert cutting_from(document) == kits


def _drop(document: Document) -> None:
    del document["planned"][0]["steps"]


def _more(document: Document) -> None:
    document["planned"][0]["colour"] = "plum"


def _beyond(document: Document) -> None:
    document["cloths"][0]["done"] = [9999]


def _apart(document: Document) -> None:
    document["planned"][0]["steps"][-1]["measure"] = "9999"


def _lost(document: Document) -> None:
    document["planned"][0]["sheets"] = []


def _no_number(document: Document) -> None:
    document["planned"][0]["bought"] = "1e999999"


def _no_cloth(document: Document) -> None:
    document["planned"] = []


def _short(document: Document) -> None:
    document["cloths"] = document["cloths"][:-1]


@pytest.mark.parametrize(
    "spoil", [_drop, _more, _beyond, _apart, _lost, _no_number, _no_cloth, _short]
)
def test_a_spoilt_file_is_refused(plan: Plan, spoil: Callable[[Document], None]) -> None:
    document = json.loads(json.dumps(cutting_document(begin(plan))))
    spoil(document)
    with pytest.raises(Refusal):
        cutting_from(document)


def test_a_changed_plan_is_told_from_one_that_only_lies_otherwise(plan: Plan) -> None:
    cutting = begin(plan)
    assert sameness(cutting, plan) is Sameness.SAME
    metric = replace(plan, project=replace(plan.project, units=Units.CENTIMETRES))
    assert sameness(cutting, metric) is Sameness.SAME
    assert mark_of(cutting) == mark_of(begin(metric))
    cloth = plan.fabrics[0]
    otherwise = replace(cloth, steps=cloth.steps[::-1])
    moved = replace(plan, fabrics=(otherwise, *plan.fabrics[1:]))
    assert mark_of(cutting) != mark_of(begin(moved))
    assert sameness(cutting, moved) is Sameness.LAID_OTHERWISE
    quilt = replace(plan.project.quilt, width=plan.project.quilt.width + Fraction(1))
    other = make_plan(replace(plan.project, quilt=quilt))
    assert sameness(cutting, other) is Sameness.OTHER_PIECES


def test_back_goes_as_far_as_it_was_cut(plan: Plan) -> None:
    cutting = half_cut(plan)
    cloth = cutting.cloths[0]
    assert cloth.begun
    seen = 0
    while cloth.begun:
        cloth, seen = cloth.back(), seen + 1
    # The new order's one cut, the new order itself, and all cuts of the first.
    assert seen == 1 + 1 + len(cutting.planned[0].cuts)
    assert cloth == begin(plan).cloths[0]
    assert cloth.back() == cloth
