"""The staircase against planning at every mark of the ruler."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import pairwise
from random import Random

import pytest

from core.compare.choices import STRIP_WIDTH, USABLE_WIDTH, Choice, with_value
from core.compare.staircase import MARK, staircase
from core.edit import put, remove
from core.fabric import Fabric
from core.lengths import exact_text
from core.quilt import Backing, Binding, Border, Closing, Corners, Joins, Project, Quilt
from core.refusal import Refusal
from core.ways import choose
from tests.core.demos import demo

F = Fraction

# A stretch of marks about one step of each project; all marks would take minutes.
PROJECTS, MARKS = 100, 8


def random_project(rng: Random) -> Project:
    width = F(rng.randint(80, 360), 4)
    length = width + F(rng.randint(0, 80), 4)
    fabrics = tuple(
        Fabric(
            name,
            F(rng.choice((40, 43, 44, 58))),
            F(1, 2),
            rng.choice((F(9, 2), F(9), F(18))),
            F(12),
            straightening=F(rng.choice((0, 1))),
        )
        for name in ("plum", "dots")
    )
    border = Border(rng.choice(("plum", "dots")), F(rng.randint(6, 24), 4), Corners.BUTTED)
    return Project(
        Quilt("q", width, length),
        fabrics,
        (border,) if rng.random() < 0.3 else (),
        Backing("dots") if rng.random() < 0.3 else None,
        None,
        Binding(
            "plum",
            F(5, 2),
            joins=rng.choice(list(Joins)),
            closing=rng.choice(list(Closing)),
        ),
    )


def bought(project: Project, choice: Choice, place: int, width: F) -> tuple[F, ...]:
    """What a whole plan at that width buys; empty where there is none."""
    text = exact_text(width, project.units)
    try:
        return tuple(
            c.bought_along for c in choose(with_value(project, choice, place, text)).lay.cloths
        )
    except Refusal:
        return ()


@pytest.mark.parametrize("seed", range(PROJECTS))
def test_no_step_is_missed_and_none_invented(seed: int) -> None:
    rng = Random(seed)
    project = random_project(rng)
    choice, low, high = rng.choice(((STRIP_WIDTH, 1, 4), (USABLE_WIDTH, 38, 45)))
    stairs = staircase(project, choice, F(low), F(high))
    edges = [step.last for step in stairs.steps[:-1]] or [F(low + high, 2)]
    start = max(F(low), rng.choice(edges) - MARKS // 2 * MARK)
    for width in (start + number * MARK for number in range(MARKS)):
        step = next(step for step in stairs.steps if step.holds(min(width, F(high))))
        assert step.bought == bought(project, choice, stairs.place, min(width, F(high)))


def test_steps_follow_each_other_mark_by_mark_and_differ() -> None:
    project = put(demo("harbour-lights"), "fabrics[0].sale_unit", "1 in")
    stairs = staircase(project, STRIP_WIDTH, F(1), F(4))
    assert stairs.steps[0].first == 1
    assert stairs.steps[-1].last == 4
    for before, after in pairwise(stairs.steps):
        assert after.first == before.last + stairs.mark
        assert after.bought != before.bought


def test_the_present_step_holds_the_present_width() -> None:
    stairs = staircase(demo("harbour-lights"), STRIP_WIDTH, F(1), F(4))
    assert stairs.present_step is not None
    assert stairs.present_step.holds(F(5, 2))
    assert staircase(demo("harbour-lights"), STRIP_WIDTH, F(3), F(4)).present_step is None


def test_widths_the_wrong_way_round_are_refused() -> None:
    with pytest.raises(Refusal, match="narrower width first"):
        staircase(demo("harbour-lights"), STRIP_WIDTH, F(4), F(1))


def test_without_a_binding_there_is_no_staircase_of_strips() -> None:
    with pytest.raises(Refusal, match="add it first"):
        staircase(remove(demo("harbour-lights"), "binding"), STRIP_WIDTH, F(1), F(4))


def test_a_price_per_metre_counts_too() -> None:
    cloth = Fabric("ocker", F(43), F(1, 2), sale_unit=F(9), price_per_metre=F(20))
    project = Project(Quilt("Metre", F(40), F(50)), (cloth,), binding=Binding("ocker", F(5, 2)))
    steps = staircase(project, STRIP_WIDTH, F(2), F(5, 2)).steps
    # 1 m is 5000/127 in exactly.
    assert [s.cost for s in steps] == [F(20) * s.bought[0] * 127 / 5000 for s in steps]


def test_only_fabrics_that_are_not_bought_alike_move() -> None:
    cloth = Fabric("plum", F(43), F(1, 2), sale_unit=F(9, 2))
    fabrics = (cloth, replace(cloth, name="dots"))
    project = Project(
        Quilt("Two", F(60), F(80)),
        fabrics,
        binding=Binding("plum", F(5, 2)),
        backing=Backing("dots"),
    )
    stairs = staircase(project, STRIP_WIDTH, F(2), F(3))
    assert stairs.moving == (0,)
