"""A facing's picture: every side has its strip, as deep as it covers the back, and its length."""

from __future__ import annotations

from fractions import Fraction

import pytest
from shapely.geometry import Polygon

from core.drawing.edge_map import draw_edge_map
from core.drawing.marks import Area, Label
from core.fabric import Fabric
from core.lengths import show
from core.plan import make_plan
from core.quilt import Binding, Fold, Project, Quilt
from core.shape import Shape, ShapeKind
from tests.core.sound import assert_drawing

F = Fraction
CORNERS = ((0, 0), (0, 40), (36, 40), (36, 20), (18, 20), (18, 0))
SHAPES = {
    "rectangle": None,
    "clipped": Shape(ShapeKind.CLIPPED),
    "hexagon": Shape(ShapeKind.HEXAGON),
    "an L": Shape(ShapeKind.POLYGON, points=tuple((F(x), F(y)) for x, y in CORNERS)),
}


@pytest.mark.parametrize("name", SHAPES)
def test_every_side_has_a_strip_and_its_words(name: str) -> None:
    project = Project(
        Quilt("", F(36), F(40)),
        (Fabric("plum", F(43), F(1, 2)),),
        binding=Binding("plum", F(5, 2), fold=Fold.FACED),
        outline=SHAPES[name],
    )
    plan = make_plan(project, draft=True)
    drawing = draw_edge_map(plan)
    assert drawing is not None
    assert plan.binding is not None
    facing = plan.binding.facing
    assert facing is not None
    assert_drawing(drawing)
    areas = [mark for mark in drawing.marks if isinstance(mark, Area)]
    strips = [Polygon(area.points) for area in areas if area.role == "binding"]
    words = [m.texts[0] for m in drawing.marks if isinstance(m, Label)]
    assert len(strips) == len(words) == facing.count
    for strip in facing.strips:
        for side in strip.sides:
            assert words[side - 1].startswith(f"side {side}")
            assert words[side - 1].endswith(show(strip.length, project.units))
    [whole] = [Polygon(area.points) for area in areas if area.role == "top"]
    # They lie side by side along the edge, 1 1/4 - 1/4 - 1/8 in deep, none over another.
    covered = sum(strip.area for strip in strips)
    inside = whole.buffer(-float(plan.binding.widths.second_face), join_style="mitre")
    assert covered == pytest.approx(whole.area - inside.area, rel=1e-3)
