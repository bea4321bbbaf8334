"""Painting on the screen: roles become colours, hatches and words, at any zoom."""

from __future__ import annotations

from collections import Counter

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QImage, QPainter
from PySide6.QtWidgets import QApplication

from app.paint_qt import Picture
from app.style import PAPER_GREY, SCREEN_DARK, SCREEN_LIGHT, Theme
from app.words_qt import canvas_font
from core.drawing.marks import ROLES, Area, Drawing, Label, Line, Mark

SQUARE = ((1.0, 1.0), (9.0, 1.0), (9.0, 9.0), (1.0, 9.0))
TILTED = ((5.0, 0.5), (9.5, 5.0), (5.0, 9.5), (0.5, 5.0))
THEMES = [SCREEN_LIGHT, SCREEN_DARK, PAPER_GREY]


def painted(
    *marks: Mark, scale: float = 20.0, theme: Theme = SCREEN_LIGHT, chosen: tuple[str, ...] = ()
) -> QImage:
    """A picture of 10 × 10 in at `scale` pixels to an inch."""
    side = round(10 * scale)
    image = QImage(side, side, QImage.Format.Format_RGB32)
    image.fill(QColor(theme.table))
    painter = QPainter(image)
    painter.scale(scale, scale)
    Picture(Drawing("", 10.0, 10.0, marks)).paint(painter, scale, theme, chosen)
    painter.end()
    return image


def colours(image: QImage) -> Counter[str]:
    return Counter(
        image.pixelColor(x, y).name() for x in range(image.width()) for y in range(image.height())
    )


@pytest.mark.parametrize("theme", THEMES)
@pytest.mark.parametrize("role", ROLES)
def test_an_area_has_its_roles_fill_and_outline(
    qapp: QApplication, role: str, theme: Theme
) -> None:
    seen = colours(painted(Area(SQUARE, role), theme=theme))
    assert seen[theme[role].fill] > 5000
    assert seen[theme[role].outline] > 100


@pytest.mark.parametrize("points", [SQUARE, TILTED])
def test_a_hatched_role_is_not_plain(
    qapp: QApplication, points: tuple[tuple[float, float], ...]
) -> None:
    plain = painted(Area(points, "cloth"))
    hatched = painted(Area(points, "binding"))
    assert len(colours(hatched)) > len(colours(plain))


def test_two_parts_are_told_apart_in_grey(qapp: QApplication) -> None:
    parts = ("border", "border corner", "backing", "batting", "binding", "sleeve")
    pictures = [painted(Area(SQUARE, part), theme=PAPER_GREY) for part in parts]
    for place, one in enumerate(pictures):
        assert all(one != other for other in pictures[place + 1 :])


def test_a_hatch_keeps_its_size_on_screen(qapp: QApplication) -> None:
    def share(scale: float) -> float:
        image = painted(Area(SQUARE, "binding"), scale=scale)
        return colours(image)[SCREEN_LIGHT["binding"].fill] / (image.width() * image.height())

    assert share(12.0) == pytest.approx(share(48.0), abs=0.15)


def test_what_is_too_small_for_a_hatch_is_plain(qapp: QApplication) -> None:
    style = SCREEN_LIGHT["binding"]
    sliver = ((1.0, 1.0), (9.0, 1.0), (9.0, 1.2), (1.0, 1.2))
    seen = set(colours(painted(Area(sliver, "binding"))))
    assert seen <= {style.fill, style.outline, SCREEN_LIGHT.table}


@pytest.mark.parametrize("theme", THEMES)
def test_words_are_written_on_plain_fill(qapp: QApplication, theme: Theme) -> None:
    label = Label((5.0, 5.0), ("B2\n2½ × 40 in", "B2"), (8.0, 8.0), "binding", "B2")
    without = painted(Area(SQUARE, "binding"), theme=theme)
    written = painted(Area(SQUARE, "binding"), label, theme=theme)
    assert written != without
    assert colours(written)[theme["binding"].ink] > 10


