"""The cutting table, the views that compare, the hand's words and the packet's dialog are told."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtPrintSupport import QPrintDialog, QPrinter
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QMenu
from pytestqt.qtbot import QtBot

from app.assets import asset
from app.packet.choice import PacketChoice, Pages
from app.style import SCREEN_LIGHT
from app.window.by_hand.cloth_menu import HAND_KEYS, ClothMenu
from app.window.cutting.cuttings import Cuttings
from app.window.cutting.open_table import open_table
from app.window.cutting.table import CuttingTable
from app.window.main_window import MainWindow
from app.window.packet_dialog import PacketDialog
from core.cutting.miscut import OtherSize, Spoilt, WrongWidth
from core.edit import put
from core.language import told
from core.plan import Plan, make_plan
from core.project_file import load
from core.quilt import Project
from tests.app.window.conftest import PlannerHere, ScriptedAsker
from tests.app.window.told import left, texts
from tests.nameless import nameless

pytestmark = pytest.mark.usefixtures("stand_in")
BY_HAND = Path(__file__).resolve().parents[2] / "data" / "by-hand.crossgrain"
ENTER = Qt.Key.Key_Return


@pytest.fixture
def demo(stand_in: None) -> Project:
    return nameless(load(asset("harbour-lights.crossgrain")))


@pytest.fixture
def plan(demo: Project) -> Plan:
    return make_plan(demo, draft=True)


def opened(qtbot: QtBot, plan: Plan, folder: Path) -> CuttingTable:
    path = folder / "quilt.crossgrain"
    table = CuttingTable(plan, Cuttings(path, plan, folder), PlannerHere(), SCREEN_LIGHT)
    qtbot.addWidget(table)
    table.show()
    return table


def found(table: CuttingTable) -> None:
    assert isinstance(table.mender, PlannerHere)
    table.mender.finish()


def test_every_cut_and_the_end_of_every_cloth_is_told(
    qtbot: QtBot, plan: Plan, tmp_path: Path
) -> None:
    table = opened(qtbot, plan, tmp_path)
    for place, cloth in enumerate(table.cutting.cloths):
        table.take_cloth(place)
        for _ in range(len(cloth.order.cuts) + 1):
            assert left(texts(table)) == {}
            table.cut_once()


def test_what_went_wrong_is_asked_and_answered_in_the_language(
    qtbot: QtBot, plan: Plan, tmp_path: Path
) -> None:
    table = opened(qtbot, plan, tmp_path)
    for _ in range(7):
        table.cut_once()
    label = table.cloth.order.pieces[0].label
    wrong = table.cloth.order.cuts[6].step.measure / 2
    for miscut in (Spoilt(label), WrongWidth(wrong, keep=True), OtherSize(0, wrong, wrong)):
        table.ask_what_happened()
        assert left(texts(table)) == {}
        table.form.wait()
        assert left(texts(table.form)) == {}
        table._lay_again(miscut)
        found(table)
        assert left(texts(table)) == {}
    table.ask_what_happened()
    table._lay_again(Spoilt("Ω9"))
    found(table)
    assert table.form.problem.text() != ""
    assert left(texts(table)) == {}


def test_a_changed_plan_and_what_cannot_be_read_or_kept_are_told(
    qtbot: QtBot, plan: Plan, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    table = opened(qtbot, plan, tmp_path)
    for _ in range(4):
        table.cut_once()
    quilt = replace(plan.project.quilt, width=plan.project.quilt.width + 2)
    wider = make_plan(replace(plan.project, quilt=quilt), draft=True)
    changed = opened(qtbot, wider, tmp_path)
    assert left(texts(changed)) == {}
    changed.opening.ask("Ω")
    assert left(texts(changed)) == {}
    changed.opening._lay_changed()
    assert left(texts(changed)) == {}
    found(changed)
    assert left(texts(changed)) == {}
    table.cuttings.file.write_text('{"format": "Ω"}', encoding="utf-8")
    assert left(texts(opened(qtbot, plan, tmp_path)), "crossgrain", "cutting") == {}
    monkeypatch.setattr(Cuttings, "keep", _full)
    table.cut_once()
    assert left(texts(table)) == {}


def _full(cuttings: Cuttings, cutting: object) -> None:
    raise OSError(28, "No space left on device")


def test_that_there_is_nothing_to_cut_is_told(window: MainWindow, asker: ScriptedAsker) -> None:
    bare = replace(
        window.document.project,
        borders=(), backing=None, binding=None, sleeve=None, label=None,
    )  # fmt: skip
    window.document.edit("", lambda _: bare)
    assert isinstance(window.planner, PlannerHere)
    window.planner.finish()
    open_table(window, PlannerHere)
    assert len(asker.told) == 1
    assert left(asker.told) == {}


def test_the_views_that_compare_are_told(window: MainWindow) -> None:
    centre = window.centre
    assert isinstance(window.comparer, PlannerHere)
    for view in (centre.side_by_side, centre.staircase, centre.in_hand, centre.edge_page):
        centre.tabs.setCurrentWidget(view)
        window.comparer.finish()
        assert left(texts(view)) == {}
    view, model = centre.side_by_side, centre.side_by_side.values
    for place in range(view.bar.choice_box.count()):
        view.bar.choice_box.setCurrentIndex(place)
        view.bar.choice_box.activated.emit(place)
    assert left(texts(view)) == {}
    down = Qt.Orientation.Vertical
    assert left(str(model.headerData(row, down)) for row in range(model.rowCount())) == {}


def test_a_word_is_compared_by_what_it_is_called(window: MainWindow) -> None:
    view = window.centre.side_by_side
    window.centre.tabs.setCurrentWidget(view)
    view.bar.choice_box.setCurrentIndex(1)
    view.bar.choice_box.activated.emit(1)
    assert view.bar.values == ("diagonal", "straight", "angled")
    assert view.bar.values_line.text() == "; ".join(map(told, view.bar.values))


def test_long_values_are_read_whole_over_their_columns(window: MainWindow) -> None:
    view = window.centre.side_by_side
    window.centre.tabs.setCurrentWidget(view)
    assert isinstance(window.comparer, PlannerHere)
    view.bar.choice_box.setCurrentIndex(7)
    view.bar.choice_box.activated.emit(7)
    window.comparer.finish()
    assert view.values.comparison is not None
    header = view.table.horizontalHeader()
    for place, column in enumerate(view.values.comparison.columns):
        wide = header.fontMetrics().horizontalAdvance(column.said)
        assert header.sectionSize(place) > wide


def test_a_value_a_step_and_a_start_taken_are_told_as_steps_to_undo(window: MainWindow) -> None:
    stack, centre, said = window.document.undo_stack, window.centre, []
    centre.tabs.setCurrentWidget(centre.edge_page)
    centre.edge._step(1, 1)
    said.append(stack.undoText())
    centre.edge.put_best()
    said.append(stack.undoText())
    assert isinstance(window.comparer, PlannerHere)
    centre.tabs.setCurrentWidget(centre.side_by_side)
    window.comparer.finish()
    centre.side_by_side.table.setCurrentIndex(centre.side_by_side.values.index(0, 0))
    centre.side_by_side.take_chosen()
    said.append(stack.undoText())
    centre.tabs.setCurrentWidget(centre.staircase)
    window.comparer.finish()
    centre.staircase.list.choose(str(centre.staircase.list.model().rowCount()))
    centre.staircase.take_chosen()
    said.append(stack.undoText())
    assert len(set(said)) == 4
    assert left(said) == {}


@pytest.fixture
def hands(window: MainWindow) -> MainWindow:
    """A window on a quilt of which something is said by hand."""
    project = put(nameless(load(BY_HAND)), "fabrics[0].flaws[0].word", "Ω")
    window.document.edit("", lambda _: project)
    assert isinstance(window.planner, PlannerHere)
    window.planner.finish()
    window.centre.tabs.setCurrentWidget(window.centre.yardage)
    return window


def test_the_hands_menus_and_keys_are_told(hands: MainWindow) -> None:
    said = [told(words) for row in HAND_KEYS for words in row]
    assert left(said) == {}
    for key, path in (
        ("B1", ""),
        ("C1", ""),
        ("", "fabrics[0].flaws[0]"),
        ("", "fabrics[2].motifs[0]"),
    ):
        menu = ClothMenu(hands.hand, hands.document.project, key, path)
        assert left(texts(menu)) == {}
    [cloth] = [
        menu for menu in hands.menuBar().findChildren(QMenu) if menu.title() == told("&Cloth")
    ]
    assert left(texts(cloth)) == {}


def test_what_is_said_of_a_piece_in_the_hand_is_told(hands: MainWindow) -> None:
    canvas, said = hands.centre.yardage, []
    said_in_passing: list[str] = []
    hands.statusBar().messageChanged.connect(said_in_passing.append)
    for verb in ("pick up", "best lay"):
        hands.hand.verbs[verb]()
    canvas.choose(frozenset({"C1"}))
    canvas._here = "C1"
    for verb in ("pick up", "turn", "next cloth", "flaw", "motif"):
        hands.hand.verbs[verb]()
        said.append(canvas.said.text.text())
        QTest.keyClick(canvas, Qt.Key.Key_R)
        said.append(canvas.said.text.text())
        QTest.keyClick(canvas, Qt.Key.Key_Up)
        said.append(canvas.said.text.text())
        canvas.cancel()
    assert len(set(said)) > 6
    assert len(said_in_passing) > 0
    assert left([*said, *said_in_passing]) == {}


def test_what_the_hand_does_is_told_as_steps_to_undo(hands: MainWindow) -> None:
    assert isinstance(hands.planner, PlannerHere)
    canvas, stack, said = hands.centre.yardage, hands.document.undo_stack, []

    def carried_to_the_mark(*keys: Qt.Key) -> None:
        for key in keys:
            QTest.keyClick(canvas, key)

    motif = "fabrics[2].motifs[0]"
    for label, verb, keys in (
        ("E", "flaw", (Qt.Key.Key_S, ENTER)),
        ("E", "motif", (ENTER,)),
        ("", "motif", (ENTER,)),
        ("A1", "pick up", (Qt.Key.Key_Right, ENTER)),
        ("E", "pin", ()),
        ("E", "pin", ()),
        ("", "best lay", ()),
    ):
        canvas._here = label
        hands.hand.verbs[verb]()
        carried_to_the_mark(*keys)
        hands.planner.finish()
        said.append(stack.undoText())
    hands.hand.give(motif, hands.hand.takers(motif)[0])
    said.append(stack.undoText())
    for path in ("fabrics[0].flaws[0]", motif):
        hands.hand.unmark(path)
        said.append(stack.undoText())
    assert len(set(said)) > 7, said
    assert left(said) == {}


@pytest.mark.parametrize("kinds", [(Pages.CUTS,), (), tuple(Pages)])
def test_the_packets_dialog_is_told(
    qtbot: QtBot, plan: Plan, kinds: tuple[Pages, ...], monkeypatch: pytest.MonkeyPatch
) -> None:
    choice = PacketChoice(pages=kinds)
    dialog = PacketDialog(plan, choice, lambda *_: None, None, PlannerHere)
    qtbot.addWidget(dialog)
    assert left(texts(dialog), "PDF") == {}
    assert dialog.kinds.minimumWidth() > dialog.kinds.sizeHintForColumn(0)
    monkeypatch.setattr("app.window.packet_dialog.print_all", lambda *_: False)
    dialog.print_on(QPrinter())
    dialog.turn(1)
    assert left(texts(dialog), "PDF") == {}
    named: list[str] = []

    def asked(box: QPrintDialog) -> int:
        named.append(box.printer().docName())
        return 0

    monkeypatch.setattr(QPrintDialog, "exec", asked)
    dialog.ask_printer()
    assert len(named) == 1
    assert left(named) == {}
