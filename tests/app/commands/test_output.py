"""Where a command's results go: never over what they come from, and told where they cannot."""

from __future__ import annotations

import errno
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import TextIO

import pytest

from app.command_line import BAD_INPUT, NOBODY_READS, main
from tests.app.commands.bad_input import ASSETS

ROOT = ASSETS.parent
DEMO = ASSETS / "harbour-lights.crossgrain"
FULL = Path("/dev/full")
needs_full = pytest.mark.skipif(not FULL.exists(), reason="this system has no /dev/full")


@pytest.fixture
def project(tmp_path: Path) -> Path:
    path = tmp_path / "quilt.crossgrain"
    path.write_bytes(DEMO.read_bytes())
    return path


OVER_ITSELF: dict[str, Callable[[str, str], list[str]]] = {
    "plan": lambda file, out: ["plan", file, "--pdf", out],
    "plan as JSON": lambda file, out: ["plan", file, "--json", out],
    "compare": lambda file, out: [
        *("compare", file, "--strip-width", "2", "--strip-width", "2.5", "--json", out)
    ],
    "staircase": lambda file, out: ["staircase", file, "--json", out],
    "reverse": lambda file, out: ["reverse", "copies", file, "--json", out],
}


@pytest.mark.parametrize("command", OVER_ITSELF)
def test_no_result_takes_the_place_of_what_it_comes_from(
    command: str, project: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    roundabout = str(tmp_path / "." / ".." / tmp_path.name / project.name)
    assert main(OVER_ITSELF[command](str(project), roundabout)) == BAD_INPUT
    out, err = capsys.readouterr()
    assert out == ""
    assert err == f"crossgrain: {project}: this is the file to read; name another one to write\n"
    assert project.read_bytes() == DEMO.read_bytes()


@pytest.mark.skipif(os.name == "nt", reason="links need a right of their own there")
def test_a_link_is_the_file_that_it_leads_to(project: Path, tmp_path: Path) -> None:
    link = tmp_path / "link.crossgrain"
    link.symlink_to(project)
    assert main(["plan", str(link), "--json", str(project)]) == BAD_INPUT
    assert project.read_bytes() == DEMO.read_bytes()


@pytest.mark.skipif(os.name == "nt", reason="links need a right of their own there")
def test_links_in_a_ring_are_replaced_by_what_is_written(project: Path, tmp_path: Path) -> None:
    one, other = tmp_path / "one", tmp_path / "other"
    one.symlink_to(other)
    other.symlink_to(one)
    assert main(["plan", str(project), "--json", str(one)]) == 0
    assert main(["plan", str(other), "--json", str(tmp_path / "plan")]) == BAD_INPUT


@pytest.mark.parametrize("out", ["one", "-"])
def test_two_results_are_not_written_over_each_other(
    out: str, project: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    where = out if out == "-" else str(tmp_path / out)
    assert main(["plan", str(project), "--json", where, "--csv", str(tmp_path / "t"),
                 "--pdf", where]) == BAD_INPUT  # fmt: skip
    said, err = capsys.readouterr()
    name = "standard output" if out == "-" else where
    assert err.endswith(f": two results would go to {name}; name a file for each\n")
    assert said == ""
    assert [path.name for path in tmp_path.iterdir()] == [project.name]


def test_a_packet_on_standard_output_has_no_words_after_it(
    project: Path, capfdbinary: pytest.CaptureFixture[bytes]
) -> None:
    assert main(["plan", str(project), "--pdf", "-"]) == 0
    out, _ = capfdbinary.readouterr()
    assert out.startswith(b"%PDF")
    assert out.rstrip().endswith(b"%%EOF")


def closed_pipe() -> TextIO:
    """A pipe that nobody reads any more."""
    read, write = os.pipe()
    os.close(read)
    return os.fdopen(write, "w", encoding="utf-8")


@pytest.mark.parametrize("words", [["--json", "-"], []])
def test_a_pipe_that_nobody_reads_ends_it_without_a_word(
    words: list[str], project: Path, monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:  # fmt: skip
    with closed_pipe() as out:
        monkeypatch.setattr(sys, "stdout", out)
        assert main(["plan", str(project), *words]) == NOBODY_READS
    assert capsys.readouterr().err == ""


@needs_full
@pytest.mark.parametrize("words", [["--json", "-"], []])
def test_standard_output_that_is_full_is_told_by_its_name(
    words: list[str],
    project: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    with FULL.open("w", encoding="utf-8") as out:
        monkeypatch.setattr(sys, "stdout", out)
        assert main(["plan", str(project), *words]) == BAD_INPUT
    assert capsys.readouterr().err == f"crossgrain: standard output: {os.strerror(errno.ENOSPC)}\n"


def test_standard_output_that_is_closed_is_told_once_the_files_are_written(
    project: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:  # fmt: skip
    monkeypatch.setattr(sys, "stdout", None)
    assert main(["plan", str(project), "--json", str(tmp_path / "plan.json")]) == BAD_INPUT
    assert capsys.readouterr().err == "crossgrain: standard output: it is closed\n"
    assert (tmp_path / "plan.json").exists()


@pytest.mark.parametrize("closed", [True, False])
def test_a_complaint_that_nobody_can_read_is_still_a_status(
    closed: bool, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with closed_pipe() as pipe:
        monkeypatch.setattr(sys, "stderr", None if closed else pipe)
        assert main(["plan", str(tmp_path / "none")]) == BAD_INPUT


@needs_full
@pytest.mark.parametrize("words", [["--help"], [str(DEMO)]])
def test_python_adds_nothing_to_the_one_sentence_when_it_ends(words: list[str]) -> None:
    environ = {key: value for key, value in os.environ.items() if key != "PYTHONUNBUFFERED"}
    with FULL.open("w", encoding="utf-8") as out:
        run = subprocess.run(
            [sys.executable, "-m", "app", "plan", *words], cwd=ROOT, stdout=out, env=environ,
            stderr=subprocess.PIPE, text=True, encoding="utf-8", check=False,
        )  # fmt: skip
    assert run.returncode == BAD_INPUT
    assert run.stderr == f"crossgrain: standard output: {os.strerror(errno.ENOSPC)}\n"
