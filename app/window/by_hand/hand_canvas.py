"""The picture of the cloths as something to lay hands on: events go to the gesture under way."""

from __future__ import annotations

from PySide6.QtCore import QPoint, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QContextMenuEvent, QKeyEvent, QMouseEvent, QResizeEvent
from PySide6.QtWidgets import QApplication

from app.window.by_hand.carry import Carry
from app.window.by_hand.gesture import Gesture, Lane
from app.window.by_hand.mark import Mark, Marking
from app.window.by_hand.overlay import HeldItem, SaidLine
from app.window.canvas import Canvas, Fit
from app.wording import upper_first
from core.by_hand.edits import said_at, said_words
from core.by_hand.holding import pick_up
from core.by_hand.spot import first_spot
from core.language import marked, told
from core.plan import Plan

# One letter each, since the canvas has the focus: what it asks its window to do.
LETTERS = {
    Qt.Key.Key_M: "pick up",
    Qt.Key.Key_R: "turn",
    Qt.Key.Key_P: "pin",
    Qt.Key.Key_S: "next cloth",
    Qt.Key.Key_X: "flaw",
    Qt.Key.Key_G: "motif",
}


HOW = marked("Drag it, or press M, to lay it elsewhere; R turns it, P pins it.")
HOW_MARKED = marked("Click it with the right button to change it or to take it away.")


