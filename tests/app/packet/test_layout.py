"""Fitting a cloth to pages."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.packet.layout import OVERLAP, SMALLEST_READABLE, Layout, Room, lay_out, stretch_of
from core.drawing.marks import Area, Drawing, Label, Line

ROOM = Room(520.0, 500.0)
SQUARE = ((0.0, 0.0), (10.0, 0.0), (10.0, 100.0), (0.0, 100.0))
INCH = 72.0  # points
inches = st.floats(1, 2000)


def _laid(wide: float, high: float) -> Layout:
    return lay_out(Drawing("", wide, high, ()), ROOM)


@given(inches, inches)
def test_the_stretches_cover_the_cloth_and_each_fits_its_page(wide: float, high: float) -> None:
    layout = _laid(wide, high)
    assert layout.stretches[0][0] == 0
    assert layout.stretches[-1][1] == high
    assert wide * INCH / layout.ratio <= ROOM.width + 0.01
    for start, end in layout.stretches:
        assert (end - start) * INCH / layout.ratio <= ROOM.height + 0.01
    for (_, end), (start, _) in pairwise(layout.stretches):
        assert end - start == pytest.approx(OVERLAP)


@given(st.floats(1, 86), inches)
def test_a_cloth_that_is_narrow_enough_is_never_drawn_too_small_to_read(
    wide: float, high: float
) -> None:
    assert _laid(wide, high).ratio <= SMALLEST_READABLE


def test_a_cloth_that_fits_is_not_broken() -> None:
    assert _laid(46, 80) == Layout(12, ((0.0, 80.0),))


def test_a_broken_cloth_is_as_large_as_its_number_of_pages_allows() -> None:
    at_twelve = _laid(40, 160)
    assert len(at_twelve.stretches) == 2
    assert at_twelve.ratio == 12
    shorter = _laid(40, 120)
    assert len(shorter.stretches) == 2
    assert shorter.ratio == 9


def test_words_keep_between_the_match_lines() -> None:
    label = Label((5, 50), ("A1",), (8, 94), "binding")
    drawing = Drawing("", 10, 100, (label,))
    [first] = stretch_of(drawing, 0, 40).marks
    [second] = stretch_of(drawing, 37, 100).marks
    assert isinstance(first, Label)
    assert isinstance(second, Label)
    assert first.centre[1] + first.room[1] / 2 == 40 - OVERLAP / 2
    assert second.centre[1] - second.room[1] / 2 == 37 + OVERLAP / 2
    assert second.centre[1] + second.room[1] / 2 == 97


def test_a_rulers_number_stays_at_its_tick_and_is_on_one_page_only() -> None:
    label = Label((1, 39), ("36",), (2, 4), "ruler")
    drawing = Drawing("", 10, 100, (label,))
    assert stretch_of(drawing, 0, 40).marks == ()
    assert stretch_of(drawing, 37, 100).marks == (label,)


@given(st.floats(0.5, 60), st.floats(1000, 1060))
def test_every_piece_is_lettered_on_some_page(height: float, start: float) -> None:
    label = Label((5, start + height / 2), ("A1",), (8, height), "binding")
    drawing = Drawing("", 10, 1130, (label,))
    pages = ((0, 1065), (1062, 1130))
    shown = [mark for top, end in pages for mark in stretch_of(drawing, top, end).marks]
    assert shown
    for mark in shown:
        assert isinstance(mark, Label)
        assert mark.room[1] >= min(height, 2) - 1e-5


def test_a_piece_that_goes_on_has_no_edge_inside_the_page() -> None:
    drawing = Drawing("", 10, 100, (Area(SQUARE, "binding"),))
    [area] = stretch_of(drawing, 30, 60).marks
    assert isinstance(area, Area)
    ys = [y for _, y in area.points]
    assert min(ys) < 30
    assert max(ys) > 60
    assert {x for x, _ in area.points} == {0.0, 10.0}


def test_what_another_page_shows_is_left_out() -> None:
    marks = (Area(SQUARE, "cloth"), Line(((0, 10), (1, 10)), "ruler"))
    far = Drawing("", 10, 400, (*marks, Label((5, 50), ("A",), (8, 90), "cloth")))
    assert stretch_of(far, 200, 300).marks == ()
