"""When a widget has been painted."""

from __future__ import annotations

from collections.abc import Callable
from time import perf_counter

from PySide6.QtCore import QCoreApplication, QEvent, QObject
from PySide6.QtWidgets import QWidget


class Painted(QObject):
    """When `widget` was first painted while `wanted` held: `at`, on `perf_counter`; else None."""

    def __init__(self, widget: QWidget, wanted: Callable[[], bool]) -> None:
        super().__init__(widget)
        self.at: float | None = None
        self._wanted = wanted
        widget.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 - Qt's name
        if event.type() != QEvent.Type.Paint or self.at is not None or not self._wanted():
            return False
        watched.removeEventFilter(self)
        QCoreApplication.sendEvent(watched, event)  # the filter comes before the painting
        self.at = perf_counter()
        return True
