"""The command line asks, refuses and explains in the language spoken."""

from __future__ import annotations

import contextlib
import re
from collections.abc import Iterator
from enum import StrEnum
from pathlib import Path
from typing import Any

import pytest

from app.command_line import main
from app.commands import NAMES
from core import binding_choices, fabric, layers, lengths, measured, quilt, shape
from tests.app.commands.bad_input import GOOD, ROWS, Row
from tests.stand_in import untold

# What a person writes into a file or on a command line is the same in every language.
FORMAT = {
    "true", "false", "null", "NaN", "Infinity", "bolt", "JSON", "UTF", "PDF", "PNG", "CSV",
    "crossgrain", "project", "measured", "squaring", "table", "take", "outline",
}  # fmt: skip


@pytest.fixture(autouse=True)
def only_the_stand_in(stand_in: None, monkeypatch: pytest.MonkeyPatch) -> None:
    """No command goes over to the terminal's own language."""
    monkeypatch.setattr("app.languages.speak_language", lambda language: None)


def words_of(value: Any) -> Iterator[str]:  # noqa: ANN401 - any value of JSON
    match value:
        case dict():
            for key, inner in value.items():
                yield from re.findall(r"[A-Za-z]+", key)
                yield from words_of(inner)
        case list():
            for inner in value:
                yield from words_of(inner)
        case str():
            yield from re.findall(r"[A-Za-z]+", value)


KINDS = {
    kind
    for room in (binding_choices, fabric, layers, lengths, measured, quilt, shape)
    for kind in vars(room).values()
    if isinstance(kind, type) and issubclass(kind, StrEnum)
}
KEYS = {word for make in GOOD.values() for word in words_of(make())} | {
    word for kind in KINDS for value in kind for word in words_of(value.value)
}
# What a file's values may be, as refusals list them, and what is written on the command line.
CHOSEN = {*NAMES, *KEYS, "letter"}


def left(text: str, *own: str) -> list[str]:
    return [word for word in untold(text) if word not in FORMAT and word not in own]


def said_by(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    """What the command line says of these words."""
    with contextlib.suppress(SystemExit):
        main(words)
    out, err = capsys.readouterr()
    return out + err


@pytest.mark.parametrize("row", ROWS[::3], ids=str)
def test_what_is_wrong_with_a_file_is_told(
    row: Row, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "ξ.ξ"
    path.write_text(row.text(), "utf-8")
    said = said_by(capsys, row.command, str(path), "--json", str(tmp_path / "ζ"))
    sentence = said.replace(str(path), "").replace(row.path, "")
    assert left(re.sub(r'"[^"]*"', "", sentence), *KEYS) == []


@pytest.mark.parametrize("name", [(), *((name,) for name in NAMES)], ids=str)
def test_the_help_of_every_command_is_told(
    name: tuple[str, ...], capsys: pytest.CaptureFixture[str]
) -> None:
    said = re.sub(r"--[a-z-]+|\{[^}]*\}", "", said_by(capsys, *name, "--help"))
    assert left(said, *CHOSEN) == []


@pytest.mark.parametrize(
    "words",
    [
        ("plan",),
        ("plan", "ξ", "--paper", "ξ"),
        ("plan", "ξ", "ξ"),
        ("lay", "ξ", "--seconds", "ξ"),
        ("staircase", "ξ", "--strip-width", "--usable-width"),
        ("ξ", "ξ"),
        ("ξ.ξ",),
        ("plan", "ξ.ξ"),
    ],
)
def test_what_is_wrong_with_the_words_is_told(
    words: tuple[str, ...], capsys: pytest.CaptureFixture[str]
) -> None:
    said = re.sub(r"--[a-z-]+|\{[^}]*\}", "", said_by(capsys, *words))
    assert said
    assert left(said, *CHOSEN) == []
