"""A piece in the hand: it snaps, is judged in words, and is pinned where it is put down."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

import pytest

from core.by_hand import edits
from core.by_hand.holding import (
    Holding,
    held_at,
    on_next_sheet,
    pick_up,
    stepped,
    turned,
)
from core.by_hand.spot import (
    Spot,
    drawn,
    first_spot,
    next_cloth,
    said_of_spot,
    spot_moved,
    spot_sized,
)
from core.by_hand.verdict import Verdict, verdict
from core.edit import put
from core.lay.lay import Placement, Rect, Sheet
from core.lengths import Units
from core.plan import Plan, make_plan
from core.quilt import Project
from core.refusal import Refusal
from tests.core.demos import demo
from tests.core.sound import assert_sound

F = Fraction
BOLT, HAND = Sheet(), Sheet("on_hand[0]")
NIGHT, LAMP, TIDE = 0, 1, 2


@pytest.fixture(scope="module")
def project() -> Project:
    return demo("harbour-lights")


@pytest.fixture(scope="module")
def plan(project: Project) -> Plan:
    # B1, B2, C1, C2 and G1 to G5 lie side by side on the bolt, 1/2 in by 62 1/2 in of 42 in.
    return make_plan(project)


def taken(plan: Plan, label: str) -> Holding:
    held = pick_up(plan, label)
    assert held is not None
    return held


def at(held: Holding, x: int, y: int = 0, sheet: Sheet = BOLT) -> Holding:
    return replace(held, x=F(x), y=F(y), sheet=sheet)


def placed(plan: Plan, label: str) -> Placement:
    return taken(plan, label).taken


def laid(project: Project, before: Plan, held: Holding) -> Plan:
    """The plan once the piece is put down, as the window asks for it."""
    after = make_plan(edits.put_down(project, before, held), edits.without_taken(before, held))
    assert_sound(after)
    return after


def test_a_piece_is_picked_up_where_it_lies(plan: Plan) -> None:
    held = taken(plan, "C1")
    assert held.rect == placed(plan, "C1").rect
    assert not held.moved
    assert pick_up(plan, "Z9") is None


def test_it_snaps_to_a_near_edge_else_to_a_mark(plan: Plan) -> None:
    held = taken(plan, "C2")
    edge = placed(plan, "G5").rect.right
    assert held_at(plan, held, BOLT, (float(edge) + 0.3, 0.2), 0.5).x == edge
    free = held_at(plan, held, BOLT, (float(edge) + 2.03, 1.3), 0.5)
    assert (free.x, free.y) == (edge + 2, F(5, 4))
    far = held_at(plan, held, BOLT, (37.4, 0.0), 0.5)
    assert far.rect.right == 42


def test_metric_projects_have_metric_marks(project: Project) -> None:
    metric = make_plan(replace(project, units=Units.CENTIMETRES), draft=True)
    held = held_at(metric, taken(metric, "C2"), BOLT, (33.04, 20.0), 0.0)
    assert (held.x / F(10, 254)) % 2 == 0


def test_arrow_steps_stop_at_an_edge_and_at_the_end_of_the_cloth(plan: Plan) -> None:
    held = at(taken(plan, "C2"), 33)
    assert stepped(plan, held, 1, 0, 2).x == F(133, 4)
    assert stepped(plan, held, -1, 0, 200).x == placed(plan, "G5").rect.right
    assert stepped(plan, held, 1, 0, 0).rect.right == 42
    assert stepped(plan, at(held, 0), -1, 0, 8).x == 0


def test_only_what_may_turn_turns(project: Project, plan: Plan) -> None:
    assert turned(taken(plan, "B1")) == taken(plan, "B1")
    either = make_plan(put(project, "binding.grain", "either"), draft=True)
    segment = taken(either, "G1")
    across = turned(segment).rect
    assert (across.across, across.along) == (segment.rect.along, segment.rect.across)


def test_a_piece_goes_round_the_cloths_of_its_fabric(plan: Plan) -> None:
    held = taken(plan, "D1")
    assert held.sheet == HAND
    there = on_next_sheet(plan, held)
    assert (there.sheet, there.x, there.y) == (BOLT, F(0), F(0))
    assert on_next_sheet(plan, there).sheet == HAND


def said(plan: Plan, held: Holding) -> Verdict:
    return verdict(plan, held)


@pytest.mark.parametrize(
    ("label", "x", "y", "good", "words"),
    [
        ("B1", 0, 0, True, "lies well"),
        ("B1", 32, 0, True, "lies well"),
        ("B1", 38, 0, False, "off the cloth"),
        ("B1", -1, 0, False, "off the cloth"),
        ("B1", 2, 0, True, "lies well; overlaps B2, laid again elsewhere"),
        ("C1", 31, 30, True, "lies well"),
    ],
)
def test_a_verdict_in_words(plan: Plan, label: str, x: int, y: int, good: bool, words: str) -> None:
    found = said(plan, at(taken(plan, label), x, y))
    assert (found.good, found.words) == (good, words)


def test_the_verdict_says_where_and_what_is_used(plan: Plan) -> None:
    found = said(plan, at(taken(plan, "B1"), 32, 10))
    assert found.sentence(Units.INCHES) == (
        "B1, 32 in from the near edge, 10 in from the straight end: lies well. "
        "72 1/2 in used, buy 2 1/8 yd: 57 % of it in pieces."
    )
    assert found.used == F(145, 2)


def test_a_piece_on_hand_ends(plan: Plan) -> None:
    assert said(plan, at(taken(plan, "D1"), 0, 6, HAND)).words == "off the cloth"


def test_a_flaw_and_a_pin_are_in_the_way(project: Project, plan: Plan) -> None:
    flawed = edits.mark_flaw(
        project, plan, Spot(NIGHT, BOLT, Rect(F(33), F(5), F(2), F(2))), "hole"
    )
    pinned = edits.pin_or_unpin(flawed, plan, "B2")
    now = make_plan(pinned, plan)
    assert said(now, at(taken(now, "B1"), 32)).words == "on a flaw (hole)"
    over = at(taken(now, "B1"), int(placed(now, "B2").rect.x) + 1)
    assert said(now, over).words == "overlaps B2, pinned there"
    assert not said(now, over).good


def test_pins_that_no_edge_to_edge_cut_frees_are_told(project: Project) -> None:
    either = put(project, "binding.grain", "either")
    pin = {"name": "binding", "length": "30"}
    wheel = [
        {**pin, "x": "0", "y": "0"},
        {**pin, "x": "30", "y": "0", "turned": True},
        {**pin, "x": "2 1/2", "y": "30"},
    ]
    plan = make_plan(put(either, "fabrics[0].pins", wheel), draft=True)
    assert len(plan.fabrics[NIGHT].by_hand.pins) == 3
    pinned = [placed for _, placed in plan.fabrics[NIGHT].by_hand.pins]
    free = next(
        p
        for p in plan.fabrics[NIGHT].lay.placements
        if p.name == "binding" and p not in pinned and max(p.rect.across, p.rect.along) > 28
    )
    held = replace(taken(plan, plan.label(free)), turned=True, x=F(0), y=F(5, 2))
    assert said(plan, held).words == "cannot be cut edge to edge beside what is pinned"
    assert said(plan, replace(held, x=F(39))).good


def test_a_motif_stays_in_its_piece(project: Project, plan: Plan) -> None:
    label = Rect(F(30), F(140), F(2), F(2))
    marked = edits.mark_motif(project, plan, Spot(TIDE, BOLT, label))
    plan = make_plan(marked, draft=True)
    given = edits.give_motif(marked, plan, "fabrics[2].motifs[0]", "J")
    now = make_plan(given, plan)
    held = taken(now, "J")
    assert held.rect.holds(label)
    assert said(now, replace(held, y=held.y + 40)).words == "leaves the motif that it must hold"
    with pytest.raises(Refusal, match="joined length"):
        edits.give_motif(marked, plan, "fabrics[2].motifs[0]", "H")
    with pytest.raises(Refusal, match="cut from this cloth"):
        edits.give_motif(marked, plan, "fabrics[2].motifs[0]", "B1")


def stayed(before: Plan, after: Plan, fabric: int) -> int:
    return len(
        set(before.fabrics[fabric].lay.placements) & set(after.fabrics[fabric].lay.placements)
    )


def test_what_is_put_down_stays_and_so_does_the_rest(project: Project, plan: Plan) -> None:
    after = laid(project, plan, at(taken(plan, "C1"), 31))
    assert placed(after, "C1").rect.x == 31
    assert stayed(plan, after, NIGHT) == len(plan.fabrics[NIGHT].lay.placements) - 1
    assert after.fabrics[NIGHT].buy == plan.fabrics[NIGHT].buy
    assert edits.is_pinned(after, "C1")
    assert not edits.is_pinned(after, "C2")


def test_a_segment_is_put_down_like_a_piece(project: Project, plan: Plan) -> None:
    after = laid(project, plan, at(taken(plan, "G3"), 36))
    there = [p.rect for p in after.fabrics[NIGHT].lay.placements if p.name == "binding"]
    assert Rect(F(36), F(0), F(5, 2), F(125, 2)) in there
    assert stayed(plan, after, NIGHT) >= len(plan.fabrics[NIGHT].lay.placements) - 1


def test_what_lay_there_makes_room(project: Project, plan: Plan) -> None:
    after = laid(project, plan, at(taken(plan, "C1"), 2))
    assert placed(after, "C1").rect.x == 2
    assert after.fabrics[NIGHT].buy == plan.fabrics[NIGHT].buy


def test_a_piece_is_taken_to_another_cloth(project: Project, plan: Plan) -> None:
    after = laid(project, plan, at(taken(plan, "D1"), 0, 0, BOLT))
    assert placed(after, "D1").sheet == BOLT


def test_moving_a_pinned_piece_again_moves_its_pin(project: Project, plan: Plan) -> None:
    once = edits.put_down(project, plan, at(taken(plan, "C1"), 31))
    now = make_plan(once, plan)
    twice = edits.put_down(once, now, at(taken(now, "C1"), 35))
    assert [pin.x for pin in twice.fabrics[NIGHT].pins] == [35]


def test_pins_come_and_go_and_the_best_lay_has_none(project: Project, plan: Plan) -> None:
    pinned = edits.pin_or_unpin(project, plan, "B1")
    now = make_plan(pinned, plan)
    assert edits.any_pins(pinned)
    assert placed(now, "B1") == placed(plan, "B1")
    assert edits.pin_or_unpin(pinned, now, "B1") == project
    assert edits.best_lay(pinned) == project
    assert edits.pin_or_unpin(project, plan, "Z1") == project


def test_a_rectangle_is_drawn_on_marks_and_ends_with_the_cloth(
    project: Project, plan: Plan
) -> None:
    spot = drawn(plan, NIGHT, BOLT, (40.02, 5.0), (50.0, 2.9))
    assert spot == Spot(NIGHT, BOLT, Rect(F(40), F(23, 8), F(2), F(17, 8)))
    assert drawn(plan, NIGHT, BOLT, (43.0, 5.0), (50.0, 9.0)) is None
    assert drawn(plan, NIGHT, BOLT, (3.0, 5.0), (3.01, 9.0)) is None


def test_what_is_marked_is_found_where_it_lies(project: Project, plan: Plan) -> None:
    spot = Spot(NIGHT, BOLT, Rect(F(33), F(5), F(2), F(2)))
    flawed = edits.mark_flaw(project, plan, spot)
    both = edits.mark_motif(flawed, plan, replace(spot, rect=Rect(*[F(1)] * 4)))
    plan = make_plan(both, draft=True)
    assert edits.said_at(plan, NIGHT, BOLT, (34.0, 6.0)) == "fabrics[0].flaws[0]"
    assert edits.said_at(plan, NIGHT, BOLT, (1.5, 1.5)) == "fabrics[0].motifs[0]"
    assert edits.said_at(plan, NIGHT, BOLT, (38.0, 6.0)) == ""
    assert edits.said_at(plan, NIGHT, HAND, (34.0, 6.0)) == ""


def test_of_kits_cut_one_by_one_a_pin_names_the_projects_own_piece(project: Project) -> None:
    on_hand = [{"across": "20", "along": "20"}, {"across": "42 1/2", "along": "9", "count": 2}]
    kits = put(project, "fabrics[1].on_hand", on_hand)
    kits = put(put(kits, "quilt.copies", 2), "quilt.kits", "each")
    plan = make_plan(kits, draft=True)
    held = taken(plan, "D1")
    assert held.sheet == HAND
    pinned = edits.put_down(kits, plan, held)
    assert pinned.fabrics[LAMP].pins[0].sheet == Sheet("on_hand[1]")
    assert placed(make_plan(pinned, draft=True), "D1") == held.taken


def test_a_spot_is_moved_and_sized_by_keys_and_stays_on_its_cloth(plan: Plan) -> None:
    spot = first_spot(plan, LAMP, HAND)
    assert spot.rect == Rect(F(0), F(0), F(1), F(1))
    moved = spot_moved(plan, spot, 1, 1, 8)
    assert moved.rect == Rect(F(1), F(1), F(1), F(1))
    assert spot_moved(plan, moved, 0, 1, 800).rect.end == 9
    assert spot_moved(plan, moved, -1, -1, 800).rect == spot.rect
    assert spot_sized(plan, moved, 1, -1).rect == Rect(F(1), F(1), F(3, 2), F(1, 2))
    assert spot_sized(plan, spot_sized(plan, moved, 0, -1), 0, -1).rect.along == F(1, 2)
    assert next_cloth(plan, spot) == first_spot(plan, LAMP, BOLT)
    assert next_cloth(plan, first_spot(plan, TIDE, BOLT)).place == NIGHT
    assert said_of_spot(plan, moved) == (
        "1 × 1 in on lamp gold, 1 in from the near edge, 1 in from the straight end"
    )


def test_what_a_plan_still_shows_may_be_gone_from_the_project(project: Project, plan: Plan) -> None:
    fewer = replace(project, fabrics=project.fabrics[1:])
    spot = Spot(NIGHT, BOLT, Rect(F(33), F(5), F(2), F(2)))
    flawed = edits.mark_flaw(project, plan, spot)
    shown = make_plan(flawed, draft=True)
    path = "fabrics[0].flaws[0]"
    gone = edits.unmark(flawed, shown, path)
    assert gone == project
    late: tuple[Callable[[], Project], ...] = (
        lambda: edits.put_down(fewer, plan, at(taken(plan, "C1"), 31)),
        lambda: edits.pin_or_unpin(fewer, plan, "C1"),
        lambda: edits.mark_flaw(fewer, plan, spot),
        lambda: edits.mark_motif(replace(project, fabrics=()), plan, spot),
        lambda: edits.unmark(gone, shown, path),
        lambda: edits.unmark(fewer, shown, path),
    )
    for edit in late:
        with pytest.raises(Refusal, match="changed meanwhile"):
            edit()
