"""Reading JSON with care: types, ranges, unknown keys, and files that are none."""

from __future__ import annotations

from enum import StrEnum
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from core.lengths import Units
from core.reading import LARGEST_FILE, Fields, json_object, share, text_of
from core.refusal import Refusal

F = Fraction
GOOD = '{"format": "crossgrain-test", "version": 1}'


class Fruit(StrEnum):
    PEAR = "pear"
    PLUM = "plum"


def fields(**values: object) -> Fields:
    return Fields(values, "basket")


def refused(read: Any, *arguments: object, **named: object) -> Refusal:  # noqa: ANN401 - any getter
    with pytest.raises(Refusal) as caught:
        read(*arguments, **named)
    assert len(str(caught.value).splitlines()) == 1
    return caught.value


def kinds_of(text: str) -> dict[str, Any]:
    return json_object(text, "crossgrain-test", 1)


def test_a_good_file_is_read() -> None:
    assert kinds_of(GOOD) == {"format": "crossgrain-test", "version": 1}


@pytest.mark.parametrize(
    ("text", "path", "words"),
    [
        ("", "", "empty"),
        (" \n\t", "", "empty"),
        ("{", "", "not JSON (line 1"),
        ("[1, 2]\n]", "", "not JSON (line 2"),
        ("not json", "", "not JSON"),
        ("[]", "", "no JSON object"),
        ('"text"', "", "no JSON object"),
        ("null", "", "no JSON object"),
        ("{}", "format", "another kind"),
        ('{"format": "other", "version": 1}', "format", "another kind"),
        ('{"format": "crossgrain-test"}', "version", "write 1"),
        ('{"format": "crossgrain-test", "version": "1"}', "version", "write 1"),
        ('{"format": "crossgrain-test", "version": true}', "version", "write 1"),
        ('{"format": "crossgrain-test", "version": 0}', "version", "write 1"),
        ('{"format": "crossgrain-test", "version": 1.0}', "version", "write 1"),
        ('{"format": "crossgrain-test", "version": 2}', "version", "newer program"),
        ('{"format": "crossgrain-test", "version": NaN}', "version", "write 1"),
        ('{"format": -Infinity, "version": 1}', "format", "another kind"),
        ('{"format": "a", "format": "b"}', "format", "written twice"),
        ('{"x": {"y": 1, "z": 2, "y": 3}}', "y", "written twice"),
        ('{"a\\nb": 1, "a\\nb": 2}', "a b", "written twice"),
        ('{"version": ' + "9" * 5000 + "}", "", "far too long"),
        ("[" * 100_000 + "]" * 100_000, "", "nested too deeply"),
    ],
)
def test_what_is_no_such_file_is_refused(text: str, path: str, words: str) -> None:
    refusal = refused(kinds_of, text)
    assert refusal.path == path
    assert words in refusal.sentence


def test_a_file_that_is_not_text_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "picture"
    path.write_bytes(b"\x89PNG\xff\xfe")
    assert "not text" in refused(text_of, path).sentence


def test_a_huge_file_is_refused_unread(tmp_path: Path) -> None:
    path = tmp_path / "huge"
    with path.open("wb") as out:
        out.truncate(LARGEST_FILE + 1)
    assert "far too large" in refused(text_of, path).sentence


def test_a_file_that_is_not_there_is_the_systems_to_say(tmp_path: Path) -> None:
    with pytest.raises(FileNotFoundError):
        text_of(tmp_path / "none")


@pytest.mark.parametrize("value", [None, [], "text", 3, True])
def test_an_object_is_asked_for_where_there_is_none(value: object) -> None:
    assert refused(Fields, value, "quilt").path == "quilt"


def test_a_missing_key_is_named_with_its_path() -> None:
    assert refused(fields().text, "name").path == "basket.name"
    assert refused(Fields({}, "").text, "name").path == "name"


@pytest.mark.parametrize("value", [None, 3, 2.5, True, [], {}, float("nan"), "", " ", "x" * 81])
def test_what_is_no_name_is_refused(value: object) -> None:
    assert refused(fields(name=value).text, "name").path == "basket.name"


@pytest.mark.parametrize("value", ["two\nlines", "bell\a", "nul\0", "\ud800", "\u202e"])
def test_a_name_is_one_printable_line(value: str) -> None:
    assert "one line" in refused(fields(name=value).text, "name").sentence


