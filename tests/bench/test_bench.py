"""The benchmark measures what it says, on a small scale."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from functools import partial
from random import Random
from time import process_time
from types import FunctionType

import pytest

from core.fabric import Grain, OnHand
from core.lay.lay_file import problem_from_text
from core.lay.problem import Cloth, LayProblem, Piece, Run
from core.lay.stop import Stop
from tests.bench import report
from tests.bench.clock import CpuStop
from tests.bench.cpsat import Answer, cpsat_least
from tests.bench.doubling_rows import doubling_rows
from tests.bench.guillotine import is_guillotine
from tests.bench.jobs import each
from tests.bench.measure import measure
from tests.bench.options import QUICK
from tests.bench.perfect import perfect_cut, perfect_cuts
from tests.bench.perfect_rows import perfect_rows
from tests.bench.problem_json import problem_text
from tests.bench.published import published
from tests.bench.quilt_rows import quilt_rows
from tests.bench.quilts import random_quilts
from tests.bench.rivals import PACKS, installed, rectpack_best
from tests.bench.row import Row
from tests.bench.set_rows import set_rows
from tests.bench.tiny_rows import CLOTH as TINY_CLOTH
from tests.bench.tiny_rows import tiny_problems, tiny_rows
from tests.core.lay.exhaustive import least_along

F = Fraction
TINY = replace(
    QUICK,
    quilts=4,
    perfect=4,
    seconds=0.1,
    names=frozenset({"SCP1", "cs_ampl_book"}),
    doublings=1,
    tiny=4,
    cpsat_seconds=0.05,
    cpsat_sample=1,
)
CLOTH = Cloth("plum", F(42), F(9, 2))
ortools = pytest.mark.skipif(not installed("ortools"), reason="a development package")


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
    for problems in (random_quilts, perfect_cuts, tiny_problems):
        assert list(problems(5, 7)) == list(problems(5, 7))
        assert list(problems(5, 7)) != list(problems(5, 8))


def test_every_published_instance_names_its_best_length() -> None:
    instances = list(published())
    assert len(instances) > 100
    assert all(one.best > 0 and one.pieces > 0 for one in instances)


@pytest.mark.parametrize("rows", [quilt_rows, perfect_rows, set_rows, doubling_rows, tiny_rows])
def test_the_tables_have_a_value_in_every_row(rows: type) -> None:
    for row in rows(TINY):
        assert row.title
        assert row.measured
        assert (row.met is None) == (not row.bar) or row.measured == "not installed"


def test_a_problem_is_written_as_the_lay_command_reads_it() -> None:
    for problem in random_quilts(40, 3):
        assert problem_from_text(problem_text(problem)) == problem


def test_two_processes_answer_in_the_order_of_the_questions() -> None:
    assert list(each(partial(divmod, 17), range(1, 6), jobs=2)) == [
        divmod(17, number) for number in range(1, 6)
    ]


def test_a_stop_counts_the_time_that_this_process_computes() -> None:
    stop = CpuStop.after(0.02)
    assert not stop.reached(0)
    start = process_time()
    while not stop.reached(1):
        assert process_time() - start < 1
    assert process_time() - start >= 0.01
    assert CpuStop(3).reached(3)
    assert CpuStop(3).part(2) == CpuStop(3)


def test_a_cpu_stop_answers_all_that_a_stop_is_asked() -> None:
    questions = (FunctionType, classmethod, property)
    asked = {
        name
        for name, value in vars(Stop).items()
        if isinstance(value, questions) and not name.startswith("_")
    }
    assert {"after", "reached", "part"} <= asked <= vars(CpuStop).keys()


def test_the_time_to_a_lay_so_short_is_when_it_was_first_seen() -> None:
    [problem] = random_quilts(1, 2)
    one = measure(problem)
    assert one.reached(one.cloth.used_along) == one.shorter[-1][0]
    assert one.reached(one.shorter[0][1]) == one.first
    assert one.reached(F(1, 100)) is None


def test_a_pinwheel_cannot_be_cut_and_its_arms_without_one_can() -> None:
    pinwheel = [(0, 0, 2, 1), (2, 0, 1, 2), (1, 2, 2, 1), (0, 1, 1, 2)]
    assert not is_guillotine(pinwheel)
    assert all(is_guillotine(pinwheel[:i] + pinwheel[i + 1 :]) for i in range(4))
    assert is_guillotine([])


def test_the_table_names_the_bar_and_whether_it_is_met() -> None:
    rows = [Row("a | b", "3", "all", True, 1.4), Row("c", "2", "all", False), Row("d", "1")]
    text = report.markdown({"date": "today"}, rows)
    assert "| a / b | 3 | all | met | 1 |" in text
    assert "| c | 2 | all | not met |  |" in text
    assert "| d | 1 |  |  |  |" in text


@pytest.mark.skipif(not installed("rectpack"), reason="a development package")
def test_rectpack_makes_of_three_sets_what_it_is_known_to_make() -> None:
    assert PACKS == 144
    theirs = {"SCP1": 13, "C1P1": 20, "C1P2": 22}
    chosen = [one for one in published() if one.name in theirs]
    assert {one.name: rectpack_best(one)[0] for one in chosen} == theirs


@ortools
def test_cpsat_buys_what_the_run_model_needs() -> None:
    # Seven strips of 42 in less six joins come to 279 in: 17 1/2 in of cloth, four sale units.
    run = Run("binding", "plum", F(5, 2), F(278), F(5, 2), F(12))
    answer = cpsat_least(LayProblem((CLOTH,), runs=(run,)), 20)
    assert answer.bought == 18
    assert answer.guillotine


@ortools
def test_cpsat_is_not_asked_for_less_than_nothing() -> None:
    assert cpsat_least(LayProblem((CLOTH,)), 1, below=F(0)) == Answer(None, True, False, 0)


@ortools
@pytest.mark.parametrize("grain", [Grain.CROSSWISE, Grain.EITHER])
def test_cpsat_uses_what_is_on_hand_first(grain: Grain) -> None:
    cloth = replace(CLOTH, on_hand=(OnHand(F(30), F(9)),), straightening=F(1))
    run = Run("strip", "plum", F(3), F(84), F(3), F(12), grain)  # 30 + 30 + 30 − 2 × 3
    answer = cpsat_least(LayProblem((cloth,), runs=(run,)), 20)
    assert answer.bought == F(0)
    assert answer.found
    assert answer.closed
    assert answer.guillotine
    longer = replace(run, needs=F(85))
    assert cpsat_least(LayProblem((cloth,), runs=(longer,)), 20).bought == F(9, 2)


@ortools
def test_cpsat_turns_only_what_may_turn_and_finds_nothing_below_the_least() -> None:
    piece = Piece("patch", "plum", F(20), F(40))
    fixed, free = (LayProblem((CLOTH,), (replace(piece, may_turn=turn),)) for turn in (False, True))
    assert cpsat_least(fixed, 20).bought == F(81, 2)
    assert cpsat_least(free, 20).bought == F(45, 2)
    less = cpsat_least(free, 20, below=F(45, 2))
    assert less.bought is None
    assert less.closed


@ortools
def test_cpsat_buys_no_more_than_the_least_edge_to_edge_lay() -> None:
    for problem in tiny_problems(8, 5):
        answer = cpsat_least(problem, 20)
        assert answer.closed
        assert answer.bought is not None
        assert answer.bought <= TINY_CLOTH.bought(least_along(problem))
