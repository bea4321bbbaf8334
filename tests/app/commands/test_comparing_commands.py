"""`compare`, `staircase` and `reverse`, from the command line."""

from __future__ import annotations

import json
from fractions import Fraction
from pathlib import Path

import pytest
from pypdf import PdfReader

from app.command_line import main
from core.lengths import Units, show, typeset
from tests.core.demos import demo_path

HARBOUR, RUNNER = str(demo_path("harbour-lights")), str(demo_path("tide-pool-runner"))
STRIPS = ["--strip-width", "2", "--strip-width", "2.25", "--strip-width", "2 1/2"]


def said(capsys: pytest.CaptureFixture[str]) -> str:
    return capsys.readouterr().out


def test_compare_prints_a_column_a_value(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["compare", HARBOUR, *STRIPS]) == 0
    head, *lines = said(capsys).splitlines()
    assert head.split("  ")[-1].strip() == "2 1/2 in"
    lost = next(line for line in lines if line.startswith("binding lost in joins"))
    cells = lost.removeprefix("binding lost in joins").split()
    assert " ".join(cells) == "8 in * 9 in 10 in"


def test_compare_writes_json_and_nothing_else_to_standard_output(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["compare", HARBOUR, *STRIPS, "--json", "-"]) == 0
    document = json.loads(said(capsys))
    assert [column["value"] for column in document["columns"]] == ["2 in", "2 1/4 in", "2 1/2 in"]


@pytest.mark.parametrize(("count", "paper"), [(2, "letter"), (3, "a4"), (6, "letter")])
def test_the_page_holds_every_column_and_row(
    count: int, paper: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "page.pdf"
    values = [f"{2 + number / 4}" for number in range(count)]
    asked = [word for value in values for word in ("--strip-width", value)]
    status = main(["compare", HARBOUR, *asked, "--pdf", str(out), "--paper", paper])
    assert status == 0
    pages = PdfReader(out).pages
    text = pages[0].extract_text().replace("\u00a0", " ")
    assert len(pages) == 1
    assert "narrowest usable" in text
    assert all(typeset(show(Fraction(value), Units.INCHES)) in text for value in values)
    assert "proved least" in said(capsys)


@pytest.mark.parametrize(
    ("words", "sentence"),
    [
        (["compare", HARBOUR], "two to six values of one choice"),
        (["compare", HARBOUR, *STRIPS, "--joins", "diagonal"], "two to six values of one choice"),
        (["compare", HARBOUR, "--strip-width", "2"], "at least two values"),
        (
            ["compare", HARBOUR, "--usable-width", "40", "--usable-width", "41", "--of", "moss"],
            "moss",
        ),
        (["staircase", HARBOUR, "--from", "wide"], "not one clear length"),
        (["staircase", HARBOUR, "--from", "4", "--to", "1"], "narrower width first"),
        (["reverse", "widest-strip", HARBOUR], "no night sky on hand"),
        (["reverse", "enough", HARBOUR, "--part", "hem"], "no such part"),
    ],
)
def test_bad_input_is_one_sentence(
    words: list[str], sentence: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(words) == 2
    captured = capsys.readouterr()
    assert sentence in captured.err
    assert captured.err.count("\n") == 1
    assert captured.out == ""


def test_the_staircase_says_where_the_present_width_stands(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["staircase", HARBOUR, "--usable-width", "--of", "tide stripe"]) == 0
    lines = said(capsys).splitlines()
    assert sum("<- now" in line for line in lines) == 1
    assert lines[-1].startswith("The usable width now is")


def test_the_staircase_on_paper_lists_every_step(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "steps.pdf"
    assert main(["staircase", HARBOUR, "--from", "1", "--pdf", str(out), "--grey"]) == 0
    steps = [line for line in said(capsys).splitlines() if ": " in line]
    text = PdfReader(out).pages[0].extract_text()
    assert "1 in" in text
    assert text.count("night sky") >= sum("night sky" in line for line in steps)


def test_the_staircase_as_json_covers_the_range(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["staircase", HARBOUR, "--from", "2", "--to", "3", "--json", "-"]) == 0
    steps = json.loads(said(capsys))["steps"]
    assert (steps[0]["first"], steps[-1]["last"]) == ("2", "3")


@pytest.mark.parametrize(
    ("question", "path", "words"),
    [
        ("widest-strip", RUNNER, "Widest binding strip: 5 1/2 in"),
        ("largest-quilt", RUNNER, "Longest quilt"),
        ("copies", RUNNER, "From the cloth on hand alone: 1 quilt"),
        ("enough", RUNNER, "shelf blue: enough"),
        ("to-buy", RUNNER, "To buy:"),
        ("how-narrow", HARBOUR, "narrowest usable width"),
    ],
)
def test_every_question_has_words_and_a_document(
    question: str, path: str, words: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "answer.json"
    assert main(["reverse", question, path, "--json", str(out)]) == 0
    assert words in said(capsys)
    assert json.loads(out.read_text("utf-8"))["version"] == 1
