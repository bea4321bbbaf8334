"""`lay`: a lay problem in JSON to a lay in JSON."""

from __future__ import annotations

import json
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from app.command_line import main
from core.lay.check import check
from core.lay.lay_file import lay_document, problem_from_text
from core.lay.solve import solve
from tests.app.commands.bad_input import lay

CLOTH_KEYS = {
    "name", "bought_along", "used_along", "bound_along", "proved_least", "placements", "offcuts",
    "cuts",
}  # fmt: skip


def laid(tmp_path: Path, document: dict[str, Any], *words: str) -> dict[str, Any]:
    path, out = tmp_path / "problem.json", tmp_path / "lay.json"
    path.write_text(json.dumps(document), "utf-8")
    assert main(["lay", str(path), "--json", str(out), *words]) == 0
    answer: dict[str, Any] = json.loads(out.read_text("utf-8"))
    return answer


def test_the_contract_is_kept(tmp_path: Path) -> None:
    answer = laid(tmp_path, lay())
    assert answer["unplaced"] == []
    [cloth] = answer["cloths"]
    assert set(cloth) >= CLOTH_KEYS
    assert {placed["on"] for placed in cloth["placements"]} <= {"bolt", "on_hand[0]"}
    for placed in cloth["placements"]:
        assert all(Fraction(placed[key]) >= 0 for key in ("x", "y", "across", "along"))


def test_what_is_written_is_what_the_solver_finds(tmp_path: Path) -> None:
    problem = problem_from_text(json.dumps(lay()))
    found = solve(problem)
    assert check(problem, found) == ()
    assert laid(tmp_path, lay()) == lay_document(found, problem.table)


def test_it_is_written_to_standard_output_by_default(
    tmp_path: Path, capfdbinary: pytest.CaptureFixture[bytes]
) -> None:
    path = tmp_path / "problem.json"
    path.write_text(json.dumps(lay()), "utf-8")
    assert main(["lay", str(path)]) == 0
    assert json.loads(capfdbinary.readouterr().out)["unplaced"] == []


@pytest.mark.parametrize("seconds", ["0", "0.2"])
def test_the_search_ends_when_it_is_told_to(seconds: str, tmp_path: Path) -> None:
    assert laid(tmp_path, lay(), "--seconds", seconds)["unplaced"] == []


def test_what_finds_no_room_on_hand_is_listed_and_said(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    document = lay()
    document["cloths"][0]["buy_more"] = False
    answer = laid(tmp_path, document)
    assert {gone["name"] for gone in answer["unplaced"]} >= {"A"}
    assert all(set(gone) == {"name", "count"} for gone in answer["unplaced"])
    said = capsys.readouterr().err.splitlines()
    assert len(said) == len(answer["unplaced"])


def test_lengths_count_in_the_units_of_the_file(tmp_path: Path) -> None:
    document = lay() | {"units": "cm", "runs": []}
    document["cloths"][0] |= {"usable_width": "107", "sale_unit": "10", "on_hand": []}
    [cloth] = laid(tmp_path, document)["cloths"]
    assert {Fraction(placed["along"]) for placed in cloth["placements"]} == {Fraction(2000, 127)}
