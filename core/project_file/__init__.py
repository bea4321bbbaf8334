"""The .crossgrain file: a project as UTF-8 JSON, read and written exactly.

Reading checks every value and names the first that is wrong; writing never
rounds, so a project reads back equal. Saving replaces the old file only when
the new one is whole.
"""

from __future__ import annotations

import json
from pathlib import Path

from core.project_file.read import from_document
from core.project_file.write import FORMAT, VERSION, to_document
from core.quilt import Project
from core.reading import json_object, text_of
from core.whole_file import write_whole

SUFFIX = ".crossgrain"

__all__ = [
    "FORMAT",
    "SUFFIX",
    "VERSION",
    "dumps",
    "from_document",
    "load",
    "loads",
    "save",
    "to_document",
]


def load(path: Path) -> Project:
    """The project in the file at `path`. Raises `Refusal`, or `OSError` if it cannot be read."""
    return loads(text_of(path))


def loads(text: str) -> Project:
    """The project that `text` holds."""
    return from_document(json_object(text, FORMAT, VERSION))


def save(project: Project, path: Path) -> None:
    """Write the project; an older file stays whole until the new one is."""
    write_whole(path, dumps(project).encode("utf-8"))


def dumps(project: Project) -> str:
    """The file's text, the same for equal projects."""
    return json.dumps(to_document(project), indent=2, ensure_ascii=False) + "\n"
