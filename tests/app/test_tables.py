"""Tables for a shop: every piece and every purchase, and no formula."""

from __future__ import annotations

import csv
from dataclasses import replace
from io import StringIO

import pytest

from app.tables import pieces_table, purchases_table
from core.lengths import parse
from core.plan import make_plan
from tests.app.packet.plans import NAMES, plan


def _rows(data: bytes) -> list[dict[str, str]]:
    return list(csv.DictReader(StringIO(data.decode("utf-8-sig"), newline="")))


@pytest.mark.parametrize("name", NAMES)
def test_the_pieces_are_those_of_the_plan(name: str) -> None:
    made = plan(name)
    rows = _rows(pieces_table(made))
    counts: dict[str, int] = {}
    for row in rows:
        counts[row["letter"]] = counts.get(row["letter"], 0) + int(row["count"])
    assert counts == {part.letter: part.count for part in made.parts}


def test_sizes_are_lengths_that_can_be_read_again() -> None:
    row = next(r for r in _rows(pieces_table(plan("harbour-lights"))) if r["letter"] == "B")
    assert (row["across (in)"], row["along (in)"]) == ("4 1/2", "62 1/2")
    assert parse(row["along (in)"]) * 2 == 125


def test_a_purchase_says_how_much_for_how_much() -> None:
    rows = _rows(purchases_table(plan("harbour-lights")))
    assert rows[1] == {
        "fabric": "lamp gold",
        "buy": "1/8 yd",
        "length (in)": "4 1/2",
        "cost": "1.65",
        "from the shelf": "42 1/2 × 9 in",
    }


def test_metric_tables_are_in_their_unit() -> None:
    assert "across (cm)" in _rows(pieces_table(plan("metric class")))[0]


def test_a_name_that_is_a_formula_is_a_name() -> None:
    project = plan("bias").project
    name = '=HYPERLINK("x")'
    binding = project.binding
    assert binding is not None
    fabrics = tuple(replace(fabric, name=name) for fabric in project.fabrics)
    spoilt = replace(project, fabrics=fabrics, binding=replace(binding, fabric=name))
    assert _rows(purchases_table(make_plan(spoilt)))[0]["fabric"] == f"'{name}"
