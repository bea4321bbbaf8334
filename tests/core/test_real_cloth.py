"""What a cloth looks like: in the project file, in drawings, and nowhere else."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from core import edit
from core.drawing.back import draw_back
from core.drawing.cloth import draw_sheet
from core.drawing.frame import Heading
from core.drawing.marks import Area, Drawing
from core.drawing.quilt import draw_quilt
from core.fabric import Photo, RealCloth
from core.lay.lay import Sheet
from core.plan import Plan, make_plan
from core.project_file import dumps, from_document, loads, to_document
from core.project_file.real_cloth import moved, seen_from
from core.quilt import Project
from core.refusal import Refusal
from tests.core.demos import demo


def document(**keys: object) -> dict[str, Any]:
    """The demo with these keys on its first fabric."""
    made = to_document(demo("harbour-lights"))
    made["fabrics"][0].update(keys)
    return made


def real(**keys: object) -> RealCloth | None:
    return from_document(document(**keys)).fabrics[0].real


def test_a_fabric_without_either_key_has_no_look() -> None:
    bare = document()
    del bare["fabrics"][0]["colour"], bare["fabrics"][0]["photo"]
    assert from_document(bare) == demo("harbour-lights")
    assert from_document(bare).fabrics[0].real is None


def test_colour_and_photo_are_read_and_written() -> None:
    keys = {"colour": "#20305A", "photo": {"file": "photos\\sky.jpg", "shows": "30 cm"}}
    project = from_document(document(**keys))
    found = project.fabrics[0].real
    assert found is not None
    assert found.photo is not None
    assert (found.colour, found.photo.file) == ("#20305a", "photos/sky.jpg")
    assert found.photo.shows == pytest.approx(11.811, abs=0.001)
    assert loads(dumps(project)) == project


@pytest.mark.parametrize("colour", ["navy", "#12345", "#1234567", 7, "", "#12345g"])
def test_what_is_no_colour_is_refused(colour: object) -> None:
    with pytest.raises(Refusal, match="#7a1f2b") as caught:
        real(colour=colour)
    assert caught.value.path == "fabrics[0].colour"


@pytest.mark.parametrize(
    ("photo", "path"),
    [
        ({"file": "/home/ada/plum.jpg", "shows": "12"}, "photo.file"),
        ({"file": "C:\\plum.jpg", "shows": "12"}, "photo.file"),
        ({"file": " ", "shows": "12"}, "photo.file"),
        ({"file": "a" * 241, "shows": "12"}, "photo.file"),
        ({"file": "two\nlines.jpg", "shows": "12"}, "photo.file"),
        ({"file": 3, "shows": "12"}, "photo.file"),
        ({"file": "plum.jpg"}, "photo.shows"),
        ({"file": "plum.jpg", "shows": "0"}, "photo.shows"),
        ({"file": "plum.jpg", "shows": "wide"}, "photo.shows"),
        ({"file": "plum.jpg", "shows": "12", "turn": 90}, "photo.turn"),
        ("plum.jpg", "photo"),
    ],
)
def test_a_photo_that_is_none_is_refused_by_its_key(photo: object, path: str) -> None:
    with pytest.raises(Refusal) as caught:
        real(photo=photo)
    assert caught.value.path == f"fabrics[0].{path}"


def test_looks_change_nothing_that_is_planned() -> None:
    plain = make_plan(demo("harbour-lights"))
    dressed = make_plan(from_document(document(colour="#20305a")))
    bought = [
        [(fabric.lay.placements, fabric.buy.along) for fabric in plan.fabrics]
        for plan in (plain, dressed)
    ]
    assert bought[0] == bought[1]


@pytest.fixture(scope="module")
def plan() -> Plan:
    made = to_document(demo("harbour-lights"))
    for fabric, colour in zip(made["fabrics"], ("#000010", "#000020", "#000030"), strict=True):
        fabric["colour"] = colour
    return make_plan(from_document(made))


def colours(drawing: Drawing) -> dict[str, set[str | None]]:
    """The colours of the areas of each role."""
    found: dict[str, set[str | None]] = {}
    for mark in drawing.marks:
        if isinstance(mark, Area):
            found.setdefault(mark.role, set()).add(mark.real.colour if mark.real else None)
    return found


def test_a_sheet_shows_its_own_cloth_and_no_arrow_of_it(plan: Plan) -> None:
    found = colours(draw_sheet(plan, 0, Sheet(), Heading.DOWN))
    assert found.pop("grain") == {None}
    assert set().union(*found.values()) == {"#000010"}
    assert {"cloth", "offcut", "selvage", "binding"} <= found.keys()


@pytest.mark.parametrize(("heading", "turned"), [(Heading.DOWN, False), (Heading.RIGHT, True)])
def test_a_cloth_that_runs_right_has_its_print_turned(
    plan: Plan, heading: Heading, turned: bool
) -> None:
    marks = draw_sheet(plan, 0, Sheet(), heading).marks
    areas = [mark for mark in marks if isinstance(mark, Area) and mark.real]
    assert {area.turned for area in areas} == {turned}


def test_the_quilt_is_sewn_from_its_cloths(plan: Plan) -> None:
    # Border 1 is lamp gold, border 2 and the binding night sky, the backing tide stripe.
    front = colours(draw_quilt(plan))
    assert front["border"] == {"#000010", "#000020"}
    assert front["border corner"] == {"#000020"}
    assert front["binding"] == {"#000010"}
    assert front["backing"] == {"#000030"}
    assert front["top"] == front["batting"] == {None}
    back = draw_back(plan)
    assert back is not None
    assert colours(back) == {role: {"#000030"} for role in ("backing", "sleeve", "label")}


def with_photo(project: Project, file: str) -> Project:
    return edit.put(project, "fabrics[0].photo", {"file": file, "shows": "12"})


def test_a_project_that_moves_takes_the_way_to_its_photos_along() -> None:
    project = with_photo(demo("harbour-lights"), "photos/sky.jpg")
    there = moved(project, Path("quilts"), Path("quilts/blue"))
    found = there.fabrics[0].real
    assert found is not None
    assert found.photo is not None
    assert found.photo.file == "../photos/sky.jpg"
    assert moved(there, Path("quilts/blue"), Path("quilts")) == project
    assert there.fabrics[1:] == project.fabrics[1:]


def test_a_way_that_no_file_may_say_is_not_taken(monkeypatch: pytest.MonkeyPatch) -> None:
    project = with_photo(demo("harbour-lights"), "sky.jpg")
    monkeypatch.setattr(
        "core.project_file.real_cloth.seen_from", lambda new, file: "D:/quilts/sky.jpg"
    )
    assert moved(project, Path("here"), Path("there")) == project


def test_a_photo_is_seen_from_its_folder() -> None:
    assert seen_from(Path("a/b"), Path("a/c/sky.jpg")) == "../c/sky.jpg"


def test_equal_looks_are_equal() -> None:
    one = RealCloth("#000000", Photo("a.jpg", demo("harbour-lights").quilt.width))
    assert replace(one) == one
    assert hash(replace(one)) == hash(one)
