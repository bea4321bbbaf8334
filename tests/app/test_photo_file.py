"""Photos of every kind and in every state: shown, or told in one sentence and nowhere else."""

from __future__ import annotations

import struct
import zlib
from collections.abc import Callable
from pathlib import Path
from random import Random

import pytest
from PySide6.QtCore import QBuffer, QByteArray
from PySide6.QtGui import QColor, QImage, QImageWriter
from PySide6.QtWidgets import QApplication

from app.photo_file_qt import MOST_PIXELS, read_photo

RED = "#c00000"
SVG = '<svg xmlns="http://www.w3.org/2000/svg" width="60" height="40"><rect width="60" height="40" '


def picture(
    kind: str,
    form: QImage.Format = QImage.Format.Format_RGB32,
    wide: int = 60,
    high: int = 40,
    colour: str = RED,
) -> bytes:
    """A picture of one colour, as a file of that kind."""
    image = QImage(wide, high, QImage.Format.Format_RGB32)
    image.fill(QColor(colour))
    return written(image.convertToFormat(form), kind)


def noise(kind: str) -> bytes:
    """A picture of no one colour, which takes a file of some length."""
    grey = Random(1).randbytes(300 * 200)
    return written(QImage.fromData(b"P5 300 200 255\n" + grey), kind)


def written(image: QImage, kind: str) -> bytes:
    made = QByteArray()
    buffer = QBuffer(made)
    buffer.open(QBuffer.OpenModeFlag.WriteOnly)
    assert QImageWriter(buffer, QByteArray(kind.encode())).write(image)
    return bytes(made.data())


def chunk(kind: bytes, data: bytes) -> bytes:
    check = struct.pack(">I", zlib.crc32(kind + data))
    return struct.pack(">I", len(data)) + kind + data + check


def png(wide: int, high: int, *, before: bytes = b"", rows: int | None = None) -> bytes:
    """A grey PNG, written by hand: with odd chunks `before` its pixels, or too few of them."""
    head = struct.pack(">IIBBBBB", wide, high, 8, 0, 0, 0, 0)
    row = b"\0" + b"\x80" * min(wide, 30_000)
    pixels = zlib.compress(row * (high if rows is None else rows))
    start = b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head)
    return start + before + chunk(b"IDAT", pixels) + chunk(b"IEND", b"")


def turned() -> bytes:
    """A JPEG that says in its EXIF that it was taken with the camera on its side."""
    tag = struct.pack(">HHIHH", 0x0112, 3, 1, 6, 0)  # orientation, a short, one: 6
    exif = b"Exif\0\0MM\0\x2a\0\0\0\x08" + struct.pack(">H", 1) + tag + b"\0\0\0\0"
    plain = picture("jpeg")
    return plain[:2] + b"\xff\xe1" + struct.pack(">H", len(exif) + 2) + exif + plain[2:]


GOOD: dict[str, Callable[[], bytes]] = {
    "jpeg": lambda: picture("jpeg"),
    "png": lambda: picture("png"),
    "a PNG called .jpg": lambda: picture("png"),
    "a drawing called .png": lambda: f'{SVG} fill="{RED}"/></svg>'.encode(),
    "palette": lambda: picture("png", QImage.Format.Format_Indexed8),
    "CMYK": lambda: picture("jpeg", QImage.Format.Format_CMYK8888),
    "16 bits a colour": lambda: picture("png", QImage.Format.Format_RGBX64),
    "see-through": lambda: picture("png", QImage.Format.Format_ARGB32),
    "webp": lambda: picture("webp"),
    "bmp": lambda: picture("bmp"),
}


@pytest.fixture
def read(
    qapp: QApplication, tmp_path: Path, capfd: pytest.CaptureFixture[str]
) -> Callable[[bytes], tuple[QImage, str]]:
    """Read a file that holds these bytes; nothing may be said on the terminal meanwhile."""

    def reading(data: bytes) -> tuple[QImage, str]:
        path = tmp_path / "plum.jpg"
        path.write_bytes(data)
        capfd.readouterr()
        found = read_photo(path, "plum.jpg")
        assert capfd.readouterr() == ("", "")
        return found

    return reading


