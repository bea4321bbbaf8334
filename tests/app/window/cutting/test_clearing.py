"""Kept cuttings are cleared away when they are of no more use, and never before."""

from __future__ import annotations

import json
import os
import time
from pathlib import Path

import pytest

from app.window.cutting.clearing import DAY, clear_away
from app.window.cutting.cuttings import SUFFIX, Cuttings
from core.cutting.cutting import Cutting, begin
from core.plan import Plan, make_plan
from tests.core.demos import demo

MONTHS, YEARS = 60 * DAY, 800 * DAY


@pytest.fixture(scope="module")
def plan() -> Plan:
    return make_plan(demo("tide-pool-runner"), draft=True)


def begun(plan: Plan) -> Cutting:
    cutting = begin(plan)
    return cutting.with_cloth(0, cutting.cloths[0].cut_once())


def finished(plan: Plan) -> Cutting:
    cutting = begin(plan)
    for place, cloth in enumerate(cutting.cloths):
        while cloth.next_cut is not None:
            cloth = cloth.cut_once()
        cutting = cutting.with_cloth(place, cloth)
    return cutting


def kept(tmp_path: Path, plan: Plan, cutting: Cutting, path: Path | None, idle: float) -> Path:
    """The file of a cutting that was kept so many seconds ago."""
    cuttings = Cuttings(path, plan, tmp_path / "kept")
    cuttings.keep(cutting)
    moment = time.time() - idle
    os.utime(cuttings.file, (moment, moment))
    return cuttings.file


def stays(file: Path, but: Path | None = None) -> bool:
    clear_away(file.parent, but or file.parent / "none")
    return file.exists()


def test_a_finished_cutting_stays_a_month(plan: Plan, tmp_path: Path) -> None:
    path = tmp_path / "quilt.crossgrain"
    path.touch()
    assert stays(kept(tmp_path, plan, finished(plan), path, 20 * DAY))
    assert not stays(kept(tmp_path, plan, finished(plan), path, MONTHS))


def test_an_unfinished_cutting_of_a_project_that_exists_stays(plan: Plan, tmp_path: Path) -> None:
    path = tmp_path / "quilt.crossgrain"
    path.touch()
    assert stays(kept(tmp_path, plan, begun(plan), path, YEARS))


def test_a_project_counts_as_gone_from_when_it_was_last_seen(plan: Plan, tmp_path: Path) -> None:
    path = tmp_path / "quilt.crossgrain"
    path.touch()
    file = kept(tmp_path, plan, begun(plan), path, YEARS)
    assert stays(file)
    path.unlink()
    assert stays(file)


@pytest.mark.parametrize("saved", [True, False])
def test_a_cutting_whose_project_is_long_gone_is_removed(
    plan: Plan, tmp_path: Path, *, saved: bool
) -> None:
    path = tmp_path / "quilt.crossgrain" if saved else None
    assert stays(kept(tmp_path, plan, begun(plan), path, MONTHS))
    assert not stays(kept(tmp_path, plan, begun(plan), path, YEARS))


def test_a_project_in_a_folder_that_cannot_be_seen_may_exist(plan: Plan, tmp_path: Path) -> None:
    path = tmp_path / "a drive that is not plugged in" / "quilt.crossgrain"
    assert stays(kept(tmp_path, plan, begun(plan), path, YEARS))


def test_what_is_in_use_stays(plan: Plan, tmp_path: Path) -> None:
    file = kept(tmp_path, plan, finished(plan), None, YEARS)
    assert stays(file, but=file)


def test_what_cannot_be_read_or_does_not_say_whose_it_is_stays(plan: Plan, tmp_path: Path) -> None:
    file = kept(tmp_path, plan, begun(plan), None, 0)
    document = json.loads(file.read_text(encoding="utf-8"))
    del document["project"]
    other = file.with_name(f"other{SUFFIX}")
    other.write_text("{", encoding="utf-8")
    file.write_text(json.dumps(document), encoding="utf-8")
    for one in (file, other):
        os.utime(one, (1, 1))
    assert stays(file)
    assert other.exists()
