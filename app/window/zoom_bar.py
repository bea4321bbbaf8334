"""Buttons that zoom the picture in front: at the right of the tools, or below them."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QTimer
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QMainWindow, QSizePolicy, QToolBar, QWidget

from app.window.centre import Centre
from app.window.furniture import quiet_button
from core.language import told


class ZoomBar(QToolBar):
    """Goes below `tools` where both have no room: what a bar folds away is seldom found."""

    def __init__(self, centre: Centre, tools: QToolBar, window: QMainWindow) -> None:
        super().__init__(told("Zoom"), window)
        self._tools, self._window = tools, window
        self.setObjectName("zoom")
        self.setMovable(False)
        space = QWidget()
        space.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        self.addWidget(space)
        for text, name, act in (
            ("−", told("Smaller"), centre.zoom_out),
            ("+", told("Larger"), centre.zoom_in),
            (told("Fill width"), told("Fill the width"), centre.fit_width),
            (told("Show all"), told("Show everything"), centre.fit_all),
        ):
            button = quiet_button(text, name)
            button.clicked.connect(act)
            self.addWidget(button)
        self._soon = QTimer(self, singleShot=True, interval=0)
        self._soon.timeout.connect(self._find_room)

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        super().resizeEvent(event)
        self._soon.start()

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 - Qt's name
        super().changeEvent(event)
        if event.type() in (QEvent.Type.FontChange, QEvent.Type.StyleChange):
            self._soon.start()

    def _find_room(self) -> None:
        wanted = self._tools.sizeHint().width() + self.sizeHint().width()
        below = wanted > self._window.width()
        if below and not self._window.toolBarBreak(self):
            self._window.insertToolBarBreak(self)
        elif not below and self._window.toolBarBreak(self):
            self._window.removeToolBarBreak(self)
