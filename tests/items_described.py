"""The items as projects: their parts added and their values written, as the window does it."""

from __future__ import annotations

from functools import cache

from core import edit
from core.project_file import dumps, loads
from core.quilt import Project
from tests.items import ITEMS, plain_quilt


@cache
def described(name: str) -> Project:
    """The project that an item of that name describes."""
    item, project = ITEMS[name], plain_quilt()
    for part in item.adds:
        listed = part == "borders" or part.endswith("on_hand")
        project = edit.add(project, part) if listed else edit.add_part(project, part)
    for path, value in item.writes.items():
        project = edit.put(project, path, value)
    return project


def renamed(project: Project) -> Project:
    """The same, its quilt and cloths called by names that are no words in Latin letters."""
    names = [project.quilt.name, *(fabric.name for fabric in project.fabrics)]
    text = dumps(project)
    for number, name in enumerate(names, start=1):
        text = text.replace(f'"{name}"', f'"Ω{number}"')
    return loads(text)


@cache
def without_latin_names(name: str) -> Project:
    """What an item describes, renamed."""
    return renamed(described(name))
