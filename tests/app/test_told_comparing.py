"""Comparisons, staircases and answers are told: no word stays English."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

import pytest

from app.comparing import (
    alike_text,
    comparison_lines,
    copies_answer,
    enough_answer,
    no_more,
    quilt_answer,
    staircase_lines,
    strip_answer,
    withstands_answers,
)
from app.window.field import with_unit
from core.compare.choices import CHOICES, STRIP_WIDTH, USABLE_WIDTH, Choice, usual_values
from core.compare.columns import compare
from core.compare.questions import FromWhatIHave
from core.compare.reverse import Answer
from core.compare.staircase import staircase, usual_range
from core.fabric import OnHand
from core.language import speak
from core.lengths import Inches, Units
from core.quilt import Project
from core.refusal import Refusal
from tests.core.demos import demo
from tests.nameless import nameless
from tests.stand_in import WithComma, untold

pytestmark = pytest.mark.usefixtures("stand_in")


def wrong(texts: Iterable[str]) -> dict[str, list[str]]:
    return {text: untold(text) for text in texts if untold(text)}


@pytest.mark.parametrize("choice", CHOICES, ids=lambda choice: choice.name)
def test_every_choice_and_its_values_are_told(choice: Choice) -> None:
    values = choice.words or usual_values(nameless(demo("harbour-lights")), choice)
    assert wrong((choice.said, *map(choice.value_said, values))) == {}


@pytest.mark.parametrize("choice", CHOICES, ids=lambda choice: choice.name)
def test_a_value_is_meant_by_what_it_is_called_and_by_its_word(choice: Choice) -> None:
    for word in choice.words:
        assert choice.value_meant(f" {choice.value_said(word)} ") == word
        assert choice.value_meant(word) == word
    assert choice.value_meant("2 1/4 in") == "2 1/4 in"


@pytest.mark.parametrize("name", ["joins", "strip width", "fold"])
def test_a_comparison_is_told(name: str) -> None:
    project = nameless(demo("harbour-lights"))
    choice = next(choice for choice in CHOICES if choice.name == name)
    values = usual_values(project, choice)[:2]
    comparison = compare(project, choice, [*values, *values * 3])
    assert comparison.notice is not None
    assert [column.refusal is None for column in comparison.columns] == [True, True] + [False] * 4
    assert wrong(comparison_lines(comparison, Units.INCHES)) == {}


def test_a_column_of_no_value_is_told() -> None:
    project = nameless(demo("harbour-lights"))
    columns = compare(project, STRIP_WIDTH, ("2 1/4", " ")).columns
    assert (columns[1].text, untold(columns[1].said)) == ("nothing", [])


@pytest.mark.parametrize("choice", [STRIP_WIDTH, USABLE_WIDTH], ids=lambda choice: choice.name)
def test_a_staircase_is_told(choice: Choice) -> None:
    project = nameless(demo("tide-pool-runner"))
    first, last = usual_range(choice, Units.INCHES)
    stairs = staircase(project, choice, first, first + (last - first) / 2)
    far = replace(stairs, present=Inches(999))
    lines = [line for one in (stairs, far) for line in staircase_lines(project, one)]
    assert wrong([*lines, alike_text(project, stairs)]) == {}


def test_lengths_are_compared_in_the_languages_own_decimals() -> None:
    speak(WithComma())
    project = replace(demo("harbour-lights"), units=Units.CENTIMETRES)
    values = [STRIP_WIDTH.value_said(value) for value in usual_values(project, STRIP_WIDTH)]
    assert values == ["5 cm", "6 cm", "6,5 cm"]
    columns = compare(project, STRIP_WIDTH, values).columns
    assert [(column.text, column.said) for column in columns][-1] == ("6.5 cm", "6,5 cm")
    assert with_unit("6.5", "cm") == "6,5 cm"


def in_hand(name: str) -> Project:
    """The quilt, a piece of each of its cloths on hand."""
    project = nameless(demo(name))
    piece = OnHand(Inches(42), Inches(30))
    fabrics = tuple(replace(fabric, on_hand=(piece,)) for fabric in project.fabrics)
    return replace(project, fabrics=fabrics)


def test_what_the_cloth_in_hand_is_good_for_is_told() -> None:
    project = in_hand("tide-pool-runner")
    found = FromWhatIHave(project).answer()
    answers = [found.strip, found.quilt, found.copies]
    assert not any(isinstance(answer, Refusal) for answer in answers)
    said = [no_more(answer) for answer in answers if isinstance(answer, Answer)]
    if isinstance(found.strip, Answer) and isinstance(found.quilt, Answer):
        said += [strip_answer(project, found.strip), quilt_answer(project, found.quilt)]
    if isinstance(found.copies, Answer):
        said += [copies_answer(found.copies), copies_answer(replace(found.copies, value=None))]
    said += [enough_answer(one) for _, fabrics in found.enough for one in fabrics]
    if not isinstance(found.withstands, Refusal):
        for one in found.withstands:
            said += withstands_answers(one, project.units)
    assert wrong(said) == {}


def test_what_cannot_be_answered_is_told() -> None:
    project = nameless(demo("harbour-lights"))
    bare = replace(project, binding=None)
    for asked in (project, bare):
        found = FromWhatIHave(asked).answer()
        refusals = [one for one in (found.strip, found.copies) if isinstance(one, Refusal)]
        assert refusals
        assert wrong(refusal.sentence for refusal in refusals) == {}
    with pytest.raises(Refusal) as refused:
        compare(bare, STRIP_WIDTH, ("2", "3"))
    assert untold(refused.value.sentence) == []
    with pytest.raises(Refusal) as refused:
        compare(project, STRIP_WIDTH, ("2",))
    assert untold(refused.value.sentence) == []
    with pytest.raises(Refusal) as refused:
        staircase(project, STRIP_WIDTH, Inches(3), Inches(2))
    assert untold(refused.value.sentence) == []
