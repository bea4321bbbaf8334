"""Columns side by side: each is the plan that the project with that value would have."""

from __future__ import annotations

from fractions import Fraction

import pytest

from core.compare.choices import (
    CHOICES,
    STRIP_WIDTH,
    USABLE_WIDTH,
    Choice,
    Kind,
    choice_named,
    with_value,
)
from core.compare.columns import MOST, compare
from core.compare.document import comparison_document
from core.compare.rows import rows
from core.edit import put
from core.plan import make_plan
from core.refusal import Refusal
from tests.core.demos import demo

F = Fraction

HARBOUR = demo("harbour-lights")
OTHER_VALUES = {
    "strip width": ("2", "2 3/4"),
    "joins": ("diagonal", "straight"),
    "closing": ("diagonal", "tucked"),
    "grain": ("crosswise", "lengthwise"),
    "fold": ("double", "single"),
    "cloth": ("night sky", "lamp gold"),
    "border width": ("2", "5"),
    "border corners": ("butted", "mitred"),
    "border grain": ("crosswise", "either"),
    "border cloth": ("night sky", "lamp gold"),
    "backing seams": ("auto", "lengthwise"),
    "backing cloth": ("tide stripe", "night sky"),
    "overage": ("3", "5"),
    "usable width": ("40", "42"),
    "sale unit": ("1/8 yd", "1/2 yd"),
    "copies": ("1", "2"),
}


@pytest.mark.parametrize("choice", CHOICES, ids=lambda choice: choice.name)
def test_every_choice_gives_the_plan_of_the_project_with_that_value(choice: Choice) -> None:
    comparison = compare(HARBOUR, choice, OTHER_VALUES[choice.name])
    for column, value in zip(comparison.columns, OTHER_VALUES[choice.name], strict=True):
        assert column.project is not None, column.refusal
        written: object = int(value) if choice.kind is Kind.COUNT else value
        if choice is USABLE_WIDTH:
            assert column.project.fabrics[comparison.place].usable_width == F(value)
        else:
            assert column.project == put(HARBOUR, choice.path(comparison.place), written)
        assert column.plan == make_plan(column.project)


def test_the_projects_own_value_is_marked() -> None:
    comparison = compare(HARBOUR, STRIP_WIDTH, ["2", "2.5"])
    assert [column.present for column in comparison.columns] == [False, True]


def test_one_bad_value_leaves_the_other_columns() -> None:
    values = ["2 1/4", "99", "wide", "2.25", ""]
    columns = compare(HARBOUR, STRIP_WIDTH, values).columns
    assert [column.plan is not None for column in columns] == [True, False, False, False, False]
    said = [column.refusal or "" for column in columns]
    assert "wider than its cloth's usable width" in said[1]
    assert "not one clear length" in said[2]
    assert said[3] == "the same as 2 1/4 in beside it; write another value"
    assert "a length is missing" in said[4]


def test_a_word_that_is_no_choice_names_those_that_are() -> None:
    columns = compare(HARBOUR, choice_named("joins"), ["diagonal", "zigzag"]).columns
    assert "write one of" in (columns[1].refusal or "")


def test_of_a_hundred_values_six_are_shown_and_the_rest_are_counted() -> None:
    values = [str(F(128 + number, 64)) for number in range(100)]
    comparison = compare(HARBOUR, STRIP_WIDTH, values)
    assert len(comparison.columns) == MOST
    assert comparison.notice == "6 values fit side by side; the other 94 were left out."


@pytest.mark.parametrize("values", [[], ["2"]])
def test_fewer_than_two_values_are_refused(values: list[str]) -> None:
    with pytest.raises(Refusal, match="at least two values"):
        compare(HARBOUR, STRIP_WIDTH, values)


def test_a_part_that_is_not_there_is_named() -> None:
    bare = make_plan(HARBOUR).project
    with pytest.raises(Refusal, match=r"borders\[7\].width"):
        compare(bare, choice_named("border width"), ["2", "3"], 7)


def test_a_usable_width_of_nothing_is_refused() -> None:
    with pytest.raises(Refusal, match="cannot be 0"):
        with_value(HARBOUR, USABLE_WIDTH, 0, "0")


def test_rows_mark_the_best_and_say_what_the_others_lose() -> None:
    comparison = compare(HARBOUR, STRIP_WIDTH, ["2", "9", "x"])
    row = next(row for row in rows(comparison) if row.name == "binding lost in joins")
    bindings = [plan.binding for plan in comparison.plans]
    lost = [binding.joins * binding.join_loss for binding in bindings if binding]
    assert [cell.value for cell in row.cells] == [*lost, None]
    assert [cell.best for cell in row.cells] == [True, False, False]
    assert row.cells[1].loses == lost[1] - lost[0]


def test_equal_values_have_no_best() -> None:
    comparison = compare(HARBOUR, STRIP_WIDTH, ["2", "2 1/4"])
    row = next(row for row in rows(comparison) if row.name == "first face")
    assert not any(cell.best or cell.loses for cell in row.cells)


def test_the_document_carries_every_plan_and_row() -> None:
    comparison = compare(HARBOUR, STRIP_WIDTH, ["2", "x"])
    document = comparison_document(comparison)
    assert [column["plan"] is None for column in document["columns"]] == [False, True]
    assert document["path"] == "binding.strip_width"
    assert len(document["rows"]) == len(rows(comparison))
