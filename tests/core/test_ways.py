"""Ways: of all the ways to cut the parts, the one that buys the least is kept."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import product

import pytest

from core import cloth_lay, ways
from core.fabric import Fabric, Grain
from core.lay.lay import Lay
from core.lay.problem import LayProblem
from core.lay.solve import solve
from core.lay.stop import Stop
from core.plan import make_plan
from core.quilt import Backing, Binding, Border, Project, Quilt, Seams
from core.refusal import Refusal

F = Fraction
PLUM = Fabric("plum", F(43), F(1, 2), straightening=F(1))
DOTS = replace(PLUM, name="dots")
QUILT = Quilt("", F(60), F(75))


def bought(project: Project) -> Fraction:
    return sum((fabric.buy.along for fabric in make_plan(project).fabrics), F(0))


def test_the_backing_is_seamed_the_way_that_buys_less() -> None:
    backing = Backing("plum")
    chosen = bought(Project(QUILT, (PLUM,), backing=backing))
    each = [
        bought(Project(QUILT, (PLUM,), backing=replace(backing, seams=seams)))
        for seams in (Seams.LENGTHWISE, Seams.CROSSWISE)
    ]
    assert chosen == min(each) < max(each)


def test_every_combination_of_two_free_parts_is_tried() -> None:
    border, backing = Border("plum", F(5), grain=Grain.EITHER), Backing("plum")
    chosen = bought(Project(QUILT, (PLUM,), (border,), backing))
    fixed = [
        bought(
            Project(QUILT, (PLUM,), (replace(border, grain=grain),), replace(backing, seams=seams))
        )
        for grain, seams in product(
            (Grain.CROSSWISE, Grain.LENGTHWISE), (Seams.LENGTHWISE, Seams.CROSSWISE)
        )
    ]
    assert chosen == min(fixed)


def test_a_dearer_fabric_is_spared() -> None:
    # The border's way is free; the price decides nothing but its own cloth's share.
    dear = replace(PLUM, price_per_yard=F(100))
    border = Border("plum", F(5), grain=Grain.EITHER)
    assert bought(Project(QUILT, (dear,), (border,))) == bought(Project(QUILT, (PLUM,), (border,)))


def test_many_free_parts_are_chosen_one_after_the_other() -> None:
    borders = tuple(Border("plum", F(1), grain=Grain.EITHER) for _ in range(6))
    project = Project(QUILT, (PLUM, DOTS), borders, Backing("dots"))
    crosswise = tuple(replace(border, grain=Grain.CROSSWISE) for border in borders)
    assert bought(project) <= bought(replace(project, borders=crosswise))


def test_equal_price_and_length_are_decided_by_fewer_pieces() -> None:
    plan = make_plan(Project(Quilt("", F(145, 2), F(189, 2)), (PLUM,), backing=Backing("plum")))
    assert plan.backing is not None
    assert (plan.backing.panels, plan.backing.pieced_last) == (2, 1)


def test_matched_panels_start_on_the_same_point_of_the_print() -> None:
    repeated = replace(PLUM, repeat=F(12))
    plan = make_plan(Project(QUILT, (repeated,), backing=Backing("plum")))
    assert plan.backing is not None
    assert not plan.backing.last_resort
    assert {placed.rect.y % 12 for placed in plan.fabrics[0].lay.placements} == {0}


def test_cloth_that_gives_no_matched_lay_gives_panels_with_a_repeat_to_spare() -> None:
    # A border on the same cloth pushes the panels off the repeat; they are then cut longer.
    repeated = replace(PLUM, repeat=F(25, 2))
    plan = make_plan(Project(QUILT, (repeated,), (Border("plum", F(4)),), Backing("plum")))
    assert plan.backing is not None
    assert plan.backing.repeat == F(25, 2) or plan.backing.last_resort


def test_the_part_that_asked_for_what_cannot_be_laid_is_named() -> None:
    # The corner squares of a crosswise border are 31 in, too wide for their own narrow cloth.
    narrow = Fabric("narrow", F(30), F(0))
    from core.quilt import Corners

    border = Border("plum", F(61, 2), Corners.SQUARES, "narrow")
    with pytest.raises(Refusal, match='"narrow" gives 30 in') as refused:
        make_plan(Project(Quilt("", F(20), F(20)), (PLUM, narrow), (border,)))
    assert refused.value.path == "borders[0]"


def test_a_lay_that_the_checker_refuses_is_never_shown(monkeypatch: pytest.MonkeyPatch) -> None:
    def forgetful(problem: LayProblem, stop: Stop) -> Lay:
        lay = solve(problem, stop=stop)
        [cloth] = lay.cloths
        return Lay((replace(cloth, placements=cloth.placements[:-1]),))

    monkeypatch.setattr(cloth_lay, "solve", forgetful)
    project = Project(Quilt("never laid before", F(51), F(61)), (PLUM,), (Border("plum", F(3, 7)),))
    with pytest.raises(cloth_lay.LayFault, match="the lay of plum is wrong"):
        ways.choose(project)


def test_an_edit_lays_only_the_cloths_that_it_touches(monkeypatch: pytest.MonkeyPatch) -> None:
    laid: list[str] = []

    def watched(problem: LayProblem, stop: Stop) -> Lay:
        laid.extend(cloth.name for cloth in problem.cloths)
        return solve(problem, stop=stop)

    project = Project(Quilt("", F(52), F(63)), (PLUM, DOTS), (Border("dots", F(3)),), binding=None)
    project = replace(project, binding=Binding("plum", F(5, 2)))
    make_plan(project)
    monkeypatch.setattr(cloth_lay, "solve", watched)
    make_plan(replace(project, binding=Binding("plum", F(9, 4))))
    assert laid == ["plum"]
