"""The yardage: one lane a sheet, and nothing painted again that has not changed."""

from __future__ import annotations

from dataclasses import replace

import pytest
from pytestqt.qtbot import QtBot

from app.style import SCREEN_LIGHT
from app.window.drawing_item import DrawingItem
from app.window.yardage import BindingView, YardageView
from core.by_hand.sheets import all_sheets_of
from core.edit import add, put
from core.plan import make_plan
from core.quilt import Project


@pytest.fixture
def view(qtbot: QtBot) -> YardageView:
    made = YardageView()
    qtbot.addWidget(made)
    return made


def items(view: YardageView) -> list[DrawingItem]:
    return [lane.item for lane in view.lanes]


def test_every_sheet_has_its_lane_and_its_picture(view: YardageView, demo: Project) -> None:
    plan = make_plan(demo)
    view.show_plan(plan)
    sheets = [
        (place, sheet)
        for place, fabric in enumerate(plan.fabrics)
        for sheet in all_sheets_of(fabric)
    ]
    assert [(lane.place, lane.sheet) for lane in view.lanes] == sheets
    assert len(set(items(view))) == len(sheets)
    assert set(view.scene().items()) == set(items(view))


def test_only_the_cloth_that_has_changed_is_drawn_anew(view: YardageView, demo: Project) -> None:
    view.show_plan(make_plan(demo))
    before = {lane.place: lane.item for lane in view.lanes}
    assert demo.binding is not None
    changed = put(demo, "binding.strip_width", "2 1/4")
    place = [fabric.name for fabric in demo.fabrics].index(demo.binding.fabric)
    view.show_plan(make_plan(changed, view.plan))
    after = {lane.place: lane.item for lane in view.lanes}
    assert [at for at in after if after[at] is not before[at]] == [place]


def test_equal_pieces_on_hand_are_each_drawn(view: YardageView, demo: Project) -> None:
    both = demo
    for number in (len(demo.fabrics[0].on_hand), len(demo.fabrics[0].on_hand) + 1):
        both = add(both, "fabrics[0].on_hand")
        both = put(both, f"fabrics[0].on_hand[{number}].across", "3")
        both = put(both, f"fabrics[0].on_hand[{number}].along", "3")
    for _ in range(2):
        view.show_plan(make_plan(both, draft=True))
        titles = [item.title for item in items(view)]
        assert max(map(titles.count, titles)) == 2
        assert len(set(items(view))) == len(titles)


@pytest.mark.parametrize("words", [1.0, 2.0])
def test_a_bound_edge_alone_is_wider_than_its_title(
    qtbot: QtBot, demo: Project, words: float
) -> None:
    view = BindingView()
    qtbot.addWidget(view)
    view.set_theme(replace(SCREEN_LIGHT, words=words))
    view.show_plan(make_plan(demo, draft=True))
    [item] = view.scene().items()
    assert isinstance(item, DrawingItem)
    drawn = item.picture.drawing.width
    assert item.boundingRect().width() == pytest.approx(drawn, abs=2)
