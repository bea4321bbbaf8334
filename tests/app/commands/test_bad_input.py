"""Bad input ends in one plain sentence and exit status 2, and nothing is written."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest

from app.command_line import main
from tests.app.commands.bad_input import ASSETS, GOOD, ROWS, Row, spoilt

ROOT = ASSETS.parent


def outputs(command: str, folder: Path) -> list[str]:
    """Arguments that ask for every output there is; an older file waits where each goes."""
    asked = ["--json", str(folder / "old.json")]
    (folder / "old.json").write_text("an older plan", "utf-8")
    if command == "plan":
        asked += ["--pdf", str(folder / "old.pdf"), "--svg", str(folder / "pictures")]
        (folder / "old.pdf").write_text("an older packet", "utf-8")
    return asked


def contents(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in folder.iterdir()}


def assert_one_sentence(said: str, path: Path, named: str) -> None:
    """One line: the program, the file, the field, and a sentence that says what to write."""
    assert said.endswith("\n")
    [line] = said.splitlines()
    start = f"crossgrain: {path}: {named}: " if named else f"crossgrain: {path}: "
    assert line.startswith(start), line
    sentence = line.removeprefix(start)
    assert len(sentence) > 10
    assert sentence.isprintable()
    assert "Traceback" not in line


@pytest.mark.parametrize("row", ROWS, ids=str)
def test_bad_input_is_refused_in_one_sentence_and_nothing_is_written(
    row: Row, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "bad.file"
    path.write_text(row.text(), "utf-8")
    arguments = [row.command, str(path), *outputs(row.command, tmp_path)]
    before = contents(tmp_path)
    assert main(arguments) == 2
    out, err = capsys.readouterr()
    assert out == ""
    assert_one_sentence(err, path, row.path)
    assert contents(tmp_path) == before


def test_no_row_stands_twice() -> None:
    names = [str(row) for row in ROWS]
    assert len(names) == len(set(names))


@pytest.mark.parametrize("command", ["plan", "lay"])
def test_the_files_that_the_rows_spoil_are_good(command: str, tmp_path: Path) -> None:
    path = tmp_path / "good.file"
    path.write_text(spoilt(command), "utf-8")
    assert main([command, str(path), "--json", str(tmp_path / "out.json")]) == 0
    assert json.loads((tmp_path / "out.json").read_text("utf-8"))


@pytest.mark.parametrize("command", ["plan", "lay"])
@pytest.mark.parametrize("name", ["{across}", "{0}", "%s", "{", "\\N{DIGIT ONE}"])
def test_a_name_that_looks_like_a_template_is_only_a_name(
    command: str, name: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    document = GOOD[command]()
    if command == "lay":
        document["pieces"][0] |= {"name": name, "across": "43"}
    else:
        document["fabrics"].append({**document["fabrics"][0], "name": name, "width": "5"})
        document["sleeve"]["fabric"] = name
    path = tmp_path / "bad.file"
    path.write_text(json.dumps(document), "utf-8")
    assert main([command, str(path)]) == 2
    assert_one_sentence(
        capsys.readouterr().err, path, "pieces[0].across" if command == "lay" else "sleeve.depth"
    )


@pytest.mark.parametrize("command", ["plan", "lay"])
def test_a_file_that_is_no_text_is_refused(
    command: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "picture.png"
    path.write_bytes(b"\x89PNG\r\n\x1a\n\xff\xfe")
    assert main([command, str(path)]) == 2
    assert_one_sentence(capsys.readouterr().err, path, "")


@pytest.mark.parametrize("command", ["plan", "lay"])
def test_a_file_that_is_not_there_is_said(
    command: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "none"
    assert main([command, str(path)]) == 2
    assert_one_sentence(capsys.readouterr().err, path, "")


@pytest.mark.parametrize("command", ["plan", "lay"])
def test_a_folder_is_no_file(
    command: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main([command, str(tmp_path)]) == 2
    assert_one_sentence(capsys.readouterr().err, tmp_path, "")


@pytest.mark.parametrize("command", ["plan", "lay"])
def test_an_output_that_cannot_be_written_is_said(
    command: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "good.file"
    path.write_text(spoilt(command), "utf-8")
    assert main([command, str(path), "--json", str(tmp_path / "none" / "out.json")]) == 2
    assert_one_sentence(capsys.readouterr().err, tmp_path / "none" / "out.json", "")


# The same in a process of its own, where nothing can hide: one row of each kind.
IN_A_PROCESS = (
    "plan: an empty file",
    "plan: no JSON",
    "plan: a newer version at version",
    "plan: NaN at quilt.width",
    "plan: an unknown key at binding.colour",
    "plan: a border that no cloth gives in one piece",
    "plan: cloth on hand that is not enough",
    "lay: nesting without end",
    "lay: zero at runs[0].needs",
    "lay: a strip wider than the cloth at runs[0].strip",
)


@pytest.mark.parametrize("name", IN_A_PROCESS)
def test_bad_input_in_a_process_of_its_own(name: str, tmp_path: Path) -> None:
    [row] = [row for row in ROWS if str(row) == name]
    path = tmp_path / "bad.file"
    path.write_text(row.text(), "utf-8")
    asked = outputs(row.command, tmp_path)
    before = contents(tmp_path)
    run = subprocess.run(
        [sys.executable, "-m", "app", row.command, str(path), *asked],
        cwd=ROOT, capture_output=True, text=True, encoding="utf-8", check=False,
    )  # fmt: skip
    assert run.returncode == 2
    assert run.stdout == ""
    assert_one_sentence(run.stderr, path, row.path)
    assert contents(tmp_path) == before
