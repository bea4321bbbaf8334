"""Pictures painted sharply again, in slices, once the zoom rests."""

from __future__ import annotations

from collections.abc import Sequence
from time import perf_counter

from PySide6.QtCore import QObject, QTimer

from app.window.drawing_item import DrawingItem

REST_MS = 80  # without another change of zoom
SLICE_SECONDS = 0.008


class Sharpening(QObject):
    """Of one canvas; `items` is empty while every picture is sharp."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self.items: list[DrawingItem] = []
        self._rest = QTimer(self, singleShot=True, interval=REST_MS)
        self._rest.timeout.connect(self._go_on)
        self._slices = QTimer(self, interval=0)
        self._slices.timeout.connect(self._go_on)

    def put_off(self, items: Sequence[DrawingItem]) -> None:
        """The zoom is being changed: let these be rough until it rests."""
        self.items = list(items)
        for item in items:
            item.pixels.rough = True
        self._slices.stop()
        self._rest.start()

    def drop(self) -> None:
        """These pictures are gone."""
        self.items = []
        self._rest.stop()
        self._slices.stop()

    def _go_on(self) -> None:
        """Paint for a moment; when all is painted, show it."""
        until = perf_counter() + SLICE_SECONDS
        for item in self.items:
            while not (done := item.pixels.sharpen()):
                if perf_counter() > until:
                    self._slices.start()
                    return
            if done and item.pixels.rough:
                item.pixels.rough = False
                item.update()
        self.drop()
