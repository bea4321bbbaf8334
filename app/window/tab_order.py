"""The Tab key's way through widgets that come and go: the order they are read in.

Qt's own order is the order of making, which for parts made when first unfolded
has nothing to do with where they are.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtWidgets import QLayout, QWidget


def reading_order(layout: QLayout) -> Iterator[QWidget]:
    """The widgets in a layout, and in those inside it, that Tab can stop at.

    One that hands its focus to a widget inside it comes as a whole: Qt stops at its own
    place in the chain too, and Tab would go back there for ever.
    """
    for place in range(layout.count()):
        item = layout.itemAt(place)
        if item is None:
            continue
        widget, inner = item.widget(), item.layout()
        if widget is not None:
            proxy = widget.focusProxy()
            if proxy is not None and widget.isAncestorOf(proxy):
                yield widget
                continue
            if widget.focusPolicy() & Qt.FocusPolicy.TabFocus and widget.focusProxy() is None:
                yield widget
            inner = widget.layout()
        if inner is not None:
            yield from reading_order(inner)


class TabOrder(QObject):
    """Keeps the Tab order within `root` as it is read, whenever its layout changes."""

    def __init__(self, root: QWidget) -> None:
        super().__init__(root)
        self._root = root
        root.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 - Qt's name
        if event.type() == QEvent.Type.LayoutRequest and watched is self._root:
            self.settle()
        return super().eventFilter(watched, event)

    def settle(self) -> None:
        """Put the widgets in order now."""
        layout = self._root.layout()
        if layout is not None:
            for first, then in pairwise(reading_order(layout)):
                QWidget.setTabOrder(first, then)
