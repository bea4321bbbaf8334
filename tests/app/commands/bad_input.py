"""Bad input, row by row: what is wrong, and the path that the one sentence must name."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

Document = dict[str, Any]
ASSETS = Path(__file__).resolve().parents[3] / "assets"


@dataclass(frozen=True)
class Row:
    """A file that is wrong in one way. `path` is the field that must be named, if there is one."""

    what: str
    command: str
    path: str
    text: Callable[[], str]

    def __str__(self) -> str:
        return f"{self.command}: {self.what}"


def project() -> Document:
    read: Document = json.loads((ASSETS / "harbour-lights.crossgrain").read_text("utf-8"))
    return read


def lay() -> Document:
    return {
        "format": "crossgrain-lay",
        "version": 1,
        "cloths": [
            {
                "name": "plum", "usable_width": "42", "sale_unit": "4 1/2", "straightening": "1",
                "on_hand": [{"across": "20", "along": "30", "count": 2}], "buy_more": True,
            }
        ],
        "pieces": [
            {
                "name": "A", "cloth": "plum", "across": "8 1/2", "along": "40", "count": 2,
                "may_turn": False,
            }
        ],
        "runs": [
            {
                "name": "binding", "cloth": "plum", "strip": "2 1/2", "needs": "210",
                "join_loss": "2 1/2", "shortest": "12", "grain": "crosswise", "count": 1,
            }
        ],
    }  # fmt: skip


GOOD: dict[str, Callable[[], Document]] = {"plan": project, "lay": lay}
MISSING = object()


def holder_of(document: Document, path: str) -> tuple[Any, Any]:
    """The object or list that holds the value at `path`, and its key or index there."""
    *way, last = re.findall(r"[a-z_]+|\d+", path)
    holder: Any = document
    for step in way:
        holder = holder[int(step) if step.isdigit() else step]
    return holder, int(last) if last.isdigit() else last


def spoilt(command: str, *changes: tuple[str, object]) -> str:
    """A good document with values changed, added, or (`MISSING`) taken out, as JSON."""
    document = GOOD[command]()
    for path, value in changes:
        holder, key = holder_of(document, path)
        if value is MISSING:
            del holder[key]
        else:
            holder[key] = value
    return json.dumps(document)


def row(command: str, what: str, path: str, value: object, named: str = "") -> Row:
    return Row(f"{what} at {path}", command, named or path, lambda: spoilt(command, (path, value)))


def changed(command: str, what: str, named: str, *changes: tuple[str, object]) -> Row:
    return Row(what, command, named, lambda: spoilt(command, *changes))


def whole(command: str, what: str, path: str, text: str) -> Row:
    return Row(what, command, path, lambda: text)


LENGTHS = {
    "plan": (
        "quilt.width", "quilt.length", "fabrics[0].width", "fabrics[1].sale_unit",
        "fabrics[1].on_hand[0].across", "fabrics[1].on_hand[0].along", "borders[1].width",
        "borders[0].seam", "backing.seam", "backing.narrowest_panel", "backing.accent_width",
        "batting.roll_width", "batting.roll_sale_unit", "batting.packages[0].width",
        "binding.strip_width",
        "binding.seam", "sleeve.depth", "sleeve.split_above", "label.width", "label.length",
    ),
    "lay": (
        "cloths[0].usable_width", "cloths[0].sale_unit", "cloths[0].on_hand[0].across",
        "cloths[0].on_hand[0].along", "pieces[0].across", "pieces[0].along", "runs[0].strip",
        "runs[0].needs",
    ),
}  # fmt: skip
LENGTHS_OR_NONE = {
    "plan": (
        "quilt.edge_thickness", "fabrics[0].selvage", "fabrics[0].straightening",
        "borders[0].mitre_margin", "borders[0].squaring", "backing.overage",
        "batting.overage", "binding.allowance", "sleeve.shorter", "sleeve.gap", "label.hem",
    ),
    "lay": ("cloths[0].straightening", "runs[0].join_loss", "runs[0].shortest"),
}  # fmt: skip
COUNTS = {
    "plan": ("quilt.copies", "fabrics[1].on_hand[0].count"),
    "lay": ("cloths[0].on_hand[0].count", "pieces[0].count", "runs[0].count"),
}
FLAGS = {
    "plan": ("fabrics[0].one_way_print", "fabrics[0].buy_more"),
    "lay": ("cloths[0].buy_more", "pieces[0].may_turn"),
}
CHOICES = {
    "plan": (
        "units", "quilt.kits", "borders[0].corners", "borders[0].grain", "borders[0].joins",
        "borders[0].first", "borders[0].piecing", "borders[0].sizing",
        "backing.seams", "backing.panels", "backing.frame", "batting.source", "sleeve.shape",
        "binding.fold", "binding.grain", "binding.joins", "binding.closing",
    ),
    "lay": ("runs[0].grain",),
}  # fmt: skip
NAMES = {
    "plan": (
        "fabrics[0].name", "borders[0].fabric", "borders[1].corner_fabric", "backing.fabric",
        "binding.fabric", "sleeve.fabric", "label.fabric", "batting.packages[0].name",
    ),
    "lay": ("cloths[0].name", "pieces[0].name", "pieces[0].cloth", "runs[0].name", "runs[0].cloth"),
}  # fmt: skip
OBJECTS = {
    "plan": (
        "quilt", "fabrics[0]", "fabrics[0].shrinkage", "fabrics[1].on_hand[0]", "borders[0]",
        "backing", "batting", "binding", "sleeve", "label", "batting.packages[0]",
    ),
    "lay": ("cloths[0]", "cloths[0].on_hand[0]", "pieces[0]", "runs[0]"),
}  # fmt: skip
LISTS = {
    "plan": ("fabrics", "fabrics[0].on_hand", "borders", "batting.packages"),
    "lay": ("cloths", "cloths[0].on_hand", "pieces", "runs"),
}
OPTIONAL = {  # keys that a file may leave out
    "plan": {
        "quilt.copies", "quilt.kits", "fabrics[1].on_hand[0].count", "fabrics[0].one_way_print",
        "fabrics[0].buy_more", "fabrics[0].shrinkage", "fabrics[0].on_hand", "backing", "batting",
        "binding", "sleeve", "label", "borders", "borders[0].mitre_margin", "borders[0].squaring",
        "backing.panels", "backing.frame", "backing.narrowest_panel", "backing.accent_width",
        "batting.source", "batting.roll_width", "batting.roll_sale_unit", "batting.packages",
        "batting.packages[0]",
        "sleeve.shape", "sleeve.shorter", "sleeve.split_above", "sleeve.gap", "label.hem",
        "borders[0].first", "borders[0].piecing",
        "borders[0].sizing", "borders[1].corner_fabric",
        "fabrics[0]", "fabrics[1].on_hand[0]", "borders[0]", "fabrics",
    },
    "lay": {
        "cloths[0].straightening", "cloths[0].on_hand[0].count", "pieces[0].count",
        "runs[0].count", "cloths[0].buy_more", "pieces[0].may_turn", "runs[0].grain",
        "cloths[0].on_hand", "pieces", "runs", "cloths", "cloths[0]", "cloths[0].on_hand[0]",
        "pieces[0]", "runs[0]",
    },
}  # fmt: skip
NAN = float("nan")
WRONG_COUNTS: tuple[object, ...] = (0, -1, 1.5, NAN, "2", True, None, 10**9, [])
WRONG_FLAGS: tuple[object, ...] = (0, "true", None, NAN)
WRONG_CHOICES: tuple[object, ...] = ("sideways", "", 1, None, NAN, [])
WRONG_NAMES: tuple[object, ...] = ("", "  ", 7, NAN, [], "two\nlines", "x" * 81)
WRONG_OBJECTS: tuple[object, ...] = ("x", 3, [], NAN)
WRONG_LISTS: tuple[object, ...] = ("x", 3, {}, NAN)


def _field_rows(command: str) -> list[Row]:
    """Unknown, missing, wrong-typed, negative, zero, huge, NaN and non-text values."""
    rows = [row(command, "zero", path, "0") for path in LENGTHS[command]]
    for path in LENGTHS[command] + LENGTHS_OR_NONE[command]:
        rows += [
            row(command, "a negative length", path, "-2"),
            row(command, "a huge length", path, "1000 1/64 in"),
            row(command, "a length beyond all measure", path, "9" * 50),
            row(command, "NaN", path, NAN),
            row(command, "the text NaN", path, "NaN"),
            row(command, "a number that is no text", path, 12.5),
            row(command, "null", path, None),
            row(command, "a list", path, ["2"]),
            row(command, "ambiguous text", path, "1,250"),
            row(command, "empty text", path, ""),
        ]
    for path in COUNTS[command]:
        rows += [row(command, f"the count {value!r}", path, value) for value in WRONG_COUNTS]
    for path in FLAGS[command]:
        rows += [row(command, f"the flag {value!r}", path, value) for value in WRONG_FLAGS]
    for path in CHOICES[command]:
        rows += [row(command, f"the choice {value!r}", path, value) for value in WRONG_CHOICES]
    for path in NAMES[command]:
        rows += [row(command, f"the name {value!r}", path, value) for value in WRONG_NAMES]
    for path in OBJECTS[command]:
        rows += [row(command, f"{value!r}, no object,", path, value) for value in WRONG_OBJECTS]
        rows.append(row(command, "an unknown key", f"{path}.colour", "plum"))
    for path in LISTS[command]:
        rows += [row(command, f"{value!r}, no list,", path, value) for value in WRONG_LISTS]
    groups = (LENGTHS, LENGTHS_OR_NONE, COUNTS, FLAGS, CHOICES, NAMES, OBJECTS, LISTS)
    rows += [
        row(command, "nothing", path, MISSING)
        for group in groups
        for path in group[command]
        if path not in OPTIONAL[command]
    ]
    rows.append(row(command, "an unknown key", "colour", "plum"))
    return rows


def _file_rows(command: str) -> list[Row]:
    """Files that are no such file at all."""
    other = {"plan": "lay", "lay": "plan"}[command]
    deep = '{"a":' * 20_000 + "1" + "}" * 20_000
    return [
        whole(command, "an empty file", "", ""),
        whole(command, "blanks", "", " \n \n"),
        whole(command, "no JSON", "", "quilt: 50 by 60"),
        whole(command, "half a file", "", json.dumps(GOOD[command]())[:200]),
        whole(command, "a list", "", "[]"),
        whole(command, "a number that is far too long", "", '{"a": ' + "9" * 5000 + "}"),
        whole(command, "nesting without end", "", deep),
        whole(command, "another format", "format", json.dumps(GOOD[other]())),
        whole(command, "no format", "format", "{}"),
        whole(command, "a key written twice", "version", '{"version": 1, "version": 1}'),
        row(command, "a newer version", "version", 2),
        row(command, "a version of text", "version", "1"),
        row(command, "the version 0", "version", 0),
    ]


SIDE = {"name": "border 2 side", "copy": 1, "x": "0", "y": "0"}
SPOT = {"x": "2", "y": "2", "across": "3", "along": "3"}
PART_ROWS = [
    row("plan", "a pin beside the cloth", "fabrics[0].pins", [{**SIDE, "x": "40"}],
        "fabrics[0].pins[0].x"),
    row("plan", "a piece pinned twice", "fabrics[0].pins", [SIDE, {**SIDE, "x": "20"}],
        "fabrics[0].pins[1].copy"),
    row("plan", "two pins at one place", "fabrics[0].pins", [SIDE, {**SIDE, "copy": 2}],
        "fabrics[0].pins[1]"),
    changed("plan", "a pin on a flaw", "fabrics[0].pins[0]",
            ("fabrics[0].pins", [SIDE]), ("fabrics[0].flaws", [SPOT])),
    row("plan", "a pin of no piece", "fabrics[0].pins", [{**SIDE, "name": ""}],
        "fabrics[0].pins[0].name"),
    row("plan", "a pin on no such thing", "fabrics[0].pins", [{**SIDE, "on": "the table"}],
        "fabrics[0].pins[0].on"),
    row("plan", "a flaw of no size", "fabrics[0].flaws", [{**SPOT, "along": "0"}],
        "fabrics[0].flaws[0].along"),
    row("plan", "a motif larger than its piece", "fabrics[2].motifs",
        [{**SPOT, "name": "label", "across": "20"}], "fabrics[2].motifs[0].across"),
    row("plan", "pins that are no list", "fabrics[0].pins", {}),
    row("plan", "a strip wider than the cloth", "binding.strip_width", "43"),
    changed(
        "plan", "a bias strip wider than the cloth gives", "binding.grain",
        ("binding.strip_width", "35"), ("binding.grain", "bias"),
    ),
    changed("plan", "seams wider than the strip", "binding.strip_width", ("binding.seam", "2")),
    changed(
        "plan", "seams wider than a single-fold strip", "binding.strip_width",
        ("binding.fold", "single"), ("binding.seam", "1"),
    ),
    changed("plan", "seams wider than the panels", "backing.seam", ("backing.seam", "20")),
    changed(
        "plan", "a border that no cloth gives in one piece", "borders[1].width",
        ("borders[1].width", "45"), ("borders[1].grain", "lengthwise"),
    ),
    changed(
        "plan", "a border whose joins use up its strips", "borders[0].width",
        ("borders[0].width", "45"),
    ),
    changed(
        "plan", "cloth on hand that is not enough", "fabrics[0].on_hand",
        ("fabrics[0].buy_more", False),
    ),
    changed(
        "plan", "a little cloth on hand that is not enough", "fabrics[1].on_hand",
        ("fabrics[1].buy_more", False), ("fabrics[1].on_hand[0].along", "2"),
    ),
    changed("plan", "no seams on narrow cloth", "backing.seams", ("backing.seams", "none")),
    changed(
        "plan", "a one-way print laid sideways", "backing.seams", ("backing.seams", "crosswise")
    ),
    changed("plan", "a quilt too narrow for a sleeve", "sleeve",
            ("quilt.width", "3/4"), ("borders", [])),
    changed("plan", "a sleeve wider than the cloth", "sleeve.depth", ("sleeve.depth", "30")),
    row("plan", "a fabric of no name here", "binding.fabric", "velvet"),
    changed("plan", "two fabrics of one name", "fabrics[1].name", ("fabrics[1].name", "night sky")),
    row("plan", "selvages as wide as the cloth", "fabrics[0].selvage", "21.5"),
    row("plan", "a border on the bias", "borders[0].grain", "bias"),
    row("plan", "a shrinkage of all there is", "fabrics[0].shrinkage.along", "100%"),
    row("plan", "a shrinkage without its sign", "fabrics[0].shrinkage.along", "3"),
    row("plan", "a price that is no text", "fabrics[0].price_per_yard", 12.5),
    changed(
        "plan", "a coping strip that would be negative", "borders[0].to_width",
        ("borders[0].sizing", "size"), ("borders[0].to_width", "40"),
    ),
    changed("plan", "a coping strip for no blocks", "borders[0].block",
            ("borders[0].sizing", "blocks")),
    row("plan", "a strip of a fabric of no name here", "borders[0].top_fabric", "velvet"),
    row("plan", "a block of no size", "borders[0].block", "0"),
    row("plan", "a package of no name in the table", "batting.package", "huge"),
    row("plan", "an overage that is no length", "backing.overage_top", "wide"),
    row("plan", "no overage", "backing.overage", MISSING),
    row("plan", "an accent strip of no cloth here", "backing.accent_fabric", "velvet"),
    changed(
        "plan", "an accent strip as wide as the backing", "backing.accent_width",
        ("backing.accent_fabric", "lamp gold"), ("backing.accent_width", "60"),
    ),
    changed(
        "plan", "two packages of one name", "batting.packages[1].name",
        ("batting.packages[1].name", "craft"),
    ),
    changed(
        "plan", "a repeat longer than the cloth", "fabrics[2].repeat",
        ("fabrics[2].repeat", "100"), ("fabrics[2].buy_more", False),
        ("fabrics[2].on_hand", [{"across": "42", "along": "90", "count": 3}]),
    ),
    row("plan", "a label larger than the quilt", "label.length", "75"),
    row("plan", "a price that is no number", "fabrics[0].price_per_metre", "a lot"),
    changed(
        "plan", "a price by the yard and another by the metre", "fabrics[0].price_per_metre",
        ("fabrics[0].price_per_yard", "12"), ("fabrics[0].price_per_metre", "13"),
    ),
    row("plan", "ten thousand copies", "quilt.copies", 10_000),
    row("plan", "a negative price", "fabrics[0].price_per_yard", "-1"),
    changed("plan", "no fabrics", "borders[0].fabric", ("fabrics", [])),
    row("plan", "too many borders", "borders", [{}] * 51),
    row("lay", "a strip wider than the cloth", "runs[0].strip", "43"),
    row("lay", "a piece wider than the cloth", "pieces[0].across", "43"),
    row("lay", "a piece that fits only turned", "pieces[0].across", "42 1/2"),
    row("lay", "segments longer than the cloth is wide", "runs[0].shortest", "43"),
    row("lay", "joins that use up the strips", "runs[0].join_loss", "42"),
    row("lay", "a cloth of no name here", "pieces[0].cloth", "velvet"),
    row("lay", "no cloth", "cloths", []),
    changed("lay", "two cloths of one name", "cloths[1].name",
            ("cloths", [lay()["cloths"][0]] * 2)),
    changed("lay", "two pieces of one name", "pieces[1].name",
            ("pieces", [lay()["pieces"][0]] * 2)),
    row("lay", "a run called like a piece", "runs[0].name", "A"),
    row("lay", "a run on the bias", "runs[0].grain", "bias"),
    changed("lay", "more pieces than one plan has", "pieces", ("pieces[0].count", 1999),
            ("runs[0].count", 20)),
]  # fmt: skip

ROWS = [
    row
    for command in ("plan", "lay")
    for row in (*_file_rows(command), *_field_rows(command))
] + PART_ROWS  # fmt: skip
