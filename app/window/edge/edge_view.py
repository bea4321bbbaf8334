"""The binding as it is sewn on, its start to be drawn along the edge."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QPointF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent

from app.window.canvas import Canvas, Fit
from app.window.drawing_item import DrawingItem
from app.window.edge.start_drag import StartDrag
from app.window.furniture import announce
from app.window.yardage import NO_BINDING
from core.drawing.edge_map import draw_edge_map
from core.drawing.marks import Point
from core.edge_start import start_steps, start_words
from core.finish.sewn import Sewn, dragged_to
from core.language import told
from core.lengths import Inches
from core.plan import Plan

# Which way round, and whether by the small step or the large.
_KEYS = {
    Qt.Key.Key_Right: (1, 1),
    Qt.Key.Key_Left: (-1, 1),
    Qt.Key.Key_Up: (1, 0),
    Qt.Key.Key_Down: (-1, 0),
}


class EdgeView(Canvas):
    """Start, joins and corners; while the start is moved, the distances follow.

    Emits `started(place)` when it is let go, None for the best place, and `said(words)`
    for what the picture shows. Shift with the arrow keys moves the start, B puts it best.
    """

    started = Signal(object)
    said = Signal(str)

    def __init__(self) -> None:
        super().__init__(told("Edge"), Fit.ALL, told(NO_BINDING))
        self._plan: Plan | None = None
        self._newer: Plan | None = None  # came while the start was held
        self._drag: StartDrag | None = None
        self.setMouseTracking(True)

    def show_plan(self, plan: Plan) -> None:
        """Draw the plan's edge map, if it has a binding."""
        if self._drag is None:
            self._show(plan)
        else:
            self._newer = plan

    def _show(self, plan: Plan) -> None:
        self._plan = plan
        drawing = draw_edge_map(plan)
        self.show_items([] if drawing is None else [DrawingItem(drawing, "", self.theme)])
        self.said.emit(self.words())

    def words(self) -> str:
        """Where the ends meet and what comes nearest to a corner; nothing without a binding."""
        if self._plan is None or self._plan.sewn is None:
            return ""
        plan = self._plan
        return start_words(self._plan.sewn, plan.sizes.outline, plan.project.units)

    def _try(self, place: Inches) -> None:
        """Show the start there, before it is put there."""
        if self._plan is not None and self._plan.sewn is not None:
            tried: Sewn = dragged_to(self._plan.sewn, self._plan.sizes.outline, place)
            self._show(replace(self._plan, sewn=tried))

    def _step(self, way: int, large: int) -> None:
        """Move the start along the edge, to the next multiple of a step."""
        if self._plan is None or self._plan.sewn is None:
            return
        step = start_steps(self._plan.project.units)[large]
        at = self._plan.sewn.edge_map.closing.place
        count = at // step + 1 if way > 0 else -(-at // step) - 1
        place = count * step % self._plan.sizes.outline.ring
        self._try(place)
        announce(self, self.words())
        self.started.emit(place)

    def put_best(self) -> None:
        """Put the start where the joins land best."""
        if self._plan is not None and self._plan.sewn is not None:
            self.started.emit(None)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        shift = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
        move = _KEYS.get(Qt.Key(event.key())) if shift else None
        if move is not None:
            self._step(*move)
        elif event.text().lower() == "b":
            self.put_best()
        elif event.key() == Qt.Key.Key_Escape and self._drag is not None:
            self._give_up()
        else:
            super().keyPressEvent(event)

    def _give_up(self) -> None:
        """Let go of the start, and leave it where it was."""
        drag, self._drag = self._drag, None
        if drag is not None:
            self._show(self._newer or drag.plan)
        self._newer = None

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802 - Qt's name
        if event.button() == Qt.MouseButton.LeftButton and not self._space:
            self._drag = StartDrag.begun(self._plan, self._point(event.position()), self.zoom)
        if self._drag is None:
            super().mousePressEvent(event)
        else:
            self.viewport().setCursor(Qt.CursorShape.ClosedHandCursor)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:  # noqa: N802 - Qt's name
        at = self._point(event.position())
        if self._drag is not None:
            self._try(self._drag.place(at))
            return
        super().mouseMoveEvent(event)
        if not event.buttons() and not self._space:
            over = StartDrag.begun(self._plan, at, self.zoom) is not None
            shape = Qt.CursorShape.OpenHandCursor if over else Qt.CursorShape.ArrowCursor
            self.viewport().setCursor(shape)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:  # noqa: N802 - Qt's name
        super().mouseReleaseEvent(event)
        drag, tried = self._drag, self._plan
        if drag is None or tried is None or tried.sewn is None:
            return
        before, place = drag.plan.sewn, tried.sewn.edge_map.closing.place
        if before is None or place == before.edge_map.closing.place:
            self._give_up()
            return
        self._drag = self._newer = None
        self.started.emit(place)

    def _point(self, position: QPointF) -> Point:
        """A place on the view as a point of the picture, which lies at the scene's origin."""
        point = self.mapToScene(position.toPoint())
        return point.x(), point.y()
