"""Edits: pure changes to a project, refused as the file's own reader would refuse them."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from core import edit
from core.lengths import LengthError, Units, exact_text, parse
from core.plan import make_plan
from core.project_file import dumps, loads, to_document
from core.quilt import Project, Quilt
from core.refusal import Refusal
from tests.core.demos import demo
from tests.strategies import projects

F = Fraction
UNHURRIED = settings(max_examples=60, suppress_health_check=[HealthCheck.too_slow])
DEMO = demo("harbour-lights")


def places(value: object, path: str = "") -> list[tuple[str, Any]]:
    """Every single value of a document with its path."""
    if isinstance(value, dict):
        inner = [(f"{path}.{key}" if path else str(key), item) for key, item in value.items()]
    elif isinstance(value, list):
        inner = [(f"{path}[{place}]", item) for place, item in enumerate(value)]
    else:
        return [(path, value)]
    return [found for at, item in inner for found in places(item, at)]


@pytest.mark.parametrize(("path", "value"), places(to_document(DEMO)))
def test_putting_the_value_that_is_there_changes_nothing(path: str, value: object) -> None:
    assert edit.put(DEMO, path, value) == DEMO


@UNHURRIED
@given(projects(), st.data())
def test_putting_back_the_old_value_undoes(project: Project, data: st.DataObject) -> None:
    document = to_document(project)
    path, old = data.draw(st.sampled_from(places(document)))
    new = "3/8 in" if isinstance(old, str) else old
    try:
        changed = edit.put(project, path, new)
    except Refusal:
        return
    assert edit.put(changed, path, old) == project


@UNHURRIED
@given(projects(), st.sampled_from(["fabrics", "borders", "fabrics[0].on_hand"]))
def test_adding_and_removing_is_as_if_nothing_was(project: Project, path: str) -> None:
    longer = edit.add(project, path)
    last = len(_list_at(longer, path)) - 1
    assert last == len(_list_at(project, path))
    assert edit.remove(longer, f"{path}[{last}]") == project


def _list_at(project: Project, path: str) -> tuple[Any, ...]:
    if path == "fabrics[0].on_hand":
        return project.fabrics[0].on_hand
    return tuple(getattr(project, path))


@UNHURRIED
@given(projects(), st.sampled_from(["backing", "batting", "binding", "sleeve", "label"]))
def test_a_part_is_added_and_removed(project: Project, part: str) -> None:
    without = project if getattr(project, part) is None else edit.remove(project, part)
    assert getattr(without, part) is None
    with_it = edit.add_part(without, part)
    assert getattr(with_it, part) is not None
    assert edit.remove(with_it, part) == without


@UNHURRIED
@given(projects(), st.sampled_from(list(Units)))
def test_other_units_lose_nothing(project: Project, units: Units) -> None:
    switched = edit.set_units(project, units)
    assert switched == replace(project, units=units)
    assert loads(dumps(switched)) == switched
    assert edit.set_units(switched, project.units) == project


def test_other_units_change_no_length_of_the_plan() -> None:
    inches, metric = make_plan(DEMO), make_plan(edit.set_units(DEMO, Units.CENTIMETRES))
    assert [fabric.lay for fabric in metric.fabrics] == [fabric.lay for fabric in inches.fabrics]
    assert metric.binding == inches.binding


def test_an_edit_leaves_the_old_project_as_it_was() -> None:
    before = dumps(DEMO)
    edit.put(DEMO, "quilt.width", "50")
    edit.add(DEMO, "borders")
    edit.remove(DEMO, "borders[0]")
    edit.move(DEMO, "borders[0]", 1)
    assert dumps(DEMO) == before


def test_a_length_is_put_as_text_in_any_spelling() -> None:
    assert edit.put(DEMO, "quilt.width", "50½").quilt.width == F(101, 2)
    assert edit.put(DEMO, "quilt.width", "128 cm").quilt.width == parse("128 cm")


@pytest.mark.parametrize(
    ("path", "value"),
    [
        ("quilt.width", "0"),
        ("quilt.width", "1,250"),
        ("quilt.width", "2000"),
        ("quilt.copies", 0),
        ("borders[1].width", ""),
        ("borders[0].corners", "oval"),
        ("fabrics[2].shrinkage.along", "x"),
        ("fabrics[1].on_hand[0].across", "-2"),
        ("binding.fabric", "velvet"),
        ("fabrics[0].name", "lamp gold"),
    ],
)
def test_a_bad_value_is_refused_at_its_path(path: str, value: object) -> None:
    with pytest.raises(Refusal) as refused:
        edit.put(DEMO, path, value)
    assert refused.value.path == ("fabrics[1].name" if value == "lamp gold" else path)


def test_renaming_a_fabric_renames_it_wherever_it_is_used() -> None:
    renamed = edit.put(DEMO, "fabrics[0].name", "midnight")
    assert renamed.borders[1].fabric == "midnight"
    assert renamed.binding is not None
    assert renamed.binding.fabric == "midnight"
    assert edit.put(renamed, "fabrics[0].name", "night sky") == DEMO


def test_a_fabric_in_use_is_not_removed() -> None:
    with pytest.raises(Refusal, match="night sky is used by borders") as refused:
        edit.remove(DEMO, "fabrics[0]")
    assert refused.value.path == "fabrics[0]"


def test_new_fabrics_get_names_of_their_own() -> None:
    twice = edit.add(edit.add(DEMO, "fabrics"), "fabrics")
    assert [fabric.name for fabric in twice.fabrics[-2:]] == ["cloth", "cloth 2"]


def test_a_part_needs_a_fabric_to_be_cut_from() -> None:
    bare = Project(Quilt("", F(40), F(50)), ())
    with pytest.raises(Refusal, match="add a fabric first"):
        edit.add_part(bare, "binding")
    with pytest.raises(Refusal, match="add a fabric first"):
        edit.add(bare, "borders")
    assert edit.add_part(bare, "batting").batting is not None


@pytest.mark.parametrize(
    ("by", "order"), [(1, "lamp night"), (-1, "lamp night"), (9, "lamp night")]
)
def test_moving_stops_at_the_ends(by: int, order: str) -> None:
    """Borders are from the inside out: moving one changes what lies round what."""
    there = edit.move(DEMO, "borders[0]", by)
    names = [border.fabric.split()[0] for border in there.borders]
    assert names == (order.split() if by < 0 else order.split()[::-1])


def test_moving_there_and_back_is_as_if_nothing_was() -> None:
    assert edit.move(edit.move(DEMO, "borders[0]", 1), "borders[1]", -1) == DEMO


@pytest.mark.parametrize("part", ["borders", "backing", "binding", "sleeve", "label"])
def test_a_new_part_can_be_planned_at_once(part: str) -> None:
    bare = edit.add(Project(Quilt("", F(50), F(60)), ()), "fabrics")
    make_plan(edit.add(bare, part) if part == "borders" else edit.add_part(bare, part))


@UNHURRIED
@given(projects(), st.sampled_from(list(Units)))
def test_other_units_and_back_write_the_very_same_file(project: Project, units: Units) -> None:
    there = loads(dumps(edit.set_units(project, units)))
    assert dumps(edit.set_units(there, project.units)) == dumps(project)


def is_length(path: str, value: object) -> bool:
    if not isinstance(value, str) or path.endswith(("price_per_yard", "name")):
        return False
    try:
        parse(value, DEMO.units)
    except LengthError:
        return False
    return True


DEMO_LENGTHS = {path: value for path, value in places(to_document(DEMO)) if is_length(path, value)}


@pytest.mark.parametrize("path", DEMO_LENGTHS)
def test_every_length_is_taken_in_any_unit_and_stays_the_same(path: str) -> None:
    length = parse(DEMO_LENGTHS[path], DEMO.units)
    for units in Units:
        other = exact_text(length, units)
        written = other if other[-1].isalpha() else f"{other} {units.value}"
        assert edit.put(DEMO, path, written) == DEMO


def test_the_lengths_of_every_part_were_tried() -> None:
    parts = {path.partition(".")[0].partition("[")[0] for path in DEMO_LENGTHS}
    assert len(DEMO_LENGTHS) > 40
    assert {"quilt", "fabrics", "borders", "backing", "batting", "binding", "sleeve"} <= parts


def test_a_polygon_starts_as_the_corners_of_the_quilt_with_its_borders() -> None:
    made = edit.put(edit.add_part(DEMO, "outline"), "outline.kind", "polygon")
    plan = make_plan(made, draft=True)
    assert made.outline is not None
    assert made.outline.points[2] == plan.sizes.bordered
    assert plan.sizes.outline.perimeter == 2 * sum(plan.sizes.bordered)
    again = edit.put(edit.put(made, "outline.points[2][1]", "20 in"), "outline.kind", "polygon")
    assert again.outline is not None
    assert again.outline.points[2][1] == 20  # corners that are there stay
