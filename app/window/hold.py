"""Holding a file: while a window has it open, other windows are told so.

The sign is a small hidden file beside the project, with the name of the program,
its number and the computer's. One that was left by a crash on this computer counts
for nothing; in a folder where it cannot be written nobody is told, and nobody can save.
"""

from __future__ import annotations

from contextlib import suppress
from os.path import exists, realpath, samefile
from pathlib import Path
from stat import S_ISREG
from typing import TypeAlias

from PySide6.QtCore import QLockFile, QSysInfo

from app.qt_said import heard
from core.language import told

Stamp: TypeAlias = tuple[int, int]
_GONE = "Could not remove our own lock file"  # since its folder has gone, or is locked now


def stamp(path: Path) -> Stamp | None:
    """When a file was last written and how long it is, to see a change by; None if it is gone."""
    try:
        found = path.stat()
    except OSError:
        return None
    return (found.st_mtime_ns, found.st_size) if S_ISREG(found.st_mode) else None


class Hold:
    """The file that this window holds, if any."""

    def __init__(self) -> None:
        self._path: Path | None = None
        self._lock: QLockFile | None = None

    def take(self, path: Path) -> str:
        """Hold `path` in place of what was held; else say who holds it, and change nothing."""
        path = Path(realpath(path))  # `resolve` fails for links in a ring
        if self._path is not None and _one_file(path, self._path):
            if self._is_held():
                return ""
            self.let_go()  # the folder was gone, or could not be written
        lock = QLockFile(str(path.with_name(f".{path.name}.lock")))
        lock.setStaleLockTime(0)
        if not lock.tryLock(0) and lock.error() is QLockFile.LockError.LockFailedError:
            return _holder(lock)
        self.let_go()
        self._path, self._lock = path, lock
        return ""

    def _is_held(self) -> bool:
        """Whether the sign is there."""
        lock = self._lock
        return lock is not None and lock.isLocked() and exists(lock.fileName())

    def let_go(self) -> None:
        """Hold nothing."""
        if self._lock is not None:
            with heard(_GONE):
                self._lock.unlock()
        self._path = self._lock = None


def _one_file(one: Path, other: Path) -> bool:
    """Whether two whole paths are of one file; some systems take capitals for small letters."""
    if one.name.casefold() != other.name.casefold():
        return False
    with suppress(OSError):
        return samefile(one, other)
    return one == other


def _holder(lock: QLockFile) -> str:
    """Who has it, in words."""
    number, host, _ = lock.getLockInfo()
    if host and host != QSysInfo.machineHostName():
        return told("a window on the computer {host}", host=host)
    return told("another window on this computer (process {number})", number=number)
