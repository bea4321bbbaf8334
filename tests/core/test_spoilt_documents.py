"""A demo document spoilt at random is planned, or refused in one sentence with the right path."""

from __future__ import annotations

import json
from copy import deepcopy
from dataclasses import dataclass
from typing import Any

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from core.lengths import LengthError, parse
from core.plan import Plan, make_plan
from core.project_file import loads, to_document
from core.refusal import Refusal
from tests.core.demos import DEMOS, demo

Document = dict[str, Any]
DOCUMENTS = [to_document(demo(name)) for name in DEMOS]
TOP = ("quilt", "fabrics", "borders", "backing", "batting", "binding", "sleeve", "label", "outline")

WRONG_KINDS = st.sampled_from(
    [None, True, False, 0, 3, -1, 2.5, float("nan"), float("inf"), [], {}, [1], {"a": "b"}, 10**40]
)
TEXTS = st.sampled_from(
    ("", " ", "0", "-1", "1001", "9" * 40, "NaN", "inf", "1,250", "1/0", "x", "plum", "{x}", "%s",
     "50%", "\n", "\x00", "½", "1/64", "0.0001", "999", "12 cm", "2 yd", "sideways", "bias")
) | st.text(max_size=12)  # fmt: skip


# Keys that a file may leave out, and keys that may be null.
OPTIONAL = {
    "copies", "count", "one_way_print", "buy_more", "on_hand", "borders", "fabrics",
    "mitre_margin", "name", "kits", "first", "piecing", "squaring", "sizing", "width_rule", "bias",
    "method", "source", "tails", "tuck", "first_face", "finishing", "accent", "kind", "scrappy",
    "order", "cloths", "seed",
    "panels", "frame", "narrowest_panel", "accent_width", "roll_width",
    "roll_sale_unit", "packages", "shape", "shorter", "split_above", "gap", "hem",
    "start_side", "least_to_corner", "start_at",
    "cloths_seam", "turn_in", "stitching", "step", "overlap", "off_middle", "tolerance",
    "most_short_strips",
    "scallops_left", "scallops_bottom", "scallops_right", "scallops_top",
    "depth_left", "depth_bottom", "depth_right", "depth_top",
}  # fmt: skip
NULLABLE = {
    "price_per_yard", "price_per_metre", "repeat", "shrinkage", "corner_fabric", "backing",
    "batting", "binding", "sleeve", "to_width", "to_length", "block", "left_fabric",
    "top_fabric", "right_fabric", "bottom_fabric", "finished_width", "shortest", "reach",
    "back_fabric", "tail", "gap", "turned", "overlap", "start", "cloth", "shows", "cord", "bias",
    "tails", "tuck", "accent", "scrappy", "label", "accent_fabric", "package", "ease",
    "overage_top", "overage_right", "overage_bottom", "overage_left",
    "start_side", "least_to_corner", "start_at",
    "cloths_seam", "turn_in", "stitching", "step", "off_middle", "hem", "tolerance",
    "scallops_left", "scallops_bottom", "scallops_right", "scallops_top",
    "depth_left", "depth_bottom", "depth_right", "depth_top", "colour", "photo",
}  # fmt: skip


@dataclass(frozen=True)
class Spoilt:
    """A document with one thing changed at `path`: its key there, the old value and the new."""

    document: Document
    path: str
    how: str
    key: object
    old: object = None
    new: object = None


def _holders(value: object, path: str = "") -> list[tuple[str, Any]]:
    """Every object and list in a document, with its path."""
    if not isinstance(value, dict | list):
        return []
    items = value.items() if isinstance(value, dict) else enumerate(value)
    inner = [found for key, item in items for found in _holders(item, _at(path, key))]
    return [(path, value), *inner]


def _at(path: str, key: object) -> str:
    if isinstance(key, int):
        return f"{path}[{key}]"
    return f"{path}.{key}" if path else str(key)


@st.composite
def spoilt_documents(draw: st.DrawFn) -> Spoilt:
    document = deepcopy(draw(st.sampled_from(DOCUMENTS)))
    how = draw(st.sampled_from(["deleted", "added", "wrong kind", "text", "text"]))
    holders = [found for found in _holders(document) if found[1]]
    if how == "added":
        path, holder = draw(st.sampled_from([h for h in holders if isinstance(h[1], dict)]))
        key = draw(st.text(st.characters(codec="utf-8"), min_size=1, max_size=8))
        while key in holder:
            key += "x"
        holder[key] = draw(WRONG_KINDS | TEXTS)
        return Spoilt(document, _at(path, key), how, key)
    path, holder = draw(st.sampled_from(holders))
    keys: list[Any] = list(holder) if isinstance(holder, dict) else list(range(len(holder)))
    key = draw(st.sampled_from(keys))
    old = holder[key]
    if how == "deleted":
        del holder[key]
        return Spoilt(document, _at(path, key), how, key, old)
    new = holder[key] = draw(WRONG_KINDS if how == "wrong kind" else TEXTS)
    return Spoilt(document, _at(path, key), how, key, old, new)


def planned(spoilt: Spoilt) -> Plan | Refusal:
    text = json.dumps(spoilt.document)
    try:
        return make_plan(loads(text), draft=True)  # refused, or not, as the whole plan is
    except Refusal as refusal:
        return refusal


def must_be_named(spoilt: Spoilt) -> bool:
    """Whether what was done cannot be let pass, nor be missed before another fault is seen."""
    if spoilt.path == "sleeve.seam" and spoilt.new is None:
        return False  # a sleeve's seam may be left out, a border's may not
    match spoilt.how:
        case "added":
            return True
        case "deleted":
            return isinstance(spoilt.key, str) and spoilt.key not in OPTIONAL | NULLABLE
        case "wrong kind" if spoilt.new is None:
            return spoilt.key not in NULLABLE
        case "wrong kind":
            return type(spoilt.new) is not type(spoilt.old) and spoilt.old is not None
        case _:
            return _is_length(spoilt.old) and not _is_length(spoilt.new)


def _is_length(text: object) -> bool:
    try:
        parse(text)  # type: ignore[arg-type]
    except LengthError:
        return False
    return True


@settings(max_examples=600, suppress_health_check=[HealthCheck.too_slow])
@given(spoilt_documents())
def test_a_spoilt_document_is_planned_or_refused_in_one_sentence(spoilt: Spoilt) -> None:
    answer = planned(spoilt)
    if isinstance(answer, Plan):
        assert not must_be_named(spoilt) or spoilt.key == "price_per_yard"
        return
    assert len(str(answer).splitlines()) == 1
    assert answer.sentence
    assert answer.sentence.isprintable()
    at = str(Refusal(spoilt.path, "")).removesuffix(": ")  # as a refusal writes any path
    if must_be_named(spoilt):
        inside = (f"{at}.", f"{at}[")
        assert answer.path == at or answer.path.startswith(inside)
    else:
        assert answer.path.startswith((*TOP, "format", "version", "units"))
