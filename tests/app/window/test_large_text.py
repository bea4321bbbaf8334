"""Everything in the window at 200 % on a small laptop's screen: nothing clipped, all reached."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QSize
from PySide6.QtWidgets import QLabel, QLineEdit, QMessageBox, QToolButton, QWidget
from pytestqt.qtbot import QtBot

from app.languages import ENGLISH, LANGUAGES, speak_language
from app.packet.choice import PacketChoice
from app.window import help_pages
from app.window.asker import message
from app.window.columns import Columns
from app.window.main_window import MainWindow
from app.window.packet_dialog import PacketDialog
from app.window.read_table import LEAST_WIDE, ReadTable
from app.window.yardage import TITLE_PIXELS
from app.window.zoom_bar import ZoomBar
from core.language import told
from core.lengths import Units
from tests.app.window.conftest import PlannerHere

SMALL = QSize(1280, 800)


@pytest.fixture
def large(window: MainWindow, qtbot: QtBot) -> Iterator[MainWindow]:
    window.resize(SMALL)
    window.appearance.write_at(200)
    qtbot.wait(50)
    yield window
    window.appearance.write_usual()


def test_the_window_goes_on_the_screen(large: MainWindow) -> None:
    assert large.minimumSizeHint().width() <= SMALL.width()
    assert large.minimumSizeHint().height() <= SMALL.height()
    assert large.size() == SMALL


def test_every_field_is_as_high_as_its_letters(large: MainWindow, qtbot: QtBot) -> None:
    for section in large.parts.sections():
        section.heading.setChecked(True)
        section.body.show_more(True)
    qtbot.wait(50)
    fields = large.parts.findChildren(QLineEdit)
    assert len(fields) > 30
    letters = large.fontMetrics().height()
    assert not [field.text() for field in fields if 0 < field.height() < letters]


def test_no_label_is_wider_than_its_panel(large: MainWindow, qtbot: QtBot) -> None:
    large.parts.show_field("binding.strip_width")
    qtbot.wait(50)
    panel: QWidget = large.parts.column
    for label in panel.findChildren(QLabel):
        if label.isVisible():
            assert label.width() <= panel.width()
            assert label.height() >= label.heightForWidth(label.width()), label.text()


def test_a_table_that_lacks_room_scrolls(large: MainWindow, qtbot: QtBot) -> None:
    table: ReadTable = large.answer.cut
    table.setFixedWidth(300)
    qtbot.wait(50)
    assert table.columnWidth(1) >= LEAST_WIDE * table.fontMetrics().averageCharWidth()
    widths = sum(table.columnWidth(i) for i in range(table.model().columnCount()))
    bar = table.horizontalScrollBar()
    assert bar.maximum() + table.viewport().width() >= widths


@pytest.mark.parametrize("percent", [100, 150, 200])
def test_no_word_in_a_list_is_cut_off(window: MainWindow, qtbot: QtBot, percent: int) -> None:
    window.resize(SMALL)
    window.appearance.write_at(percent)
    answer = window.answer
    for place in range(answer.tabs.count()):
        answer.tabs.setCurrentIndex(place)
    qtbot.wait(50)
    for table in (answer.buy, answer.cut, answer.pieces, answer.order, answer.sewing):
        advance = table.fontMetrics().horizontalAdvance
        assert table.rows.rows
        for row in table.rows.rows:
            for column in row.columns:
                widest = max(map(advance, row.cells[column].split(" ")))
                assert table.columnWidth(column) > widest, row.cells[column]
    window.appearance.write_usual()


def test_help_is_no_larger_than_the_screen(large: MainWindow) -> None:
    page = help_pages.words(large)
    assert page.height() <= page.screen().availableGeometry().height()
    assert page.width() <= page.screen().availableGeometry().width()
    page.close()


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_dialog_goes_on_the_screen(large: MainWindow, qtbot: QtBot, language: str) -> None:
    speak_language(language)
    try:
        plan = large.plan
        assert plan is not None
        title, sentence = told("{file} was not opened", file="w" * 40), "wide " * 60
        dialogs = [
            PacketDialog(plan, PacketChoice(), lambda *_: None, large, PlannerHere),
            large.menus._change_sizes(Units.INCHES),
            message(large, QMessageBox.Icon.Warning, title, sentence),
            help_pages.keys(large),
        ]
        for dialog in dialogs:
            dialog.show()
            qtbot.wait(20)
            least = dialog.minimumSizeHint()
            assert least.width() <= SMALL.width(), type(dialog)
            assert least.height() <= SMALL.height(), type(dialog)
            dialog.close()
    finally:
        speak_language(ENGLISH)


def test_every_page_of_the_packet_can_be_read_where_it_is_ticked(
    large: MainWindow, qtbot: QtBot
) -> None:
    assert large.plan is not None
    dialog = PacketDialog(large.plan, PacketChoice(), lambda *_: None, large, PlannerHere)
    qtbot.addWidget(dialog)
    dialog.resize(SMALL)
    dialog.show()
    qtbot.wait(20)
    kinds = dialog.kinds
    seen = kinds.viewport().rect()
    for row in range(kinds.count()):
        assert seen.contains(kinds.visualItemRect(kinds.item(row)).center())
        words = kinds.fontMetrics().horizontalAdvance(kinds.item(row).text())
        assert words + kinds.fontMetrics().height() <= seen.width()


def test_the_usual_size_brings_the_usual_window_back(window: MainWindow, qtbot: QtBot) -> None:
    window.resize(SMALL)
    qtbot.wait(50)
    before = window.minimumSizeHint()
    window.appearance.write_at(200)
    qtbot.wait(50)
    window.appearance.write_usual()
    qtbot.waitUntil(lambda: before.expandedTo(window.minimumSizeHint()) == before, timeout=2000)


def test_a_wide_window_gives_its_side_columns_room_for_large_letters(
    window: MainWindow, qtbot: QtBot
) -> None:
    window.resize(1920, 1080)
    qtbot.wait(50)
    usual = window.splitter.sizes()
    window.appearance.write_at(200)
    large = window.splitter.sizes()
    assert large[0] > 1.5 * usual[0]
    assert large[2] > 1.5 * usual[2]
    assert large[1] > 600
    window.splitter.setSizes([500, 900, 520])
    moved = window.splitter.sizes()
    window.appearance.paint_in(window.appearance.colours)
    assert window.splitter.sizes() == moved
    window.appearance.write_usual()


@pytest.mark.parametrize("percent", [125, 150, 175, 200])
def test_every_field_has_room_for_a_length(window: MainWindow, qtbot: QtBot, percent: int) -> None:
    window.resize(SMALL)
    window.appearance.write_at(percent)
    window.parts.show_field("binding.strip_width")
    qtbot.wait(50)
    fields = [field for field in window.parts.findChildren(QLineEdit) if field.isVisible()]
    letters = window.fontMetrics().horizontalAdvance("48 1/2")
    assert fields
    assert not [field.text() for field in fields if field.width() < letters]
    window.appearance.write_usual()


@pytest.mark.parametrize("percent", [100, 125, 150, 175, 200])
def test_the_parts_do_not_scroll_sideways(window: MainWindow, qtbot: QtBot, percent: int) -> None:
    window.resize(SMALL)
    window.appearance.write_at(percent)
    for section in window.parts.sections():
        section.heading.setChecked(True)
        section.body.show_more(True)
    qtbot.wait(50)
    assert window.parts.horizontalScrollBar().maximum() == 0
    window.appearance.write_usual()


def columns(qtbot: QtBot) -> Columns:
    made = Columns(QWidget(), QWidget(), QWidget())
    qtbot.addWidget(made)
    made.resize(1900, 900)
    return made


def test_columns_that_were_moved_are_remembered_in_large_letters(qtbot: QtBot) -> None:
    first = columns(qtbot)
    first.show()
    first.setSizes([700, 800, 400])
    again = columns(qtbot)
    again.make_room(2.0)
    assert again.restoreState(first.saveState())
    again.show()
    assert again.sizes() == first.sizes()


def test_columns_begin_as_wide_as_large_letters_need(qtbot: QtBot) -> None:
    made = columns(qtbot)
    made.make_room(2.0)
    made.show()
    assert made.sizes()[0] > 500
    assert made.sizes()[2] > 600


def test_columns_follow_the_window_until_they_are_moved(qtbot: QtBot) -> None:
    made = columns(qtbot)
    made.make_room(1.5)
    made.resize(1280, 800)
    made.show()
    narrow = made.sizes()
    made.resize(1900, 900)
    assert made.sizes()[0] > narrow[0]
    assert made.sizes()[2] > narrow[2]
    made.moveSplitter(700, 1)
    moved = made.sizes()
    made.resize(1800, 900)
    assert made.sizes()[0] == moved[0]


@pytest.mark.parametrize("percent", [100, 200])
def test_a_cloths_title_is_read_whole_in_letters_of_a_size(
    window: MainWindow, qtbot: QtBot, percent: int
) -> None:
    window.resize(SMALL)
    window.appearance.write_at(percent)
    qtbot.wait(50)
    view = window.centre.yardage
    for lane in view.lanes:
        assert lane.item.letters * view.zoom >= 0.8 * TITLE_PIXELS * percent / 100
        assert " ".join(lane.item.lines) == lane.item.title
    window.appearance.write_usual()


@pytest.mark.parametrize("percent", [100, 200])
def test_the_zoom_buttons_are_in_sight_in_any_window(
    window: MainWindow, qtbot: QtBot, percent: int
) -> None:
    window.appearance.write_at(percent)
    [bar] = window.findChildren(ZoomBar)
    buttons = [button for button in bar.findChildren(QToolButton) if button.text()]
    assert len(buttons) == 4
    for size in (QSize(1900, 900), window.minimumSizeHint(), SMALL):
        window.resize(size)
        qtbot.wait(50)
        assert all(button.isVisible() for button in buttons)
        assert all(bar.rect().contains(button.geometry()) for button in buttons)
    window.appearance.write_usual()