class HandCanvas(Canvas):
    """Emits `done(Deed)` for an edit, `told(sentence)`, and `asked(verb)` for a letter key.

    `menu_asked(key, path, place)`: the context menu, for a piece, or for the flaw or
    motif at a path of the file. A plan that comes while something is in the hand waits.
    """

    done = Signal(object)
    told = Signal(str)
    asked = Signal(str)
    menu_asked = Signal(str, str, QPoint)

    def __init__(self, name: str, fit: Fit, empty_words: str = "") -> None:
        super().__init__(name, fit, empty_words)
        self.lanes: list[Lane] = []
        self.plan: Plan | None = None
        self.gesture: Gesture | None = None
        self.said = SaidLine(self)
        self._pressed: tuple[QPointF, str] | None = None
        self._waiting: Plan | None = None
        self.setMouseTracking(True)

    @property
    def here(self) -> str:
        """The piece that is chosen, by its label; "" for none."""
        return self._here

    def draw(self, plan: Plan) -> None:
        """Draw a plan; for the view that knows how."""
        raise NotImplementedError

    def show_plan(self, plan: Plan) -> None:
        """Draw the plan's cloths, once nothing is in the hand."""
        if self.gesture is not None:
            self._waiting = plan
            return
        self.plan = plan
        self.draw(plan)

    def carry(self, key: str, grab: QPointF | None = None) -> None:
        """Pick up the piece of that label."""
        held = pick_up(self.plan, key) if self.plan is not None else None
        if self.gesture is None and self.plan is not None and held is not None:
            self.gesture = Carry(self, self.plan, held, grab)

    def turn(self, key: str) -> None:
        """Turn the piece of that label where it lies; it is then in the hand."""
        self.carry(key)
        if isinstance(self.gesture, Carry):
            self.gesture.turn()

    def carry_on(self, key: str) -> None:
        """Pick up the piece of that label, and take it to the next cloth of its fabric."""
        self.carry(key)
        if isinstance(self.gesture, Carry):
            self.gesture.next_cloth()

    def mark(self, marking: Marking) -> None:
        """Begin to mark a rectangle, on the cloth of the chosen piece or on the first."""
        if self.gesture is None and self.plan is not None and self.lanes:
            held = pick_up(self.plan, self.here)
            first = self.lanes[0]
            place, sheet = (held.place, held.sheet) if held else (first.place, first.sheet)
            self.gesture = Mark(self, self.plan, marking, first_spot(self.plan, place, sheet))

    def hold(self, item: HeldItem, at: QRectF, *, good: bool) -> None:
        """Show what is in the hand at a place of the scene, and scroll there."""
        item.show_at(at, good=good)
        self.ensureVisible(at, 20, 20)
        item.write_within(self.mapToScene(self.viewport().rect()).boundingRect(), self.zoom)

    def cancel(self) -> None:
        """Give up what is under way."""
        if self.gesture is not None:
            self.gesture.cancel()

    def leave_gesture(self) -> None:
        """The gesture is over; a plan that waited for it is shown."""
        self.gesture, self._pressed = None, None
        self.said.say("")
        waiting, self._waiting = self._waiting, None
        if waiting is not None:
            self.show_plan(waiting)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        if self.gesture is not None:
            if not self.gesture.key(event):
                super().keyPressEvent(event)
        elif (verb := self._verb(event)) is not None:
            self.asked.emit(verb)
        else:
            super().keyPressEvent(event)

    def _verb(self, event: QKeyEvent) -> str | None:
        if event.modifiers() & ~Qt.KeyboardModifier.ShiftModifier:
            return None
        return next((verb for key, verb in LETTERS.items() if key == event.key()), None)

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802 - Qt's name
        left = event.button() == Qt.MouseButton.LeftButton and not self._space
        if self.gesture is not None and left:
            self.gesture.press(self._scene_at(event))
            return
        super().mousePressEvent(event)
        if left and self._here:
            self._pressed = event.position(), self._here

    def mouseMoveEvent(self, event: QMouseEvent) -> None:  # noqa: N802 - Qt's name
        if self.gesture is not None and self.gesture.by_mouse:
            self.gesture.drag(self._scene_at(event))
        elif self._pressed is not None and self._far(event):
            start, key = self._pressed
            self._pressed = None
            self.carry(key, self.mapToScene(start.toPoint()))
        else:
            super().mouseMoveEvent(event)
            self._show_hand(event)

    def _show_hand(self, event: QMouseEvent) -> None:
        """An open hand over what can be taken hold of."""
        if self.gesture is None and not event.buttons() and not self._space:
            over = bool(self._key_at(event.position()))
            shape = Qt.CursorShape.OpenHandCursor if over else Qt.CursorShape.ArrowCursor
            self.viewport().setCursor(shape)

    def tip_at(self, at: QPoint) -> str:
        if self.gesture is not None or self.plan is None:
            return ""
        tips = [f"{piece}. {told(HOW)}"] if (piece := super().tip_at(at)) else []
        if path := self._said_at(self.mapToScene(at)):
            tips.append(f"{upper_first(said_words(self.plan, path))}. {told(HOW_MARKED)}")
        return "\n".join(tips)

    def _far(self, event: QMouseEvent) -> bool:
        if self._pressed is None or not event.buttons() & Qt.MouseButton.LeftButton:
            return False
        moved = event.position() - self._pressed[0]
        return moved.manhattanLength() >= QApplication.startDragDistance()

    def _scene_at(self, event: QMouseEvent) -> QPointF:
        return self.mapToScene(event.position().toPoint())

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:  # noqa: N802 - Qt's name
        self._pressed = None
        if self.gesture is not None and self.gesture.by_mouse:
            self.gesture.drag(self._scene_at(event))
            self.gesture.finish()
        else:
            super().mouseReleaseEvent(event)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:  # noqa: N802 - Qt's name
        if self.gesture is not None or self.plan is None:
            return
        by_keys = event.reason() == QContextMenuEvent.Reason.Keyboard
        at = self._menu_place() if by_keys else event.pos()
        key = self._here if by_keys else self._key_at(QPointF(at))
        path = "" if by_keys else self._said_at(self.mapToScene(at))
        if key and not by_keys:
            self._here = key
            self.picked.emit(key)
        self.menu_asked.emit(key, path, self.viewport().mapToGlobal(at))

    def _menu_place(self) -> QPoint:
        """The middle of the chosen piece, else of the picture."""
        place = self._places().get(self._here)
        middle = self.viewport().rect().center()
        return self.mapFromScene(place.center()) if place is not None else middle

    def _said_at(self, scene: QPointF) -> str:
        lane = next((lane for lane in self.lanes if not lane.away(scene)), None)
        if self.plan is None or lane is None:
            return ""
        return said_at(self.plan, lane.place, lane.sheet, lane.cloth(scene))

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        super().resizeEvent(event)
        self.said.place()
