"""What a hand does to a project: each an edit by path and value, as any other field's.

A plan's sheets are those of one lay. Where kits are cut one by one it has only a share
of what is on hand, so that places are told of the project's own list.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Final

from core import edit
from core.by_hand.holding import Holding, pick_up
from core.by_hand.said import HandFlaw, HandMotif, HandPin, Said, moved_sheet
from core.by_hand.spot import Spot
from core.language import told
from core.lay.lay import BOLT, Placement, Rect, Sheet
from core.lengths import show_size
from core.plan import Plan
from core.project_file.hand_form import said_document
from core.quilt import Project
from core.refusal import Refusal

_PATH: Final = re.compile(r"fabrics\[(\d+)\]\.(flaws|motifs)\[(\d+)\]")


def put_down(project: Project, plan: Plan, held: Holding) -> Project:
    """The project with the piece pinned where it is held; what pinned it before is gone.

    Raises `Refusal` if the plan is of a project that had another fabric there.
    """
    _require_same(project, plan, held.place)
    fabric_plan = plan.fabrics[held.place]
    sheet = _own_sheet(project, held.place, held.sheet)
    pin = _pin_of(held, sheet)
    others = _without_pin(project, held.place, fabric_plan.by_hand.pin_of(held.taken), plan)
    return _said(project, f"fabrics[{held.place}].pins", (*others, pin))


def _require_same(project: Project, plan: Plan, place: int) -> None:
    """A plan is shown a moment longer than its project: what it shows may be gone."""
    now, then = project.fabrics[place : place + 1], plan.project.fabrics[place : place + 1]
    if [fabric.name for fabric in now] != [fabric.name for fabric in then]:
        raise Refusal("fabrics", told("the quilt has changed meanwhile; wait for its picture"))


def _pin_of(held: Holding, sheet: Sheet) -> HandPin:
    taken = held.taken
    pin = HandPin(taken.name, held.x, held.y, sheet, held.turned)
    across, along = taken.rect.across, taken.rect.along
    if taken.turned:
        across, along = along, across
    if taken.run_copy is None:
        return replace(pin, copy=taken.copy, across=across, along=along)
    return replace(pin, length=across, run_copy=taken.run_copy)


def _without_pin(
    project: Project, place: int, number: int | None, plan: Plan
) -> tuple[HandPin, ...]:
    """The pins of a fabric but the one that the plan has at a number."""
    pins = project.fabrics[place].pins
    if number is None:
        return pins
    gone = plan.project.fabrics[place].pins[number]
    return tuple(pin for pin in pins if pin != gone)


def pin_or_unpin(project: Project, plan: Plan, label: str) -> Project:
    """The piece of that label pinned where it lies, or its pin taken out."""
    held = pick_up(plan, label)
    if held is None:
        return project
    number = plan.fabrics[held.place].by_hand.pin_of(held.taken)
    if number is None:
        return put_down(project, plan, held)
    _require_same(project, plan, held.place)
    left = _without_pin(project, held.place, number, plan)
    return _said(project, f"fabrics[{held.place}].pins", left)


def is_pinned(plan: Plan, label: str) -> bool:
    """Whether the piece of that label lies where a hand put it."""
    held = pick_up(plan, label)
    return held is not None and plan.fabrics[held.place].by_hand.pin_of(held.taken) is not None


def best_lay(project: Project) -> Project:
    """The project without pins: all lies again where that buys least."""
    for place, fabric in enumerate(project.fabrics):
        if fabric.pins:
            project = _said(project, f"fabrics[{place}].pins", ())
    return project


def any_pins(project: Project) -> bool:
    """Whether a pin is there to be dropped."""
    return any(fabric.pins for fabric in project.fabrics)


def mark_flaw(project: Project, plan: Plan, at: Spot, word: str = "") -> Project:
    """The project with a flaw marked on a cloth of the plan; may raise `Refusal`, as `put_down`."""
    _require_same(project, plan, at.place)
    flaw = HandFlaw(at.rect, _own_sheet(project, at.place, at.sheet), word)
    path = f"fabrics[{at.place}].flaws"
    return _said(project, path, (*project.fabrics[at.place].flaws, flaw))


def mark_motif(project: Project, plan: Plan, at: Spot, name: str | None = None) -> Project:
    """The project with a motif marked likewise, for a piece or for none as yet."""
    _require_same(project, plan, at.place)
    motif = HandMotif(name, at.rect, _own_sheet(project, at.place, at.sheet))
    path = f"fabrics[{at.place}].motifs"
    return _said(project, path, (*project.fabrics[at.place].motifs, motif))


def give_motif(project: Project, plan: Plan, path: str, label: str) -> Project:
    """The project with the motif at a path held by the piece of that label.

    Raises `Refusal` for a piece that is no piece, or is cut from another cloth.
    """
    held = pick_up(plan, label)
    if held is None or path.partition(".")[0] != f"fabrics[{held.place}]":
        raise Refusal(path, told("choose a piece that is cut from this cloth"))
    if held.taken.run_copy is not None:
        sentence = told("a strip of a joined length cannot hold a motif; choose a piece")
        raise Refusal(path, sentence)
    _require_there(project, plan, path)
    return edit.put(project, f"{path}.name", held.taken.name)


def unmark(project: Project, plan: Plan, path: str) -> Project:
    """The project without the flaw or motif at a path; raises `Refusal` if it is gone already."""
    _require_there(project, plan, path)
    return edit.remove(project, path)


def _require_there(project: Project, plan: Plan, path: str) -> None:
    """Raise `Refusal` unless the project still has what the plan has at a path."""
    place, kind, number = _PATH.findall(path)[0]
    _require_same(project, plan, int(place))
    now, then = (getattr(one.fabrics[int(place)], kind) for one in (project, plan.project))
    if now[int(number) :][:1] != then[int(number) :][:1]:
        raise Refusal(path, told("the quilt has changed meanwhile; wait for its picture"))


def said_at(plan: Plan, place: int, sheet: Sheet, at: tuple[float, float]) -> str:
    """The path of the flaw or motif that lies at a place of a cloth; "" for none."""
    fabric = plan.fabrics[place].fabric
    x, y = (Fraction(one) for one in at)
    point = Rect(x, y, Fraction(0), Fraction(0))
    regions = (
        *(("motifs", n, one.sheet, one.rect) for n, one in enumerate(fabric.motifs)),
        *(("flaws", n, one.sheet, one.rect) for n, one in enumerate(fabric.flaws)),
    )
    found = ((kind, n) for kind, n, on, rect in regions if on == sheet and rect.holds(point))
    return next((f"fabrics[{place}].{kind}[{number}]" for kind, number in found), "")


def said_words(plan: Plan, path: str) -> str:
    """What the flaw or motif at a path is, and how large."""
    [(place, kind, number)] = _PATH.findall(path)
    fabric = plan.fabrics[int(place)].fabric
    said: HandFlaw | HandMotif = getattr(fabric, kind)[int(number)]
    size = show_size(said.rect.across, said.rect.along, plan.project.units)
    return f"{said.called}, {size}"


def without_taken(plan: Plan, held: Holding) -> Plan:
    """The plan with the piece where it is held: what the next lay should be like.

    The next lay is made round the pin; without this, the piece would lie twice.
    """
    fabric_plan = plan.fabrics[held.place]
    laid = tuple(_as_held(p, held) if p == held.taken else p for p in fabric_plan.lay.placements)
    lay = replace(fabric_plan.lay, placements=laid)
    fabrics = list(plan.fabrics)
    fabrics[held.place] = replace(fabric_plan, lay=lay)
    return replace(plan, fabrics=tuple(fabrics))


def _as_held(placed: Placement, held: Holding) -> Placement:
    return replace(placed, sheet=held.sheet, rect=held.rect, turned=held.turned)


def _own_sheet(project: Project, place: int, sheet: Sheet) -> Sheet:
    """A sheet of one lay as the project's own list has it."""
    if sheet.on == BOLT:
        return sheet
    lays = project.quilt.lays
    left = [i for i, piece in enumerate(project.fabrics[place].on_hand) if piece.count // lays]
    return moved_sheet(sheet, dict(enumerate(left)))


def _said(project: Project, path: str, said: Sequence[Said]) -> Project:
    return edit.put(project, path, [said_document(one, project.units) for one in said])
