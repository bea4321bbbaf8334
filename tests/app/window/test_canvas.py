"""The canvas: zoom, fit and drag."""

from __future__ import annotations

from dataclasses import replace

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from app.style import SCREEN_LIGHT
from app.window.canvas import LEAST_SCALE, MOST_SCALE, Canvas, Fit
from app.window.drawing_item import DrawingItem
from core.drawing.marks import Area, Drawing, Label

SQUARE = ((2.0, 2.0), (12.0, 2.0), (12.0, 12.0), (2.0, 12.0))
DRAWING = Drawing(
    "cloth",
    100.0,
    40.0,
    (
        Area(((0, 0), (100, 0), (100, 40), (0, 40)), "cloth"),
        Area(SQUARE, "binding", "B1"),
        Label((7.0, 7.0), ("B1",), (9.0, 9.0), "binding", "B1"),
    ),
)


@pytest.fixture
def canvas(qtbot: QtBot) -> Canvas:
    made = Canvas("Yardage", Fit.WIDTH)
    qtbot.addWidget(made)
    made.resize(800, 500)
    made.show()
    made.show_items([DrawingItem(DRAWING, "cloth", SCREEN_LIGHT)])
    return made


def test_it_starts_with_the_width_filled(canvas: Canvas) -> None:
    shown = canvas.mapToScene(canvas.viewport().rect()).boundingRect()
    assert 100 <= shown.width() <= 112


def test_a_resized_view_fits_until_the_person_zooms(canvas: Canvas) -> None:
    narrow = canvas.zoom
    canvas.resize(1200, 500)
    assert canvas.zoom == pytest.approx(narrow * 1.5, rel=0.05)
    canvas.zoom_in()
    zoomed = canvas.zoom
    canvas.resize(800, 500)
    assert canvas.zoom == zoomed
    canvas.fit_width()
    assert canvas.zoom == pytest.approx(narrow)


def test_keys_zoom_and_fit(canvas: Canvas, qtbot: QtBot) -> None:
    start = canvas.zoom
    QTest.keyClicks(canvas, "+")
    assert canvas.zoom == pytest.approx(start * 1.25)
    QTest.keyClicks(canvas, "--")
    assert canvas.zoom == pytest.approx(start / 1.25)
    QTest.keyClicks(canvas, "f")
    assert canvas.zoom == pytest.approx(start)
    canvas.resize(800, 120)
    QTest.keyClicks(canvas, "0")
    shown = canvas.mapToScene(canvas.viewport().rect()).boundingRect()
    assert shown.contains(canvas.sceneRect().adjusted(1, 1, -1, -1))


def test_zoom_has_ends(canvas: Canvas) -> None:
    for _ in range(60):
        canvas.zoom_in()
    assert canvas.zoom == pytest.approx(MOST_SCALE)
    for _ in range(60):
        canvas.zoom_out()
    assert canvas.zoom == pytest.approx(LEAST_SCALE)


@pytest.mark.parametrize("button", [Qt.MouseButton.MiddleButton, Qt.MouseButton.LeftButton])
def test_the_middle_button_or_space_and_left_drag_the_view(
    canvas: Canvas, qtbot: QtBot, button: Qt.MouseButton
) -> None:
    for _ in range(6):
        canvas.zoom_in()
    across = canvas.horizontalScrollBar()
    across.setValue(300)
    if button is Qt.MouseButton.LeftButton:
        QTest.keyPress(canvas, Qt.Key.Key_Space)
    port = canvas.viewport()
    QTest.mousePress(port, button, pos=QPoint(200, 100))
    QTest.mouseMove(port, QPoint(150, 100))
    QTest.mouseRelease(port, button, pos=QPoint(150, 100))
    assert across.value() == 350
    if button is Qt.MouseButton.LeftButton:
        QTest.keyRelease(canvas, Qt.Key.Key_Space)


def test_a_click_tells_the_piece_or_none(canvas: Canvas, qtbot: QtBot) -> None:
    heard: list[str] = []
    canvas.picked.connect(heard.append)
    for x, y in ((7, 7), (50, 20)):
        place = canvas.mapFromScene(float(x), float(y))
        QTest.mouseClick(canvas.viewport(), Qt.MouseButton.LeftButton, pos=place)
    assert heard == ["B1", ""]


def test_showing_again_keeps_the_zoom_and_the_ring(canvas: Canvas) -> None:
    canvas.zoom_in()
    canvas.choose(frozenset({"B1"}))
    zoom = canvas.zoom
    item = DrawingItem(DRAWING, "cloth", SCREEN_LIGHT)
    canvas.show_items([item])
    assert canvas.zoom == zoom
    assert item.chosen == {"B1"}


def test_a_picture_that_stays_is_the_same_item_and_others_go(canvas: Canvas) -> None:
    [item] = canvas.scene().items()
    other = DrawingItem(replace(DRAWING, title="other"), "other", SCREEN_LIGHT)
    canvas.show_items([item, other])  # type: ignore[list-item]
    assert set(canvas.scene().items()) == {item, other}
    canvas.show_items([other])
    assert canvas.scene().items() == [other]


def test_it_is_one_tab_stop_with_a_name(canvas: Canvas) -> None:
    assert canvas.accessibleName() == "Yardage"
    assert canvas.focusPolicy() & Qt.FocusPolicy.TabFocus


def test_zooming_keeps_the_middle_in_the_middle(canvas: Canvas) -> None:
    canvas.fit_all()
    for _ in range(6):
        canvas.zoom_in()
    middle = canvas.mapToScene(canvas.viewport().rect().center())
    canvas.zoom_in()
    zoomed = canvas.mapToScene(canvas.viewport().rect().center())
    assert (zoomed - middle).manhattanLength() < 1
    assert abs(zoomed.x() - canvas.sceneRect().center().x()) < 5


def test_a_long_title_does_not_shrink_the_pictures(qtbot: QtBot) -> None:
    item = DrawingItem(DRAWING, "a very long name of a cloth " * 8, SCREEN_LIGHT)
    assert item.boundingRect().width() <= DRAWING.width + 1


def test_a_long_title_is_broken_and_given_the_room(qtbot: QtBot) -> None:
    short, long = (
        DrawingItem(DRAWING, title, SCREEN_LIGHT)
        for title in ("cloth", "a long name of a cloth from the bolt " * 2)
    )
    assert len(short.lines) == 1
    assert " ".join(long.lines).split() == long.title.split()
    assert long.above > short.above


def test_larger_words_are_given_more_room(canvas: Canvas) -> None:
    item = DrawingItem(DRAWING, "cloth", SCREEN_LIGHT)
    usual = item.boundingRect()
    item.wear(replace(SCREEN_LIGHT, words=2.0))
    assert item.above == 2 * -usual.top()
