"""Pieces that span the bolt."""

from __future__ import annotations

from fractions import Fraction

from core.fabric import OnHand
from core.lay.problem import Cloth, LayProblem, Piece, Run
from core.lay.spanning import without_spanning
from core.lay.ticks import Task, task_of

F = Fraction
PANELS = Piece("panel", "c", F(40), F(60), 2)
RUN = Run("binding", "c", F(3), F(100), F(0), F(5))


def task(*pieces: Piece, on_hand: tuple[OnHand, ...] = ()) -> Task:
    cloth = Cloth("c", F(42), F(1), on_hand=on_hand)
    problem = LayProblem((cloth,), pieces, (RUN,))
    return task_of(cloth, problem.pieces, problem.runs)


def test_whole_panels_are_taken_out_with_their_length() -> None:
    rest, room = without_spanning(task(PANELS), 130)
    assert not rest.sizes
    assert room == 10
    assert without_spanning(task(PANELS), 119)[1] < 0


def test_a_panel_stays_where_something_may_lie_beside_it() -> None:
    one = task(PANELS, Piece("patch", "c", F(2), F(2)))
    assert without_spanning(one, 130) == (one, 130)


def test_a_panel_stays_where_a_piece_on_hand_may_hold_it() -> None:
    one = task(PANELS, on_hand=(OnHand(F(40), F(60)),))
    assert without_spanning(one, 130) == (one, 130)


def test_a_piece_that_may_turn_spans_only_if_it_does_both_ways() -> None:
    free = task(Piece("panel", "c", F(40), F(20), may_turn=True))
    assert without_spanning(free, 50) == (free, 50)
    # Within 39 there is no room for it to lie along the bolt.
    assert without_spanning(free, 39)[1] == 19


def test_pieces_of_different_sizes_are_taken_out_one_after_the_other() -> None:
    one = task(PANELS, Piece("long", "c", F(38), F(3)))
    rest, room = without_spanning(one, 200)
    assert not rest.sizes
    assert room == 200 - 120 - 3
