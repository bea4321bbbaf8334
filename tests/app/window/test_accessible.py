"""Everything in the window has a name, a role and a value for a screen reader, and a key."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QDialog, QWidget
from pytestqt.qtbot import QtBot

from app.packet.choice import PacketChoice
from app.packet.paper import Format
from app.window import help_pages
from app.window.canvas import Canvas
from app.window.cutting.cuttings import Cuttings
from app.window.cutting.table import CuttingTable
from app.window.main_window import MainWindow
from app.window.packet_dialog import PacketDialog
from core.edit import move
from core.lengths import Units
from tests.app.window.conftest import PlannerHere, all_rows, editor_at
from tests.app.window.heard import CONTROLS, VALUED, Heard, heard

Role = QAccessible.Role


def nameless(found: list[Heard]) -> list[Heard]:
    """The controls that say nothing of what they are for."""
    working = (one for one in found if one.role in CONTROLS or one.focusable)
    return [one for one in working if one.role is not Role.Cell and not one.name]


def marked_up(found: list[Heard]) -> list[str]:
    return [text for one in found for text in (one.name, one.description) if "<" in text]


@pytest.fixture
def unfolded(window: MainWindow, qtbot: QtBot) -> MainWindow:
    """Every field in sight."""
    for section in window.parts.sections():
        section.heading.setChecked(True)
        section.body.show_more(True)
    qtbot.wait(50)
    return window


def tabs_in_turn(window: MainWindow, qtbot: QtBot) -> Iterator[int]:
    tabs = window.centre.tabs
    for place in range(tabs.count()):
        tabs.setCurrentIndex(place)
        qtbot.wait(50)
        yield place


def test_every_control_of_the_parts_has_a_name(unfolded: MainWindow) -> None:
    found = heard(unfolded)
    assert nameless(found) == []
    assert marked_up(found) == []


def test_every_field_says_its_value_as_it_is_shown(unfolded: MainWindow) -> None:
    found = {one.name: one for one in heard(unfolded) if one.role in VALUED}
    assert found["Quilt: Width"].value == "48 1/2 in"
    assert found["Binding: Fabric"].value == "night sky"
    assert found["Fabric tide stripe: Shrinks along"].value == "3%"
    assert len(found) > 50


def test_what_there_is_several_of_is_heard_by_its_own_name(unfolded: MainWindow) -> None:
    names = Counter(one.name for one in heard(unfolded.parts))
    assert names["Border 1: Finished width"] == names["Border 2: Finished width"]
    assert {"Border 2: move or remove", "More about the fabric lamp gold"} <= set(names)
    fabrics = [f"Fabric {one.name}: " for one in unfolded.document.project.fabrics]
    assert all(any(name.startswith(one) for name in names) for one in fabrics)


def test_what_is_renamed_or_moved_is_heard_by_its_new_name(window: MainWindow) -> None:
    names = [editor_at(window, f"fabrics[{place}].name") for place in (1, 2)]
    window.document.put("fabrics[1].name", "honey", "Rename")
    window.document.edit("Move", lambda project: move(project, "fabrics[1]", +1))
    assert [one.accessibleName() for one in names] == [
        "Fabric tide stripe: Name",
        "Fabric honey: Name",
    ]


def test_every_field_says_what_it_is_about(unfolded: MainWindow) -> None:
    described = {one.name for one in heard(unfolded) if one.description}
    shown = [row for row in all_rows(unfolded).values() if row.isVisible()]
    assert len(shown) > 60
    assert [row.field.label for row in shown if not row.field.help] == []
    assert {"Quilt: Width", "Binding: Strip width", "Batting: Overage"} <= described


def test_every_view_has_names(window: MainWindow, qtbot: QtBot) -> None:
    for place in tabs_in_turn(window, qtbot):
        assert nameless(heard(window)) == [], window.centre.tabs.tabText(place)


def test_every_list_has_names(window: MainWindow, qtbot: QtBot) -> None:
    tabs = window.answer.tabs
    for place in range(tabs.count()):
        tabs.setCurrentIndex(place)
        qtbot.wait(20)
        assert nameless(heard(window)) == [], tabs.tabText(place)


def test_every_piece_of_the_plan_is_in_a_list_to_hear(window: MainWindow, qtbot: QtBot) -> None:
    assert window.plan is not None
    window.answer.tabs.setCurrentWidget(window.answer.pieces)
    qtbot.wait(20)
    cells = {one.name for one in heard(window.answer.pieces) if one.role is Role.Cell}
    laid = [
        window.plan.label(placement)
        for fabric in window.plan.fabrics
        for placement in fabric.lay.placements
    ]
    assert len(laid) > 15
    assert set(laid) <= cells


def test_what_is_bought_is_to_be_heard(window: MainWindow) -> None:
    cells = {one.name for one in heard(window.answer.buy) if one.role is Role.Cell}
    assert {"night sky", "lamp gold", "tide stripe", "23.44"} <= cells


def dialogs(window: MainWindow, folder: Path) -> Iterator[QDialog]:
    yield help_pages.cautions(window)
    yield help_pages.words(window)
    yield help_pages.keys(window)
    yield help_pages.about(window)
    yield help_pages.guide(window)
    yield window.menus._change_sizes(Units.INCHES)
    assert window.plan is not None
    choice = PacketChoice(form=Format(window.paper()))
    cuttings = Cuttings(None, window.plan, folder)
    yield CuttingTable(window.plan, cuttings, PlannerHere(), window.centre.yardage.theme, window)
    yield PacketDialog(window.plan, choice, lambda *_: None, window, PlannerHere)


def test_every_dialog_has_names_and_a_key_out(
    window: MainWindow, qtbot: QtBot, tmp_path: Path
) -> None:
    for dialog in dialogs(window, tmp_path):
        dialog.show()
        qtbot.wait(20)
        title = dialog.windowTitle()
        assert title
        assert nameless(heard(dialog)) == [], title
        assert marked_up(heard(dialog)) == [], title
        QTest.keyClick(dialog, Qt.Key.Key_Escape)
        assert not dialog.isVisible(), title


def test_a_refusal_is_said_aloud(
    window: MainWindow, planner: PlannerHere, monkeypatch: pytest.MonkeyPatch
) -> None:
    said: list[str] = []
    monkeypatch.setattr("app.window.banner.announce", lambda near, text: said.append(text))
    window.document.put("binding.strip_width", "1/2", "Change strip width")
    planner.finish()
    assert len(said) == 1
    assert said[0] == window.centre.banner.text.text()


def stops(window: MainWindow, most: int = 400) -> list[QWidget]:
    """Where the Tab key stops, from the first field round to it again."""
    window.activateWindow()
    window.parts.quilt.heading.setFocus()
    found: list[QWidget] = []
    for _ in range(most):
        focused = QApplication.focusWidget()
        if focused is None or focused in found:
            break
        found.append(focused)
        QTest.keyClick(focused, Qt.Key.Key_Tab)
    return found


def test_tab_reaches_fields_pictures_and_lists(window: MainWindow, qtbot: QtBot) -> None:
    with qtbot.waitActive(window):
        window.activateWindow()
    found = stops(window)
    assert window.parts.isAncestorOf(found[0])
    for stop in (window.centre.yardage, window.centre.tabs.tabBar(), window.answer.cut):
        assert stop in found
    places = [found.index(stop) for stop in (window.centre.yardage, window.answer.cut)]
    assert places == sorted(places)
    assert len(found) == len(set(found))


def test_every_button_that_tab_skips_has_a_command_with_a_key(window: MainWindow) -> None:
    skipped = [
        button
        for button in window.findChildren(QAbstractButton)
        if button.isVisible()
        and button.isEnabled()
        and not button.focusPolicy() & Qt.FocusPolicy.TabFocus
        and button.parent() is not window.centre.tabs.tabBar()
        and button.parent() is not window.answer.tabs.tabBar()
    ]
    menus = {action.text().replace("&", "").rstrip("…") for action in window.menus._listed}
    for button in skipped:
        assert button.text().rstrip("…") in menus, button.text()


def test_a_picture_says_that_lists_say_the_same(window: MainWindow) -> None:
    for canvas in window.findChildren(Canvas):
        assert canvas.accessibleName()
        assert "lists" in canvas.accessibleDescription()
