"""Where cuttings are kept: a file of its own for each project, among the program's own files.

Not in the project: a cut is made at the table, not in the plan. It must be on the
disk at once, without saving what else was changed, and it is nothing to undo.
"""

from __future__ import annotations

import json
from hashlib import sha256
from pathlib import Path
from typing import Any

from PySide6.QtCore import QStandardPaths

from core.cutting.cutting import Cutting, begin
from core.cutting.kept import FORMAT, VERSION, cutting_document, cutting_from, mark_of
from core.plan import Plan
from core.reading import json_object, text_of
from core.whole_file import write_whole

SUFFIX = ".cutting"


def cutting_folder() -> Path:
    """Where cuttings lie."""
    place = QStandardPaths.StandardLocation.AppLocalDataLocation
    return Path(QStandardPaths.writableLocation(place)) / "cutting"


def document_in(file: Path) -> dict[str, Any]:
    """What a file says; raises `Refusal` or `OSError` if it cannot be read."""
    return json_object(text_of(file), FORMAT, VERSION)


class Cuttings:
    """The cutting of one project: by its file, or while it was never saved by its plan.

    So a plan that was cut and then saved is found again too.
    """

    def __init__(self, path: Path | None, plan: Plan, folder: Path | None = None) -> None:
        folder = folder or cutting_folder()
        unsaved = folder / f"{mark_of(begin(plan))}{SUFFIX}"
        self.file = folder / f"{_name(path)}{SUFFIX}" if path else unsaved
        self._project = str(path.resolve()) if path else ""
        self._files = (self.file, unsaved)

    def found(self) -> Cutting | None:
        """What was kept; raises `Refusal` or `OSError` if it cannot be read."""
        for file in self._files:
            if file.exists():
                return cutting_from(document_in(file))
        return None

    def keep(self, cutting: Cutting) -> None:
        """Keep a cutting as it is now; raises `OSError`."""
        self.file.parent.mkdir(parents=True, exist_ok=True)
        document = cutting_document(cutting, self._project)
        write_whole(self.file, json.dumps(document).encode())


def _name(path: Path) -> str:
    return sha256(str(path.resolve()).encode()).hexdigest()
