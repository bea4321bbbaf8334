"""Kept pixels are those that a fresh picture has, moved or zoomed."""

from __future__ import annotations

from collections.abc import Callable
from time import monotonic

import pytest
from PySide6.QtCore import QPointF
from PySide6.QtGui import QColor, QImage, QPainter
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.style import SCREEN_DARK, SCREEN_LIGHT
from app.window.canvas import Canvas, Fit
from app.window.drawing_item import DrawingItem
from core.drawing.marks import Area, Drawing, Label

LEAST_SEEN = 24  # of 255
A_ROW = 0.002  # of the pixels: less than one row of them
pytestmark = pytest.mark.gui


def drawing() -> Drawing:
    marks: list[Area | Label] = []
    for number in range(60):
        x, y = number % 6 * 10.0, number // 6 * 8.0
        corners = ((x, y), (x + 10, y), (x + 10, y + 8), (x, y + 8))
        role = ("border", "binding", "backing")[number % 3]
        marks.append(Area(corners, role, f"A{number}"))
        marks.append(Label((x + 5, y + 4), (f"A{number}", "A"), (10.0, 8.0), role, f"A{number}"))
    return Drawing("cloth", 60.0, 80.0, tuple(marks))


@pytest.fixture
def fresh(qtbot: QtBot) -> Callable[[], Canvas]:
    def made() -> Canvas:
        canvas = Canvas("Cloths", Fit.WIDTH)
        qtbot.addWidget(canvas)
        canvas.resize(400, 300)
        canvas.show_items([DrawingItem(drawing(), "A cloth", SCREEN_LIGHT)])
        canvas.show()
        seen(canvas)
        return canvas

    return made


def seen(canvas: Canvas) -> QImage:
    canvas.viewport().repaint()
    return canvas.viewport().grab().toImage()


def painted_directly(canvas: Canvas) -> QImage:
    """What the scene paints where it keeps nothing."""
    ratio = canvas.viewport().devicePixelRatioF()
    image = QImage(canvas.viewport().size() * ratio, QImage.Format.Format_RGB32)
    image.setDevicePixelRatio(ratio)
    image.fill(QColor(canvas.theme.table))
    painter = QPainter(image)
    painter.setTransform(canvas.viewportTransform())
    shown = canvas.mapToScene(canvas.viewport().rect()).boundingRect()
    canvas.scene().render(painter, shown, shown)
    painter.end()
    return image


def differing(one: QImage, other: QImage) -> float:
    """The share of pixels that an eye could tell apart; smooth lines are cut off a hair apart."""
    places = [(x, y) for x in range(one.width()) for y in range(one.height())]
    return sum(_apart(one.pixelColor(*at), other.pixelColor(*at)) for at in places) / len(places)


def _apart(one: QColor, other: QColor) -> bool:
    apart = one.red() - other.red(), one.green() - other.green(), one.blue() - other.blue()
    return max(map(abs, apart)) > LEAST_SEEN


@pytest.mark.parametrize("moves", [[1], [7, 7, 7], [90], [40, -25, 300], [5000, -5000]])
def test_a_moved_picture_is_the_picture_painted_there(
    fresh: Callable[[], Canvas], moves: list[int]
) -> None:
    canvas, other = fresh(), fresh()
    bar = canvas.verticalScrollBar()
    for move in moves:
        bar.setValue(bar.value() + move)
        seen(canvas)
    other.verticalScrollBar().setValue(bar.value())
    _forget(other)
    assert differing(seen(canvas), seen(other)) < A_ROW


def test_nothing_of_a_picture_is_lost_by_keeping_it(fresh: Callable[[], Canvas]) -> None:
    canvas = fresh()
    canvas.verticalScrollBar().setValue(37)
    assert differing(seen(canvas), painted_directly(canvas)) < 0.01


def test_a_zoomed_picture_is_rough_and_then_sharp(fresh: Callable[[], Canvas]) -> None:
    canvas, sharp = fresh(), fresh()
    canvas.zoom_by(1.3)
    rough = seen(canvas)
    QApplication.processEvents()
    _until_sharp(canvas)
    sharp.zoom_by(1.3)
    sharp.show_items([DrawingItem(drawing(), "A cloth", SCREEN_LIGHT)])
    sharp.horizontalScrollBar().setValue(canvas.horizontalScrollBar().value())
    sharp.verticalScrollBar().setValue(canvas.verticalScrollBar().value())
    assert differing(seen(canvas), seen(sharp)) < A_ROW
    assert differing(rough, seen(sharp)) > 0.01


def test_what_a_smaller_zoom_brings_into_sight_is_there_at_once(
    fresh: Callable[[], Canvas],
) -> None:
    canvas = fresh()
    canvas.zoom_by(0.4)
    corner = canvas.mapFromScene(QPointF(55, 76))
    colour = seen(canvas).pixelColor(corner).name()
    assert colour != QColor(SCREEN_LIGHT.table).name()


def test_pixels_of_another_theme_are_void(fresh: Callable[[], Canvas]) -> None:
    canvas = fresh()
    before = seen(canvas)
    canvas.set_theme(SCREEN_DARK)
    assert differing(before, seen(canvas)) > 0.5


def test_new_pictures_end_the_sharpening_of_the_last(fresh: Callable[[], Canvas]) -> None:
    canvas = fresh()
    canvas.zoom_by(1.2)
    canvas.show_items([])
    QApplication.processEvents()
    assert canvas._sharpening.items == []


def _forget(canvas: Canvas) -> None:
    """Paint anew what comes."""
    for item in canvas._items:
        item.pixels._look = None


def _until_sharp(canvas: Canvas) -> None:
    until = monotonic() + 10
    while canvas._sharpening.items and monotonic() < until:
        QApplication.processEvents()
    assert not canvas._sharpening.items
