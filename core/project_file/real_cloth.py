"""What a fabric looks like in the project file: its keys, read and written."""

from __future__ import annotations

import os
import re
from dataclasses import replace
from pathlib import Path, PureWindowsPath
from typing import Any

from core.fabric import Fabric, Photo, RealCloth
from core.language import told
from core.lengths import Units, exact_text
from core.quilt import Project
from core.reading import Fields
from core.refusal import Refusal

LONGEST_FILE = 240
_COLOUR = re.compile(r"#[0-9a-f]{6}", re.ASCII)


def read_real(fields: Fields) -> RealCloth | None:
    """The colour and the photo of the fabric at `fields`; None where it has neither."""
    colour = _colour(fields) if fields.has("colour") else None
    photo = _photo(fields) if fields.has("photo") else None
    return None if colour is None and photo is None else RealCloth(colour, photo)


def _colour(fields: Fields) -> str:
    value = fields.raw("colour")
    text = value.strip().lower() if isinstance(value, str) else ""
    if not _COLOUR.fullmatch(text):
        raise Refusal(fields.at("colour"), told('write a colour such as "#7a1f2b"'))
    return text


def _photo(fields: Fields) -> Photo:
    inner = Fields(fields.raw("photo"), fields.at("photo"), fields.units)
    photo = Photo(_file(inner), inner.length("shows"))
    inner.done()
    return photo


def _file(fields: Fields) -> str:
    """A file's place as seen from the project's, with forward slashes."""
    value = fields.raw("file")
    text = value.strip().replace("\\", "/") if isinstance(value, str) else ""
    path = PureWindowsPath(text)  # knows a drive as well as a root
    if not text or len(text) > LONGEST_FILE or not text.isprintable() or path.anchor:
        raise Refusal(
            fields.at("file"),
            told('write where the photo is as seen from the project, such as "photos/plum.jpg"'),
        )
    return text


def write_real(real: RealCloth | None, units: Units) -> dict[str, Any]:
    """The keys of a fabric that say what it looks like."""
    photo = real.photo if real else None
    return {
        "colour": real.colour if real else None,
        "photo": None
        if photo is None
        else {"file": photo.file, "shows": exact_text(photo.shows, units)},
    }


def seen_from(folder: Path, file: Path) -> str:
    """A file's place as seen from a folder, with forward slashes; whole from another drive.

    >>> seen_from(Path("quilts"), Path("quilts/photos/plum.jpg"))
    'photos/plum.jpg'
    """
    try:
        return Path(os.path.relpath(file, folder)).as_posix()
    except ValueError:  # another drive
        return file.as_posix()


def moved(project: Project, old: Path, new: Path) -> Project:
    """The project with its photos as seen from the folder `new`, where it goes from `old`."""
    return replace(project, fabrics=tuple(_moved(fabric, old, new) for fabric in project.fabrics))


def _moved(fabric: Fabric, old: Path, new: Path) -> Fabric:
    real = fabric.real
    if real is None or real.photo is None:
        return fabric
    file = seen_from(new, old / real.photo.file)
    if PureWindowsPath(file).anchor:  # not to be seen from there, and no file may say so
        return fabric
    return replace(fabric, real=replace(real, photo=replace(real.photo, file=file)))
