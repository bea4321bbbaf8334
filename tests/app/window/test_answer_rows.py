"""The answer in words: every part, cut and figure of the plan has its row."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from app.window import answer_rows
from core import edit
from core.by_hand.edits import pin_or_unpin
from core.finish.batting import plan_batting
from core.lengths import Units, typeset
from core.plan import Plan, make_plan
from core.quilt import Batting, Project
from core.sewing import sewing


@pytest.fixture
def plan(demo: Project) -> Plan:
    return make_plan(demo)


def test_every_fabric_has_a_row_with_what_to_buy(plan: Plan) -> None:
    rows = answer_rows.to_buy(plan)
    assert [row.cells[0] for row in rows] == [*(f.name for f in plan.project.fabrics), "batting"]
    for row, fabric_plan in zip(rows, plan.fabrics, strict=False):
        assert fabric_plan.buy.sale_text.split(" ")[-1] in row.cells[1]
        assert row.cells[3].endswith("%")


def test_a_fabric_that_nothing_is_cut_from_is_not_to_be_bought(demo: Project) -> None:
    plan = make_plan(edit.add(demo, "fabrics"))
    assert answer_rows.to_buy(plan)[3].cells[:2] == ("cloth", "nothing: not used")


def test_batting_without_a_package_is_bought_by_the_roll(plan: Plan) -> None:
    huge = replace(plan, batting=plan_batting(Batting(), Fraction(192), Fraction(202)))
    assert answer_rows.to_buy(huge)[-1].cells[1] == typeset(
        "16 3/4 yd by the roll, 96 in wide, 2 joins in each"
    )


def test_every_part_has_a_row_led_by_its_letter(plan: Plan) -> None:
    rows = answer_rows.to_cut(plan)
    assert [(row.key, row.cells[1], row.cells[3]) for row in rows] == [
        (part.letter, part.name, str(part.count)) for part in plan.parts
    ]


def test_the_list_of_pieces_says_which_are_pinned(demo: Project) -> None:
    free = make_plan(demo, draft=True)
    pinned = make_plan(pin_or_unpin(demo, free, "B1"), free, draft=True)
    names = {row.key: row.cells[1] for row in answer_rows.pieces(pinned) if row.key}
    assert (names["B1"], names["B2"]) == ("border 2 side (pinned)", "border 2 side")


def test_every_cut_is_listed_once_under_its_cloth(plan: Plan) -> None:
    rows = answer_rows.cut_order(plan)
    steps = [row for row in rows if not row.heading]
    assert len(steps) == sum(len(fabric_plan.steps) for fabric_plan in plan.fabrics)
    headings = [row.cells[0] for row in rows if row.heading]
    assert len(headings) == sum(len(fabric_plan.lay.sheets) for fabric_plan in plan.fabrics)
    assert rows[0].heading


def test_sewing_lists_every_sentence_under_its_part(plan: Plan) -> None:
    rows = answer_rows.sewing_order(plan)
    makings = sewing(plan)
    assert [row.cells[0] for row in rows if row.heading] == [one.title for one in makings]
    sentences = [typeset(text) for one in makings for text in one.sentences]
    assert [row.cells[1] for row in rows if not row.heading] == sentences


def test_every_notice_leads_to_its_field(plan: Plan) -> None:
    assert [(row.key, row.cells) for row in answer_rows.warnings(plan)] == [
        (notice.path, (notice.text,)) for notice in plan.warnings
    ]


def test_figures_are_in_the_units_of_the_project(demo: Project) -> None:
    plan = make_plan(edit.set_units(demo, Units.CENTIMETRES))
    figures = {row.cells[0]: row.cells[1] for row in answer_rows.figures(plan)}
    assert figures["Quilt with its borders"].endswith(" cm")
    assert figures["Binding: strips"].startswith(f"{plan.binding.strips}," if plan.binding else "-")


def test_a_quilt_without_parts_has_its_size_as_its_only_figure(demo: Project) -> None:
    bare = replace(demo, borders=(), backing=None, batting=None, binding=None)
    bare = replace(bare, sleeve=None, label=None)
    assert [row.cells[0] for row in answer_rows.figures(make_plan(bare))] == [
        "Quilt with its borders"
    ]


@pytest.mark.parametrize(("proved", "words"), [(True, "proved least"), (False, "not proved least")])
def test_whether_less_could_be_bought_is_said_in_words(
    plan: Plan, proved: bool, words: str
) -> None:
    first = plan.fabrics[0]
    told = replace(first, lay=replace(first.lay, proved_least=proved))
    rows = answer_rows.figures(replace(plan, fabrics=(told, *plan.fabrics[1:])))
    assert ("night sky: to buy", words) in [row.cells for row in rows]


def test_a_border_has_its_finished_and_its_cut_width(plan: Plan) -> None:
    widths = ("Border 2: width", typeset("4 in finished, 4 1/2 in cut"))
    assert widths in [row.cells for row in answer_rows.figures(plan)]
