"""Random edits of a project, as the window makes them."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from random import Random
from typing import TypeAlias

from app.assets import asset
from core import edit
from core.by_hand.edits import best_lay, mark_flaw, mark_motif, pin_or_unpin, put_down
from core.by_hand.holding import held_at, pick_up, turned
from core.by_hand.sheets import hand_sheets
from core.by_hand.spot import Spot
from core.lay.lay import Rect, Sheet
from core.lengths import Units
from core.plan import make_plan
from core.project_file import load
from core.quilt import Project

Change: TypeAlias = Callable[[Project], Project]

# The picture that a hand points at, of the project that every walk begins with.
SHOWN = make_plan(load(asset("harbour-lights.crossgrain")), draft=True)
LABELS = [SHOWN.label(one) for fabric in SHOWN.fabrics for one in fabric.lay.placements]
SINGLES = ("backing", "batting", "binding", "sleeve")
MOST_ITEMS = 6


def random_change(rng: Random) -> Change:
    """One edit; on some projects it is refused, and on some it changes nothing."""
    edits = (_length, _name, _choice, _units, _part, _item, _move, _by_hand, _carried, _start)
    return rng.choice(edits)(rng)


def _put(path: str, value: object) -> Change:
    """Set a value where its part is there."""
    part, _, index = path.partition(".")[0].partition("[")

    def change(project: Project) -> Project:
        found = getattr(project, part)
        there = len(found) > int(index[:-1]) if index else found is not None
        return edit.put(project, path, value) if there else project

    return change


def _length(rng: Random) -> Change:
    path = rng.choice(("quilt.width", "quilt.length", "borders[0].width", "fabrics[0].width"))
    inches = Fraction(rng.randint(8, 800), 16)
    return _put(path, f"{inches} in")


def _name(rng: Random) -> Change:
    path = rng.choice(("quilt.name", "fabrics[0].name", "fabrics[1].name"))
    name = "".join(rng.choice("abc é½🧵") for _ in range(rng.randint(1, 8)))
    return _put(path, name)


def _choice(rng: Random) -> Change:
    path, value = rng.choice(
        (
            ("binding.grain", "crosswise"),
            ("binding.grain", "bias"),
            ("binding.fold", "single"),
            ("borders[0].corners", "mitred"),
            ("fabrics[0].buy_more", False),
            ("fabrics[0].price_per_yard", "12.50"),
            ("quilt.copies", 3),
        )
    )
    return _put(path, value)


def _units(rng: Random) -> Change:
    units = rng.choice(list(Units))
    return lambda project: edit.set_units(project, units)


def _part(rng: Random) -> Change:
    part = rng.choice(SINGLES)

    def change(project: Project) -> Project:
        present = getattr(project, part) is not None
        return edit.remove(project, part) if present else edit.add_part(project, part)

    return change


def _item(rng: Random) -> Change:
    path, adds = rng.choice(("fabrics", "borders", "fabrics[0].on_hand")), rng.random() < 0.6
    place = rng.randrange(MOST_ITEMS)

    def change(project: Project) -> Project:
        key = path.rpartition(".")[2]
        items = getattr(project.fabrics[0] if key == "on_hand" else project, key)
        if adds and len(items) < MOST_ITEMS:
            return edit.add(project, path)
        # The first two fabrics stay, since other edits name them.
        least = 2 if key == "fabrics" else 0
        within = least <= place < len(items)
        return edit.remove(project, f"{path}[{place}]") if within else project

    return change


def _move(rng: Random) -> Change:
    place, by = rng.randrange(MOST_ITEMS), rng.choice((-1, 1))

    def change(project: Project) -> Project:
        if place >= len(project.borders):
            return project
        return edit.move(project, f"borders[{place}]", by)

    return change


def _carried(rng: Random) -> Change:
    """A piece moved, perhaps turned or to another cloth; pinned where it lies, or let go."""
    label = rng.choice(LABELS)
    held = pick_up(SHOWN, label)
    assert held is not None
    if rng.random() < 0.3:
        return lambda project: pin_or_unpin(project, SHOWN, label)
    sheet = rng.choice(hand_sheets(SHOWN.fabrics[held.place]))
    there = held_at(SHOWN, held, sheet, (rng.uniform(0, 30), rng.uniform(0, 60)), reach=1)
    put = turned(there) if rng.random() < 0.3 else there
    return lambda project: put_down(project, SHOWN, put)


def _start(rng: Random) -> Change:
    """The binding's start drawn along the edge, or put where its joins land best."""
    if rng.random() < 0.5:
        return _put("binding.start_at", f"{rng.randrange(200)} in")
    return lambda project: project if project.binding is None else edit.best_start(project)


def _by_hand(rng: Random) -> Change:
    """A pin, a flaw or a motif that a hand gives, takes away, or drops with all pins."""
    at = Rect(*(Fraction(rng.randint(1, 80), 4) for _ in range(4)))
    sheet = rng.choice((Sheet(), Sheet("on_hand[0]"), Sheet("on_hand[1]", 2)))
    spot = Spot(0, sheet, at)
    name = rng.choice(("border 1 side", "binding", "label"))
    pin = {"name": name, "copy": rng.randint(1, 3), "on": sheet.on, "x": f"{at.x} in", "y": "0"}

    def taken(project: Project) -> Project:
        path = "fabrics[0].flaws"
        flawed = project.fabrics and project.fabrics[0].flaws
        return edit.remove(project, f"{path}[0]") if flawed else project

    word, holder = rng.choice(("", "stain")), rng.choice((None, "label"))
    return rng.choice(
        (
            _put("fabrics[1].pins", [pin]),
            best_lay,
            taken,
            lambda project: mark_flaw(project, SHOWN, spot, word),
            lambda project: mark_motif(project, SHOWN, spot, holder),
        )
    )
