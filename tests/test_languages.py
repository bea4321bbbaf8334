"""The catalogues: whole, their values in place, and compiled as they are written."""

from __future__ import annotations

import ast
import re
from collections import Counter
from collections.abc import Iterator
from gettext import GNUTranslations

import pytest
from babel.messages.catalog import Catalog, Message

from tests.checks import ROOT
from tests.languages import KEYWORDS, ROOMS, others, path_of, texts, translated

LANGUAGES = sorted(others())
KEY = re.compile(r"&(?=\w)")
VALUE = re.compile(r"\{(\w+)")


def forms(text: str | tuple[str, ...] | list[str] | None) -> list[str]:
    """The singular and the plural, or the one form there is."""
    if text is None or isinstance(text, str):
        return [text or ""]
    return list(text)


def messages(catalogue: Catalog) -> dict[tuple[str | None, str], Message]:
    return {(m.context, forms(m.id)[0]): m for m in catalogue if m.id}


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_text_is_in_the_catalogue_and_no_other(language: str) -> None:
    known, told = messages(translated(language)), messages(texts())
    assert len(told) > 1000
    assert sorted(map(str, set(told) - set(known))) == []
    assert sorted(map(str, set(known) - set(told))) == []
    assert [m.id for m in known.values() if not all(forms(m.string))] == []


def test_every_text_that_is_told_is_found() -> None:
    """By the syntax tree: what is told inside an f-string, say, is not found by its tokens."""
    known = {text for _, text in messages(texts())}
    for room in ROOMS:
        for path in (ROOT / room).rglob("*.py"):
            for text in told_in_code(path.read_text(encoding="utf-8")):
                assert text in known, f"{path.name}: {text}"


def told_in_code(source: str) -> Iterator[str]:
    """The texts that are told as they are written."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
            first = 1 if node.func.id == "told_as" else 0
            for one in node.args[first : first + 1] if node.func.id in KEYWORDS else ():
                if isinstance(one, ast.Constant) and isinstance(one.value, str) and one.value:
                    yield one.value


@pytest.mark.parametrize("language", LANGUAGES)
def test_values_and_keys_are_where_they_were(language: str) -> None:
    for message in messages(translated(language)).values():
        english, strings = forms(message.id), forms(message.string)
        for one in strings:
            if len(english) == 1:
                assert Counter(VALUE.findall(one)) == Counter(VALUE.findall(english[0])), one
            else:
                assert set(VALUE.findall(one)) <= set(VALUE.findall(english[1])), one
            assert len(KEY.findall(one)) == len(KEY.findall(english[0])), one
            assert one[-1:].isspace() == english[0][-1:].isspace(), one


@pytest.mark.parametrize("language", LANGUAGES)
def test_what_the_program_reads_is_what_was_written(language: str) -> None:
    with path_of(language, "mo").open("rb") as file:
        compiled = GNUTranslations(file)
    for message in messages(translated(language)).values():
        [one, *more], many = forms(message.id), forms(message.string)
        if message.context:
            assert compiled.pgettext(message.context, one) == many[0]
        elif message.pluralizable:
            for number in (1, 2, 5):
                assert compiled.ngettext(one, more[0], number) in many
        else:
            assert compiled.gettext(one) == many[0]
