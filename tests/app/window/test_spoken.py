"""The window's language: chosen in its menu, and spoken from the next start on."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

import pytest
from PySide6.QtCore import QDate
from PySide6.QtWidgets import QMenu, QTabWidget

from app.languages import LANGUAGES, speak_language, told_in
from app.window.main_window import MainWindow
from app.window.memory import Memory
from app.window.spoken import dates_spoken
from app.window.words import glossary, taught


@pytest.fixture(params=LANGUAGES)
def language(request: pytest.FixtureRequest) -> Iterator[str]:
    speak_language(request.param)
    yield request.param
    speak_language("en")


@pytest.mark.parametrize("language", ["de", "en"])
def test_a_change_of_language_is_said_in_the_one_that_was_chosen(
    window: MainWindow, memory: Memory, language: str
) -> None:
    window.menus.languages[language].trigger()
    assert memory.text("language", "") == language
    said = told_in(language, "The language changes when Crossgrain is next opened.")
    assert window.statusBar().currentMessage() == ("" if language == "en" else said)


def test_dates_are_written_as_the_language_does(language: str) -> None:
    day = dates_spoken().toString(QDate(2024, 10, 3), "MMMM")
    assert day == {"de": "Oktober", "en": "October"}[language]


def test_no_two_commands_of_a_menu_have_the_same_letter(language: str, window: MainWindow) -> None:
    bar = [action.text() for action in window.menuBar().actions()]
    menus = [[a.text() for a in menu.actions()] for menu in window.menuBar().findChildren(QMenu)]
    for texts in (bar, *menus):
        letters = Counter(_letter(text) for text in texts if "&" in text.replace("&&", ""))
        assert [letter for letter, count in letters.items() if count > 1] == [], texts


def _letter(text: str) -> str:
    return text.replace("&&", "").partition("&")[2][:1].lower()


def test_every_tab_has_a_name_and_a_tip_of_its_own(language: str, window: MainWindow) -> None:
    for tabs in (window.centre.tabs, window.answer.tabs):
        assert isinstance(tabs, QTabWidget)
        names = [tabs.tabText(place) for place in range(tabs.count())]
        tips = [tabs.tabToolTip(place) for place in range(tabs.count())]
        assert len(set(names)) == len(set(tips)) == tabs.count()


def test_a_sentence_teaches_its_words_in_the_language_spoken(language: str) -> None:
    sentence = {"de": "Einfassung: Überstand über die Naht", "en": "Binding: reach past the seam"}
    assert taught(sentence[language]).startswith({"de": "Überstand: ", "en": "reach: "}[language])


def test_the_words_are_in_the_order_of_each_alphabet(language: str) -> None:
    heads = [head for head, _ in glossary()]
    if language == "de":
        assert heads.index("Treppe") < heads.index("Überstand") < heads.index("Verkaufseinheit")
    assert len(set(heads)) == len(heads)
