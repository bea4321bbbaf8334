"""Clearing kept cuttings away that nobody will ask for again.

Removed is a cutting that is finished, thirty days after its last cut: until then a piece
may be found to be spoilt. Removed is one that is not, a year after its project was last
seen, if the project's file is not where it was although its folder is there; a folder
that is not may be on a drive that is not plugged in. A project that was never saved is
not seen after its last cut. Whatever else there is stays: what cannot be read, and what
does not say whose it is.
"""

from __future__ import annotations

import os
import time
from contextlib import suppress
from pathlib import Path

from app.window.cutting.cuttings import SUFFIX, document_in
from core.cutting.kept import cutting_from, project_of
from core.refusal import Refusal

DAY = 24 * 60 * 60  # seconds
FINISHED_FOR, GONE_FOR = 30 * DAY, 365 * DAY


def clear_away(folder: Path, but: Path) -> None:
    """Remove from a folder what is to be removed; `but` is in use, whatever is in it."""
    now = time.time()
    for file in folder.glob(f"*{SUFFIX}"):
        # What cannot be read or removed now stays, and is looked at again the next time.
        with suppress(OSError, Refusal):
            idle = now - file.stat().st_mtime
            if file != but and idle > FINISHED_FOR:
                _look_at(file, idle)


def _look_at(file: Path, idle: float) -> None:
    """Remove a cutting, or note that its project was seen; `idle` is since when neither was."""
    document = document_in(file)
    project = project_of(document)
    if all(cloth.next_cut is None for cloth in cutting_from(document).cloths):
        file.unlink()
    elif project and Path(project).exists():
        os.utime(file)
    elif idle > GONE_FOR and project is not None and _gone(project):
        file.unlink()


def _gone(project: str) -> bool:
    """Whether a project that is not there is really gone."""
    return not project or Path(project).parent.is_dir()
