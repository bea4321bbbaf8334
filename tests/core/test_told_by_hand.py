"""What is said of cloths by hand and at the cutting table is told: no word stays English."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from core.by_hand.edits import give_motif, put_down
from core.by_hand.holding import Holding, pick_up
from core.by_hand.sheets import hand_sheets, rect_of
from core.by_hand.spot import first_spot, said_of_spot
from core.by_hand.verdict import verdict
from core.cutting.changed import ChangedPlan
from core.cutting.cutting import begin
from core.cutting.kept import cutting_document, cutting_from
from core.cutting.miscut import Miscut, OtherSize, Spoilt, WrongWidth, may_be_wrong
from core.cutting.order import Order
from core.cutting.progress import on_table
from core.cutting.remaining import LaidAgain
from core.cutting.words import cloth_of_kit, cut_words, progress_words, sheet_words, to_buy
from core.edit import put, remove
from core.lengths import Units
from core.plan import Plan, make_plan
from core.project_file import load
from core.quilt import Kits, Project
from core.refusal import Refusal
from tests.core.by_hand.test_said import PATH, pin, pinned
from tests.core.demos import demo
from tests.nameless import nameless
from tests.stand_in import untold

pytestmark = pytest.mark.usefixtures("stand_in")
F = Fraction
FEW = 4  # tries of a lay: what is laid does not matter here
INCH = Units.INCHES


def planned(name: str = "harbour-lights") -> Plan:
    return make_plan(nameless(demo(name)), draft=True)


def by_hand() -> Project:
    return put(nameless(load(PATH)), "fabrics[0].flaws[0].word", "Ω")


def words_at_the_table(plan: Plan) -> Iterator[str]:
    cutting, table, units = begin(plan), plan.project.cutting_table, plan.project.units
    for cloth in cutting.cloths:
        yield from (cloth_of_kit(cutting, cloth), to_buy(cloth.order))
        while (cut := cloth.next_cut) is not None:
            words = cut_words(cloth.order, cut, units, table)
            yield from (words.do, words.hold, words.gives, words.mind)
            yield progress_words(cutting, cloth)
            yield sheet_words(cloth.order, cut.step.sheet, units)
            cloth = cloth.cut_once()
        yield progress_words(cutting, cloth)


def wrong(texts: Iterator[str]) -> dict[str, list[str]]:
    return {text: untold(text) for text in texts if untold(text)}


@pytest.mark.parametrize("name", ["harbour-lights", "tide-pool-runner"])
def test_every_cut_is_told(name: str) -> None:
    assert wrong(words_at_the_table(planned(name))) == {}


def test_every_cut_of_kits_is_told() -> None:
    project = nameless(demo("harbour-lights"))
    quilt = replace(project.quilt, copies=2, kits=Kits.EACH)
    plan = make_plan(replace(project, quilt=quilt), draft=True)
    assert begin(plan).kits == 2
    assert wrong(words_at_the_table(plan)) == {}


def miscuts(order: Order, done: int) -> Iterator[Miscut]:
    """What may go wrong after so many cuts, each kind of it."""
    table = on_table(order, done)
    for place, bit in enumerate(table.hand):
        yield OtherSize(place, bit.rect.across - F(1, 8), bit.rect.along)
    yield from (Spoilt(mark.label) for mark in table.pieces[:1])
    if may_be_wrong(order, done):
        width = order.cuts[done - 1].step.measure + F(1, 8)
        yield from (WrongWidth(width, keep=keep) for keep in (True, False))


def laid_again(order: Order, done: int, miscut: Miscut) -> Order:
    return LaidAgain(order, done, miscut, INCH, FEW).answer()


def test_what_went_wrong_and_what_comes_of_it_is_told() -> None:
    kinds = set()
    order = begin(planned()).cloths[0].order
    for done in range(len(order.cuts) + 1):
        for miscut in miscuts(order, done):
            kinds.add((type(miscut), done > 0 and order.cuts[done - 1].off.becomes))
            again = laid_again(order, done, miscut)
            titles = (sheet.title for sheet in again.sheets)
            assert wrong(iter((again.because, to_buy(again), *titles))) == {}
    assert len(kinds) > 4, "cloth, pieces and strips, cut from sections and pieces"


@pytest.mark.parametrize(
    ("done", "miscut"),
    [
        (0, OtherSize(99, F(1), F(1))),
        (0, OtherSize(0, F(0), F(1))),
        (0, Spoilt("Ω9")),
        (0, WrongWidth(F(1), keep=True)),
        (3, WrongWidth(F(999), keep=True)),
    ],
)
def test_a_miscut_that_cannot_be_is_refused_in_the_language(done: int, miscut: Miscut) -> None:
    order = begin(planned()).cloths[0].order
    with pytest.raises(Refusal) as refused:
        laid_again(order, done, miscut)
    assert untold(refused.value.sentence) == []


def test_a_changed_plan_on_what_is_left_is_told() -> None:
    plan = planned()
    cutting = begin(plan)
    begun = cutting.with_cloth(0, cutting.cloths[0].cut_once().cut_once())
    wider = make_plan(put(plan.project, "binding.strip_width", "2 1/2"), draft=True)
    for cloth in ChangedPlan(begun, wider, FEW).answer().cloths:
        titles = (sheet.title for sheet in cloth.order.sheets)
        assert wrong(iter((cloth.order.because, to_buy(cloth.order), *titles))) == {}


def _no_list(document: dict[str, Any]) -> None:
    document["planned"] = 3


def _no_number(document: dict[str, Any]) -> None:
    document["planned"][0]["bought"] = "1e999999"


def _no_word(document: dict[str, Any]) -> None:
    document["planned"][0]["steps"][0]["direction"] = "up"


def _no_cloth(document: dict[str, Any]) -> None:
    document["planned"] = []


def _short(document: dict[str, Any]) -> None:
    document["cloths"] = document["cloths"][:-1]


def _beyond(document: dict[str, Any]) -> None:
    document["cloths"][0]["done"] = [9999]


def _no_done(document: dict[str, Any]) -> None:
    document["cloths"][0]["done"] = ["Ω"]


@pytest.mark.parametrize(
    "spoil", [_no_list, _no_number, _no_word, _no_cloth, _short, _beyond, _no_done]
)
def test_why_a_kept_cutting_cannot_be_read_is_told(
    spoil: Callable[[dict[str, Any]], None],
) -> None:
    document = json.loads(json.dumps(cutting_document(begin(planned()))))
    spoil(document)
    with pytest.raises(Refusal) as refused:
        cutting_from(document)
    assert untold(refused.value.sentence) == []


def held_everywhere(plan: Plan) -> Iterator[Holding]:
    """Every piece here and there on every cloth it may lie on, both ways round."""
    for fabric_plan in plan.fabrics:
        for placed in fabric_plan.lay.placements:
            held = pick_up(plan, plan.label(placed))
            assert held is not None
            for sheet in hand_sheets(fabric_plan):
                wide = rect_of(fabric_plan, sheet).across
                for x in (F(0), F(7), wide - held.rect.across, wide):
                    for y in (F(0), F(19)):
                        at = replace(held, sheet=sheet, x=x, y=y)
                        yield from (at, replace(at, turned=not held.turned))


def test_every_verdict_is_told() -> None:
    plan = make_plan(by_hand(), draft=True)
    seen = {(held.label, verdict(plan, held)) for held in held_everywhere(plan)}
    assert wrong(found.sentence(INCH) for _, found in seen) == {}
    assert len({found.words for _, found in seen}) > 9, "good ones and faults of most kinds"


def test_where_a_spot_is_marked_is_told() -> None:
    plan = make_plan(by_hand(), draft=True)
    spots = [
        first_spot(plan, place, sheet)
        for place, fabric_plan in enumerate(plan.fabrics)
        for sheet in hand_sheets(fabric_plan)
    ]
    assert wrong(said_of_spot(plan, spot) for spot in spots) == {}


@pytest.mark.parametrize(
    "said",
    [
        pin("border 9 side"),
        pin(length="20"),
        pin("binding", copy=None),
        pin("binding", copy=None, length="60", run_copy=2),
        pin(copy=7),
        pin(on="on_hand[3]"),
    ],
)
def test_why_a_pin_is_left_aside_is_told(said: dict[str, Any]) -> None:
    plan = make_plan(pinned(by_hand(), said), draft=True)
    [aside] = plan.fabrics[0].by_hand.aside
    name = {"border", "side"} if "border 9" in said["name"] else set()
    assert set(untold(aside.why)) <= name, "a part that is not there keeps its name"


def test_why_flaws_and_motifs_are_left_aside_is_told() -> None:
    project = put(by_hand(), "fabrics[0].flaws[0].x", "50")
    project = put(project, "fabrics[2].pins", [pin("label", x="28", y="1")])
    asides = [
        aside.why
        for fabric in make_plan(project, draft=True).fabrics
        for aside in fabric.by_hand.aside
    ]
    assert len(asides) > 2
    assert wrong(iter(asides)) == {}


def test_what_cannot_be_done_by_hand_is_told() -> None:
    plan = make_plan(by_hand(), draft=True)
    other = put(plan.project, "fabrics[0].name", "Ω")
    held = pick_up(plan, "B1")
    assert held is not None
    with pytest.raises(Refusal) as refused:
        put_down(other, plan, held)
    assert untold(refused.value.sentence) == []
    strip = next(plan.label(p) for p in plan.fabrics[0].lay.placements if p.run_copy is not None)
    for path, label in (("fabrics[2].motifs[0]", "B1"), ("fabrics[0].motifs[0]", strip)):
        with pytest.raises(Refusal) as refused:
            give_motif(plan.project, plan, path, label)
        assert untold(refused.value.sentence) == []
    gone = remove(plan.project, "fabrics[2].motifs[0]")
    with pytest.raises(Refusal) as refused:
        give_motif(gone, plan, "fabrics[2].motifs[1]", held_on_tide(plan))
    assert untold(refused.value.sentence) == []


def held_on_tide(plan: Plan) -> str:
    return plan.label(plan.fabrics[2].lay.placements[0])
