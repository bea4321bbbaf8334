"""Painting cloth in its own colour and photo: told apart, readable, whole where a photo is not."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction
from itertools import pairwise
from pathlib import Path

import pytest
from PySide6.QtGui import QColor, QImage, QPainter
from PySide6.QtWidgets import QApplication

from app.colour import contrast
from app.paint_qt import Picture
from app.paint_svg import paint_svg
from app.photo_file_qt import MOST_PIXELS
from app.photos_qt import NO_PHOTOS, Photos
from app.real_cloth import style_of
from app.screen_styles import CONTRAST_DARK, SAFE_LIGHT
from app.style import PAPER_COLOUR, PAPER_GREY, PICTURE, SCREEN_DARK, SCREEN_LIGHT, Theme
from core.drawing.marks import Area, Drawing, Label, Line, Mark
from core.fabric import Photo, RealCloth

SQUARE = ((1.0, 1.0), (9.0, 1.0), (9.0, 9.0), (1.0, 9.0))
NAVY = RealCloth("#102040")
STRIPES = Photo("stripes.png", Fraction(4))  # a red half and a blue half, 2 in each
SCREENS = [SCREEN_LIGHT, SCREEN_DARK, SAFE_LIGHT]


@pytest.fixture
def photos(tmp_path: Path) -> Photos:
    """A folder with one photo: red at its left, blue at its right."""
    image = QImage(400, 400, QImage.Format.Format_RGB32)
    image.fill(QColor("#ff0000"))
    painter = QPainter(image)
    painter.fillRect(200, 0, 200, 400, QColor("#0000ff"))
    painter.end()
    assert image.save(str(tmp_path / STRIPES.file))
    return Photos(tmp_path)


def painted(
    *marks: Mark, theme: Theme = SCREEN_LIGHT, photos: Photos = NO_PHOTOS, scale: int = 20
) -> QImage:
    """10 × 10 in at `scale` pixels to the inch."""
    image = QImage(10 * scale, 10 * scale, QImage.Format.Format_RGB32)
    image.fill(QColor(theme.table))
    painter = QPainter(image)
    painter.scale(scale, scale)
    Picture(Drawing("", 10.0, 10.0, marks)).paint(painter, scale, theme, photos=photos)
    painter.end()
    return image


def colours(image: QImage) -> Counter[str]:
    return Counter(
        image.pixelColor(x, y).name() for x in range(image.width()) for y in range(image.height())
    )


@pytest.mark.parametrize("theme", [*SCREENS, PICTURE])
def test_a_piece_is_filled_with_its_cloth_and_keeps_its_hatch(theme: Theme) -> None:
    style = style_of(Area(SQUARE, "binding", "B1", NAVY), theme)
    assert style.fill == NAVY.colour
    assert style.hatch == theme["binding"].hatch
    assert contrast(style.fill, style.outline) >= 3  # WCAG 2.2, criterion 1.4.11


@pytest.mark.parametrize("theme", [PAPER_COLOUR, PAPER_GREY, CONTRAST_DARK])
def test_paper_and_high_contrast_keep_their_own_fills(theme: Theme) -> None:
    assert style_of(Area(SQUARE, "binding", "B1", NAVY), theme) == theme["binding"]


def test_what_is_left_over_is_paler(qapp: QApplication) -> None:
    piece, rest = (
        style_of(Area(SQUARE, role, "", NAVY), SCREEN_LIGHT).fill for role in ("label", "offcut")
    )
    assert contrast(rest, "#000000") > contrast(piece, "#000000")


@pytest.mark.parametrize("theme", SCREENS)
@pytest.mark.parametrize("role", ["offcut", "label", "border"])
def test_words_on_a_dark_cloth_stand_on_plain_ground(
    qapp: QApplication, role: str, theme: Theme
) -> None:
    area = Area(SQUARE, role, "", NAVY)
    label = Label((5.0, 5.0), ("B1",), (6.0, 6.0), role)
    without, written = painted(area, theme=theme), painted(area, label, theme=theme)
    plain = colours(written)[theme[role].fill] - colours(without)[theme[role].fill]
    assert plain > 100
    assert colours(written)[theme[role].ink] > 10


def test_a_svg_picture_has_the_cloths_colour_and_paper_has_not() -> None:
    drawing = Drawing("", 10.0, 10.0, (Area(SQUARE, "binding", "B1", NAVY),))
    assert 'fill="#102040"' in paint_svg(drawing, PICTURE)
    assert 'fill="#102040"' not in paint_svg(drawing, PAPER_COLOUR)


def test_a_photo_is_tiled_to_scale(qapp: QApplication, photos: Photos) -> None:
    image = painted(Area(SQUARE, "label", "J", RealCloth(photo=STRIPES)), photos=photos)
    # 20 pixels to the inch from x = 0: red for 2 in, blue for 2 in, and over again.
    across = [image.pixelColor(round(20 * x), 58) for x in (1.3, 3.0, 5.0, 7.0, 8.6)]
    assert ["red" if c.red() > c.blue() else "blue" for c in across] == [
        "red", "blue", "red", "blue", "red",
    ]  # fmt: skip


def test_a_turned_cloth_has_its_photos_top_at_the_left(qapp: QApplication, photos: Photos) -> None:
    area = Area(SQUARE, "label", "J", RealCloth(photo=STRIPES), turned=True)
    image = painted(area, photos=photos)
    # The photo's right, blue, comes to lie above its left, red: blue to 2 in, red to 4.
    down = [image.pixelColor(58, round(20 * y)) for y in (2.7, 5.0, 7.0)]
    assert ["red" if c.red() > c.blue() else "blue" for c in down] == ["red", "blue", "red"]


@pytest.mark.parametrize("role", ["label", "cloth"])
def test_a_photo_that_is_missing_leaves_the_colour(
    qapp: QApplication, photos: Photos, role: str
) -> None:
    gone = RealCloth("#102040", Photo("gone.jpg", Fraction(4)))
    assert painted(Area(SQUARE, role, "", gone), photos=photos) == painted(
        Area(SQUARE, role, "", NAVY)
    )
    assert "There is no gone.jpg" in photos.problem(Photo("gone.jpg", Fraction(4)))


@pytest.mark.parametrize("name", ["a" * 400, "a\0b.png", "gone/."])
def test_a_name_that_no_photo_can_have_is_told(
    qapp: QApplication, photos: Photos, name: str
) -> None:
    assert "There is no" in photos.problem(Photo(name, Fraction(4)))
    assert "There is no" in NO_PHOTOS.problem(Photo(name, Fraction(4)))


def test_a_broken_photo_is_told_and_found_again_once_mended(
    qapp: QApplication, photos: Photos
) -> None:
    assert photos.folder is not None
    photo = Photo("torn.png", Fraction(4))
    (photos.folder / "torn.png").write_bytes(b"no picture")
    assert "torn.png cannot be shown" in photos.problem(photo)
    (photos.folder / "torn.png").write_bytes((photos.folder / STRIPES.file).read_bytes())
    photos.look_again()
    assert photos.problem(photo) == ""


def test_a_photo_that_changed_is_read_anew(qapp: QApplication, photos: Photos) -> None:
    assert photos.folder is not None
    first = photos.seen(STRIPES)
    photos.look_again()
    assert photos.seen(STRIPES) is first
    (photos.folder / STRIPES.file).unlink()
    photos.look_again()
    assert photos.seen(STRIPES) is None


def test_a_large_photo_is_read_no_larger_than_a_screen_needs(
    qapp: QApplication, tmp_path: Path
) -> None:
    image = QImage(3000, 1500, QImage.Format.Format_RGB32)
    image.fill(QColor("#00ff00"))
    assert image.save(str(tmp_path / "large.png"))
    seen = Photos(tmp_path).seen(Photo("large.png", Fraction(30)))
    assert seen is not None
    assert seen.mean == "#00ff00"
    assert seen.brush(1000.0, turned=False).textureImage().width() == MOST_PIXELS
    assert seen.brush(1.0, turned=False).textureImage().width() == 32


def test_a_hatch_follows_the_theme_at_the_same_zoom(qapp: QApplication) -> None:
    drawing = Drawing("", 10.0, 10.0, (Area(SQUARE, "binding"),))

    def paint(picture: Picture, theme: Theme) -> QImage:
        image = QImage(200, 200, QImage.Format.Format_RGB32)
        image.fill(QColor(theme.table))
        painter = QPainter(image)
        painter.scale(20, 20)
        picture.paint(painter, 20, theme)
        painter.end()
        return image

    used = Picture(drawing)
    paint(used, SCREEN_LIGHT)
    assert paint(used, SAFE_LIGHT) == paint(Picture(drawing), SAFE_LIGHT)


@pytest.mark.parametrize("theme", SCREENS)
def test_an_outline_shows_on_the_dark_and_on_the_light_of_a_print(
    qapp: QApplication, photos: Photos, theme: Theme
) -> None:
    image = painted(
        Area(SQUARE, "border", "B", RealCloth(photo=STRIPES)), theme=theme, photos=photos
    )
    for x in (30, 70, 110):  # red, blue, red, across the upper edge
        edge = [image.pixelColor(x, y).name() for y in range(14, 27)]
        pairs = [contrast(one, other) for one, other in pairwise(edge)]
        assert max(pairs) >= 3  # WCAG 2.2, criterion 1.4.11


@pytest.mark.parametrize(("theme", "cased"), [(SCREEN_LIGHT, True), (CONTRAST_DARK, False)])
def test_a_seam_shows_on_a_cloth_as_dark_as_itself(
    qapp: QApplication, theme: Theme, cased: bool
) -> None:
    seam = Line(((5.0, 1.0), (5.0, 9.0)), "seam")
    plain, sewn = (
        painted(Area(SQUARE, "label", "J", cloth), seam, theme=theme) for cloth in (None, NAVY)
    )
    assert (colours(sewn)["#ffffff"] > colours(plain)["#ffffff"] + 100) is cased


def test_a_photo_as_flat_as_a_line_is_painted(qapp: QApplication, tmp_path: Path) -> None:
    image = QImage(400, 1, QImage.Format.Format_RGB32)
    image.fill(QColor("#00ff00"))
    assert image.save(str(tmp_path / "line.png"))
    cloth = RealCloth(photo=Photo("line.png", Fraction(4)))
    seen = painted(Area(SQUARE, "label", "", cloth), photos=Photos(tmp_path))
    assert "#00ff00" in colours(seen)
