"""Nothing that a plan says is left untold, however the quilt is finished."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from gettext import NullTranslations
from pathlib import Path

import pytest

import core
from core.cloth_names import told_cloth
from core.edge_start import start_words
from core.language import speak, told
from core.lengths import LengthError, Units, bare, parse, sale_text, show
from core.money import bare_money, money
from core.part_names import told_part
from core.plan import Plan, make_plan
from core.sewing import sewing
from core.steps import FOLDED, reminder, sentence
from tests.finishes import FINISHES
from tests.items import ITEMS
from tests.items_described import without_latin_names
from tests.nameless import nameless
from tests.stand_in import WithComma, untold


def sentences(plan: Plan) -> Iterator[str]:
    """All that a plan tells a person in words."""
    units, table = plan.project.units, plan.project.cutting_table
    for part in plan.parts:
        yield told_part(part.name)
    for notice in plan.warnings:
        yield notice.text
    for making in sewing(plan):
        yield making.title
        yield from making.sentences
    for fabric in plan.fabrics:
        for step in fabric.steps:
            yield sentence(step, units, table)
            yield reminder(step, units)
            yield from (told_cloth(fall.label) for fall in step.falls)
    if plan.sewn is not None:
        yield start_words(plan.sewn, plan.sizes.outline, units)


@pytest.mark.parametrize("name", ITEMS)
def test_all_that_a_plan_says_is_told(name: str, request: pytest.FixtureRequest) -> None:
    project = without_latin_names(name)  # in English, since what is new is named in the language
    request.getfixturevalue("stand_in")
    for text in sentences(make_plan(project, draft=True)):
        assert untold(text) == [], text


@pytest.mark.usefixtures("stand_in")
@pytest.mark.parametrize("name", FINISHES)
def test_all_that_is_said_of_whole_finishes_is_told(name: str) -> None:
    for text in sentences(make_plan(nameless(FINISHES[name]()), draft=True)):
        assert untold(text) == [], text


@pytest.mark.usefixtures("stand_in")
def test_what_the_other_way_would_take_is_told() -> None:
    plan = make_plan(nameless(FINISHES["Coping"]()))
    said = [other.sentence(plan.project) for other in plan.otherwise]
    assert said
    assert [untold(text) for text in said] == [[]] * len(said)


def test_what_is_said_of_metric_lengths_and_of_folds_is_told(
    request: pytest.FixtureRequest,
) -> None:
    project = replace(without_latin_names("sides and diagonals"), units=Units.CENTIMETRES)
    request.getfixturevalue("stand_in")
    for text in (*sentences(make_plan(project, draft=True)), told(FOLDED)):
        assert untold(text) == [], text


@pytest.mark.usefixtures("stand_in")
@pytest.mark.parametrize(
    "text", ["", "-1", "1,250", "1/0", "1 3/2", "5 ξξ", "0.00000001", "1 2 3", "9" * 61]
)
def test_what_is_wrong_with_a_length_is_told(text: str) -> None:
    with pytest.raises(LengthError) as refused:
        parse(text)
    assert untold(str(refused.value)) == []


def untold_refusals(source: str) -> Iterator[str]:
    """The refusals in a module whose sentence is written there and is not told."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
            sentence = {"Refusal": 1, "CannotMind": 1, "LengthError": 0}.get(node.func.id)
            if sentence is not None and len(node.args) > sentence:
                written = node.args[sentence]
                if isinstance(written, ast.Constant | ast.JoinedStr):
                    yield ast.unparse(written)


def test_every_refusal_is_told() -> None:
    root = Path(core.__file__).parent
    found = {
        path.relative_to(root): refusals
        for path in root.rglob("*.py")
        if (refusals := list(untold_refusals(path.read_text("utf-8"))))
    }
    assert found == {}
    assert list(untold_refusals('Refusal("quilt", f"{name} is too long")'))


def test_a_person_reads_the_languages_own_decimals_and_a_program_points() -> None:
    half_cm = parse("2.5 cm")
    try:
        speak(WithComma())
        assert show(half_cm, Units.CENTIMETRES) == "2,5 cm"
        assert parse(show(half_cm, Units.CENTIMETRES)) == half_cm
        assert sale_text(parse("1.2 m"), parse("10 cm")) == "1,2 m"
        assert money(Fraction(1, 2)) == "0,50"
        assert bare(half_cm, Units.CENTIMETRES) == "2.5"
        assert bare_money(Fraction(1, 2)) == "0.50"
    finally:
        speak(NullTranslations())
