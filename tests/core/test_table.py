"""The cutting table: in the file, and what its ruler reaches."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from core.lay.lay_file import lay_document, problem_from_text
from core.lay.solve import solve
from core.lengths import INCHES_PER_MM, Units
from core.project_file import from_document, to_document
from core.refusal import Refusal
from core.table import Hold, Table, default_table, hold
from tests.core.demos import DEMOS, demo

F = Fraction
PROJECT = demo(DEMOS[0])
LAY = """{"format": "crossgrain-lay", "version": 1, %s
    "cloths": [{"name": "a", "usable_width": "42", "sale_unit": "9"}],
    "pieces": [{"name": "p", "cloth": "a", "across": "20", "along": "30"}]}"""


@pytest.mark.parametrize(
    ("length", "folds", "way"),
    [
        (F(24), 1, Hold(0, 1)),
        (F(97, 4), 1, Hold(1, 1)),
        (F(48), 1, Hold(1, 1)),
        (F(49), 1, Hold(1, 2)),
        (F(49), 2, Hold(2, 1)),
        (F(108), 2, Hold(2, 2)),
        (F(49), 0, Hold(0, 3)),
    ],
)
def test_the_fewest_folds_are_made_that_let_the_ruler_reach(
    length: Fraction, folds: int, way: Hold
) -> None:
    assert hold(Table(F(24), folds), length, crosswise=True) == way


def test_a_fold_does_not_shorten_a_cut_along_the_grain() -> None:
    assert hold(Table(F(24), 2), F(49), crosswise=False) == Hold(0, 3)


def test_the_ruler_is_a_common_one_in_either_measure() -> None:
    assert default_table(Units.INCHES).ruler == 24
    assert default_table(Units.CENTIMETRES).ruler == 600 * INCHES_PER_MM


def test_a_project_keeps_its_table_and_does_without_one() -> None:
    assert PROJECT.table is None
    assert "table" not in to_document(PROJECT)
    assert PROJECT.cutting_table == Table(F(24), 1)
    with_table = replace(PROJECT, table=Table(F(37, 2), 2))
    document = to_document(with_table)
    assert document["table"] == {"ruler": "18 1/2", "folds": 2}
    assert from_document(document) == with_table
    assert from_document(document | {"table": {"folds": 0}}).table == Table(F(24), 0)


@pytest.mark.parametrize(
    ("table", "path"),
    [
        ({"ruler": "0"}, "table.ruler"),
        ({"ruler": 24}, "table.ruler"),
        ({"folds": 3}, "table.folds"),
        ({"folds": True}, "table.folds"),
        ({"mat": "18"}, "table.mat"),
        ([], "table"),
    ],
)
def test_a_table_that_is_none_is_refused(table: object, path: str) -> None:
    with pytest.raises(Refusal) as refused:
        from_document(to_document(PROJECT) | {"table": table})
    assert refused.value.path == path


def test_the_cuts_of_a_lay_say_how_they_are_made() -> None:
    problem = problem_from_text(LAY % '"table": {"ruler": "12", "folds": 1},')
    [cloth] = lay_document(solve(problem), problem.table)["cloths"]
    ways = [(cut["length"], cut["folds"], cut["ruler_moves"]) for cut in cloth["cuts"]]
    assert ways == [("42", 1, 2), ("30", 0, 3)]
    assert problem_from_text(LAY % '"units": "cm",').table.ruler == 600 * INCHES_PER_MM
