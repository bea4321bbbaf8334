"""One photo of cloth, read from its file; what is wrong with it is told in a sentence.

Qt and the libraries that it reads pictures with complain in words of their own, on standard
error. What they say while a photo is read is heard here, and stays here.
"""

from __future__ import annotations

import re
import zlib
from os.path import isdir, isfile
from pathlib import Path
from typing import BinaryIO

from PySide6.QtCore import QSize
from PySide6.QtGui import QImage, QImageReader

from app.os_words import said_of
from app.qt_said import heard
from core.language import told

MOST_PIXELS = 1024  # of a photo's width, and eight times as many of its height
NONE = QImage()
_PNG = b"\x89PNG\r\n\x1a\n"
_PNG_MOST = 1_000_000  # pixels of a side, for libpng
# What libjpeg says of a file that it reads only in part (jerror.h); a few bytes too many at a
# marker are a camera's doing, and do no harm.
_TORN = re.compile(r"Corrupt JPEG data: (?!\d{1,2} extraneous)|Premature end of JPEG")
_OF_PICTURES = ("qt.gui.imageio", "qt.imageformats", "qt.svg")


def read_photo(path: Path, name: str) -> tuple[QImage, str]:
    """The photo that is called `name`, no larger than a screen needs, and what to say of it.

    The image is `NONE` if it cannot be shown. The sentence is empty if all is well.
    """
    if isdir(path):
        said = told("{file} is a folder, no photo; the cloth is shown without it.", file=name)
        return NONE, said
    if not isfile(path):  # a name that no file can have is no file
        said = told(
            "There is no {file} beside the project; the cloth is shown without it.", file=name
        )
        return NONE, said
    try:
        with path.open("rb") as file:
            whole = _whole(file)
    except OSError as error:
        return NONE, _cannot(name, said_of(error))
    if not whole:
        return NONE, _damaged(name)
    with heard(*_OF_PICTURES) as words:
        return _read(path, name, words)


def _read(path: Path, name: str, words: list[str]) -> tuple[QImage, str]:
    reader = QImageReader(str(path))
    reader.setAutoTransform(True)
    size = reader.size()
    shrink = max(size.width() / MOST_PIXELS, size.height() / (8 * MOST_PIXELS))
    if shrink > 1:
        wide, high = (max(1, round(side / shrink)) for side in size.toTuple())
        reader.setScaledSize(QSize(wide, high))
    image = reader.read()
    if image.isNull():
        if 4 * size.width() * size.height() > reader.allocationLimit() * 2**20:
            return NONE, told(
                "{file} is too large, {width} × {height} pixels; save a smaller copy, some "
                "{enough} pixels wide. The cloth is shown without it.",
                file=name, width=size.width(), height=size.height(), enough=MOST_PIXELS,
            )  # fmt: skip
        return NONE, _damaged(name) if words else _cannot(name, reader.errorString())
    alpha = image.hasAlphaChannel()
    plain = QImage.Format.Format_ARGB32_Premultiplied if alpha else QImage.Format.Format_RGB32
    torn = any(map(_TORN.search, words))
    said = told("{file} is damaged; it is shown as far as it can be read.", file=name)
    return image.convertToFormat(plain), said if torn else ""


def _damaged(name: str) -> str:
    return told("{file} is damaged; copy it anew. The cloth is shown without it.", file=name)


def _cannot(name: str, reason: str) -> str:
    low = reason[:1].lower() + reason[1:]
    return told("{file} cannot be shown: {reason}.", file=name, reason=low)


def _whole(file: BinaryIO) -> bool:
    """Whether a file holds anything, and if a PNG all that was written, by its checksums.

    libpng would find out too, but says so on standard error by itself.
    https://www.w3.org/TR/png-3/#5Chunk-layout
    """
    start = file.read(len(_PNG))
    if start != _PNG:
        return bool(start)
    while head := file.read(8):
        length, kind = int.from_bytes(head[:4]), head[4:]
        data, check = file.read(length), file.read(4)
        sound = zlib.crc32(data, zlib.crc32(kind)).to_bytes(4) == check
        if not sound and kind[:1].isupper():  # the others can be done without
            return False
        sides = (int.from_bytes(data[:4]), int.from_bytes(data[4:8]))
        if kind == b"IHDR" and max(sides) > _PNG_MOST:
            return False
        if kind == b"IEND":
            return True
    return False
