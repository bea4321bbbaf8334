"""The window's frame before what it holds is made: bars, menus' titles and the three columns.

It is what is painted first, so it imports little; above all not `Qt`, whose enumerations
take a fifth of the time in which an empty window opens. Nothing can be pressed as yet.
"""

from __future__ import annotations

from PySide6.QtGui import QColor, QPalette
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QMainWindow,
    QSplitter,
    QTabBar,
    QToolBar,
    QVBoxLayout,
    QWidget,
)

from core.language import marked, told

MENUS = (
    marked("&File"),
    marked("&Edit"),
    marked("&Add"),
    marked("&Cloth"),
    marked("&View"),
    marked("&Help"),
)
TOOLS = (
    marked("New"),
    marked("Open"),
    marked("Save"),
    "",
    marked("Undo"),
    marked("Redo"),
    "",
    marked("Export PDF"),
)
TABS = (
    marked("Yardage"),
    marked("Quilt"),
    marked("Binding"),
    marked("Side by side"),
    marked("Staircase"),
    marked("In hand"),
    marked("Edge"),
)
COLUMNS = (320, 546, 414)
OPENING = marked("Opening…")


class Frame:
    """Fills a window until the parts are there."""

    def __init__(self, window: QMainWindow, table: str, ink: str) -> None:
        self._window = window
        for title in MENUS:
            window.menuBar().addMenu(told(title))
        self._bar = _tools()
        window.addToolBar(self._bar)
        columns = QSplitter()
        for column in (QWidget(), _middle(table, ink), QWidget()):
            columns.addWidget(column)
        columns.setSizes(list(COLUMNS))
        window.setCentralWidget(columns)

    def leave(self) -> None:
        """Make room for the menus and tools themselves; the columns go with the next ones."""
        self._window.menuBar().clear()
        self._window.removeToolBar(self._bar)
        self._bar.deleteLater()


def _tools() -> QToolBar:
    bar = QToolBar(told("Tools"))
    bar.setMovable(False)
    for words in TOOLS:
        if words:
            bar.addAction(told(words)).setEnabled(False)
        else:
            bar.addSeparator()
    return bar


def _middle(table: str, ink: str) -> QWidget:
    """The pictures' tabs, and the table with no cloth on it yet."""
    middle, tabs = QWidget(), QTabBar()
    tabs.setDrawBase(False)
    for title in TABS:
        tabs.addTab(told(title))
    column = QVBoxLayout(middle)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(0)
    column.addWidget(tabs)
    column.addWidget(_table(table, ink), 1)
    return middle


def _table(table: str, ink: str) -> QWidget:
    canvas = QWidget()
    canvas.setAutoFillBackground(True)
    colours = canvas.palette()
    colours.setColor(QPalette.ColorRole.Window, QColor(table))
    colours.setColor(QPalette.ColorRole.WindowText, QColor(ink))
    canvas.setPalette(colours)
    row = QHBoxLayout(canvas)
    row.addStretch(1)
    row.addWidget(QLabel(told(OPENING)))
    row.addStretch(1)
    return canvas
