"""Renewal: every change keeps the cloth whole, can be taken back, and leads to legal lays."""

from __future__ import annotations

from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.lay.check import check
from core.lay.problem import LayProblem
from core.lay.pursue import Pursuit
from core.lay.renew import Renewal
from core.lay.solve import solve
from core.lay.start import Packing, pack
from core.lay.stop import Stop
from core.lay.ticks import Task, task_of
from core.lay.tree import Node, Tree
from core.lay.tries import tries
from tests.bench.published import published
from tests.core.lay.problems import lay_problems

INSTANCES = {one.name: one for one in published()}


def task_for(problem: LayProblem) -> Task:
    cloth = problem.cloths[0]
    pieces = tuple(piece for piece in problem.pieces if piece.cloth == cloth.name)
    return task_of(cloth, pieces, tuple(run for run in problem.runs if run.cloth == cloth.name))


def first_lay(task: Task) -> Packing | None:
    order, rules = next(tries(task, Random(0), lambda: None))
    return pack(task, order, rules, task.plenty)


def picture(node: Node) -> tuple[object, ...]:
    return node.across, node.along, node.thing, *(picture(part) for part in node.parts)


def fills(node: Node) -> bool:
    """Whether parts make up their node exactly, and no two of them are free."""
    if not node.parts:
        return True
    side = sum(part.along if node.crosswise else part.across for part in node.parts)
    other = {part.across if node.crosswise else part.along for part in node.parts}
    return (
        side == (node.along if node.crosswise else node.across)
        and other == {node.across if node.crosswise else node.along}
        and sum(part.thing == -1 for part in node.parts) < 2
        and all(part.up is node and fills(part) for part in node.parts)
    )


@settings(deadline=None, max_examples=60)
@given(st.integers(0, 10**6))
def test_changes_keep_the_cloth_whole_and_can_be_taken_back(seed: int) -> None:
    rng = Random(seed)
    tree = Tree([Node(20, 30, None), Node(40, 50, None)])
    for _ in range(30):
        before = [picture(root) for root in tree.roots]
        mark = tree.mark()
        for _ in range(rng.randint(1, 5)):
            cells = list(tree.free)
            if cells and rng.random() < 0.7:
                cell = rng.choice(cells)
                size = rng.randint(1, cell.across), rng.randint(1, cell.along)
                tree.lay(cell, 0, *size, crosswise=rng.random() < 0.5)
            elif tree.leaves:
                leaf = rng.choice(list(tree.leaves))
                tree.clear(leaf if leaf.up is None or rng.random() < 0.5 else leaf.up)
        assert all(fills(root) for root in tree.roots)
        ends = [*tree.free, *tree.leaves]
        assert sum(end.across * end.along for end in ends) == 20 * 30 + 40 * 50
        if rng.random() < 0.5:
            tree.take_back(mark)
            assert [picture(root) for root in tree.roots] == before


@settings(deadline=None, max_examples=60)
@given(lay_problems(), st.integers(0, 1000))
def test_what_is_laid_anew_is_all_there(problem: LayProblem, seed: int) -> None:
    task = task_for(problem)
    packing = first_lay(task)
    if packing is None or packing.used < 2:
        return
    renewal = Renewal(task, Random(seed))
    renewal.start_from(packing)
    assert renewal.done
    renewal.aim(packing.used + 1)
    assert renewal.steps(50) or not renewal.done
    if renewal.done:
        laid = renewal.packing().laid
        pieces = [one for one in laid if one.item < len(task.sizes)]
        assert len(pieces) == sum(size.copies for size in task.sizes)
        for item, strip in enumerate(task.strips, len(task.sizes)):
            for copy in range(1, strip.copies + 1):
                segments = [one for one in laid if (one.item, one.run_copy) == (item, copy)]
                lengths = [one.along if one.turned else one.across for one in segments]
                assert sum(lengths) - len(lengths) * strip.loss >= strip.demand


@pytest.mark.parametrize("name", ["C2P1", "J1", "N2", "SCP12"])
def test_published_sets_are_laid_at_their_optimum(name: str) -> None:
    """The optimum and its source are in the set's file."""
    instance = INSTANCES[name]
    lay = solve(instance.problem, stop=Stop(2000))
    assert not check(instance.problem, lay)
    assert lay.cloths[0].used_along == instance.best


def test_a_pursuit_gives_only_lays_that_use_less() -> None:
    task = task_for(INSTANCES["C4P1"].problem)
    best = first_lay(task)
    assert best is not None
    pursuit = Pursuit(task, Random(0))
    for _ in range(20):
        found = pursuit.follow(best, best.used, task.inches(0), 50)
        if found is not None:
            assert found.used < best.used
            best = found
