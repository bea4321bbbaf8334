"""A gesture: what a hand does on the picture from picking up to putting down."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Protocol

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QKeyEvent

from app.window.drawing_item import DrawingItem
from core.drawing.frame import Frame
from core.lay.lay import Rect, Sheet
from core.plan import Plan
from core.quilt import Project

# How the picture's directions lie on the cloth, across and along: it runs to the right.
WAYS = {
    Qt.Key.Key_Right: (0, 1),
    Qt.Key.Key_Left: (0, -1),
    Qt.Key.Key_Up: (1, 0),
    Qt.Key.Key_Down: (-1, 0),
}
DOWN_KEYS = (Qt.Key.Key_Return, Qt.Key.Key_Enter)


@dataclass(frozen=True, slots=True)
class Deed:
    """What was done: a change of the project, the person's phrase for it, and what to say.

    The next plan is made as like the plan `like` as costs nothing.
    """

    change: Callable[[Project], Project]
    phrase: str
    like: Plan


@dataclass(frozen=True, slots=True)
class Lane:
    """One cloth of the picture: the sheet of the fabric at `place`, and where it is drawn."""

    item: DrawingItem
    place: int
    sheet: Sheet
    frame: Frame

    def cloth(self, scene: QPointF) -> tuple[float, float]:
        """The place across and along the cloth at a point of the scene."""
        local = self.item.mapFromScene(scene)
        return self.frame.place((local.x(), local.y()))

    def scene(self, rect: Rect) -> QRectF:
        """Where a rectangle of the cloth lies in the scene."""
        points = [QPointF(x, y) for x, y in self.frame.corners(rect)]
        box = QRectF(points[0], points[2]).normalized()
        return self.item.mapRectToScene(box)

    def away(self, scene: QPointF) -> float:
        """How far a point of the scene is from the picture, either way."""
        box = self.item.mapRectToScene(self.item.boundingRect())
        beside = max(box.left() - scene.x(), scene.x() - box.right(), 0.0)
        above = max(box.top() - scene.y(), scene.y() - box.bottom(), 0.0)
        return beside + above


class Gesture(Protocol):
    """One gesture under way; `by_mouse` while the mouse button is held.

    `drag` and `key` change what is previewed; `key` says whether it knew the key.
    `finish` commits and `cancel` restores; both end it.
    """

    by_mouse: bool

    def press(self, scene: QPointF) -> None: ...
    def drag(self, scene: QPointF) -> None: ...
    def key(self, event: QKeyEvent) -> bool: ...
    def finish(self) -> None: ...
    def cancel(self) -> None: ...
