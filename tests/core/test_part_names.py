"""Every part's name, however the quilt is finished, is told where it is shown."""

from __future__ import annotations

import pytest

from core.part_names import told_part
from core.quilt import Project
from core.ways import part_options
from tests.finishes import FINISHES
from tests.items import ITEMS
from tests.items_described import described
from tests.stand_in import untold

PROJECTS = [described(name) for name in ITEMS] + [make() for make in FINISHES.values()]


def names(project: Project) -> set[str]:
    """What the parts are called, in whichever way they are cut."""
    options, _ = part_options(project)
    return {d.wanted.name for ways in options for way in ways for d in way.demands}


@pytest.mark.usefixtures("stand_in")
def test_the_names_of_all_parts_are_told_but_for_the_cloths_own() -> None:
    cloths = {fabric.name for project in PROJECTS for fabric in project.fabrics}
    known = set().union(*map(names, PROJECTS))
    assert len(known) > 40
    for name in known:
        assert set(untold(told_part(name))) <= cloths, name


def test_english_names_are_told_as_they_are() -> None:
    for name in set().union(*map(names, PROJECTS)):
        assert told_part(name) == name


@pytest.mark.usefixtures("stand_in")
def test_a_name_of_no_known_form_stays() -> None:
    assert told_part("border one side") == "border one side"
    assert told_part("binding segment, half") == "βινδινγ σεγμεντ, half"
