"""The benchmark measures what it says, on a small scale."""

from __future__ import annotations

from random import Random

from tests.bench import tables
from tests.bench.perfect import perfect_cut, perfect_cuts
from tests.bench.published import published
from tests.bench.quilts import random_quilts


def test_a_perfect_cut_has_no_waste() -> None:
    for with_run in (False, True):
        problem, least = perfect_cut(Random(3), 9, with_run=with_run)
        area = sum(piece.across * piece.along for piece in problem.pieces)
        for run in problem.runs:
            area += run.strip * run.needs  # its joins take what is left
        assert area <= problem.cloths[0].usable_width * least
        if not with_run:
            assert area == problem.cloths[0].usable_width * least


def test_the_same_seed_gives_the_same_problems() -> None:
    assert list(random_quilts(5, 7)) == list(random_quilts(5, 7))
    assert list(perfect_cuts(5, 7)) == list(perfect_cuts(5, 7))
    assert list(random_quilts(5, 7)) != list(random_quilts(5, 8))


def test_every_published_instance_names_its_best_length() -> None:
    instances = list(published())
    assert len(instances) > 100
    assert all(one.best > 0 and one.pieces > 0 for one in instances)


def test_the_tables_have_a_value_in_every_row() -> None:
    rows = [
        *tables.quilts(4, 1),
        *tables.perfect(4, 1, 0.1),
        *tables.sets(0.05, frozenset({"SCP1", "cs_ampl_book"})),
    ]
    assert all(title and value for title, value in rows)