def test_a_name_may_be_empty_only_where_it_may() -> None:
    assert fields(name="").text("name", empty=True) == ""


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (3, "text in quotes"),
        (2.5, "text in quotes"),
        (None, "not null"),
        (True, "not true"),
        ([], "not a list"),
        ({}, "not an object"),
        (float("nan"), "not NaN"),
        (float("inf"), "not Infinity"),
        ("0", "above 0"),
        ("-1", "negative"),
        ("1001", "over 1000 in"),
        ("999999999999", "over 1000 in"),
        ("NaN", "not one clear length"),
        ("", "missing"),
        ("1,250", "could mean"),
    ],
)
def test_what_is_no_length_is_refused(value: object, words: str) -> None:
    refusal = refused(fields(width=value).length, "width")
    assert refusal.path == "basket.width"
    assert words in refusal.sentence


def test_a_length_counts_in_the_units_of_the_file() -> None:
    assert Fields({"width": "2.54"}, "", Units.CENTIMETRES).length("width") == 1
    assert Fields({"width": "1000"}, "").length("width") == 1000
    assert fields(width="0").length("width", zero=True) == 0
    refusal = refused(Fields({"width": "30 m"}, "", Units.CENTIMETRES).length, "width")
    assert "over 2540 cm" in refusal.sentence


@pytest.mark.parametrize("value", ["apple", "Pear", "", None, 1, [], "a\nb"])
def test_a_choice_is_one_of_the_words(value: object) -> None:
    refusal = refused(fields(fruit=value).choice, "fruit", Fruit)
    assert "write one of pear, plum" in refusal.sentence


@pytest.mark.parametrize("value", [None, 0, 1, "true", []])
def test_a_flag_is_true_or_false(value: object) -> None:
    assert "true or false" in refused(fields(ripe=value).flag, "ripe").sentence


@pytest.mark.parametrize("value", [None, 0, 11, -1, 2.0, "2", True, [], 10**30])
def test_a_count_is_a_whole_number_in_its_range(value: object) -> None:
    assert refused(fields(n=value).count, "n", most=10).path == "basket.n"


@pytest.mark.parametrize("value", [None, {}, "list", 3])
def test_a_list_is_a_list(value: object) -> None:
    refusal = refused(fields(items=value).each, "items", lambda item, path: item, most=3)
    assert "write a list" in refusal.sentence


def test_a_list_is_read_with_the_path_of_each_item() -> None:
    seen = fields(items=["a", "b"]).each("items", lambda item, path: path, most=2)
    assert seen == ("basket.items[0]", "basket.items[1]")
    assert (
        "at most 1"
        in refused(fields(items=[1, 2]).each, "items", lambda item, path: item, most=1).sentence
    )


def test_a_key_that_nobody_asked_for_is_refused() -> None:
    basket = fields(name="x", nmae="y")
    basket.text("name")
    refusal = refused(basket.done)
    assert refusal.path == "basket.nmae"
    assert "known are name" in refusal.sentence


def test_a_key_that_was_asked_for_and_is_absent_is_no_fault() -> None:
    basket = fields(name="x")
    assert not basket.has("colour")
    assert basket.text("name") == "x"
    basket.done()


@pytest.mark.parametrize("value", ["3", "-3%", "100%", "%", "3%%", None, 3, [], "1.234%", "NaN%"])
def test_what_is_no_share_is_refused(value: object) -> None:
    assert refused(share, fields(part=value), "part").path == "basket.part"


def test_long_values_are_pointed_at_in_few_words() -> None:
    refusal = refused(fields(fruit="x" * 500).choice, "fruit", Fruit)
    assert len(str(refusal)) < 120


def test_the_words_of_a_file_never_break_the_line() -> None:
    refusal = refused(fields(fruit="a\nb\x1b[31m").choice, "fruit", Fruit)
    assert '"a b·[31m"' in refusal.sentence


def test_braces_in_a_files_own_words_are_only_words() -> None:
    refusal = Refusal("{x}", "no {name} is {across} wide", across=F(3))
    assert str(refusal) == "{x}: no {name} is 3 in wide"
    assert str(refusal.in_units(Units.CENTIMETRES)) == "{x}: no {name} is 7.62 cm wide"
