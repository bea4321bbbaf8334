"""Edits: one change to a project, as a pure function Project -> Project.

A change is made on the project's file form and read back through the file's own
reader, so that the window refuses exactly what a file would be refused for.
Paths are those of the file: `borders[1].width`, `fabrics[0].on_hand[0].across`.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from copy import deepcopy
from dataclasses import replace
from typing import Any

from core.by_hand.minded import without_sheet
from core.language import told
from core.lengths import Units
from core.new_measures import new_measures, new_points
from core.new_parts import (
    CLOTHLESS,
    new_fabric,
    new_flaw,
    new_motif,
    new_on_hand,
    new_package,
    new_part,
)
from core.project_file import from_document, to_document
from core.project_file.read import fabric_names
from core.quilt import Project
from core.refusal import Refusal
from core.shape import ShapeKind

# Two ways of saying one thing: writing the first clears the second.
_EITHER = {
    "binding.strip_width": "binding.finished_width",
    "binding.finished_width": "binding.strip_width",
    "binding.start_side": "binding.start_at",
    "binding.start_at": "binding.start_side",
}
_STEP = re.compile(r"([a-z_]+)|\[(\d+)\]")


def put(project: Project, path: str, value: object) -> Project:
    """The project with one value set, as its file would write it.

    Renaming a fabric renames it wherever the project uses it. Of a binding's two widths,
    and of the two ways to say where it starts, writing one clears the other; a polygon
    starts as the quilt's own four corners. Raises `Refusal`.
    """
    renamed = re.fullmatch(r"fabrics\[(\d+)\]\.name", path)
    used = _used(project, int(renamed[1])) if renamed else ()

    def change(document: dict[str, Any]) -> None:
        for place in (path, *used):
            holder, key = _holder(document, place)
            holder[key] = value
        if path in _EITHER and value is not None:
            holder, key = _holder(document, _EITHER[path])
            holder[key] = None
        if path == "outline.kind" and value == ShapeKind.POLYGON.value and not holder["points"]:
            holder["points"] = new_points(project)

    return _changed(project, change)


def best_start(project: Project) -> Project:
    """The project whose binding starts wherever its joins land best."""

    def change(document: dict[str, Any]) -> None:
        document["binding"].update(start_at=None, start_side=None)

    return _changed(project, change)


def _used(project: Project, place: int) -> tuple[str, ...]:
    old = project.fabrics[place].name
    return tuple(path for path, name in fabric_names(project) if name == old)


def add(project: Project, path: str) -> Project:
    """The project with a new item at the end of the list at `path`."""

    def change(document: dict[str, Any]) -> None:
        holder, key = _holder(document, path)
        holder.setdefault(key, []).append(_new_item(project, path))

    return _changed(project, change)


def add_part(project: Project, part: str) -> Project:
    """The project with an outline or a part to be cut as most quilts have it."""
    return put(project, part, _with_fabric(project, part))


def remove(project: Project, path: str) -> Project:
    """The project without the list item or the part at `path`."""
    if re.fullmatch(r"fabrics\[\d+\]", path):
        _refuse_fabric_in_use(project, path)

    def change(document: dict[str, Any]) -> None:
        holder, key = _holder(document, path)
        del holder[key]

    return _changed(_without_said_of(project, path), change)


def _without_said_of(project: Project, path: str) -> Project:
    """What was said by hand of a piece on hand goes with it; that of later ones moves up."""
    found = re.fullmatch(r"fabrics\[(\d+)\]\.on_hand\[(\d+)\]", path)
    if found is None:
        return project
    place, gone = int(found[1]), int(found[2])
    fabric = without_sheet(project.fabrics[place], gone)
    return replace(
        project, fabrics=(*project.fabrics[:place], fabric, *project.fabrics[place + 1 :])
    )


def move(project: Project, path: str, by: int) -> Project:
    """The project with a list item moved `by` places, as far as the list goes."""

    def change(document: dict[str, Any]) -> None:
        items, place = _holder(document, path)
        item = items.pop(place)
        items.insert(max(0, min(place + by, len(items))), item)

    return _changed(project, change)


def set_units(project: Project, units: Units) -> Project:
    """The same lengths, shown and written in other units; nothing is rounded."""
    return replace(project, units=units)


def _changed(project: Project, change: Callable[[dict[str, Any]], None]) -> Project:
    document = deepcopy(to_document(project))
    change(document)
    return from_document(document)


def _holder(document: dict[str, Any], path: str) -> tuple[Any, Any]:
    """The object or list that holds the value at `path`, and its key or index there."""
    steps = [word if word else int(index) for word, index in _STEP.findall(path)]
    holder: Any = document
    for step in steps[:-1]:
        holder = holder[step]
    return holder, steps[-1]


def _new_item(project: Project, path: str) -> dict[str, Any]:
    if path == "fabrics":
        return new_fabric(
            _free_name([f.name for f in project.fabrics], told("cloth")), project.units
        )
    if path == "borders":
        return _with_fabric(project, path)
    if path == "batting.packages" and project.batting is not None:
        taken = [package.name for package in project.batting.packages]
        return new_package(_free_name(taken, told("package")), project.units)
    by_hand = {"flaws": new_flaw, "motifs": new_motif}
    return by_hand.get(path.rpartition(".")[2], new_on_hand)(project.units)


def _with_fabric(project: Project, part: str) -> dict[str, Any]:
    if part not in CLOTHLESS and not project.fabrics:
        raise Refusal(part, told("add a fabric first, for this part to be cut from"))
    if part in ("measured", "squaring", "take_up"):
        return new_measures(part, project)
    name = project.fabrics[0].name if project.fabrics else ""
    return new_part(part, name, project.units)


def _free_name(taken: list[str], word: str) -> str:
    """ "cloth", or "cloth 2", "cloth 3" … where that is taken."""
    number = 1
    while (name := word if number == 1 else f"{word} {number}") in taken:
        number += 1
    return name


def _refuse_fabric_in_use(project: Project, path: str) -> None:
    place = int(path.removeprefix("fabrics[").removesuffix("]"))
    used = _used(project, place)
    if used:
        raise Refusal(
            path,
            told(
                "{fabric} is used by {place}; choose another cloth there first",
                fabric=project.fabrics[place].name,
                place=used[0],
            ),
        )
