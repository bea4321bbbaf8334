"""The languages: chosen by the person, else by the system, else English."""

from __future__ import annotations

from gettext import NullTranslations

import pytest

from app.languages import LANGUAGES, language_spoken, of_terminal, speak_language, spoken
from core.language import marked, speak, told, told_count
from tests.stand_in import StandIn, untold


def test_the_first_language_that_is_spoken_here_is_taken() -> None:
    assert spoken(["fr-FR", "de-CH", "en"]) == "de"
    assert spoken(["xx"]) == spoken([]) == "en"
    assert language_spoken() == "en"
    assert set(LANGUAGES) == {"en", "de"}


@pytest.mark.parametrize(
    ("environment", "language"),
    [
        ({}, "en"),
        ({"LANG": "de_AT.UTF-8"}, "de"),
        ({"LANG": "de_AT.UTF-8", "LC_MESSAGES": "en_GB.UTF-8"}, "en"),
        ({"LANG": "C", "LC_MESSAGES": "", "LC_ALL": "de_DE"}, "de"),
    ],
)
def test_the_strongest_word_of_a_terminal_counts(
    environment: dict[str, str], language: str
) -> None:
    assert of_terminal(environment) == language


def test_english_is_what_is_spoken_without_a_catalogue() -> None:
    speak_language("en")
    assert told_count("{count} join", "{count} joins", 2) == "2 joins"


def test_what_was_not_told_shows_in_the_stand_in_language() -> None:
    try:
        speak(StandIn())
        assert untold(told("Cut {count} of the strips.", count="3 strips")) == ["strips"]
        assert untold(told(marked("Backing"))) == []
        assert untold(told_count("{count} join", "{count} joins", 2)) == []
    finally:
        speak(NullTranslations())
