"""A start by hand: its words, its steps, and that it is what the plan makes of it."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from core import edit
from core.drawing.edge_map import place_under, start_shown
from core.edge_start import start_steps, start_words
from core.finish.sewn import Sewn, dragged_to, started_at
from core.lengths import INCHES_PER_MM, Units
from core.plan import Plan, make_plan
from core.project_file import from_document, to_document
from core.quilt import Project
from core.shape import Facing
from tests.core.demos import DEMOS, demo

F = Fraction


@pytest.fixture(scope="module", params=DEMOS)
def plan(request: pytest.FixtureRequest) -> Plan:
    return make_plan(demo(request.param))


def sewn_of(plan: Plan) -> Sewn:
    assert plan.sewn is not None
    return plan.sewn


def started(project: Project, place: Fraction | None) -> Project:
    assert project.binding is not None
    return replace(project, binding=replace(project.binding, start_at=place))


@pytest.mark.parametrize("place", [F(0), F(1), F(31, 4), F(40)])
def test_what_is_shown_while_it_is_moved_is_what_the_plan_makes(
    plan: Plan, place: Fraction
) -> None:
    """The demos' strips are alike, so that no other order does better."""
    outline = plan.sizes.outline
    made = sewn_of(make_plan(started(plan.project, place)))
    assert made.edge_map == started_at(sewn_of(plan), outline, place).edge_map
    dragged = dragged_to(sewn_of(plan), outline, place)
    assert (dragged.edge_map.closing, dragged.edge_map.joins) == (
        made.edge_map.closing,
        made.edge_map.joins,
    )


def test_the_start_is_found_where_it_is_shown(plan: Plan) -> None:
    at = sewn_of(plan).edge_map.closing.place
    step = F(1, 4)
    place, _ = place_under(plan, start_shown(plan), step)
    assert abs(place - at) <= step


def test_words_say_where_and_what_is_nearest(plan: Plan) -> None:
    outline, units = plan.sizes.outline, plan.project.units
    best = start_words(sewn_of(plan), outline, units)
    assert best.startswith("The ends meet on the left side, ")
    assert "wished" not in best
    near = start_words(started_at(sewn_of(plan), outline, F(1)), outline, units)
    assert "Nearest to a corner is the closing: 1 in, where " in near
    assert near.endswith(" away.")


def test_steps_are_marks_of_the_persons_ruler() -> None:
    assert start_steps(Units.INCHES) == (F(1, 4), F(1))
    assert start_steps(Units.CENTIMETRES) == (5 * INCHES_PER_MM, 20 * INCHES_PER_MM)


def test_one_way_to_say_the_start_clears_the_other() -> None:
    project = edit.put(demo("harbour-lights"), "binding.start_side", "top")
    at = edit.put(project, "binding.start_at", "12")
    assert at.binding is not None
    assert (at.binding.start_side, at.binding.start_at) == (None, F(12))
    side = edit.put(at, "binding.start_side", "left")
    assert side.binding is not None
    assert (side.binding.start_side, side.binding.start_at) == (Facing.LEFT, None)
    best = edit.best_start(side)
    assert best == started(edit.put(demo("harbour-lights"), "binding.start_side", None), None)


def test_a_file_without_the_key_starts_at_the_best_place() -> None:
    document = to_document(demo("harbour-lights"))
    del document["binding"]["start_at"]
    project = from_document(document)
    assert project.binding is not None
    assert project.binding.start_at is None
