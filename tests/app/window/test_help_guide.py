"""Help: the whole job on one page, pictured with the quilt in the window."""

from __future__ import annotations

import re

import pytest
from PySide6.QtCore import QUrl
from PySide6.QtGui import QImage, QTextDocument
from PySide6.QtWidgets import QTabWidget
from pytestqt.qtbot import QtBot

from app.cautions import CAUTIONS
from app.window import help_pages
from app.window.fields import INNER, PARTS
from app.window.help_guide import STEPS, Shown, steps_html
from app.window.help_pages import Guide, HelpPage
from app.window.main_window import MainWindow
from app.window.read_table import ReadTable
from app.window.tips import HEADERS, TABS
from app.window.words import EVERYDAY, MOST_TAUGHT, WORDS, taught
from tests.app.window.conftest import PlannerHere

# Terms that a window about finishing quilts must explain somewhere.
TERMS = (
    "reach", "join loss", "overage", "selvage", "usable width", "proved least", "closing", "stop",
    "mitre", "bias", "lay", "offcut", "run", "repeat", "sale unit", "coping strip", "staircase",
)  # fmt: skip


@pytest.fixture
def guide(window: MainWindow, qtbot: QtBot) -> Guide:
    made = help_pages.guide(window)
    made.show()
    return made


def picture(guide: Guide, shown: Shown) -> QImage:
    kind = QTextDocument.ResourceType.ImageResource.value
    found = guide.text.document().resource(kind, QUrl(f"plan:{shown.name.lower()}"))
    assert isinstance(found, QImage)
    return found


def test_the_page_has_the_job_the_words_the_keys_and_the_cautions(guide: Guide) -> None:
    text = guide.text.toPlainText()
    for said in (*(step.title for step in STEPS), *(word for word, _ in WORDS), *CAUTIONS):
        assert said in text
    assert "Ctrl+S" in text
    assert "Larger Text" in text


def test_every_link_leads_somewhere(guide: Guide) -> None:
    html = guide.text.toHtml()
    links, names = set(re.findall(r'href="#(\w+)"', html)), set(re.findall(r'name="(\w+)"', html))
    assert links == {"job", "words", "keys", "cautions"}
    assert links <= names
    guide.go_to("cautions")
    assert guide.text.verticalScrollBar().value() > 0


@pytest.mark.parametrize("shown", Shown)
def test_each_picture_shows_the_plan(guide: Guide, shown: Shown) -> None:
    image = picture(guide, shown)
    seen = {image.pixel(x, image.height() // 2) for x in range(image.width())}
    assert len(seen) >= 3


def test_every_picture_has_its_words() -> None:
    pictured = [step for step in STEPS if step.shown is not None]
    assert {step.shown for step in pictured} == set(Shown)
    assert all(step.caption for step in pictured)
    assert steps_html().count('alt="') == len(pictured)


def test_without_a_binding_the_page_still_opens(
    window: MainWindow, planner: PlannerHere, qtbot: QtBot
) -> None:
    window.parts._asked("remove", "binding")
    planner.finish()
    made = help_pages.guide(window)
    made.show()
    assert picture(made, Shown.EDGE).isNull()
    assert not picture(made, Shown.QUILT).isNull()
    window.document.undo_stack.undo()


def test_without_a_plan_the_page_still_opens(window: MainWindow) -> None:
    window.plan = None
    made = help_pages.guide(window)
    assert picture(made, Shown.QUILT).isNull()
    made.close()


def test_help_has_the_systems_key_for_it(window: MainWindow) -> None:
    assert ("Help", "F1") in list(window.menus.shortcuts())


@pytest.mark.parametrize("term", TERMS)
def test_a_term_of_the_trade_is_among_the_words(term: str) -> None:
    assert term in {word for words, _ in WORDS for word in words.split(", ")}


def test_the_words_are_in_the_order_of_the_alphabet() -> None:
    heads = [words.lower() for words, _ in WORDS]
    assert heads == sorted(heads)


def test_a_sentence_teaches_its_words_and_no_everyday_ones() -> None:
    assert taught("Binding: reach past the seam").startswith("reach: ")
    assert taught("a piece of cloth across the bolt") == ""
    assert taught("the preacher") == ""
    assert taught("closing, reach, overage and mitre").count("\n\n") == MOST_TAUGHT - 1
    assert {words for words, _ in WORDS} >= EVERYDAY


def test_every_tab_says_what_it_shows(window: MainWindow) -> None:
    for tabs in window.findChildren(QTabWidget):
        for place in range(tabs.count()):
            assert tabs.tabToolTip(place) == TABS[tabs.tabText(place)]


def test_the_columns_that_are_explained_are_there(window: MainWindow) -> None:
    shown = {head for table in window.findChildren(ReadTable) for head in table.rows.headers}
    assert HEADERS.keys() <= shown


def test_a_help_that_names_inches_names_centimetres_too() -> None:
    one_sided = [
        field.label
        for kind in (*PARTS, *INNER)
        for field in kind.fields
        if re.search(r"\d\s*(in\b|inch)", field.help) and not re.search(r"\b[cm]m\b", field.help)
    ]
    assert one_sided == []


@pytest.mark.parametrize("page", help_pages.PAGES)
def test_every_page_opens_from_the_menu(window: MainWindow, page: str) -> None:
    window.menus._page(page)
    [shown] = [dialog for dialog in window.findChildren(HelpPage) if dialog.isVisible()]
    assert len(shown.text.toPlainText()) > 200
    shown.close()
