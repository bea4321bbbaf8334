"""Writing a file whole or not at all."""

from __future__ import annotations

import contextlib
import os
import tempfile
from errno import EISDIR, ENOTDIR
from pathlib import Path

from core.language import told

SHORT = 20  # characters of a file's name in that of its part, which else may become too long


def write_whole(path: Path, data: bytes) -> None:
    """Put `data` at `path`; until it is all on the disk, an older file stays as it was.

    A link is followed, so that the file it points to is replaced, and an older
    file's permissions are kept. A device or a pipe is written to, never replaced.
    Raises `OSError`, leaving nothing behind.
    """
    target = Path(os.path.realpath(path))
    if path.is_dir():
        raise IsADirectoryError(EISDIR, told("this is a folder; name a file in it"), str(path))
    if not target.parent.is_dir():
        raise FileNotFoundError(
            ENOTDIR, told("the folder is not there; make it, or name another"), str(path)
        )
    try:
        if path.exists() and not path.is_file():
            _write_through(path, data)  # by its own name: what a pipe's link points to has none
        else:
            _replace(target, data)
    except OSError as error:  # told by the name that the person knows
        raise OSError(error.errno, error.strerror or str(error), str(path)) from None


def _replace(target: Path, data: bytes) -> None:
    """Write beside the file, and put that in its place."""
    start = f".{target.name[:SHORT]}."
    handle, name = tempfile.mkstemp(dir=target.parent, prefix=start, suffix=".part")
    part = Path(name)
    try:
        with os.fdopen(handle, "wb") as out:
            out.write(data)
            out.flush()
            os.fsync(out.fileno())
        part.chmod(_mode(target))
        part.replace(target)
        _settle(target.parent)
    except BaseException:
        with contextlib.suppress(OSError):
            part.unlink()
        raise


def _write_through(device: Path, data: bytes) -> None:
    """Write to what is no file, such as a pipe."""
    with device.open("wb") as out:
        out.write(data)


def _settle(folder: Path) -> None:
    """Put the new name on the disk too, lest a power cut bring the older file back.

    Not every system can; the file is whole either way.
    """
    if os.name == "nt":
        return
    with contextlib.suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def _mode(target: Path) -> int:
    """Permissions for the new file: the older one's, else what the person's umask gives."""
    if target.exists():
        return target.stat().st_mode & 0o777
    mask = os.umask(0)
    os.umask(mask)
    return 0o666 & ~mask
