"""`plan`: words, JSON, PDF and pictures from a project file."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from fractions import Fraction
from pathlib import Path
from xml.etree import ElementTree

import pytest

from app.command_line import main
from core.plan import make_plan
from core.plan_json import plan_document
from core.project_file import load
from tests.app.commands.bad_input import ASSETS

ROOT = ASSETS.parent
DEMOS = [ASSETS / "harbour-lights.crossgrain", ASSETS / "tide-pool-runner.crossgrain"]


@pytest.mark.parametrize("demo", DEMOS, ids=lambda path: path.stem)
def test_a_demo_is_planned_in_words(demo: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["plan", str(demo)]) == 0
    out, err = capsys.readouterr()
    assert err == ""
    plan = make_plan(load(demo))
    assert out.startswith(plan.project.quilt.name)
    for fabric in plan.fabrics:
        assert f"  {fabric.fabric.name}: " in out
        if fabric.buy.along:
            assert fabric.buy.sale_text in out
    for part in plan.parts:
        assert f"  {part.letter}  {part.count} × {part.name}" in out
    for warning in plan.warnings:
        assert warning.text in out


@pytest.mark.parametrize("demo", DEMOS, ids=lambda path: path.stem)
def test_json_on_standard_output_is_json_and_nothing_else(
    demo: Path, capfdbinary: pytest.CaptureFixture[bytes]
) -> None:
    assert main(["plan", str(demo), "--json", "-"]) == 0
    out, err = capfdbinary.readouterr()
    assert json.loads(out) == plan_document(make_plan(load(demo)))
    assert err == b""


@pytest.mark.parametrize("demo", DEMOS, ids=lambda path: path.stem)
def test_every_output_at_once(demo: Path, tmp_path: Path) -> None:
    asked = ["--json", str(tmp_path / "plan.json"), "--pdf", str(tmp_path / "packet.pdf")]
    assert main(["plan", str(demo), *asked, "--svg", str(tmp_path / "a" / "b")]) == 0
    document = json.loads((tmp_path / "plan.json").read_text("utf-8"))
    assert all(Fraction(fabric["buy"]["along"]) >= 0 for fabric in document["fabrics"])
    assert (tmp_path / "packet.pdf").read_bytes().startswith(b"%PDF-")
    pictures = sorted((tmp_path / "a" / "b").iterdir())
    sheets = sum(len(fabric.lay.sheets) for fabric in make_plan(load(demo)).fabrics)
    assert len(pictures) == 3 + sheets, "the quilt, its back, its edge and every sheet"
    for picture in pictures:
        assert ElementTree.parse(picture).getroot().tag.endswith("svg")


@pytest.mark.parametrize("paper", ["letter", "a4"])
@pytest.mark.parametrize("grey", [[], ["--grey"]])
def test_the_same_project_gives_the_same_packet(
    paper: str, grey: list[str], tmp_path: Path
) -> None:
    for name in ("one.pdf", "two.pdf"):
        words = ["plan", str(DEMOS[1]), "--pdf", str(tmp_path / name), "--paper", paper, *grey]
        assert main(words) == 0
    assert (tmp_path / "one.pdf").read_bytes() == (tmp_path / "two.pdf").read_bytes()


@pytest.mark.parametrize("encoding", ["ascii", "cp1252", "cp437"])
def test_words_print_on_terminals_that_lack_a_letter(encoding: str) -> None:
    environment = {**os.environ, "PYTHONIOENCODING": encoding}
    ran = subprocess.run(
        [sys.executable, "-m", "app", "plan", str(DEMOS[0])],
        cwd=ROOT, env=environment, capture_output=True, check=False,
    )  # fmt: skip
    assert ran.returncode == 0
    assert ran.stderr == b""
    assert b"Harbour Lights" in ran.stdout


def test_a_project_with_foreign_letters_in_its_name_and_path(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "Möwe und Düne.crossgrain"
    document = json.loads(DEMOS[1].read_text("utf-8"))
    document["quilt"]["name"] = "नीला / शमी"
    document["fabrics"][0]["name"] = "../../שמיים"
    document["binding"]["fabric"] = "../../שמיים"
    path.write_text(json.dumps(document, ensure_ascii=False), "utf-8")
    assert main(["plan", str(path), "--svg", str(tmp_path / "pictures")]) == 0
    assert "नीला" in capsys.readouterr().out
    assert {p.suffix for p in (tmp_path / "pictures").iterdir()} == {".svg"}
    assert sorted(p.name for p in tmp_path.iterdir()) == ["Möwe und Düne.crossgrain", "pictures"]


def test_an_older_output_stays_whole_when_another_cannot_be_written(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "packet.pdf").write_text("an older packet", "utf-8")
    words = ["--json", str(tmp_path / "none" / "x.json"), "--pdf", str(tmp_path / "packet.pdf")]
    assert main(["plan", str(DEMOS[1]), *words]) == 2
    assert len(capsys.readouterr().err.splitlines()) == 1
    assert (tmp_path / "packet.pdf").read_text("utf-8") == "an older packet"
