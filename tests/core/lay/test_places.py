"""Lays with pins, flaws and motifs."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from core.fabric import Grain, OnHand
from core.lay.check import check
from core.lay.lay import THE_BOLT, Lay, Rect, Sheet
from core.lay.problem import Flaw, LayProblem, Motif, Piece, Pin, Run
from core.lay.refuse import require_layable
from core.lay.solve import Stop, solve
from core.refusal import Refusal
from tests.core.lay.problems import BINDING, DOTS, PLUM

F = Fraction
HAND = Sheet("on_hand[0]", 2)
PANEL = Piece("panel", "plum", F(20), F(30), 2)


def rect(x: int, y: int, across: int, along: int) -> Rect:
    return Rect(F(x), F(y), F(across), F(along))


def laid(problem: LayProblem, stop: Stop | None = None) -> Lay:
    require_layable(problem)
    lay = solve(problem, stop=stop)
    assert check(problem, lay) == ()
    return lay


def test_a_pinned_piece_lies_where_it_is_pinned_and_the_rest_round_it() -> None:
    problem = LayProblem((PLUM,), (PANEL,), (BINDING,), pins=(Pin("panel", F(22), F(0), copy=2),))
    [cloth] = laid(problem).cloths
    [second] = [p for p in cloth.placements if (p.name, p.copy) == ("panel", 2)]
    assert second.rect == rect(22, 0, 20, 30)
    assert cloth.bought_along == solve(replace(problem, pins=())).cloths[0].bought_along
    assert cloth.proved_least


def test_a_pin_far_along_buys_the_cloth_up_to_it() -> None:
    problem = LayProblem((PLUM,), (PANEL,), pins=(Pin("panel", F(0), F(100)),))
    [cloth] = laid(problem).cloths
    assert cloth.used_along == 130
    assert cloth.proved_least


def test_a_pinned_segment_counts_towards_its_run() -> None:
    run = replace(BINDING, needs=F(79), count=2)
    pin = Pin("binding", F(2), F(3), length=F(40), run_copy=2)
    [cloth] = laid(LayProblem((PLUM,), runs=(run,), pins=(pin,))).cloths
    lengths = sorted(p.rect.across for p in cloth.placements if p.run_copy == 2)
    assert len(lengths) == 2
    assert sum(lengths) >= 79 + F(5, 2)
    assert lengths[0] < 42


def test_a_run_may_be_pinned_whole() -> None:
    run = replace(BINDING, needs=F(40))
    pin = Pin("binding", F(0), F(0), length=F(40))
    [cloth] = laid(LayProblem((PLUM,), (PANEL,), (run,), pins=(pin,))).cloths
    assert [p.rect for p in cloth.placements if p.name == "binding"] == [
        Rect(F(0), F(0), F(40), F(5, 2))
    ]


def test_a_flaw_is_left_in_the_waste_where_that_costs_nothing() -> None:
    problem = LayProblem((PLUM,), (PANEL,), flaws=(Flaw("plum", rect(40, 3, 1, 1)),))
    [cloth] = laid(problem).cloths
    assert cloth.used_along == 30
    assert cloth.proved_least


def test_a_flaw_that_is_in_the_way_is_cut_round() -> None:
    problem = LayProblem((PLUM,), (PANEL,), flaws=(Flaw("plum", rect(20, 10, 2, 2)),))
    assert laid(problem).cloths[0].used_along == 30
    problem = replace(problem, flaws=(Flaw("plum", rect(10, 10, 22, 2)),))
    assert laid(problem).cloths[0].used_along == 42


def test_a_flaw_far_along_the_bolt_costs_nothing() -> None:
    problem = LayProblem((PLUM,), (PANEL,), (BINDING,), flaws=(Flaw("plum", rect(0, 900, 42, 9)),))
    [cloth] = laid(problem).cloths
    assert cloth.used_along == solve(replace(problem, flaws=())).cloths[0].used_along


def test_a_bound_counts_the_flaws_that_the_lay_must_reach_past() -> None:
    # The panels need 30 in, and before them all 10 in of the spoilt width come off.
    problem = LayProblem((PLUM,), (PANEL,), flaws=(Flaw("plum", rect(0, 0, 42, 10)),))
    [cloth] = laid(problem).cloths
    assert cloth.used_along == 40
    assert cloth.bound_along == 40
    assert cloth.proved_least


def test_a_motif_lies_inside_its_piece() -> None:
    motif = Motif("panel", rect(15, 12, 10, 6))
    [cloth] = laid(LayProblem((PLUM,), (PANEL,), motifs=(motif,))).cloths
    assert cloth.used_along <= 60
    at_the_edge = Motif("panel", rect(0, 0, 3, 3))
    [cloth] = laid(LayProblem((PLUM,), (PANEL,), motifs=(at_the_edge,))).cloths
    assert cloth.used_along == 30


def test_a_motif_piece_turns_if_it_may_and_must() -> None:
    turning = replace(PANEL, may_turn=True)
    motif = Motif("panel", rect(5, 2, 28, 6))
    with pytest.raises(Refusal, match="motif is 28 in × 6 in"):
        laid(LayProblem((PLUM,), (PANEL,), motifs=(motif,)))
    [cloth] = laid(LayProblem((PLUM,), (turning,), motifs=(motif,))).cloths
    assert any(placed.turned for placed in cloth.placements)


def test_pins_flaws_and_motifs_go_on_cloth_on_hand_too() -> None:
    piece = Piece("square", "dots", F(10), F(10), 5)
    problem = LayProblem(
        (DOTS,),
        (piece,),
        pins=(Pin("square", F(5), F(5), HAND),),
        flaws=(Flaw("dots", rect(0, 0, 20, 2), Sheet("on_hand[0]")),),
        motifs=(Motif("square", rect(9, 21, 2, 2), HAND),),
    )
    [cloth] = laid(problem).cloths
    assert cloth.bought_along == 0


def test_no_time_at_all_still_gives_a_legal_lay() -> None:
    problem = LayProblem(
        (PLUM,),
        (PANEL,),
        (BINDING,),
        pins=(Pin("panel", F(3), F(7)),),
        flaws=(Flaw("plum", rect(30, 3, 4, 4)),),
        motifs=(Motif("panel", rect(10, 50, 4, 4)),),
    )
    assert laid(problem, Stop.after(0)).unplaced == ()


GOOD = LayProblem(
    (PLUM, replace(DOTS, buy_more=False)),
    (PANEL, Piece("square", "dots", F(10), F(10))),
    (BINDING, replace(BINDING, name="side", grain=Grain.LENGTHWISE)),
)
PINNED = Pin("panel", F(0), F(0))
SEGMENT = Pin("binding", F(0), F(50), length=F(42))
FLAW = Flaw("plum", rect(0, 0, 2, 2))
MOTIF = Motif("panel", rect(10, 10, 5, 5))


def pins(*some: Pin, flaws: tuple[Flaw, ...] = ()) -> LayProblem:
    return replace(GOOD, pins=some, flaws=flaws)


def motifs(*some: Motif) -> LayProblem:
    return replace(GOOD, motifs=some)


@pytest.mark.parametrize(
    ("problem", "path", "said"),
    [
        (pins(replace(PINNED, name="quilt")), "pins[0].name", "no piece or run"),
        (pins(replace(PINNED, x=F(23))), "pins[0].x", "reaches to 43 in"),
        (pins(replace(PINNED, y=F(-1))), "pins[0].y", "move it onto the cloth"),
        (pins(replace(PINNED, turned=True)), "pins[0].turned", "may not turn"),
        (pins(replace(PINNED, copy=3)), "pins[0].copy", "from 1 to 2"),
        (pins(replace(PINNED, length=F(3))), "pins[0].length", "leave this out"),
        (pins(replace(PINNED, sheet=HAND)), "pins[0].on", "has no on_hand[0], copy 2"),
        (pins(replace(PINNED, sheet=Sheet("table"))), "pins[0].on", "has no table"),
        (pins(Pin("square", F(0), F(0))), "pins[0].on", "may be bought"),
        (pins(Pin("square", F(0), F(21), HAND)), "pins[0].y", "reaches to 31 in"),
        (pins(PINNED, replace(PINNED, x=F(19))), "pins[1]", 'lies over the pinned "panel"'),
        (pins(PINNED, flaws=(FLAW,)), "pins[0]", "lies on a flaw"),
        (
            pins(replace(PINNED, copy=1), replace(PINNED, copy=1, y=F(40))),
            "pins[1].copy",
            'copy 1 of "panel" is pinned already',
        ),
        (
            pins(*(replace(PINNED, y=F(y)) for y in (0, 30, 60))),
            "pins[2].name",
            "only 2",
        ),
        (pins(replace(SEGMENT, length=None)), "pins[0].length", "how long"),
        (pins(replace(SEGMENT, length=F(5))), "pins[0].length", "at least 12 in"),
        (pins(replace(SEGMENT, length=F(43))), "pins[0].x", "reaches to 43 in"),
        (pins(replace(SEGMENT, copy=1)), "pins[0].copy", "numbers the segments"),
        (pins(replace(SEGMENT, run_copy=2)), "pins[0].run_copy", "from 1 to 1"),
        (pins(replace(SEGMENT, turned=True)), "pins[0].turned", "lie crosswise"),
        (pins(replace(SEGMENT, name="side")), "pins[0].turned", "lie lengthwise"),
        (replace(GOOD, flaws=(replace(FLAW, cloth="velvet"),)), "flaws[0].cloth", "no cloth"),
        (replace(GOOD, flaws=(replace(FLAW, rect=rect(41, 0, 2, 2)),)), "flaws[0].x", "43 in"),
        (replace(GOOD, flaws=(replace(FLAW, sheet=HAND),)), "flaws[0].on", "has no on_hand"),
        (motifs(replace(MOTIF, name="binding")), "motifs[0].name", "only a piece"),
        (motifs(replace(MOTIF, name="quilt")), "motifs[0].name", "no piece or run"),
        (motifs(replace(MOTIF, rect=rect(0, 0, 21, 5))), "motifs[0].across", "smaller motif"),
        (motifs(replace(MOTIF, rect=rect(40, 0, 3, 5))), "motifs[0].x", "43 in"),
        (motifs(MOTIF, replace(MOTIF, rect=rect(12, 12, 9, 9))), "motifs", "move a motif"),
    ],
)
def test_what_cannot_be_minded_is_refused_in_one_sentence(
    problem: LayProblem, path: str, said: str
) -> None:
    with pytest.raises(Refusal) as refused:
        require_layable(problem)
    assert refused.value.path == path
    assert said in refused.value.sentence


def test_a_pinwheel_of_pins_is_refused() -> None:
    cloth = replace(PLUM, on_hand=(OnHand(F(3), F(3)),))
    sizes = ((2, 1), (1, 2), (2, 1), (1, 2), (1, 1))
    corners = ((0, 0), (2, 0), (1, 2), (0, 1), (1, 1))
    pieces = tuple(Piece(f"p{i}", "plum", F(a), F(b)) for i, (a, b) in enumerate(sizes))
    some = tuple(Pin(f"p{i}", F(x), F(y), Sheet("on_hand[0]")) for i, (x, y) in enumerate(corners))
    with pytest.raises(Refusal, match="no edge-to-edge cuts free all that is pinned"):
        require_layable(LayProblem((cloth,), pieces, pins=some))


def test_the_run_that_cannot_be_finished_is_not_pinned_either() -> None:
    run = Run("strip", "dots", F(8), F(200), F(2), F(12))
    pin = Pin("strip", F(0), F(0), HAND, length=F(20))
    problem = LayProblem((replace(DOTS, buy_more=False),), runs=(run,), pins=(pin,))
    lay = laid(problem)
    assert [(gone.name, gone.count) for gone in lay.unplaced] == [("strip", 1)]
    assert lay.cloths[0].placements == ()


def test_the_same_place_on_the_bolt_and_on_hand_are_two_places() -> None:
    piece = Piece("square", "dots", F(10), F(10), 2)
    both = (Pin("square", F(0), F(0), HAND), Pin("square", F(0), F(0), THE_BOLT))
    [cloth] = laid(LayProblem((DOTS,), (piece,), pins=both)).cloths
    assert len({placed.sheet for placed in cloth.placements}) == 2
