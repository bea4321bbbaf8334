"""A view of drawings to scale that can be zoomed and moved about.

One tab stop. The arrow keys go to the nearest piece, Home and End to the first and
the last, Esc to none. Wheel with Ctrl zooms, plain wheel and the page keys scroll,
the middle button or Space with the left button drags; + and − zoom, F fits the
width, 0 shows everything. Until the person zooms, a resized view fits itself.
"""

from __future__ import annotations

from collections.abc import Sequence
from enum import Enum, auto
from html import escape

from PySide6.QtCore import QEvent, QPoint, QPointF, QRect, QRectF, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFont,
    QFontInfo,
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QGraphicsScene, QGraphicsView, QToolTip

from app.photos_qt import NO_PHOTOS, Photos
from app.style import SCREEN_LIGHT, Theme
from app.window.drawing_item import DrawingItem
from app.window.furniture import announce
from app.window.piece_walk import places, walked, words
from app.window.sharpening import Sharpening
from app.words_qt import canvas_font
from core.language import told
from core.lengths import typeset

STEP = 1.25
LEAST_SCALE, MOST_SCALE = 0.5, 96.0  # pixels to an inch
MOST_FITTED = 12.0  # pixels to an inch; a small cloth need not fill a large screen
MARGIN = 3.0  # inches of table kept round the drawings
CENTRED = Qt.AlignmentFlag.AlignCenter


class Fit(Enum):
    """What the view keeps in sight while it is resized."""

    WIDTH = auto()
    ALL = auto()
    FREE = auto()


