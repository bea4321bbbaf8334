"""The command line: what it does with its words, and what it loads to do it."""

from __future__ import annotations

import argparse
import json
import subprocess
import sys
from errno import EACCES
from pathlib import Path

import pytest

from app.command_line import BAD_INPUT, complain, main
from app.commands import NAMES, command
from app.first_run.needs import needs_of
from tests.app.commands.bad_input import ASSETS, lay

ROOT = ASSETS.parent
DEMO = str(ASSETS / "harbour-lights.crossgrain")


def run(*words: str, text: str | None = None) -> subprocess.CompletedProcess[str]:
    """Python with these words after it, in a process of its own."""
    return subprocess.run(
        [sys.executable, *words], cwd=ROOT, input=text, capture_output=True, text=True,
        encoding="utf-8", check=False,
    )  # fmt: skip


def modules_after(*argv: str) -> set[str]:
    """What is loaded once the command line has run; its own output goes nowhere."""
    script = (
        "import contextlib, io, json, sys\n"
        "from app.command_line import main\n"
        "out = io.TextIOWrapper(io.BytesIO())\n"
        "with contextlib.redirect_stdout(out):\n"
        f"    status = main({list(argv)!r})\n"
        "print(json.dumps([status, sorted(sys.modules)]))\n"
    )
    ran = run("-c", script)
    assert ran.returncode == 0, ran.stderr
    status, modules = json.loads(ran.stdout)
    assert status == 0
    return set(modules)


def loaded(modules: set[str], *packages: str) -> list[str]:
    return sorted(name for name in modules if name.partition(".")[0] in packages)


@pytest.fixture
def problem(tmp_path: Path) -> str:
    path = tmp_path / "problem.json"
    path.write_text(json.dumps(lay()), "utf-8")
    return str(path)


QT = ("PySide6", "shiboken6", "qtpy")


def test_plan_loads_neither_qt_nor_paper(tmp_path: Path) -> None:
    modules = modules_after("plan", DEMO, "--json", str(tmp_path / "plan.json"))
    assert loaded(modules, *QT) == []
    assert loaded(modules, "reportlab", "PIL") == []


@pytest.mark.parametrize("option", ["--json", "--svg", "--pdf"])
def test_what_a_headless_plan_loads_is_what_its_first_run_installs(
    option: str, tmp_path: Path
) -> None:
    words = ["plan", DEMO, option, str(tmp_path / "out")]
    modules = modules_after(*words)
    needs = needs_of("app", words, {}).requirements
    assert bool(loaded(modules, "reportlab")) == any("reportlab" in need for need in needs)
    assert loaded(modules, *QT) == []


def test_lay_loads_neither_qt_nor_paper_nor_the_quilt_it_is_for(problem: str) -> None:
    modules = modules_after("lay", problem, "--json", "-")
    assert loaded(modules, *QT) == []
    assert loaded(modules, "reportlab", "PIL") == []


def test_a_plan_loads_only_what_it_needs() -> None:
    """From the standard library and this program; a cold start stays near Python's own."""
    modules = modules_after("plan", DEMO, "--json", "-")
    own = {"app", "core", "__main__"}
    elsewhere = {name.partition(".")[0] for name in modules} - own - set(sys.stdlib_module_names)
    # What an environment hooks into every start of Python is not ours to judge.
    hooked = {name.partition(".")[0] for name in json.loads(run(
        "-c", "import json, sys; print(json.dumps(sorted(sys.modules)))"
    ).stdout)}  # fmt: skip
    assert elsewhere - hooked == set()
    assert loaded(modules, "sqlite3", "asyncio", "unittest", "tkinter", "http") == []


@pytest.mark.parametrize("option", ["--help", "-h"])
def test_help_names_the_commands(option: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        main([option])
    assert ended.value.code == 0
    said = capsys.readouterr().out
    assert "plan" in said
    assert "lay" in said


@pytest.mark.parametrize("command", ["plan", "lay"])
def test_each_command_has_help(command: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        main([command, "--help"])
    assert ended.value.code == 0
    assert "--json" in capsys.readouterr().out


@pytest.mark.parametrize("name", NAMES)
def test_each_word_of_a_command_has_help(name: str) -> None:
    parser = argparse.ArgumentParser()
    command(name).add_arguments(parser)
    assert [action.dest for action in parser._actions if not action.help] == []


def test_the_version_is_one_line(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        main(["--version"])
    assert ended.value.code == 0
    [line] = capsys.readouterr().out.splitlines()
    assert line.startswith("crossgrain ")


@pytest.mark.parametrize(
    "words",
    [["frobnicate", "file"], ["--frobnicate"], ["none.crossgrain"], ["plan.crossgrain", "other"]],
)
def test_words_that_mean_nothing_are_answered_in_one_sentence(
    words: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(words) == BAD_INPUT
    [line] = capsys.readouterr().err.splitlines()
    assert line.startswith("crossgrain: ")
    assert words[0] in line


def test_a_project_that_may_not_be_looked_at_is_not_called_missing(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def locked(path: str) -> None:
        raise PermissionError(EACCES, "Permission denied", path)

    monkeypatch.setattr("app.command_line.stat", locked)
    assert main(["away/quilt.crossgrain"]) == BAD_INPUT
    assert capsys.readouterr().err == "crossgrain: away/quilt.crossgrain: Permission denied\n"


@pytest.mark.parametrize(
    "words",
    [
        ["plan"],
        ["plan", "a", "b"],
        ["plan", DEMO, "--paper", "foolscap"],
        ["plan", DEMO, "--colour"],
        ["plan", DEMO, "--js", "-"],
        ["lay"],
        ["lay", "a", "--seconds", "soon"],
        ["lay", "a", "--seconds", "-1"],
        ["lay", "a", "--seconds", "nan"],
        ["lay", "a", "--seconds", "1e9"],
    ],
)
def test_wrong_words_after_a_command_end_with_status_2(
    words: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit) as ended:
        main(words)
    assert ended.value.code == BAD_INPUT
    assert "usage: crossgrain" in capsys.readouterr().err


def test_a_complaint_goes_to_standard_error(capsys: pytest.CaptureFixture[str]) -> None:
    assert complain("something is wrong") == BAD_INPUT
    assert capsys.readouterr() == ("", "crossgrain: something is wrong\n")


@pytest.mark.parametrize("name", NAMES)
def test_each_command_is_a_module_of_its_name(name: str) -> None:
    assert command(name).HELP


def test_a_command_loads_no_other() -> None:
    assert not loaded(modules_after("plan", DEMO, "--json", "-"), "core.compare")
