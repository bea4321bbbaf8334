"""Every text of a widget and of what is in it, as a person reads or hears it."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator

from PySide6.QtCore import QAbstractItemModel, QAbstractListModel, QObject, Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QComboBox,
    QDialogButtonBox,
    QGraphicsView,
    QGroupBox,
    QLabel,
    QLineEdit,
    QListWidget,
    QMenu,
    QMessageBox,
    QTabWidget,
    QTextEdit,
    QWidget,
)

from app.window.drawing_item import DrawingItem
from core.drawing.marks import Label
from tests.stand_in import untold

# What is the same in every language, or is Qt's to say.
SAME = {"Crossgrain", "crossgrain", "Ctrl", "Shift", "English", "Deutsch"}
BY_QT = ("Scroll Left", "Scroll Right", "All Files (*)")  # said by Qt, in its own translation
ROLES = (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.ToolTipRole)


def texts(root: QObject, without: Collection[QObject] = ()) -> Iterator[str]:
    """What `root` and everything in it says; the words of Qt's own buttons are Qt's."""
    for thing in (root, *root.findChildren(QObject)):
        if not _is_qts(thing) and not _within(thing, without):
            yield from filter(None, _said(thing))


def _is_qts(thing: QObject) -> bool:
    """Whether a thing is Qt's own, with words that Qt translates."""
    box = thing.parent()
    if isinstance(thing, QAbstractButton) and isinstance(box, QDialogButtonBox):
        return box.standardButton(thing) is not QDialogButtonBox.StandardButton.NoButton
    return thing.objectName().startswith("qt_")


def _within(thing: QObject | None, roots: Collection[QObject]) -> bool:
    return thing is not None and (thing in roots or _within(thing.parent(), roots))


def _said(thing: QObject) -> Iterator[str]:
    if isinstance(thing, QAction):
        yield from (thing.text(), thing.iconText(), thing.toolTip(), thing.statusTip())
    if not isinstance(thing, QWidget):
        return
    yield from (thing.windowTitle(), thing.toolTip(), thing.statusTip(), thing.whatsThis())
    yield from (thing.accessibleName(), thing.accessibleDescription())
    match thing:
        case QLabel() | QAbstractButton():
            yield thing.text()
        case QGroupBox() | QMenu():
            yield thing.title()
        case QLineEdit():
            yield from (thing.text(), thing.placeholderText())
        case QComboBox():
            yield from (thing.itemText(place) for place in range(thing.count()))
        case QTabWidget():
            for place in range(thing.count()):
                yield from (thing.tabText(place), thing.tabToolTip(place))
        case QTextEdit():
            yield thing.toPlainText()
        case QMessageBox():
            yield from (thing.text(), thing.informativeText())
        case QGraphicsView():
            yield from _drawn(thing)
        case QListWidget():
            yield from (thing.item(row).text() for row in range(thing.count()))
        case QAbstractItemView():
            yield from _listed(thing.model())


def _drawn(view: QGraphicsView) -> Iterator[str]:
    for item in view.scene().items():
        if isinstance(item, DrawingItem):
            yield item.title
            for mark in item.picture.drawing.marks:
                if isinstance(mark, Label):
                    yield from mark.texts


def _listed(model: QAbstractItemModel | None) -> Iterator[str]:
    if model is None:
        return
    columns = 1 if isinstance(model, QAbstractListModel) else model.columnCount()
    for column in range(columns):
        for role in ROLES:
            yield str(model.headerData(column, Qt.Orientation.Horizontal, role) or "")
            for row in range(model.rowCount()):
                yield str(model.index(row, column).data(role) or "")


def left(said: Iterable[str], *own: object) -> dict[str, list[str]]:
    """The texts that were not told, with the words that show it; `own` words are the person's."""
    found: dict[str, list[str]] = {}
    for text in said:
        rest = text
        for name in map(str, own):
            rest = rest.replace(name, "")
        words = [word for word in untold(rest) if word not in SAME]
        if words and text not in BY_QT:
            found[text] = words
    return found
