"""A project whose names are in no Latin letters, so that what was not told shows among them."""

from __future__ import annotations

from typing import Any

from core.project_file import from_document, to_document
from core.quilt import Project
from tests.stand_in import in_greek


def nameless(project: Project) -> Project:
    """The project, what a person has named in it in the stand-in's letters."""
    form = to_document(project)
    named = [form["quilt"], *form["fabrics"], *(form.get("batting") or {}).get("packages", ())]
    flaws = [flaw for fabric in form["fabrics"] for flaw in fabric.get("flaws", ())]
    names = {thing["name"] for thing in named} | {flaw["word"] for flaw in flaws} - {""}
    return from_document(_renamed(form, names))


def _renamed(value: Any, names: set[str]) -> Any:  # noqa: ANN401 - any value of JSON
    match value:
        case dict():
            return {key: _renamed(inner, names) for key, inner in value.items()}
        case list():
            return [_renamed(inner, names) for inner in value]
        case str() if value in names:
            return in_greek(value)
    return value
