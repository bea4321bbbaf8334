"""The reverse answers, confirmed by planning them and by failing to plan the next."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from core.compare.reverse import (
    Answer,
    largest_quilt,
    most_copies,
    only_on_hand,
    still_to_buy,
    which_is_enough,
    widest_strip,
)
from core.compare.withstands import over_widths, withstands
from core.edit import put
from core.fabric import OnHand
from core.plan import make_plan
from core.quilt import Project
from core.refusal import Refusal
from tests.core.demos import demo

F = Fraction

HARBOUR, RUNNER = demo("harbour-lights"), demo("tide-pool-runner")


def plans(project: Project) -> bool:
    try:
        make_plan(only_on_hand(project))
    except Refusal:
        return False
    return True


def value_of(answer: Answer) -> Fraction:
    """The answer's value; it comes with a plan, and with the reason why no more."""
    assert answer.value is not None
    assert answer.plan is not None
    assert answer.refusal
    return answer.value


def on_hand(project: Project, place: int, *pieces: OnHand) -> Project:
    fabrics = list(project.fabrics)
    fabrics[place] = replace(fabrics[place], on_hand=pieces)
    return replace(project, fabrics=tuple(fabrics))


def only_a_binding(length: str) -> Project:
    """A quilt 30 in wide with a binding from a piece on hand of 42 × 20 in."""
    bare = replace(HARBOUR, borders=(), backing=None, batting=None, sleeve=None)
    bare = put(put(bare, "quilt.width", "30"), "quilt.length", length)
    return on_hand(bare, 0, OnHand(F(42), F(20), 1))


@pytest.mark.parametrize("project", [RUNNER, only_a_binding("40")])
def test_the_widest_strip_plans_and_an_eighth_more_does_not(project: Project) -> None:
    widest = value_of(widest_strip(project))
    assert plans(put(project, "binding.strip_width", str(widest)))
    assert not plans(put(project, "binding.strip_width", str(widest + F(1, 8))))


@pytest.mark.parametrize("length", ["40", "70"])
def test_the_largest_quilt_plans_and_an_eighth_longer_does_not(length: str) -> None:
    project = only_a_binding(length)
    longest = value_of(largest_quilt(project))
    assert plans(put(project, "quilt.length", str(longest)))
    assert not plans(put(project, "quilt.length", str(longest + F(1, 8))))


def test_the_most_copies_plan_and_one_more_does_not() -> None:
    project = only_a_binding("40")
    count = value_of(most_copies(project))
    assert count > 1
    assert plans(put(project, "quilt.copies", int(count)))
    assert not plans(put(project, "quilt.copies", int(count) + 1))


def test_where_nothing_fits_there_is_no_answer_but_a_reason() -> None:
    project = on_hand(only_a_binding("40"), 0, OnHand(F(20), F(2), 1))
    answer = widest_strip(project)
    assert (answer.value, answer.plan) == (None, None)
    assert answer.refusal


def test_which_fabric_is_enough_is_shown_by_a_plan_of_it() -> None:
    found = {one.fabric: one for one in which_is_enough(RUNNER, "binding.fabric")}
    assert found["shelf blue"].plan is not None
    assert found["shelf linen"].plan is None
    assert found["shelf linen"].refusal


def test_what_must_still_be_bought_takes_the_shelf_first() -> None:
    project = on_hand(only_a_binding("200"), 0, OnHand(F(42), F(10), 1))
    plan, without = still_to_buy(project), make_plan(on_hand(project, 0))
    assert 0 < plan.fabrics[0].buy.along < without.fabrics[0].buy.along


def test_questions_about_a_binding_need_one_on_hand() -> None:
    with pytest.raises(Refusal, match="no night sky on hand"):
        widest_strip(HARBOUR)
    with pytest.raises(Refusal, match="no such part"):
        which_is_enough(HARBOUR, "borders[9].fabric")


@pytest.mark.parametrize("project", [HARBOUR, only_a_binding("200")])
def test_a_plan_withstands_what_it_says_and_a_sixteenth_less_fails(project: Project) -> None:
    project = replace(project, fabrics=tuple(replace(f, on_hand=()) for f in project.fabrics))
    plan = make_plan(project)
    for one in withstands(plan):
        place = [f.fabric.name for f in plan.fabrics].index(one.fabric)
        found = plan.fabrics[place]
        left = 1 - found.fabric.shrinkage_along
        length = (found.buy.along - found.fabric.straightening) * left
        assert one.narrowest <= one.as_cut <= found.fabric.cutting_width

        def holds(across: F, along: F, place: int = place) -> bool:
            fabric = project.fabrics[place]
            in_hand = replace(
                fabric,
                width=(across + 2 * fabric.selvage) / (1 - fabric.shrinkage_across),
                on_hand=(OnHand(across, along),),
                buy_more=False,
            )
            return plans(
                replace(
                    project,
                    fabrics=(*project.fabrics[:place], in_hand, *project.fabrics[place + 1 :]),
                )
            )

        assert holds(one.narrowest, length)
        assert not holds(one.narrowest - F(1, 16), length)
        assert holds(found.fabric.cutting_width, one.shortest)
        assert not holds(found.fabric.cutting_width, one.shortest - F(1, 16))


def test_over_the_table_of_widths_a_wider_cloth_never_buys_more() -> None:
    bought = [at.bought for at in over_widths(only_a_binding("200"), 0)]
    assert len(bought) == 15
    known = [length for length in bought if length is not None]
    assert known == sorted(known, reverse=True)
