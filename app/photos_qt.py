"""Photos of the real cloth, as brushes that paint them to scale.

Files are found from the folder of the project's own file. A photo is read when it
is first seen, no larger than a screen needs; one that cannot be read is told in a
sentence, and the cloth is painted without it.
"""

from __future__ import annotations

from math import ceil, log2
from os.path import isfile
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtGui import QBrush, QImage, QTransform

from app.photo_file_qt import read_photo
from core.fabric import Photo

LEAST_PIXELS = 8
NOWHERE = Path("\0")  # a folder that no system has


class SeenPhoto:
    """A photo that could be read: `mean` is its colour from afar, `stamp` the file's time.

    `said` is what is wrong with it all the same, as a sentence, or nothing.
    """

    def __init__(self, image: QImage, shows: float, stamp: int, said: str) -> None:
        self.stamp, self.said = stamp, said
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
            high = max(1, round(self._image.height() * pixels / self._image.width()))
            tile = self._image.scaled(pixels, high, mode=smooth)
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
        """Why the photo cannot be shown, or not all of it, as a sentence; or nothing."""
        found = self._found(photo)
        return found if isinstance(found, str) else found.said

    def look_again(self) -> bool:
        """Look anew for what could not be shown or has changed; whether any is seen otherwise."""
        before = self._read
        self._read = {
            photo: found
            for photo, found in before.items()
            if not isinstance(found, str) and found.stamp == _stamp(self._path(photo))
        }
        return any(self._found(photo) != found for photo, found in before.items())

    def _path(self, photo: Photo) -> Path:
        return (NOWHERE if self.folder is None else self.folder) / photo.file

    def _found(self, photo: Photo) -> SeenPhoto | str:
        if photo not in self._read:
            self._read[photo] = self._look_for(photo)
        return self._read[photo]

    def _look_for(self, photo: Photo) -> SeenPhoto | str:
        path = self._path(photo)
        stamp = _stamp(path)
        image, said = read_photo(path, photo.file)
        return said if image.isNull() else SeenPhoto(image, float(photo.shows), stamp, said)


def _stamp(path: Path) -> int:
    """When the file was changed last; 0 if it is not there."""
    return path.stat().st_mtime_ns if isfile(path) else 0


NO_PHOTOS = Photos()
