"""Carrying a piece: with the mouse, or from mark to mark with the keys."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QKeyEvent

from app.window.by_hand.gesture import DOWN_KEYS, WAYS, Deed, Lane
from app.window.by_hand.overlay import HeldItem
from core.by_hand.edits import put_down, without_taken
from core.by_hand.holding import Holding, held_at, on_next_sheet, stepped, turned, usual_marks
from core.by_hand.verdict import Verdict, verdict
from core.language import marked, told
from core.lengths import typeset
from core.plan import Plan

if TYPE_CHECKING:
    from app.window.by_hand.hand_canvas import HandCanvas

SNAP = 9.0  # pixels within which an edge draws a piece to it
KEYS = marked(
    "Arrows move it, R turns it, S takes it to the next cloth, Enter puts it down, Esc back."
)


class Carry:
    """A piece in the hand; `grab` is where the mouse holds it, in the scene."""

    def __init__(
        self, canvas: HandCanvas, plan: Plan, held: Holding, grab: QPointF | None = None
    ) -> None:
        self.canvas, self.plan, self.held = canvas, plan, held
        self.by_mouse = grab is not None
        self._over: int | None = None
        self._item = HeldItem(canvas.theme, plan.part(held.taken.name).role, held.label)
        canvas.scene().addItem(self._item)
        lane = self._lane()
        across, along = lane.cloth(grab) if grab is not None and lane else (0.0, 0.0)
        self._grab = across - float(held.x), along - float(held.y)
        self.refresh()
        if not self.by_mouse:
            canvas.said.say(f"{canvas.said.text.text()} {told(KEYS)}")

    @property
    def verdict(self) -> Verdict:
        """What is to be said of it where it is held."""
        return verdict(self.plan, self.held, self._over)

    def _lane(self) -> Lane | None:
        here = (self.held.place, self.held.sheet)
        return next((lane for lane in self.canvas.lanes if (lane.place, lane.sheet) == here), None)

    def press(self, scene: QPointF) -> None:
        """A click puts down what the keys carry."""
        self.by_mouse = True
        self._grab = float(self.held.rect.across) / 2, float(self.held.rect.along) / 2
        self.drag(scene)

    def drag(self, scene: QPointF) -> None:
        lanes, home = self.canvas.lanes, self.held.place
        under = next((lane.place for lane in lanes if not lane.away(scene)), home)
        self._over = None if under == home else under
        own = [lane for lane in lanes if lane.place == home]
        lane = min(own, key=lambda lane: lane.away(scene))
        across, along = lane.cloth(scene)
        at = across - self._grab[0], along - self._grab[1]
        reach = SNAP / self.canvas.zoom
        self._hold(held_at(self.plan, self.held, lane.sheet, at, reach))

    def key(self, event: QKeyEvent) -> bool:
        self._over = None
        if (way := WAYS.get(Qt.Key(event.key()))) is not None:
            self._hold(stepped(self.plan, self.held, *way, self._marks(event)))
        elif event.key() == Qt.Key.Key_R:
            self.turn()
        elif event.key() == Qt.Key.Key_S:
            self.next_cloth()
        elif event.key() in DOWN_KEYS:
            self.finish()
        elif event.key() == Qt.Key.Key_P:
            self.finish(pin=True)
        elif event.key() == Qt.Key.Key_Escape:
            self.cancel()
        else:
            return False
        return True

    def _marks(self, event: QKeyEvent) -> int:
        """A step; with Shift one mark; with Ctrl to the next edge."""
        modifiers = event.modifiers()
        if modifiers & Qt.KeyboardModifier.ControlModifier:
            return 0
        fine = modifiers & Qt.KeyboardModifier.ShiftModifier
        return 1 if fine else usual_marks(self.plan.project.units)

    def next_cloth(self) -> None:
        """Take it to the next cloth of its fabric, or say that there is none."""
        held = on_next_sheet(self.plan, self.held)
        if held.sheet != self.held.sheet:
            self._hold(held)
        else:
            fabric = self.plan.fabrics[held.place].fabric
            self.canvas.said.say(told("There is no other cloth of {fabric}.", fabric=fabric.name))

    def turn(self) -> None:
        """Turn it a quarter, or say why it may not turn."""
        if self.held.may_turn:
            self._hold(turned(self.held))
        else:
            self.canvas.said.say(
                told("{piece} may not turn: its grain would run wrong.", piece=self.held.label)
            )

    def _hold(self, held: Holding) -> None:
        self.held = held
        self.refresh()

    def refresh(self) -> None:
        """Show it where it is held, with its verdict."""
        found, lane = self.verdict, self._lane()
        self.canvas.said.say(typeset(found.sentence(self.plan.project.units)))
        self._item.setVisible(lane is not None)
        if lane is not None:
            self.canvas.hold(self._item, lane.scene(self.held.rect), good=found.good)

    def finish(self, *, pin: bool = False) -> None:
        """Pin it where it is held; where it may not lie, the mouse lets it go back.

        What was not moved is let go of, unless it is to be pinned there.
        """
        found, plan, held = self.verdict, self.plan, self.held
        if not found.good and not self.by_mouse:
            self.refresh()
            return
        self._end()
        if not found.good:
            why = told("{piece} was not put down: {why}.", piece=held.label, why=found.words)
            self.canvas.told.emit(typeset(why))
        elif held.moved or pin:
            deed = Deed(
                lambda project: put_down(project, plan, held),
                _phrase(held),
                without_taken(plan, held),
            )
            self.canvas.done.emit(deed)

    def cancel(self) -> None:
        """Leave it where it lay."""
        self._end()

    def _end(self) -> None:
        self.canvas.scene().removeItem(self._item)
        self.canvas.leave_gesture()


def _phrase(held: Holding) -> str:
    """What was done to a piece, as a command."""
    if held.turned != held.taken.turned:
        return told("Turn {piece}", piece=held.label)
    if held.moved:
        return told("Move {piece}", piece=held.label)
    return told("Pin {piece}", piece=held.label)
