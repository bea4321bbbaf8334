"""Every picture has a file name of its own."""

from __future__ import annotations

from dataclasses import replace

from app.pictures import png_files, svg_files
from core.plan import FabricPlan
from tests.app.packet.plans import plan


def _renamed(fabric: FabricPlan, name: str) -> FabricPlan:
    return replace(fabric, fabric=replace(fabric.fabric, name=name))


def test_two_pieces_of_a_cloth_with_a_very_long_name_are_two_files() -> None:
    made = plan("crowded")
    long = tuple(_renamed(f, f.fabric.name + " und so weiter" * 8) for f in made.fabrics)
    made = replace(made, fabrics=long)
    names = [name for name, _ in svg_files(made)]
    sheets = sum(len(fabric.lay.sheets) for fabric in made.fabrics)
    assert len(set(names)) == len(names) == sheets + 3, "the quilt, its edge and its back"
    assert max(map(len, names)) < 100
    assert [name for name, _ in png_files(made)] == [f"{name[:-4]}.png" for name in names]