class Canvas(QGraphicsView):
    """Shows `DrawingItem`s, or `empty_words` where there are none.

    Emits `picked(key)` for a click or a key that leads to a piece; "" for none.
    """

    picked = Signal(str)

    def __init__(self, name: str, fit: Fit, empty_words: str = "") -> None:
        super().__init__()
        self._empty_words = empty_words
        self.theme: Theme = SCREEN_LIGHT
        self.photos = NO_PHOTOS
        self._items: list[DrawingItem] = []
        self._fit = fit
        self._here = ""  # the piece that the arrow keys go on from
        self._drag_from: QPointF | None = None
        self._space = False
        self._sharpening = Sharpening(self)
        self.setScene(QGraphicsScene(self))
        for part in (self, self.viewport()):
            part.setAccessibleName(name)
            part.setAcceptDrops(False)  # a file dropped on a picture is dropped on the window
        self.setAccessibleDescription(told("A picture; the lists beside it say the same in words."))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
        self.setResizeAnchor(QGraphicsView.ViewportAnchor.NoAnchor)
        self.set_theme(self.theme)

    def show_items(self, items: Sequence[DrawingItem]) -> None:
        """Show these drawings in place of the last ones, at the same zoom; some may stay."""
        scene = self.scene()
        chosen = self._items[0].chosen if self._items else frozenset()
        self._sharpening.drop()
        for gone in set(scene.items()) - set(items):
            scene.removeItem(gone)
        self._items = list(items)
        for item in items:
            item.photos = self.photos
            if item.scene() is None:
                scene.addItem(item)
            item.choose(chosen)
        self._place()
        self._refit()

    def arrange(self) -> None:
        """Put the drawings in places for a view of this size; here they stay where they are."""

    def _place(self) -> None:
        self.arrange()
        bounds = QRectF()
        for item in self._items:
            bounds |= item.mapRectToScene(item.boundingRect())
        self.scene().setSceneRect(bounds.adjusted(-MARGIN, -MARGIN / 2, MARGIN, MARGIN))

    def drawForeground(  # noqa: N802 - Qt's name
        self, painter: QPainter, rect: QRectF | QRect
    ) -> None:
        """Where there is nothing to draw, say what to do."""
        if self._items:
            return
        painter.resetTransform()
        font = QFont(canvas_font())
        font.setPixelSize(QFontInfo(self.font()).pixelSize())
        painter.setFont(font)
        painter.setPen(QColor(self.theme.ink))
        painter.drawText(self.viewport().rect(), CENTRED, self._empty_words)

    def show_photos(self, photos: Photos) -> None:
        """Find the photos of cloth there."""
        self.photos = photos
        for item in self._items:
            item.photos = photos
        self.viewport().update()

    def set_theme(self, theme: Theme) -> None:
        """Repaint in another theme."""
        self.theme = theme
        self.setBackgroundBrush(QColor(theme.table))
        for item in self._items:
            item.wear(theme)
        self.viewport().update()

    def choose(self, keys: frozenset[str]) -> None:
        """Ring these pieces, and bring one into sight if none is."""
        news = bool(self._items) and keys != self._items[0].chosen
        for item in self._items:
            item.choose(keys)
        if news and self.isVisible():
            chosen = {key: place for key, place in self._places().items() if key in keys}
            self._here = self._here if self._here in chosen else next(iter(chosen), "")
            seen = self.mapToScene(self.viewport().rect()).boundingRect()
            if chosen and not any(seen.contains(place) for place in chosen.values()):
                self.ensureVisible(chosen[self._here])

    def _places(self) -> dict[str, QRectF]:
        """Where each piece lies in the scene."""
        return {
            key: item.mapRectToScene(place)
            for item in self._items
            for key, place in places(item.picture.drawing).items()
        }

    def _go_to(self, key: str) -> None:
        """Choose a piece, and say it to a screen reader."""
        self._here = key
        self.picked.emit(key)
        announce(self, self._words_of(key) or told("no piece"))

    def _words_of(self, key: str) -> str:
        """What is written on a piece, else its key."""
        said = (words(item.picture.drawing, key) for item in self._items)
        return next(filter(None, said), key)

    def tip_at(self, at: QPoint) -> str:
        """What is said of what the mouse rests on, many of which are too small to be written on."""
        return self._words_of(self._key_at(QPointF(at)))

    def viewportEvent(self, event: QEvent) -> bool:  # noqa: N802 - Qt's name
        if isinstance(event, QHelpEvent) and (tip := self.tip_at(event.pos())):
            lines = (f"<p>{escape(line)}</p>" for line in typeset(tip).splitlines())
            QToolTip.showText(event.globalPos(), "".join(lines), self)
            return True
        return super().viewportEvent(event)

    @property
    def busy(self) -> bool:
        """Whether something is still shown roughly, since the zoom was just changed."""
        return bool(self._sharpening.items)

    @property
    def zoom(self) -> float:
        """Pixels to an inch."""
        return self.transform().m11()

    def zoom_by(self, factor: float) -> None:
        """Zoom about the place that the transformation anchor says."""
        reached = min(max(self.zoom * factor, LEAST_SCALE), MOST_SCALE)
        self._fit = Fit.FREE
        self._sharpening.put_off(self._items)
        middle = self.mapToScene(self.viewport().rect().center())
        self.scale(reached / self.zoom, reached / self.zoom)
        if self.transformationAnchor() is QGraphicsView.ViewportAnchor.AnchorViewCenter:
            # Qt goes by the middle it last scrolled to, which fitting leaves behind.
            self.centerOn(middle)

    def zoom_in(self) -> None:
        self.zoom_by(STEP)

    def zoom_out(self) -> None:
        self.zoom_by(1 / STEP)

    def fit_width(self) -> None:
        """Fill the width of the view; what is below can be scrolled to."""
        self._fit = Fit.WIDTH
        self._refit()

    def fit_all(self) -> None:
        """Show everything."""
        self._fit = Fit.ALL
        self._refit()

    def _refit(self) -> None:
        room, shown = self.viewport().rect(), self.sceneRect()
        if self._fit is Fit.FREE or shown.isEmpty() or room.isEmpty():
            return
        if self._fit is Fit.ALL:
            self.fitInView(shown, Qt.AspectRatioMode.KeepAspectRatio)
            return
        bar = self.verticalScrollBar().sizeHint().width()
        scale = min((self.maximumViewportSize().width() - bar) / shown.width(), MOST_FITTED)
        top = self.verticalScrollBar().value() / self.zoom
        self.setTransform(self.transform().fromScale(scale, scale))
        self.horizontalScrollBar().setValue(self.horizontalScrollBar().minimum())
        self.verticalScrollBar().setValue(round(top * scale))

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        super().resizeEvent(event)
        if self._items and self._fit is not Fit.FREE:
            self._place()
        self._refit()

    def wheelEvent(self, event: QWheelEvent) -> None:  # noqa: N802 - Qt's name
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.setTransformationAnchor(QGraphicsView.ViewportAnchor.AnchorUnderMouse)
            self.zoom_by(STEP ** (event.angleDelta().y() / 120))
            self.setTransformationAnchor(QGraphicsView.ViewportAnchor.AnchorViewCenter)
            event.accept()
        else:
            super().wheelEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        keys = {
            "+": self.zoom_in,
            "=": self.zoom_in,
            "-": self.zoom_out,
            "0": self.fit_all,
            "f": self.fit_width,
        }
        if event.key() == Qt.Key.Key_Space:
            self._space = True
            self.viewport().setCursor(Qt.CursorShape.OpenHandCursor)
        elif (act := keys.get(event.text().lower())) is not None:
            act()
        elif event.key() == Qt.Key.Key_Escape:
            self._go_to("")
        elif (key := walked(self._places(), self._here, event.key())) is not None:
            self._go_to(key)
        else:
            super().keyPressEvent(event)

    def keyReleaseEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        if event.key() == Qt.Key.Key_Space and not event.isAutoRepeat():
            self._space = False
            self.viewport().unsetCursor()
        super().keyReleaseEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802 - Qt's name
        left = event.button() == Qt.MouseButton.LeftButton
        if event.button() == Qt.MouseButton.MiddleButton or (left and self._space):
            self._drag_from = event.position()
            self.viewport().setCursor(Qt.CursorShape.ClosedHandCursor)
        elif left:
            self._here = self._key_at(event.position())
            self.picked.emit(self._here)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:  # noqa: N802 - Qt's name
        if self._drag_from is None:
            super().mouseMoveEvent(event)
            return
        moved = event.position() - self._drag_from
        self._drag_from = event.position()
        across, down = self.horizontalScrollBar(), self.verticalScrollBar()
        across.setValue(across.value() - round(moved.x()))
        down.setValue(down.value() - round(moved.y()))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:  # noqa: N802 - Qt's name
        self._drag_from = None
        self.viewport().unsetCursor()

    def _key_at(self, position: QPointF) -> str:
        for item in self._items:
            place = item.mapFromScene(self.mapToScene(position.toPoint()))
            if key := item.picture.key_at(place.x(), place.y()):
                return key
        return ""
