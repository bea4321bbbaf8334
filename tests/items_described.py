"""The items as projects: their parts added and their values written, as the window does it."""

from __future__ import annotations

from functools import cache

from core import edit
from core.quilt import Project
from tests.items import ITEMS, plain_quilt
from tests.nameless import nameless


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


@cache
def without_latin_names(name: str) -> Project:
    """The same, all that has a name of its own called by one in other letters."""
    return nameless(described(name))
