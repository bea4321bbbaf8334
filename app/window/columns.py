"""The window's three columns: parts, pictures, answer."""

from __future__ import annotations

from PySide6.QtCore import QByteArray, Qt
from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import QSplitter, QWidget

PARTS, PICTURES, ANSWER = 320, 546, 414  # pixels, in letters of the usual size
MOST_PARTS, MOST_ANSWER = 0.28, 0.34  # shares of the window, in letters of any size


class Columns(QSplitter):
    """The person moves what parts them; until then, larger letters and the window do."""

    def __init__(self, parts: QWidget, pictures: QWidget, answer: QWidget) -> None:
        super().__init__(Qt.Orientation.Horizontal)
        self._larger = 1.0
        self._by_hand = False
        for widget, stretch in ((parts, 0), (pictures, 1), (answer, 0)):
            self.addWidget(widget)
            self.setStretchFactor(self.count() - 1, stretch)
        self.setChildrenCollapsible(False)
        self.setSizes([PARTS, PICTURES, ANSWER])
        self.splitterMoved.connect(self._moved)

    def make_room(self, larger: float) -> None:
        """Give the columns at the sides room for letters so many times the usual."""
        if larger == self._larger:
            return
        self._larger = larger
        if self.isVisible():
            self._share_out()

    def restoreState(  # noqa: N802 - Qt's name
        self, state: QByteArray | bytes | bytearray | memoryview
    ) -> bool:
        self._by_hand = super().restoreState(state)
        return self._by_hand

    def _moved(self) -> None:
        self._by_hand = True

    def showEvent(self, event: QShowEvent) -> None:  # noqa: N802 - Qt's name
        """Only now it is known how wide the window is."""
        super().showEvent(event)
        if self._larger != 1.0 and not self._by_hand:
            self._share_out()

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        super().resizeEvent(event)
        if self.isVisible() and not self._by_hand:
            self._share_out()

    def _share_out(self) -> None:
        larger, width = self._larger, self.width()
        left = round(min(PARTS * larger, MOST_PARTS * width))
        right = round(min(ANSWER * larger, MOST_ANSWER * width))
        self.setSizes([left, width - left - right, right])
