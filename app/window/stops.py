"""From column to column of the window by one key; each is entered where it was left."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget


def enter(area: QWidget) -> None:
    """Put the focus where it last was in an area, else at its first stop, if it has one."""
    last = area.focusWidget()
    stop = last if last is not None and _stops(last) else next(_stops_in(area), None)
    if stop is not None:
        stop.setFocus(Qt.FocusReason.ShortcutFocusReason)


def next_of(areas: Sequence[QWidget], step: int) -> QWidget:
    """The area so many steps on from the one that has the focus; from none, the first."""
    focus = areas[0].window().focusWidget()
    within = (at for at, area in enumerate(areas) if focus is not None and area.isAncestorOf(focus))
    here = next(within, None)
    return areas[0 if here is None else (here + step) % len(areas)]


def _stops_in(area: QWidget) -> Iterator[QWidget]:
    """What the Tab key stops at in an area, in its order; the area itself may be one."""
    widget: QWidget | None = area
    while widget is not None:
        if (widget is area or area.isAncestorOf(widget)) and _stops(widget):
            yield widget
        widget = widget.nextInFocusChain()
        if widget is area:
            return


def _stops(widget: QWidget) -> bool:
    tabs = bool(widget.focusPolicy() & Qt.FocusPolicy.TabFocus)
    return tabs and widget.isVisible() and widget.isEnabled()
