"""What is said at the table: the cut, how the cloth lies, what falls off, how far it is."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from core.cutting.cutting import begin
from core.cutting.words import CutWords, cut_words, progress_words, sheet_words
from core.lengths import Units
from core.plan import Plan, make_plan
from tests.core.demos import DEMOS, demo


@pytest.fixture(scope="module", params=DEMOS)
def plan(request: pytest.FixtureRequest) -> Plan:
    return make_plan(demo(request.param))


def said(plan: Plan) -> Iterator[CutWords]:
    table = plan.project.cutting_table
    for cloth in begin(plan).cloths:
        for cut in cloth.order.cuts:
            yield cut_words(cloth.order, cut, plan.project.units, table)


def test_every_label_comes_off_in_one_cut_and_is_named_with_its_part(plan: Plan) -> None:
    gives = [words.gives for words in said(plan)]
    for cloth in begin(plan).cloths:
        for mark in cloth.order.pieces:
            named = f" {mark.label}, {mark.placed.name}, "
            assert sum(named in text for text in gives) == 1, mark.label


def test_each_cut_says_what_to_measure_and_from_where(plan: Plan) -> None:
    for words in said(plan):
        places = ("from its straight end.", "from its near edge.", "selvage to selvage.")
        assert words.do.endswith(places)


def test_the_demo_in_words() -> None:
    plan = make_plan(demo("tide-pool-runner"))
    cloth = begin(plan).cloths[0]
    words = list(said(plan))[: len(cloth.order.cuts)]
    assert [w.do for w in words] == ["Cut the cloth across, 2 1/4 in from its straight end."] * 3
    assert words[0].gives == (
        "Off comes B1, binding, 42 × 2 1/4 in. Go on with what is left of the cloth, 42 × 8 3/4 in."
    )
    assert words[0].hold == "Fold it once, selvage to selvage."
    assert words[2].gives.endswith("Left is an offcut to keep, 42 × 4 1/4 in.")
    assert progress_words(begin(plan), cloth) == "cut 1 of 3, cloth shelf blue"
    title = sheet_words(cloth.order, cloth.order.cuts[0].step.sheet, Units.INCHES)
    assert title.startswith("shelf blue, on hand")


def test_the_square_is_looked_at_after_every_third_cut() -> None:
    plan = make_plan(demo("harbour-lights"))
    for cloth in begin(plan).cloths:
        for cut in cloth.order.cuts:
            words = cut_words(cloth.order, cut, plan.project.units, plan.project.cutting_table)
            fourth = cut.turn in (4, 7, 10) and cut.step.direction.value == "crosswise"
            assert bool(words.mind) == (fourth and cut.step.times > 3)
