"""Marking a rectangle of a cloth: a flaw, or a motif for the chosen piece."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QKeyEvent

from app.window.by_hand.gesture import DOWN_KEYS, WAYS, Deed, Lane
from app.window.by_hand.overlay import HeldItem
from app.wording import upper_first
from core.by_hand.holding import usual_marks
from core.by_hand.spot import (
    Spot,
    drawn,
    next_cloth,
    pinned_under,
    said_of_spot,
    spot_moved,
    spot_sized,
)
from core.language import marked, told
from core.lengths import typeset
from core.plan import Plan
from core.quilt import Project

if TYPE_CHECKING:
    from app.window.by_hand.hand_canvas import HandCanvas

KEYS = marked(
    "Drag a rectangle; or arrows move it, Shift with them sizes it, S takes it to the next "
    "cloth. Enter marks it, Esc leaves it."
)


@dataclass(frozen=True, slots=True)
class Marking:
    """What is marked: its role, its word, the edit, and the person's phrase for it.

    The phrase is told with the fabric, and with what else it names.
    """

    role: str
    word: str
    change: Callable[[Project, Plan, Spot], Project]
    phrase: str
    names: Mapping[str, str] = field(default_factory=dict)


class Mark:
    """A rectangle that is being drawn, at first the small one `spot`."""

    def __init__(self, canvas: HandCanvas, plan: Plan, marking: Marking, spot: Spot) -> None:
        self.canvas, self.plan, self.marking, self.spot = canvas, plan, marking, spot
        self.by_mouse, self._drawn = False, False
        self._start: tuple[Lane, tuple[float, float]] | None = None
        self._item = HeldItem(canvas.theme, marking.role, marking.word)
        canvas.scene().addItem(self._item)
        canvas.viewport().setCursor(Qt.CursorShape.CrossCursor)
        self._show()
        canvas.said.say(f"{canvas.said.text.text()} {told(KEYS)}")

    def press(self, scene: QPointF) -> None:
        """Begin a rectangle on the cloth there."""
        lane = min(self.canvas.lanes, key=lambda lane: lane.away(scene))
        self._start = lane, lane.cloth(scene)
        self.by_mouse, self._drawn = True, False

    def drag(self, scene: QPointF) -> None:
        if self._start is None:
            return
        lane, start = self._start
        spot = drawn(self.plan, lane.place, lane.sheet, start, lane.cloth(scene))
        if spot is not None:
            self._drawn = True
            self._put(spot)

    def key(self, event: QKeyEvent) -> bool:
        shift = event.modifiers() & Qt.KeyboardModifier.ShiftModifier
        if (way := WAYS.get(Qt.Key(event.key()))) is not None:
            marks = usual_marks(self.plan.project.units)
            if shift:
                self._put(spot_sized(self.plan, self.spot, *way))
            else:
                self._put(spot_moved(self.plan, self.spot, *way, marks))
        elif event.key() == Qt.Key.Key_S:
            self._put(next_cloth(self.plan, self.spot))
        elif event.key() in DOWN_KEYS:
            self.finish()
        elif event.key() == Qt.Key.Key_Escape:
            self.cancel()
        else:
            return False
        return True

    def _put(self, spot: Spot) -> None:
        self.spot = spot
        self._show()

    def _show(self) -> None:
        here = (self.spot.place, self.spot.sheet)
        lane = next((one for one in self.canvas.lanes if (one.place, one.sheet) == here), None)
        word, trouble = self.marking.word, self._trouble
        said = f"{upper_first(word)}, {said_of_spot(self.plan, self.spot)}{trouble}."
        self.canvas.said.say(typeset(said))
        self._item.setVisible(lane is not None)
        if lane is not None:
            self.canvas.hold(self._item, lane.scene(self.spot.rect), good=not trouble)

    @property
    def _trouble(self) -> str:
        """Why nothing can be marked there; "" if it can."""
        under = pinned_under(self.plan, self.spot) if self.marking.role == "flaw" else []
        return told(": {piece} is pinned there", piece=under[0]) if under else ""

    def finish(self) -> None:
        """Mark the rectangle; a click alone marks nothing."""
        if self._trouble or (self.by_mouse and not self._drawn):
            self.by_mouse, self._start = False, None
            return
        spot, marking = self.spot, self.marking
        fabric = self.plan.fabrics[spot.place].fabric.name
        self._end()
        change, plan = marking.change, self.plan
        phrase = told(marking.phrase, fabric=fabric, **marking.names)
        deed = Deed(lambda project: change(project, plan, spot), phrase, plan)
        self.canvas.done.emit(deed)

    def cancel(self) -> None:
        """Mark nothing."""
        self._end()

    def _end(self) -> None:
        self.canvas.scene().removeItem(self._item)
        self.canvas.viewport().unsetCursor()
        self.canvas.leave_gesture()
