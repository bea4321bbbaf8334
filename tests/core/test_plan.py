"""Project -> Plan: every random project plans soundly or is refused with a sentence."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from fractions import Fraction
from itertools import product
from math import ceil

import pytest
from hypothesis import HealthCheck, given, seed, settings

from core.fabric import Fabric, Grain, OnHand
from core.lengths import Units, parse
from core.plan import make_plan
from core.quilt import Backing, Binding, Border, Corners, Kits, Project, Quilt, Sleeve
from core.refusal import Refusal
from tests.core.demos import DEMOS, demo
from tests.core.sound import assert_sound
from tests.strategies import projects

F = Fraction
RANDOM_PROJECTS = max(500, settings().max_examples)
PARTS = 4  # the first is planned in full, the others as drafts: the search is long, the road one


def assert_a_sentence(refusal: Refusal) -> None:
    """One plain line about one field of the project."""
    assert refusal.path
    assert refusal.sentence.strip() == refusal.sentence != ""
    assert len(str(refusal).splitlines()) == 1
    assert "{" not in refusal.sentence


@pytest.mark.parametrize("part", range(PARTS))
def test_random_projects_plan_soundly_or_are_refused_with_a_sentence(part: int) -> None:
    outcomes: Counter[str] = Counter()
    each = ceil(RANDOM_PROJECTS / PARTS)

    @seed(part)
    @settings(max_examples=each, suppress_health_check=[HealthCheck.too_slow])
    @given(projects())
    def plan_one(project: Project) -> None:
        try:
            plan = make_plan(project, draft=part > 0)
        except Refusal as refusal:
            outcomes["refused"] += 1
            assert_a_sentence(refusal)
            return
        outcomes["planned"] += 1
        assert_sound(plan)

    plan_one()
    assert outcomes.total() >= each
    # About 65 in 100; which are drawn depends on the modules loaded, and like ones come in rows.
    assert outcomes["planned"] >= each // 3
    assert outcomes["refused"] >= each // 20


@pytest.mark.parametrize("name", DEMOS)
def test_a_demo_project_plans_soundly(name: str) -> None:
    assert_sound(make_plan(demo(name)))


@pytest.mark.parametrize("name", DEMOS)
def test_the_same_project_gives_the_same_plan(name: str) -> None:
    assert make_plan(demo(name)) == make_plan(demo(name))


BOLT = Fabric("plum", F(43), F(1, 2), straightening=F(1))
DOTS = replace(BOLT, name="dots")
LAP = Project(
    Quilt("Lap", F(97, 2), F(121, 2)),
    (BOLT, DOTS),
    (Border("plum", F(2)), Border("dots", F(4), Corners.SQUARES, "plum")),
    Backing("dots"),
    binding=Binding("plum", F(5, 2)),
)


def test_copies_need_as_many_times_the_pieces_and_runs() -> None:
    one = make_plan(LAP)
    three = make_plan(replace(LAP, quilt=replace(LAP.quilt, copies=3)))
    assert_sound(three)
    for part in one.parts:
        if part.along is not None:
            assert three.part(part.name).count == 3 * part.count
    assert three.binding is not None
    assert one.binding is not None
    assert three.binding.needs == one.binding.needs
    assert three.fabrics[0].buy.along <= 3 * one.fabrics[0].buy.along


def test_a_seam_less_is_chosen_where_it_costs_no_more() -> None:
    # 34 × 44 in of backing and a sleeve: three panels would use 1 in less of 1 1/2 yd.
    wall = Project(
        Quilt("Wall", F(30), F(40)),
        (BOLT,),
        backing=Backing("plum", F(2)),
        sleeve=Sleeve("plum"),
    )
    plan = make_plan(wall)
    assert plan.backing is not None
    assert plan.backing.panels == 1
    assert plan.fabrics[0].buy.sale_text == "1 1/2 yd"


def test_cloth_on_hand_saves_buying() -> None:
    with_scraps = replace(BOLT, on_hand=(OnHand(F(42), F(40)),))
    plan = make_plan(replace(LAP, fabrics=(with_scraps, DOTS)))
    assert plan.fabrics[0].buy.along == 0
    assert plan.fabrics[0].buy.cost is None


def test_a_price_makes_a_cost_of_what_is_bought() -> None:
    plan = make_plan(replace(LAP, fabrics=(replace(BOLT, price_per_yard=F(12)), DOTS)))
    assert plan.fabrics[0].buy.cost == plan.fabrics[0].buy.along / 36 * 12


def test_a_price_per_metre_is_for_a_metre() -> None:
    metric = replace(BOLT, sale_unit=parse("10 cm"), price_per_metre=F(12))
    plan = make_plan(replace(LAP, fabrics=(metric, DOTS)))
    assert plan.fabrics[0].buy.cost == plan.fabrics[0].buy.along / parse("1 m") * 12
    assert plan.fabrics[0].buy.sale_text.endswith(" m")


def test_kits_cut_one_by_one_are_bought_so_many_times() -> None:
    one = make_plan(LAP)
    kits = make_plan(replace(LAP, quilt=replace(LAP.quilt, copies=6, kits=Kits.EACH)))
    assert_sound(kits)
    assert kits.parts == one.parts
    for each, all_of_it in zip(one.fabrics, kits.fabrics, strict=True):
        assert all_of_it.buy.along == 6 * each.buy.along
        assert all_of_it.buy.sale_text == f"6 × {each.buy.sale_text}"
        assert all_of_it.steps == each.steps


def test_kits_cut_one_by_one_share_out_what_is_on_hand() -> None:
    scraps = replace(BOLT, on_hand=(OnHand(F(42), F(40), 7),))
    quilt = replace(LAP.quilt, copies=3, kits=Kits.EACH)
    plan = make_plan(replace(LAP, quilt=quilt, fabrics=(scraps, DOTS)))
    assert_sound(plan)
    sheets = {sheet.copy for sheet, _ in plan.fabrics[0].lay.sheets if sheet.on != "bolt"}
    assert sheets <= {1, 2}


def test_many_kits_with_free_borders_are_laid_as_well_as_with_care() -> None:
    """Every way laid with all its tries buys no less than what the quicker choice found."""
    borders = tuple(Border(name, F(3), grain=Grain.EITHER) for name in ("plum", "dots"))
    kits = replace(LAP, quilt=replace(LAP.quilt, copies=12), borders=borders)
    bought = [fabric.buy.along for fabric in make_plan(kits).fabrics]
    for grains in product((Grain.CROSSWISE, Grain.LENGTHWISE), repeat=2):
        fixed = tuple(
            replace(border, grain=grain) for border, grain in zip(borders, grains, strict=True)
        )
        assert sum(bought) <= sum(
            fabric.buy.along for fabric in make_plan(replace(kits, borders=fixed)).fabrics
        )


def test_cloth_on_hand_that_is_not_enough_is_refused() -> None:
    little = replace(BOLT, on_hand=(OnHand(F(42), F(6)),), buy_more=False)
    with pytest.raises(Refusal, match="not enough for the") as refused:
        make_plan(replace(LAP, fabrics=(little, DOTS)))
    assert refused.value.path == "fabrics[0].on_hand"


def test_a_fabric_that_nothing_is_cut_from_is_not_bought() -> None:
    plan = make_plan(replace(LAP, fabrics=(BOLT, DOTS, replace(BOLT, name="spare"))))
    spare = plan.fabrics[2]
    assert spare.buy.along == spare.waste_share == 0
    assert not spare.lay.placements
    assert not spare.steps


def test_a_refusal_is_worded_in_the_units_of_the_project() -> None:
    wide = replace(LAP, binding=Binding("plum", F(50)))
    with pytest.raises(Refusal, match="50 in"):
        make_plan(wide)
    with pytest.raises(Refusal, match="127 cm"):
        make_plan(replace(wide, units=Units.CENTIMETRES))


def test_letters_go_on_past_z_without_i_and_o() -> None:
    fabrics = tuple(replace(BOLT, name=f"f{i}") for i in range(2))
    borders = tuple(Border("f0", F(1, 2), grain=Grain.LENGTHWISE) for _ in range(14))
    plan = make_plan(Project(Quilt("", F(10), F(10)), fabrics, borders))
    letters = [part.letter for part in plan.parts]
    assert letters[:9] == list("ABCDEFGHJ")
    assert letters[23:26] == ["Z", "AA", "AB"]
    assert_sound(plan)


def test_a_part_with_one_copy_has_no_number_in_its_label() -> None:
    plan = make_plan(LAP)
    singles = [part for part in plan.parts if part.count == 1]
    assert [part.label(1) for part in singles] == [part.letter for part in singles]
    many = next(part for part in plan.parts if part.count > 1)
    assert many.label(2) == f"{many.letter}2"


@pytest.mark.parametrize("name", DEMOS)
def test_a_draft_is_a_whole_plan_that_never_buys_less(name: str) -> None:
    draft, plan = make_plan(demo(name), draft=True), make_plan(demo(name))
    assert_sound(draft)
    assert [part.name for part in draft.parts] == [part.name for part in plan.parts]
    least, most = (sum(c.buy.along for c in made.fabrics) for made in (plan, draft))
    assert least <= most
