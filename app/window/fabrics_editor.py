"""Several of the project's fabrics, in the order in which they were ticked."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QSize, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QListWidget, QListWidgetItem

from core.lengths import Units

_ROWS_SHOWN = 8
_AIR = 2  # pixels round every row
_LEAST_HIGH = 16  # pixels


class FabricsEditor(QListWidget):
    """A tick for each fabric; the ticked ones bear their place in the order.

    Emits `edited(names, stepped)` with the names in that order: a new tick comes last.
    """

    edited = Signal(object, bool)

    def __init__(self) -> None:
        super().__init__()
        self._offered: list[str] = []
        self._chosen: list[str] = []
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSpacing(_AIR)
        self.setWordWrap(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.itemChanged.connect(self._ticked)

    def offer_fabrics(self, names: Sequence[str]) -> None:
        """Follow the project's fabrics."""
        if list(names) != self._offered:
            self._offered = list(names)
            self._fill()

    def show_value(self, value: Sequence[str] | None, units: Units) -> None:
        """Tick these fabrics."""
        self._chosen = list(value or ())
        self._fill()

    def minimumSizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """As high as its rows; a list is else taken to need room for several."""
        return QSize(super().minimumSizeHint().width(), self.minimumHeight())

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Names that wrap otherwise need another height."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._take_height()

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 - Qt's name
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange and hasattr(self, "_offered"):
            self._take_height()

    def commit(self) -> None:
        """A tick is handed over at once; nothing is left to do."""

    def _fill(self) -> None:
        here = self.currentRow()
        self.blockSignals(True)
        self.clear()
        for name in self._offered:
            item = QListWidgetItem(self._words(name))
            item.setData(Qt.ItemDataRole.UserRole, name)
            item.setFlags(Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsUserCheckable)
            ticked = name in self._chosen
            item.setCheckState(Qt.CheckState.Checked if ticked else Qt.CheckState.Unchecked)
            self.addItem(item)
        self.setCurrentRow(here)
        self.blockSignals(False)
        self._take_height()

    def _take_height(self) -> None:
        """As high as its rows, or as some. Whether it scrolls depends on their number alone.

        Else a bar that comes makes names wrap, and so the list higher, and so the bar go.
        """
        policies = Qt.ScrollBarPolicy
        scrolls = len(self._offered) > _ROWS_SHOWN
        self.setVerticalScrollBarPolicy(
            policies.ScrollBarAlwaysOn if scrolls else policies.ScrollBarAlwaysOff
        )
        self.doItemsLayout()
        last = self.item(min(len(self._offered), _ROWS_SHOWN) - 1)
        reach = self.visualItemRect(last).bottom() + self.verticalOffset() if last else _LEAST_HIGH
        self.setFixedHeight(reach + 1 + _AIR + 2 * self.frameWidth())

    def _words(self, name: str) -> str:
        return f"{self._chosen.index(name) + 1}. {name}" if name in self._chosen else name

    def _ticked(self, item: QListWidgetItem) -> None:
        name = item.data(Qt.ItemDataRole.UserRole)
        rest = [chosen for chosen in self._chosen if chosen != name]
        ticked = item.checkState() is Qt.CheckState.Checked
        self.edited.emit([*rest, name] if ticked else rest, False)