Read = Callable[[bytes], tuple[QImage, str]]


@pytest.mark.parametrize("kind", GOOD)
def test_a_photo_of_any_kind_is_shown_in_its_colours(kind: str, read: Read) -> None:
    image, said = read(GOOD[kind]())
    assert said == ""
    assert (image.width(), image.height()) == (60, 40)
    seen, meant = image.pixelColor(30, 20), QColor(RED)
    assert abs(seen.red() - meant.red()) + seen.green() + seen.blue() < 12
    assert image.depth() == 32


def test_a_photo_taken_on_its_side_is_shown_upright(read: Read) -> None:
    image, said = read(turned())
    assert said == ""
    assert (image.width(), image.height()) == (40, 60)


def test_chunks_that_nobody_needs_are_no_matter(read: Read) -> None:
    profile = chunk(b"iCCP", b"icc\0\0" + zlib.compress(b"rubbish" * 20)) + chunk(b"tEXt", b"")
    image, said = read(png(30, 20, before=profile))
    assert not image.isNull()
    assert said == ""


@pytest.mark.parametrize("left", [0.3, 0.6, 0.95])
def test_half_a_jpeg_is_shown_and_told(left: float, read: Read) -> None:
    whole = noise("jpeg")
    assert read(whole)[1] == ""
    image, said = read(whole[: int(len(whole) * left)])
    assert not image.isNull()
    assert said == "plum.jpg is damaged; it is shown as far as it can be read."


def flipped(data: bytes) -> bytes:
    middle = len(data) // 2
    return data[:middle] + bytes((data[middle] ^ 0xFF,)) + data[middle + 1 :]


DAMAGED: dict[str, Callable[[], bytes]] = {
    "empty": lambda: b"",
    "a hundred bytes of a JPEG": lambda: noise("jpeg")[:100],
    "half a PNG": lambda: noise("png")[: len(noise("png")) // 2],
    "without its end": lambda: noise("png")[:-12],
    "one byte otherwise": lambda: flipped(noise("png")),
    "of a size that is none": lambda: png(2**31 - 1, 2**31 - 1, rows=0),
}


@pytest.mark.parametrize("what", DAMAGED)
def test_a_damaged_photo_is_told(what: str, read: Read) -> None:
    image, said = read(DAMAGED[what]())
    assert image.isNull()
    assert said == "plum.jpg is damaged; copy it anew. The cloth is shown without it."


@pytest.mark.parametrize(
    "data", [b"hello", b"RIFF\x10\0\0\0WEBPVP8 ", f"{SVG} fi".encode()],
    ids=["text", "half a webp", "half a drawing"],
)  # fmt: skip
def test_what_is_no_photo_is_told(data: bytes, read: Read) -> None:
    image, said = read(data)
    assert image.isNull()
    assert said.startswith("plum.jpg cannot be shown: ")


def test_a_photo_too_large_to_be_read_is_told_with_its_size(read: Read) -> None:
    image, said = read(png(30_000, 30_000, rows=1))
    assert image.isNull()
    assert "plum.jpg is too large, 30000 × 30000 pixels; save a smaller copy" in said


@pytest.mark.parametrize(
    ("wide", "high", "seen"),
    [
        (3000, 1500, (MOST_PIXELS, MOST_PIXELS // 2)),
        (20_000, 1, (MOST_PIXELS, 1)),
        (100, 20_000, (round(100 * 8 * MOST_PIXELS / 20_000), 8 * MOST_PIXELS)),
    ],
)
def test_no_photo_is_kept_larger_than_a_screen_needs(
    wide: int, high: int, seen: tuple[int, int], read: Read
) -> None:
    image, said = read(png(wide, high))
    assert said == ""
    assert (image.width(), image.height()) == seen


def test_a_folder_is_no_photo(qapp: QApplication, tmp_path: Path) -> None:
    image, said = read_photo(tmp_path, "plum.jpg")
    assert image.isNull()
    assert said == "plum.jpg is a folder, no photo; the cloth is shown without it."
