"""A project of every shape plans soundly, draws, prints, and is written as it stands."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from app.packet.packet import packet_bytes
from core.drawing.edge_map import draw_edge_map
from core.drawing.quilt import draw_quilt
from core.edit import put
from core.plan import make_plan
from core.project_file import load, to_document
from core.shape import ShapeKind
from tests.core.demos import demo
from tests.core.sound import assert_drawing

SHAPES = sorted((Path(__file__).resolve().parents[1] / "data" / "shapes").glob("*.crossgrain"))
every_shape = pytest.mark.parametrize("path", SHAPES, ids=lambda path: path.stem)


def test_every_shape_has_a_project() -> None:
    assert {path.stem for path in SHAPES} >= {kind.value for kind in ShapeKind} - {"rectangle"}


@every_shape
def test_a_shape_plans_draws_and_prints(path: Path) -> None:
    plan = make_plan(load(path))  # every lay in it has passed the checker
    assert plan.sewn is not None
    assert_drawing(draw_quilt(plan))
    edge = draw_edge_map(plan)
    assert edge is not None
    assert_drawing(edge)
    assert packet_bytes(plan).startswith(b"%PDF-")


@every_shape
def test_a_shape_is_written_as_it_stands(path: Path) -> None:
    # Keys that other parts gain have defaults; what the file says of its outline stays.
    said = json.loads(path.read_text("utf-8"))
    written = to_document(load(path))
    for part in ("outline", "measured", "squaring", "take_up"):
        assert written.get(part) == said.get(part)


def test_round_a_corner_like_a_needles_the_band_stays_on_the_picture() -> None:
    points = [["8 5/8", "12 3/8"], ["5 1/2", "12 1/8"], ["27 7/8", "6 7/8"]]
    sliver = put(demo("harbour-lights"), "outline", {"kind": "polygon", "points": points})
    edge = draw_edge_map(make_plan(sliver, draft=True))
    assert edge is not None
    assert_drawing(edge)
