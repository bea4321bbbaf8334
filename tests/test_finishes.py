"""Quilts finished in each way: they are kept in a file, planned, checked, drawn and said."""

from __future__ import annotations

import re
from fractions import Fraction
from functools import cache

import pytest

from app.commands.summary import summary
from app.packet.packet import packet_bytes
from core.lengths import INCHES_PER_MM
from core.plan import Plan, make_plan
from core.project_file import dumps, loads
from core.quilt import Seams
from core.sewing import sewing
from tests.core.sound import assert_sound
from tests.finishes import FINISHES

F = Fraction


@cache
def planned(name: str) -> Plan:
    return make_plan(FINISHES[name]())


@pytest.mark.parametrize("name", FINISHES)
def test_a_finish_is_kept_planned_drawn_and_printed(name: str) -> None:
    project = FINISHES[name]()
    assert loads(dumps(project)) == project
    assert_sound(planned(name))
    assert packet_bytes(planned(name)).startswith(b"%PDF")


def said(name: str, part: str) -> str:
    return " ".join(next(m.sentences for m in sewing(planned(name)) if m.title == part))


def test_blocks_come_round_a_coping_strip() -> None:
    first, second, third = planned("Coping").borders
    assert first.blocks == (13, 16)
    assert (second.outer_width, second.outer_length) == (F(121, 2), F(145, 2))
    assert [strip.name for strip in third.strips] == ["border 3 top and bottom"]
    notices = [n.text for n in planned("Coping").warnings if n.path == "borders[0]"]
    assert "which holds 13 × 16 blocks of 4 in" in notices[0]
    [longer] = [n.text for n in planned("Coping").warnings if n.path == "borders[2]"]
    assert "3 3/4 in wide at top and bottom, with none at the sides" in longer


def test_four_cloths_and_a_partial_seam() -> None:
    assert {part.fabric for part in planned("Pinwheel").parts if part.role == "border"} == {
        "plum", "dots", "tide", "moss",
    }  # fmt: skip
    assert "a partial seam" in said("Pinwheel", "Border 1")


def test_a_framed_quilt_has_its_seams_along_the_rollers_and_none_in_the_middle() -> None:
    plan = planned("Framed")
    assert plan.backing is not None
    assert plan.backing.seams is Seams.CROSSWISE
    assert plan.backing.widths == plan.backing.widths[::-1]
    assert (plan.backing.across, plan.backing.along) == (F(98), F(110))
    assert plan.batting is not None
    assert plan.batting.roll is not None
    assert plan.batting.roll.joins == 1
    assert plan.sleeve is not None
    assert plan.sleeve.parts == 2
    assert "the quilt hangs flat" in said("Framed", "Hanging sleeve")


def test_an_accent_strip_goes_between_the_panels() -> None:
    assert "goes between the first panel and the next" in said("Accent", "Backing")
    batting = planned("Accent").batting
    assert batting is not None
    assert batting.package is not None
    assert batting.package.name == "shop's own"


def test_a_piece_on_hand_is_turned() -> None:
    [placed] = planned("Turned").fabrics[1].lay.placements
    assert (placed.rect.across, placed.rect.along) == (F(78), F(58))


def test_metric_kits_are_metric_throughout() -> None:
    plan = planned("Kursdecke")
    for part in plan.parts:
        for length in (part.across, part.along or part.across):
            assert (length / INCHES_PER_MM * 2).denominator == 1, f"{part.name}: no half millimetre"
    text = "\n".join(
        (summary(plan), *(sentence for making in sewing(plan) for sentence in making.sentences))
    )
    assert "≈" not in text
    assert not re.search(r"\d in\b|\byd\b", text), text
    assert "12 × " in plan.fabrics[0].buy.sale_text
    assert plan.fabrics[0].buy.cost == plan.fabrics[0].buy.along / INCHES_PER_MM / 1000 * 18
