"""The JSON of lay problems and lays."""

from __future__ import annotations

import json
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from core.fabric import Grain
from core.lay.lay_file import lay_document, problem_from_text, read_problem
from core.lay.problem import LayProblem
from core.lay.solve import solve
from core.refusal import Refusal

F = Fraction


def document() -> dict[str, Any]:
    return {
        "format": "crossgrain-lay",
        "version": 1,
        "cloths": [
            {
                "name": "plum",
                "usable_width": "42",
                "sale_unit": "1/8 yd",
                "straightening": "0",
                "on_hand": [{"across": "18", "along": "21", "count": 2}],
                "buy_more": True,
            }
        ],
        "pieces": [
            {
                "name": "A",
                "cloth": "plum",
                "across": "8 1/2",
                "along": "40",
                "count": 2,
                "may_turn": False,
            }
        ],
        "runs": [
            {
                "name": "binding",
                "cloth": "plum",
                "strip": "2 1/2",
                "needs": "210",
                "join_loss": "2 1/2",
                "shortest": "12",
                "grain": "crosswise",
                "count": 1,
            }
        ],
    }


def read(data: dict[str, Any]) -> LayProblem:
    return problem_from_text(json.dumps(data))


def test_every_field_is_read() -> None:
    problem = read(document())
    [cloth] = problem.cloths
    assert (cloth.usable_width, cloth.sale_unit, cloth.buy_more) == (F(42), F(9, 2), True)
    assert (cloth.on_hand[0].across, cloth.on_hand[0].along, cloth.on_hand[0].count) == (
        F(18),
        F(21),
        2,
    )
    [piece] = problem.pieces
    assert (piece.across, piece.along, piece.count, piece.may_turn) == (F(17, 2), F(40), 2, False)
    [run] = problem.runs
    assert (run.strip, run.needs, run.join_loss, run.shortest) == (F(5, 2), F(210), F(5, 2), F(12))
    assert (run.grain, run.count) == (Grain.CROSSWISE, 1)


def test_what_may_be_left_out_has_the_plain_value() -> None:
    data = document()
    del data["runs"], data["pieces"][0]["count"], data["pieces"][0]["may_turn"]
    data["cloths"][0] = {"name": "plum", "usable_width": "42", "sale_unit": "9"}
    problem = read(data)
    assert problem.runs == ()
    assert problem.pieces[0].count == 1
    assert problem.cloths[0].on_hand == ()
    assert problem.cloths[0].shrinkage_along == 0


def test_shrinkage_is_read_as_a_share() -> None:
    data = document()
    data["cloths"][0]["shrinkage_along"] = "2,5 %"
    assert read(data).cloths[0].shrinkage_along == F(1, 40)


def test_bare_lengths_count_in_the_units_of_the_file() -> None:
    data = document() | {"units": "cm"}
    assert read(data).cloths[0].usable_width == 42 * F(1000, 2540)


def change(path: list[str | int], value: object) -> dict[str, Any]:
    data = document()
    inner: Any = data
    for key in path[:-1]:
        inner = inner[key]
    inner[path[-1]] = value
    return data


@pytest.mark.parametrize(
    ("steps", "value", "path"),
    [
        (["format"], "crossgrain-project", "format"),
        (["version"], 2, "version"),
        (["units"], "mile", "units"),
        (["surprise"], 1, "surprise"),
        (["cloths"], [], "cloths"),
        (["cloths"], {}, "cloths"),
        (["cloths", 0, "name"], "", "cloths[0].name"),
        (["cloths", 0, "usable_width"], "0", "cloths[0].usable_width"),
        (["cloths", 0, "usable_width"], 42, "cloths[0].usable_width"),
        (["cloths", 0, "usable_width"], "-42", "cloths[0].usable_width"),
        (["cloths", 0, "sale_unit"], "wide", "cloths[0].sale_unit"),
        (["cloths", 0, "shrinkage_along"], "150%", "cloths[0].shrinkage_along"),
        (["cloths", 0, "shrinkage_along"], 3, "cloths[0].shrinkage_along"),
        (["cloths", 0, "on_hand", 0, "across"], "0", "cloths[0].on_hand[0].across"),
        (["cloths", 0, "on_hand", 0, "count"], 0, "cloths[0].on_hand[0].count"),
        (["cloths", 0, "buy_more"], "yes", "cloths[0].buy_more"),
        (["pieces", 0, "count"], 100_000, "pieces[0].count"),
        (["pieces", 0, "count"], 1.5, "pieces[0].count"),
        (["pieces", 0, "across"], "43", "pieces[0].across"),
        (["pieces", 0, "cloth"], "velvet", "pieces[0].cloth"),
        (["runs", 0, "grain"], "diagonal", "runs[0].grain"),
        (["runs", 0, "grain"], "bias", "runs[0].grain"),
        (["runs", 0, "strip"], "43", "runs[0].strip"),
        (["runs", 0, "shortest"], "50", "runs[0].shortest"),
        (["runs", 0, "needs"], "NaN", "runs[0].needs"),
        (["runs", 0, "name"], "A", "runs[0].name"),
    ],
)
def test_bad_input_is_refused_by_the_path_of_its_field(
    steps: list[str | int], value: object, path: str
) -> None:
    with pytest.raises(Refusal) as refused:
        read(change(steps, value))
    assert refused.value.path == path


@pytest.mark.parametrize("key", ["cloths", "name", "usable_width", "sale_unit"])
def test_a_missing_key_is_named(key: str) -> None:
    data = document()
    (data if key == "cloths" else data["cloths"][0]).pop(key)
    with pytest.raises(Refusal, match=key):
        read(data)


def test_a_file_is_read_from_disk(tmp_path: Path) -> None:
    file = tmp_path / "problem.json"
    file.write_text(json.dumps(document()), encoding="utf-8")
    assert read_problem(file) == read(document())


def test_a_lay_is_written_in_exact_inches() -> None:
    problem = read(document())
    written = json.loads(json.dumps(lay_document(solve(problem), problem.table)))
    [cloth] = written["cloths"]
    assert set(cloth) == {
        "name",
        "bought_along",
        "used_along",
        "bound_along",
        "proved_least",
        "placements",
        "offcuts",
        "cuts",
    }
    assert Fraction(cloth["bought_along"]) >= Fraction(cloth["used_along"])
    assert written["unplaced"] == []
    keys = {"name", "copy", "on", "on_copy", "x", "y", "across", "along", "turned"}
    for placed in cloth["placements"]:
        assert set(placed) - {"run_copy"} == keys
        assert ("run_copy" in placed) == (placed["name"] == "binding")
    assert {cut["direction"] for cut in cloth["cuts"]} <= {"crosswise", "lengthwise"}
