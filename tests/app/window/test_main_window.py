"""The window as a whole: every edit is planned and painted at once."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from pypdf import PdfReader
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QAction, QImage, QKeySequence
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from app.assets import asset
from app.command_line import main
from app.packet.choice import Pages
from app.packet.paper import Format, Paper
from app.style import SCREEN_DARK, SCREEN_LIGHT
from app.window.appearance import Look
from app.window.export import Kind
from app.window.main_window import MainWindow
from app.window.packet_dialog import PacketDialog
from app.window.packet_memory import remembered
from core import edit
from core.refusal import Refusal
from tests.app.window.conftest import PlannerHere, ScriptedAsker, all_rows, editor_at

TypeIn = Callable[[str, str], None]


def picture(widget: QWidget) -> QImage:
    return widget.grab().toImage()


def cells(window: MainWindow) -> list[tuple[str, ...]]:
    return [row.cells for row in window.answer.buy.rows.rows]


def test_the_first_plan_is_on_every_view(window: MainWindow) -> None:
    assert window.plan is not None
    assert len(window.centre.yardage.scene().items()) == 4
    assert not window.centre.quilt.scene().items()  # drawn once it is looked at
    window.centre.tabs.setCurrentWidget(window.centre.quilt)
    assert len(window.centre.quilt.scene().items()) == 2  # its front and its back
    assert [row.key for row in window.answer.cut.rows.rows] == [p.letter for p in window.plan.parts]
    assert [name for name, *_ in cells(window)][:3] == ["night sky", "lamp gold", "tide stripe"]
    assert "58¹⁄₂ × 70¹⁄₂ in" in window.finished.text()


def test_an_edit_repaints_the_pictures_and_the_answer(
    window: MainWindow, planner: PlannerHere, type_in: TypeIn
) -> None:
    yardage, buy = picture(window.centre.yardage), cells(window)
    type_in("quilt.length", "90")
    assert picture(window.centre.yardage) != yardage
    assert cells(window) != buy
    window.document.undo_stack.undo()
    planner.finish()
    assert picture(window.centre.yardage) == yardage
    assert cells(window) == buy


def test_an_edit_is_planned_without_being_asked_for(window: MainWindow, qtbot: QtBot) -> None:
    with qtbot.waitSignal(window.planner.planned, timeout=3000):
        window.document.put("quilt.width", "50", "Change quilt width")
    assert window.plan is not None
    assert window.plan.project == window.document.project


def test_quick_edits_are_planned_once(window: MainWindow, qtbot: QtBot) -> None:
    plans: list[object] = []
    window.planner.planned.connect(plans.append)
    for width in ("50", "51", "52"):
        window.document.put("quilt.width", width, "Change quilt width")
    qtbot.waitUntil(lambda: bool(plans), timeout=3000)
    qtbot.wait(50)
    assert len(plans) == 1
    assert window.plan is plans[0]


def test_undo_says_what_it_undoes_in_the_persons_words(window: MainWindow, type_in: TypeIn) -> None:
    type_in("borders[0].width", "2")
    assert window.menus.undo.text() == "Undo Change border 1 finished width"
    window.menus.undo.trigger()
    assert window.menus.redo.text() == "Redo Change border 1 finished width"


def test_undo_by_key_works_from_the_field_that_was_edited(
    window: MainWindow, type_in: TypeIn, qtbot: QtBot
) -> None:
    with qtbot.waitActive(window):
        window.activateWindow()
    before = window.document.project
    type_in("quilt.width", "50")
    editor = window.focusWidget()
    QTest.keyClick(editor, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert window.document.project is before
    assert editor.text() == "48 1/2 in"  # type: ignore[attr-defined]


def test_the_title_tells_name_and_unsaved_changes(window: MainWindow, type_in: TypeIn) -> None:
    assert window.windowTitle() == "Harbour Lights[*] – Crossgrain"
    assert not window.isWindowModified()
    type_in("quilt.name", "Low Tide")
    assert window.windowTitle() == "Low Tide[*] – Crossgrain"
    assert window.isWindowModified()
    window.document.undo_stack.undo()
    assert not window.isWindowModified()


def test_a_part_chosen_in_the_table_is_ringed_in_the_pictures(window: MainWindow) -> None:
    before = picture(window.centre.yardage)
    window.answer.choose("E")
    assert picture(window.centre.yardage) != before
    window.answer.choose("")
    assert picture(window.centre.yardage) == before


def test_a_piece_clicked_in_the_yardage_is_chosen_in_the_table(
    window: MainWindow, qtbot: QtBot
) -> None:
    canvas = window.centre.yardage
    item = canvas.items()[0]
    middle = item.mapToScene(QPointF(20.0, 25.0))
    canvas.centerOn(middle)
    place = canvas.mapFromScene(middle)
    QTest.mouseClick(canvas.viewport(), Qt.MouseButton.LeftButton, pos=place)
    [letter] = window.answer.cut.chosen()
    assert letter in {part.letter for part in window.plan.parts} if window.plan else False


def test_a_chosen_part_stays_chosen_when_the_plan_changes(
    window: MainWindow, type_in: TypeIn
) -> None:
    window.answer.choose("E")
    type_in("quilt.width", "47")
    assert window.answer.cut.chosen() == {"E"}


@pytest.mark.parametrize("path", ["fabrics[2].shrinkage.along", "fabrics[2].one_way_print"])
def test_a_warning_leads_to_its_field(window: MainWindow, path: str) -> None:
    notes = window.answer.notes
    place = [row.key for row in notes.rows.rows].index(path)
    notes.activated.emit(notes.rows.index(place, 0))
    assert window.parts.fabrics.sections[2].heading.isChecked()
    row = window.parts.row_at(path)
    assert row is not None
    assert row.isVisibleTo(window)


@pytest.mark.parametrize("paper", Paper)
def test_the_packet_is_exported_on_the_paper_that_is_chosen(
    window: MainWindow, asker: ScriptedAsker, tmp_path: Path, paper: Paper
) -> None:
    asker.save_file = tmp_path / "plan.pdf"
    window.set_paper(paper)
    window.menus.export.trigger()
    assert asker.asked == ["Export a PDF: Harbour Lights.pdf"]
    page = PdfReader(asker.save_file).pages[0]
    assert (float(page.mediabox.width), float(page.mediabox.height)) == pytest.approx(paper.size)


def test_an_export_that_fails_is_told(
    window: MainWindow, asker: ScriptedAsker, tmp_path: Path
) -> None:
    asker.save_file = tmp_path / "no such folder" / "plan.pdf"
    window.menus.export.trigger()
    assert "was not written" in asker.told[0]


def test_without_a_plan_nothing_is_exported(
    window: MainWindow, asker: ScriptedAsker, type_in: TypeIn, tmp_path: Path
) -> None:
    type_in("binding.strip_width", "1/2")
    asker.save_file = tmp_path / "plan.pdf"
    window.menus.export.trigger()
    assert "has no plan" in asker.told[0]
    assert not asker.save_file.exists()


def test_a_refusal_without_a_part_is_told_too(window: MainWindow) -> None:
    window.planner.refused.emit(Refusal("", "nothing can be done"))
    assert "nothing can be done" in window.centre.banner.text.text()


@pytest.mark.parametrize(("look", "theme"), [(Look.LIGHT, SCREEN_LIGHT), (Look.DARK, SCREEN_DARK)])
def test_the_canvas_follows_the_look(window: MainWindow, look: Look, theme: object) -> None:
    window.appearance.wear(look)
    assert window.centre.yardage.theme is theme
    assert window.centre.quilt.theme is theme


def test_no_two_commands_share_a_key_or_a_name(window: MainWindow) -> None:
    actions = window.findChildren(QAction)
    keys = [key.toString() for action in actions for key in action.shortcuts()]
    assert len(keys) == len(set(keys))
    assert QKeySequence(QKeySequence.StandardKey.Save).toString() in keys


def test_every_command_with_a_key_is_listed_in_help(window: MainWindow) -> None:
    listed = dict(window.menus.shortcuts())
    assert {"Save", "Export PDF", "Show Everything"} <= set(listed)


def test_every_control_has_a_name_for_a_screen_reader(window: MainWindow) -> None:
    for section in window.parts.sections():
        section.reveal()
        section.body.show_more(True)
    nameless = [
        f"{type(widget).__name__} {widget.objectName()}"
        for widget in window.findChildren(QWidget)
        if widget.focusPolicy() is not Qt.FocusPolicy.NoFocus
        and widget.isVisibleTo(window)
        and widget.focusProxy() is None
        and type(widget).__module__.startswith("app.")
        and not (widget.accessibleName() or getattr(widget, "text", str)())
    ]
    assert nameless == []


def test_every_field_can_be_seen_whole_at_1280_by_800(window: MainWindow, qtbot: QtBot) -> None:
    window.resize(1280, 800)
    for section in window.parts.sections():
        section.reveal()
        section.body.show_more(True)
    qtbot.wait(50)
    room, inside = window.parts.viewport().width(), window.parts.widget()
    assert inside is not None
    for path, row in all_rows(window).items():
        if not row.isVisibleTo(window):
            continue
        right = row.mapTo(inside, QPoint(row.width(), 0)).x()
        assert right <= room, path
        editor = row.focusProxy()
        assert editor is not None
        assert editor.height() >= editor.minimumSizeHint().height(), path


def test_a_new_quilt_starts_in_its_name_and_says_what_to_do(
    window: MainWindow, planner: PlannerHere, qtbot: QtBot
) -> None:
    with qtbot.waitActive(window):
        window.activateWindow()
    window.parts.show_field("sleeve.depth")
    window.menus.new.trigger()
    planner.finish()
    name = window.focusWidget()
    assert name is editor_at(window, "quilt.name")
    assert name.selectedText() == "New quilt"  # type: ignore[attr-defined]
    blank = picture(window.centre.yardage)
    window.document.edit("Add binding", lambda project: edit.add_part(project, "binding"))
    planner.finish()
    assert picture(window.centre.yardage) != blank
    assert len({pixel(blank, x) for x in range(blank.width())}) > 1, "words on the empty table"


def pixel(image: QImage, x: int) -> int:
    """The darkest pixel of a column."""
    return min(image.pixelColor(x, y).lightness() for y in range(10, image.height() - 10))


def test_another_project_begins_with_only_the_quilt_open(window: MainWindow) -> None:
    window.parts.show_field("borders[1].width")
    window.files.open_path(asset("tide-pool-runner.crossgrain"))
    opened = [s.prefix for s in window.parts.sections() if s.heading.isChecked()]
    assert opened == ["quilt"]


def test_recent_files_tell_their_folder_and_open(window: MainWindow, tmp_path: Path) -> None:
    for folder in ("May & June", "April"):
        (tmp_path / folder).mkdir()
        window.document.save(tmp_path / folder / "quilt.crossgrain")
        window.files.open_path(tmp_path / folder / "quilt.crossgrain")
    actions = [a for a in window.menuBar().findChildren(QAction) if "quilt.crossgrain" in a.text()]
    words = {a.text(): a for a in actions}
    assert {"quilt.crossgrain in April", "quilt.crossgrain in May && June"} <= set(words)
    words["quilt.crossgrain in May && June"].trigger()
    assert window.document.path == tmp_path / "May & June" / "quilt.crossgrain"


@pytest.mark.parametrize(
    ("kind", "some"),
    [(Kind.SVG, "quilt.svg"), (Kind.PNG, "quilt.png"), (Kind.CSV, "purchases.csv")],
)
def test_pictures_and_tables_are_written_into_a_folder(
    window: MainWindow, asker: ScriptedAsker, tmp_path: Path, kind: Kind, some: str
) -> None:
    """The very files that the command line writes."""
    asker.save_folder, other = tmp_path / "window", tmp_path / "command"
    asker.save_folder.mkdir()
    window.menus.export_files[kind].trigger()
    assert (
        main(
            ["plan", str(asset("harbour-lights.crossgrain")), f"--{kind.name.lower()}", str(other)]
        )
        == 0
    )
    written = {path.name: path.read_bytes() for path in asker.save_folder.iterdir()}
    assert some in written
    assert written == {path.name: path.read_bytes() for path in other.iterdir()}
    assert asker.told == []


def test_older_files_in_the_folder_are_replaced_only_when_that_is_wanted(
    window: MainWindow, asker: ScriptedAsker, tmp_path: Path
) -> None:
    asker.save_folder, old = tmp_path, tmp_path / "pieces.csv"
    old.write_text("older")
    window.menus.export_files[Kind.CSV].trigger()
    assert "pieces.csv" in asker.asked[-1]
    assert old.read_text() == "older"
    assert not (tmp_path / "purchases.csv").exists()
    asker.goes_on = True
    window.menus.export_files[Kind.CSV].trigger()
    assert old.read_text() != "older"
    assert (tmp_path / "purchases.csv").exists()


def test_a_folder_that_is_gone_is_told(
    window: MainWindow, asker: ScriptedAsker, tmp_path: Path
) -> None:
    asker.save_folder = tmp_path / "gone"
    window.menus.export_files[Kind.CSV].trigger()
    assert "pieces.csv was not written" in asker.told[0]
    assert not asker.save_folder.exists()


def test_what_was_chosen_of_the_packet_is_remembered(window: MainWindow) -> None:
    window.print_packet()
    dialog = window.findChild(PacketDialog)
    assert dialog is not None
    dialog.kinds.item(0).setCheckState(Qt.CheckState.Unchecked)
    dialog.paper.setCurrentIndex(list(Paper).index(Paper.A4))
    dialog.grey.setChecked(True)
    dialog.make()
    dialog.close()
    assert window.paper() is Paper.A4
    again = remembered(window.memory, window.paper())
    assert Pages.QUILT not in again.pages
    assert again.form == Format(Paper.A4, grey=True)
