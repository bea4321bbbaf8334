"""Photos of the real cloth, as brushes that paint them to scale.

Files are found from the folder of the project's own file. A photo is read when it
is first seen, no larger than a screen needs; one that cannot be read is told in a
sentence, and the cloth is painted without it.
"""

from __future__ import annotations

from math import ceil, log2
from os.path import isfile
from pathlib import Path

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QBrush, QImage, QImageReader, QTransform

from core.fabric import Photo
from core.language import told

MOST_PIXELS = 1024  # of a photo's width
LEAST_PIXELS = 8


class SeenPhoto:
    """A photo that could be read: `mean` is its colour from afar, `stamp` the file's time."""

    def __init__(self, image: QImage, shows: float, stamp: int) -> None:
        self.stamp = stamp
        self._image, self._shows = image, shows
        dot = image.scaled(1, 1, mode=Qt.TransformationMode.SmoothTransformation)
        self.mean = dot.pixelColor(0, 0).name()
        self._brushes: dict[tuple[int, bool], QBrush] = {}

    def brush(self, scale: float, *, turned: bool) -> QBrush:
        """It over and over, for a painter that counts inches at `scale` pixels to the inch.

        `turned` a quarter turn to the left. Reduced here by halves, since a painter that
        reduces a picture to a tenth skips most of its threads.
        """
        wanted = 2 ** ceil(log2(max(self._shows * scale, LEAST_PIXELS)))
        pixels = min(wanted, self._image.width())
        if (pixels, turned) not in self._brushes:
            smooth = Qt.TransformationMode.SmoothTransformation
            tile = self._image.scaledToWidth(pixels, smooth)
            inches = self._shows / tile.width()
            brush = QBrush(tile)
            way = QTransform().rotate(-90) if turned else QTransform()
            brush.setTransform(way.scale(inches, inches))
            self._brushes[pixels, turned] = brush
        return self._brushes[pixels, turned]


class Photos:
    """The photos of one project, seen from `folder`; none are found without one."""

    def __init__(self, folder: Path | None = None) -> None:
        self.folder = folder
        self._read: dict[Photo, SeenPhoto | str] = {}

    def seen(self, photo: Photo) -> SeenPhoto | None:
        """The photo, if it can be shown."""
        found = self._found(photo)
        return None if isinstance(found, str) else found

    def problem(self, photo: Photo) -> str:
        """Why the photo cannot be shown, as a sentence; or nothing."""
        found = self._found(photo)
        return found if isinstance(found, str) else ""

    def look_again(self) -> None:
        """Forget what could not be shown, and what has changed since."""
        self._read = {
            photo: found
            for photo, found in self._read.items()
            if not isinstance(found, str) and found.stamp == _stamp(self._path(photo))
        }

    def _path(self, photo: Photo) -> Path:
        return Path() if self.folder is None else self.folder / photo.file

    def _found(self, photo: Photo) -> SeenPhoto | str:
        if photo not in self._read:
            self._read[photo] = self._look_for(photo)
        return self._read[photo]

    def _look_for(self, photo: Photo) -> SeenPhoto | str:
        path = self._path(photo)
        if not isfile(path):  # a name that no file can have is no file
            return told(
                "There is no {file} beside the project; the cloth is shown without it.",
                file=photo.file,
            )
        reader = QImageReader(str(path))
        reader.setAutoTransform(True)
        size = reader.size()
        if size.width() > MOST_PIXELS:
            high = max(1, round(size.height() * MOST_PIXELS / size.width()))
            reader.setScaledSize(QSize(MOST_PIXELS, high))
        image = reader.read()
        if image.isNull():
            said = reader.errorString()
            reason = said[:1].lower() + said[1:]
            return told("{file} cannot be shown: {reason}.", file=photo.file, reason=reason)
        return SeenPhoto(image, float(photo.shows), _stamp(path))


def _stamp(path: Path) -> int:
    """When the file was changed last; 0 if it is not there."""
    return path.stat().st_mtime_ns if isfile(path) else 0


NO_PHOTOS = Photos()
