"""A column of widgets that scrolls up and down, and sideways only for very large letters."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, QEvent, QObject, Qt, QTimer
from PySide6.QtWidgets import QFrame, QScrollArea, QWidget

MOST_WIDTH = 420  # pixels: two such columns leave a small laptop's screen room for a picture


class ColumnScroll(QScrollArea):
    """Follows the width that its column needs up to `MOST_WIDTH`; what is wider is scrolled to."""

    def __init__(self, column: QWidget, least_width: int = 0) -> None:
        super().__init__()
        self.column = column
        self._least_width = least_width
        self.setWidget(column)
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._widen()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 - Qt's name
        """The scroll area watches its column already; this sees what it sees."""
        if watched is self.column and event.type() == QEvent.Type.LayoutRequest:
            self._widen()
        return super().eventFilter(watched, event)

    def _widen(self) -> None:
        needed = max(self.column.minimumSizeHint().width(), self.column.minimumWidth())
        bar = self.verticalScrollBar().sizeHint().width()
        self.setMinimumWidth(min(max(self._least_width, needed + bar), MOST_WIDTH))

    def bring_into_view(self, place: QWidget) -> None:
        """Scroll to `place`, above all to its cursor, once what was unfolded has its size."""

        def scroll() -> None:
            # Each layout asks the next one out: the requests are passed on until none is left.
            QCoreApplication.sendPostedEvents(None, QEvent.Type.LayoutRequest.value)
            self.ensureWidgetVisible(place)
            focused = self.window().focusWidget()
            if focused is not None and place.isAncestorOf(focused):
                self.ensureWidgetVisible(focused)

        QTimer.singleShot(0, place, scroll)