def test_the_fullest_text_that_fits_is_taken_and_none_where_none_fits(qapp: QApplication) -> None:
    def written(width: float) -> QImage:
        texts = ("B2 binding of a quilt", "B2")
        return painted(Label((5.0, 5.0), texts, (width, 1.0), "cloth"))

    blank = painted()
    assert written(9.0) != written(2.0)
    assert written(2.0) != blank
    assert written(0.2) == blank


def test_a_label_in_a_tall_room_is_turned(qapp: QApplication) -> None:
    level = painted(Label((5.0, 5.0), ("binding B2",), (8.0, 1.0), "cloth"))
    upright = painted(Label((5.0, 5.0), ("binding B2",), (1.0, 8.0), "cloth"))

    def box(image: QImage) -> tuple[int, int]:
        ink = [
            (x, y)
            for x in range(image.width())
            for y in range(image.height())
            if image.pixelColor(x, y).lightness() < 100
        ]
        xs, ys = [x for x, _ in ink], [y for _, y in ink]
        return max(xs) - min(xs), max(ys) - min(ys)

    assert box(level)[0] > box(level)[1]
    assert box(upright)[1] > box(upright)[0]


def test_a_chosen_piece_has_a_ring(qapp: QApplication) -> None:
    area = Area(SQUARE, "binding", "B1")
    assert colours(painted(area, chosen=("B1",)))[SCREEN_LIGHT.chosen] > 100
    assert painted(area, chosen=("B2",)) == painted(area)


def test_lines_keep_their_width_on_screen(qapp: QApplication) -> None:
    line = Line(((0.0, 5.0), (10.0, 5.0)), "cut")
    ink = SCREEN_LIGHT["cut"].outline
    rows = [colours(painted(line, scale=scale))[ink] / (10 * scale) for scale in (8.0, 40.0)]
    assert rows[0] == pytest.approx(rows[1])
    assert rows[0] >= 1


def test_level_and_bent_lines_are_painted_where_they_are_in_sight(qapp: QApplication) -> None:
    level = Line(((0.0, 5.0), (10.0, 5.0)), "cut")
    bent = Line(((2.0, 1.0), (4.0, 3.0), (6.0, 1.0)), "cut")
    ink = SCREEN_LIGHT["cut"].outline
    each = [colours(painted(line))[ink] for line in (level, bent)]
    assert min(each) > 0
    image = QImage(200, 200, QImage.Format.Format_RGB32)
    image.fill(QColor(SCREEN_LIGHT.table))
    painter = QPainter(image)
    painter.scale(20, 20)
    picture = Picture(Drawing("", 10.0, 10.0, (level, Line(((0, 9.0), (9, 9.0)), "ruler"), bent)))
    picture.paint(painter, 20, SCREEN_LIGHT, exposed=QRectF(0, 0, 10, 6))
    painter.end()
    assert colours(image)[ink] == sum(each)


def test_the_key_of_a_place_is_the_topmost_pieces(qapp: QApplication) -> None:
    below, above = Area(SQUARE, "cloth", "A"), Area(TILTED, "binding", "B1")
    picture = Picture(Drawing("", 10.0, 10.0, (below, above)))
    assert picture.key_at(5.0, 5.0) == "B1"
    assert picture.key_at(1.5, 1.5) == "A"
    assert picture.key_at(0.2, 0.2) == ""


def test_the_canvas_font_is_the_programs_own(qapp: QApplication) -> None:
    assert canvas_font().family() == "DejaVu Sans"


def test_the_fill_behind_words_stays_in_their_own_piece(qapp: QApplication) -> None:
    pieces = [Area(((0, y), (10, y), (10, y + 2.5), (0, y + 2.5)), "binding") for y in (0.0, 2.5)]
    words = Label((5.0, 3.75), ("G2",), (9.4, 2.35), "binding")
    bare, lettered = painted(*pieces, scale=3.1), painted(*pieces, words, scale=3.1)
    assert lettered != bare
    first_piece = bare.rect().adjusted(0, 0, 0, 7 - bare.height())
    assert lettered.copy(first_piece) == bare.copy(first_piece)
