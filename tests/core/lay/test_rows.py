"""Rows filled by subset sums."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction
from random import Random

import pytest

from core.lay.completion import in_rows
from core.lay.problem import Cloth, Piece
from core.lay.rows import can_fill_rows, fewer_rows, fill_rows
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


def test_pieces_of_one_length_are_put_into_a_row_less() -> None:
    # Falkenauer's triplets are made like this: each row is full, with three pieces.
    rows = [(50, 26, 24), (47, 28, 25), (40, 31, 29), (38, 37, 25), (36, 34, 30)]
    widths = Counter(width for row in rows for width in row)
    pieces = tuple(Piece(str(w), "c", F(w), F(2), n) for w, n in widths.items())
    task = task_of(Cloth("c", F(100), F(1)), pieces, ())
    packing = fewer_rows(task, 6 * 2, 1000, lambda: False)
    assert packing is not None
    assert packing.used == 5 * 2
    assert Counter(task.sizes[one.item].across for one in packing.laid) == widths


def test_rows_that_cannot_be_fewer_stay_as_they_are() -> None:
    task = task_of(Cloth("c", F(10), F(1)), (Piece("p", "c", F(6), F(2), 3),), ())
    assert fewer_rows(task, 3 * int(2 / task.tick), 1000, lambda: False) is None


@pytest.mark.parametrize("effort", [0, 1])
def test_a_completion_ends_with_its_effort(effort: int) -> None:
    assert in_rows([6, 5, 4, 3, 2], 10, 2, effort, lambda: False) is None
