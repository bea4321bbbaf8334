"""A window on the demo project whose questions are answered by the test."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path

import pytest
from PySide6.QtCore import QSettings, Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from app.assets import asset
from app.solver.work import result_of
from app.window.appearance import Appearance, Look
from app.window.asker import Answer, KeptAnswer
from app.window.document import Document
from app.window.main_window import MainWindow
from app.window.memory import Memory
from app.window.part_form import FieldRow
from app.window.planner import Planner
from core.project_file import load
from core.quilt import Project


@dataclass
class ScriptedAsker:
    """Answers as told, and remembers what was asked and said."""

    answer: Answer = Answer.CANCEL
    open_file: Path | None = None
    save_file: Path | None = None
    save_folder: Path | None = None
    kept: KeptAnswer = KeptAnswer.LATER
    goes_on: bool = False
    asked: list[str] = field(default_factory=list)
    told: list[str] = field(default_factory=list)

    def about_changes(self, name: str, left_out: str) -> Answer:
        self.asked.append(f"{name} {left_out}".strip())
        return self.answer

    def about_kept(self, name: str, when: str) -> KeptAnswer:
        self.asked.append(f"kept: {name}")
        return self.kept

    def go_on(self, title: str, sentence: str, button: str) -> bool:
        self.asked.append(f"{title}. {sentence}")
        return self.goes_on

    def file_to_open(self, folder: Path) -> Path | None:
        return self.open_file

    def file_to_save(self, title: str, proposed: Path, kinds: str) -> Path | None:
        self.asked.append(f"{title}: {proposed.name}")
        return self.save_file

    def folder(self, title: str, start: Path) -> Path | None:
        self.asked.append(title)
        return self.save_folder

    def tell(self, title: str, sentence: str) -> None:
        self.told.append(f"{title}: {sentence}")


class PlannerHere(Planner):
    """Plans in the test's own process, when told to `finish` or soon after."""

    def __init__(self) -> None:
        super().__init__()
        self._soon = QTimer(self, singleShot=True, interval=0)
        self._soon.timeout.connect(self.finish)

    def finish(self) -> None:
        """Plan what is waiting, if anything is, now."""
        self._soon.stop()
        if self._wanted is not None:
            self._settle(result_of(self._wanted, self._previous))

    def _send(self) -> None:
        self._soon.start()


def all_rows(window: MainWindow) -> dict[str, FieldRow]:
    """Every field by its path, opened or not."""
    return {
        f"{section.prefix}.{key}": row
        for outer in window.parts.sections()
        for section in outer.within()
        for key, row in section.body.rows.items()
    }


def editor_at(window: MainWindow, path: str) -> QWidget:
    """The widget that a field is edited in."""
    row = window.parts.row_at(path)
    assert row is not None
    editor = row.focusProxy()
    assert editor is not None
    return editor


@pytest.fixture
def demo() -> Project:
    return load(asset("harbour-lights.crossgrain"))


@pytest.fixture
def document(qapp: QApplication, demo: Project) -> Document:
    return Document(demo)


@pytest.fixture
def asker() -> ScriptedAsker:
    return ScriptedAsker()


@pytest.fixture
def memory(tmp_path: Path) -> Memory:
    return Memory(QSettings(str(tmp_path / "settings.ini"), QSettings.Format.IniFormat))


@pytest.fixture
def planner(qapp: QApplication) -> PlannerHere:
    return PlannerHere()


@pytest.fixture
def window(
    qtbot: QtBot,
    document: Document,
    planner: PlannerHere,
    asker: ScriptedAsker,
    memory: Memory,
    qapp: QApplication,
) -> MainWindow:
    """Shown, and planned once; changes left unsaved at the end are let go."""
    appearance = Appearance(qapp)
    appearance.wear(Look.LIGHT)
    window = MainWindow(document, planner, memory, appearance, asker, PlannerHere())
    qtbot.addWidget(window, before_close_func=lambda _: document.undo_stack.setClean())
    window.show()
    planner.finish()
    return window


@pytest.fixture
def type_in(window: MainWindow, planner: PlannerHere, qtbot: QtBot) -> Callable[[str, str], None]:
    """Type a text over a field's own, and leave it with Enter; then plan."""

    def typed(path: str, text: str) -> None:
        window.parts.show_field(path)
        editor = editor_at(window, path)
        editor.selectAll()  # type: ignore[attr-defined]
        QTest.keyClick(editor, Qt.Key.Key_Delete)
        QTest.keyClicks(editor, text)
        QTest.keyClick(editor, Qt.Key.Key_Return)
        planner.finish()

    return typed
