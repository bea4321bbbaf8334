"""Rows filled by subset sums."""

from __future__ import annotations

from fractions import Fraction
from random import Random

from core.lay.problem import Cloth, Piece
from core.lay.rows import can_fill_rows, fill_rows
from core.lay.ticks import task_of
from tests.core.lay.problems import DOTS

F = Fraction


def test_widths_that_add_up_to_the_cloth_share_a_row() -> None:
    # The widest first, one by one, would put 5 + 4 in a row and need three.
    pieces = tuple(Piece(str(w), "c", F(w), F(1), n) for w, n in ((5, 1), (4, 2), (3, 1), (2, 2)))
    task = task_of(Cloth("c", F(10), F(1)), pieces, ())
    packing = fill_rows(task, Random(0))
    assert packing.used * task.tick == 2
    assert len(packing.laid) == 6


def test_a_piece_that_fits_only_turned_is_turned() -> None:
    task = task_of(Cloth("c", F(10), F(1)), (Piece("p", "c", F(12), F(7), 2, True),), ())
    packing = fill_rows(task, Random(0))
    assert [one.turned for one in packing.laid] == [True, True]
    assert packing.used * task.tick == 24


def test_cloth_on_hand_is_left_to_the_other_searches() -> None:
    assert not can_fill_rows(task_of(DOTS, (Piece("p", "dots", F(2), F(7)),), ()))
