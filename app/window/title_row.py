"""The title of a group, and the button that adds to the group."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QSize
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QToolButton, QWidget

from app.window.furniture import group_title

SPACE = 6  # pixels


class TitleRow(QWidget):
    """The button stands beside the title, or below it where both have no room."""

    def __init__(self, title: str, button: QToolButton) -> None:
        super().__init__()
        self.title, self.button = group_title(title), button
        self._box = QBoxLayout(QBoxLayout.Direction.LeftToRight, self)
        self._box.setContentsMargins(0, 0, 0, 0)
        self._box.setSpacing(SPACE)
        self._box.addWidget(self.title, 1)
        self._box.addWidget(button)

    def minimumSizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        widths = (part.minimumSizeHint().width() for part in (self.title, self.button))
        return QSize(max(widths), super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        super().resizeEvent(event)
        self._arrange()

    def event(self, event: QEvent) -> bool:
        if event.type() == QEvent.Type.LayoutRequest and hasattr(self, "_box"):
            self._arrange()
        return super().event(event)

    def _arrange(self) -> None:
        wanted = self.title.minimumSizeHint().width() + SPACE + self.button.sizeHint().width()
        directions = QBoxLayout.Direction
        beside = self.button.isHidden() or wanted <= self.width()
        self._box.setDirection(directions.LeftToRight if beside else directions.TopToBottom)
