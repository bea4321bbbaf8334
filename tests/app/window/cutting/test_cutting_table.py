"""The cutting table, by the keyboard alone: cut, go back, say what went wrong, come back later."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import atan, degrees
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QFontMetrics
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from app.style import SCREEN_LIGHT
from app.window.cutting.cuttings import Cuttings
from app.window.cutting.table import CuttingTable
from app.window.main_window import MainWindow
from core.edit import put
from core.lengths import Units
from core.plan import Plan, make_plan
from core.quilt import Kits, Project
from core.reading import LONGEST_NAME
from tests.app.window.conftest import PlannerHere
from tests.core.demos import demo

Keys = Qt.Key
Opener = Callable[..., CuttingTable]


@pytest.fixture(scope="module")
def plan() -> Plan:
    return make_plan(demo("harbour-lights"))


@pytest.fixture
def mender(qapp: QApplication) -> PlannerHere:
    return PlannerHere()


@pytest.fixture
def opened(qtbot: QtBot, plan: Plan, tmp_path: Path) -> Opener:
    """Opens a table; what is kept lies in one folder, whichever table keeps it."""

    def table(of: Plan = plan, path: Path | None = None) -> CuttingTable:
        found = CuttingTable(of, Cuttings(path, of, tmp_path), PlannerHere(), SCREEN_LIGHT)
        qtbot.addWidget(found)
        found.show()
        assert QTest.qWaitForWindowActive(found)
        return found

    return table


def press(table: CuttingTable, *keys: Qt.Key) -> None:
    """As a person does: to whatever has the focus."""
    for key in keys:
        target: QWidget = QApplication.focusWidget() or table
        QTest.keyClick(target, key)
        QApplication.processEvents()


def lay_again(table: CuttingTable) -> None:
    mender = table.mender
    assert isinstance(mender, PlannerHere)
    mender.finish()
    QApplication.processEvents()


def shown(table: CuttingTable) -> str:
    """The headline of the page in front."""
    page = table.pages.currentWidget()
    if page is table.cut_page:
        return table.cut_page.do.text()
    return table.say_page.title.text() if page is table.say_page else table.form.title.text()


def test_space_is_done_and_backspace_is_back(opened: Opener) -> None:
    table = opened()
    assert table.top.progress.text() == "Cut 1 of 13, cloth night sky"
    assert not table.cut_page.back.isEnabled()
    press(table, Keys.Key_Space, Keys.Key_Space)
    assert table.top.progress.text() == "Cut 3 of 13, cloth night sky"
    assert table.top.bar.value() == 2
    press(table, Keys.Key_Backspace)
    assert table.top.progress.text() == "Cut 2 of 13, cloth night sky"
    press(table, Keys.Key_Backspace, Keys.Key_Backspace)
    assert table.top.progress.text() == "Cut 1 of 13, cloth night sky"


def test_a_cut_says_where_to_measure_and_what_comes_off(opened: Opener) -> None:
    table = opened()
    press(table, Keys.Key_Space, Keys.Key_Space)
    assert table.cut_page.do.text() == "Cut section 1 along the grain, 4¹⁄₂ in from its near edge."
    assert table.cut_page.hold.text() == "Lay the ruler 3 times along the cut."
    assert table.cut_page.gives.text().startswith("Off comes B1, border 2 side, ")
    assert table.where.text() == "night sky, from the bolt. Close the blade after every cut."


def test_the_big_buttons_do_what_the_keys_do(opened: Opener) -> None:
    table = opened()
    QTest.mouseClick(table.cut_page.done, Qt.MouseButton.LeftButton)
    assert table.cloth.cuts_done == 1
    QTest.mouseClick(table.cut_page.back, Qt.MouseButton.LeftButton)
    assert table.cloth.cuts_done == 0
    QTest.mouseClick(table.cut_page.wrong, Qt.MouseButton.LeftButton)
    assert shown(table) == "What happened?"


def test_progress_is_there_when_the_program_is_opened_again(opened: Opener) -> None:
    table = opened()
    press(table, *[Keys.Key_Space] * 5)
    table.close()
    again = opened()
    assert again.top.progress.text() == "Cut 6 of 13, cloth night sky"


def test_a_plan_that_was_saved_since_is_found_again(
    opened: Opener, plan: Plan, tmp_path: Path
) -> None:
    press(opened(), Keys.Key_Space)
    assert opened(plan, tmp_path / "saved.crossgrain").cloth.cuts_done == 1


def test_each_file_has_its_own_progress(opened: Opener, plan: Plan, tmp_path: Path) -> None:
    press(opened(plan, tmp_path / "one.crossgrain"), Keys.Key_Space)
    assert opened(plan, tmp_path / "two.crossgrain").cloth.cuts_done == 0
    assert opened(plan, tmp_path / "one.crossgrain").cloth.cuts_done == 1


def wider(plan: Plan) -> Plan:
    quilt = replace(plan.project.quilt, width=plan.project.quilt.width + 2)
    return make_plan(replace(plan.project, quilt=quilt))


def test_a_changed_plan_is_not_cut_on_in_silence(
    opened: Opener, plan: Plan, tmp_path: Path
) -> None:
    path = tmp_path / "quilt.crossgrain"
    press(opened(plan, path), Keys.Key_Space, Keys.Key_Space)
    table = opened(wider(plan), path)
    assert shown(table) == "The plan asks for other pieces now"
    assert table.say_page.text.text().endswith("Of night sky 2 of 13 cuts are made.")
    press(table, Keys.Key_Return)
    assert table.top.progress.text() == "Cut 3 of 13, cloth night sky"
    assert table.cutting.planned[0].pieces[0].label == "B1"


def test_a_changed_plan_can_be_begun_on_uncut_cloth(
    opened: Opener, plan: Plan, tmp_path: Path
) -> None:
    path = tmp_path / "quilt.crossgrain"
    press(opened(plan, path), Keys.Key_Space)
    other = wider(plan)
    table = opened(other, path)
    press(table, Keys.Key_Tab, Keys.Key_Tab, Keys.Key_Space)
    assert table.cloth.cuts_done == 0
    assert opened(other, path).cloth.cuts_done == 0


def test_a_changed_plan_can_be_cut_from_what_is_left(
    opened: Opener, plan: Plan, tmp_path: Path
) -> None:
    path = tmp_path / "quilt.crossgrain"
    press(opened(plan, path), *[Keys.Key_Space] * 4)
    other = wider(plan)
    table = opened(other, path)
    press(table, Keys.Key_Tab, Keys.Key_Space)
    lay_again(table)
    assert shown(table) == "The changed plan on what is left"
    # The sides are as long as they were; the top and the bottom are not cut yet.
    assert "Cut well: B1, B2." in table.say_page.text.text()
    press(table, Keys.Key_Space)
    assert table.cloth.cuts_done == 0
    assert {mark.label for mark in table.cloth.order.had} == {"B1", "B2"}
    assert not table.cut_page.back.isEnabled(), "the older plan's cuts are made"
    assert opened(other, path).cutting == table.cutting


def test_a_changed_plan_is_not_taken_before_it_is_seen(
    opened: Opener, plan: Plan, tmp_path: Path
) -> None:
    path = tmp_path / "quilt.crossgrain"
    press(opened(plan, path), *[Keys.Key_Space] * 4)
    table = opened(wider(plan), path)
    press(table, Keys.Key_Tab, Keys.Key_Space)
    lay_again(table)
    press(table, Keys.Key_Tab, Keys.Key_Space)
    assert shown(table) == "The plan asks for other pieces now"
    press(table, Keys.Key_Space)
    assert table.top.progress.text() == "Cut 5 of 13, cloth night sky"


def test_the_same_plan_in_other_units_is_the_same_cutting(
    opened: Opener, plan: Plan, tmp_path: Path
) -> None:
    path = tmp_path / "quilt.crossgrain"
    press(opened(plan, path), Keys.Key_Space, Keys.Key_Space)
    table = opened(make_plan(replace(plan.project, units=Units.CENTIMETRES)), path)
    assert table.cut_page.do.text() == "Cut section 1 along the grain, 11.43 cm from its near edge."


def test_a_file_that_cannot_be_read_is_said_and_not_written_over(
    opened: Opener, plan: Plan, tmp_path: Path
) -> None:
    path = tmp_path / "quilt.crossgrain"
    file = Cuttings(path, plan, tmp_path).file
    file.write_text("{", encoding="utf-8")
    table = opened(plan, path)
    assert shown(table) == "How far the cloth was cut cannot be read"
    assert file.read_text(encoding="utf-8") == "{"
    press(table, Keys.Key_Return)
    assert table.cloth.cuts_done == 0


def test_progress_that_cannot_be_kept_is_said(
    opened: Opener, plan: Plan, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(cuttings: Cuttings, cutting: object) -> None:
        raise OSError(28, "No space left on device")

    table = opened()
    monkeypatch.setattr(Cuttings, "keep", full)
    press(table, Keys.Key_Space)
    assert table.trouble.text() == (
        "How far the cloth is cut cannot be kept (No space left on device): note it down, or make "
        "room."
    )
    assert table.cloth.cuts_done == 1
    monkeypatch.undo()
    press(table, Keys.Key_Space)
    assert table.trouble.isHidden()


def test_a_spoilt_piece_is_laid_again_and_the_miscut_can_be_undone(opened: Opener) -> None:
    table = opened()
    press(table, *[Keys.Key_Space] * 7, Keys.Key_W)
    assert shown(table) == "What happened?"
    press(table, Keys.Key_Up)  # from the width that was cut last to a spoilt piece
    assert table.form.spoilt.isChecked()
    press(table, Keys.Key_Return)
    lay_again(table)
    assert shown(table) == "G1 was spoilt or lost."
    assert table.say_page.text.text().startswith("What is left of night sky is enough")
    press(table, Keys.Key_Space)
    assert table.top.progress.text() == "Cut 1 of 7, cloth night sky"
    press(table, Keys.Key_Space)
    table.close()
    again = opened()
    assert again.top.progress.text() == "Cut 2 of 7, cloth night sky"
    press(again, Keys.Key_Backspace, Keys.Key_Backspace)
    assert again.top.progress.text() == "Cut 8 of 13, cloth night sky"


def test_what_must_be_bought_is_said_before_anything_changes(opened: Opener) -> None:
    table = opened()
    press(table, Keys.Key_PageDown, Keys.Key_PageDown)
    press(table, *[Keys.Key_Space] * 8)
    assert shown(table) == "tide stripe is all cut"
    press(table, Keys.Key_Tab, Keys.Key_Tab, Keys.Key_Space)
    form = table.form
    form.spoilt.setChecked(True)
    form.pieces.setCurrentIndex(
        next(n for n in range(form.pieces.count()) if form.pieces.itemText(n).startswith("F,"))
    )
    press(table, Keys.Key_Return)
    lay_again(table)
    assert "buy 2¹⁄₂ yd more of tide stripe" in table.say_page.text.text()
    press(table, Keys.Key_Tab, Keys.Key_Space)
    assert shown(table) == "tide stripe is all cut"


def test_a_strip_of_the_wrong_width_is_said_with_the_keyboard_alone(opened: Opener) -> None:
    table = opened()
    press(table, *[Keys.Key_Space] * 7, Keys.Key_W, Keys.Key_Tab)
    focused = QApplication.focusWidget()
    assert focused is table.form.measure
    QTest.keyClicks(focused, "2 1/4")
    press(table, Keys.Key_Return)
    lay_again(table)
    assert shown(table) == "G1 came off 2¹⁄₄ in instead of 2¹⁄₂ in and is cut further."


def test_a_length_that_cannot_be_read_keeps_the_form_and_what_was_typed(opened: Opener) -> None:
    table = opened()
    press(table, *[Keys.Key_Space] * 7, Keys.Key_W, Keys.Key_Tab)
    QTest.keyClicks(table.form.measure, "two")
    press(table, Keys.Key_Return)
    assert table.form.problem.text()
    assert table.form.measure.text() == "two"
    assert shown(table) == "What happened?"


def test_what_cannot_be_is_said_on_the_form(opened: Opener) -> None:
    table = opened()
    press(table, *[Keys.Key_Space] * 7, Keys.Key_W, Keys.Key_Return)
    lay_again(table)
    assert table.form.problem.text() == (
        "That is the width that it should have; write what it measures."
    )
    assert table.form.lay.isEnabled()


def test_esc_leaves_the_form_and_then_the_table(opened: Opener) -> None:
    table = opened()
    press(table, Keys.Key_Space, Keys.Key_W, Keys.Key_Escape)
    assert table.pages.currentWidget() is table.cut_page
    assert table.cloth.cuts_done == 1
    press(table, Keys.Key_Escape)
    assert not table.isVisible()


def test_all_cloths_are_cut_one_after_the_other(opened: Opener) -> None:
    table = opened()
    seen: list[str] = []
    for _ in range(200):
        if table.pages.currentWidget() is table.say_page:
            seen.append(shown(table))
            if seen[-1] == "All is cut":
                break
        press(table, Keys.Key_Space)
    assert seen == ["night sky is all cut", "lamp gold is all cut", "All is cut"]


def test_every_kit_is_cut(opened: Opener, plan: Plan) -> None:
    quilt = replace(plan.project.quilt, copies=2, kits=Kits.EACH)
    table = opened(make_plan(replace(plan.project, quilt=quilt)))
    assert table.top.cloths.count() == 6
    assert table.top.progress.text() == "Cut 1 of 13, cloth night sky, kit 1 of 2"
    press(table, *[Keys.Key_PageDown] * 3)
    assert table.top.progress.text() == "Cut 1 of 13, cloth night sky, kit 2 of 2"


def test_the_window_opens_it_with_one_key(window: MainWindow, qtbot: QtBot) -> None:
    window.mender = PlannerHere
    assert window.menus.cut.shortcut().toString() == "F11"
    window.menus.cut.trigger()
    [table] = window.findChildren(CuttingTable)
    assert table.isFullScreen()
    assert QTest.qWaitForWindowActive(table)
    qtbot.waitUntil(lambda: QApplication.focusWidget() is table)
    press(table, Keys.Key_Escape)
    qtbot.waitUntil(lambda: not window.findChildren(CuttingTable))


def test_where_nothing_is_to_be_cut_it_is_said(
    window: MainWindow, planner: PlannerHere, demo: Project
) -> None:
    bare = Project(demo.quilt, demo.fabrics)
    window.document.edit("Bare", lambda _: bare)
    planner.finish()
    window.menus.cut.trigger()
    assert not window.findChildren(CuttingTable)
    told = window.asker.told  # type: ignore[attr-defined]
    assert told[-1].startswith("Cut at the table: There is nothing to cut yet")


@pytest.mark.parametrize("name", ["W" * LONGEST_NAME, ("indigo " * LONGEST_NAME)[:LONGEST_NAME]])
def test_a_long_name_does_not_widen_the_table(opened: Opener, plan: Plan, name: str) -> None:
    project = put(plan.project, "fabrics[0].name", name)
    table = opened(make_plan(project, draft=True))
    press(table, Keys.Key_Space, Keys.Key_Space, Keys.Key_W)
    for page in (table.cut_page, table.form):
        table.pages.setCurrentWidget(page)
        QApplication.processEvents()
        assert table.minimumSizeHint().width() <= 1280


def test_its_words_are_read_from_two_metres(opened: Opener) -> None:
    # Snellen's line of 20/20 has letters of 5 minutes of arc, 2.9 mm at two metres; the words to
    # cut by have twice that and more, on a laptop's screen of 180 mm.
    table = opened()
    for words, least in ((table.cut_page.do, 14), (table.cut_page.gives, 8)):
        capital = QFontMetrics(words.font()).capHeight() / table.height() * 180
        assert degrees(atan(capital / 2000)) * 60 >= least


def test_when_all_is_cut_it_says_what_there_is_of_every_cloth(opened: Opener) -> None:
    table = opened()
    for place, cloth in enumerate(table.cutting.cloths):
        table.take_cloth(place)
        press(table, *[Keys.Key_Space] * len(cloth.order.cuts))
    assert shown(table) == "All is cut"
    assert "Of lamp gold you have A1" in table.say_page.text.text()
    assert "Of tide stripe you have E, F, H, J." in table.say_page.text.text()
