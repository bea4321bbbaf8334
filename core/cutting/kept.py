"""A cutting as JSON and back: values field by field, lengths as exact fractions.

Only this program reads and writes it, beside the project. What was written by
another version, or does not hold together, is refused.
"""

from __future__ import annotations

import json
import re
from dataclasses import MISSING, fields, is_dataclass
from enum import StrEnum
from fractions import Fraction
from functools import cache
from hashlib import sha256
from types import NoneType, UnionType
from typing import Any, Final, get_args, get_origin, get_type_hints

from core.cutting.cutting import ClothCutting, Cutting, laid
from core.cutting.order import Order
from core.cutting.progress import on_table
from core.language import marked, told
from core.lay.places_file import MOST_PIECES
from core.reading import Fields
from core.refusal import Refusal

FORMAT: Final = "crossgrain-cutting"
VERSION: Final = 1
_FRACTION = re.compile(r"-?\d{1,30}(/\d{1,30})?", re.ASCII)
_WORDS: Final = {
    str: marked("write text"),
    int: marked("write a whole number"),
    bool: marked("write true or false"),
}


def cutting_document(cutting: Cutting, project: str = "") -> dict[str, Any]:
    """The cutting as a JSON object; what all kits begin with is written once.

    `project` is the path of the project's file, "" for one that was never saved.
    """
    return {
        "format": FORMAT,
        "version": VERSION,
        "project": project,
        "kits": cutting.kits,
        "planned": _document(cutting.planned),
        "cloths": [
            {
                "done": list(cloth.done),
                "laid_again": _document(cloth.orders[1:]),
                "first": cloth.first,
            }
            for cloth in cutting.cloths
        ],
    }


def cutting_from(document: dict[str, Any]) -> Cutting:
    """The cutting that a JSON object holds; raises `Refusal` naming the first fault."""
    top = Fields(document, "")
    top.raw("format"), top.raw("version"), top.raw("project", "")
    kits = top.count("kits", most=MOST_PIECES)
    planned: tuple[Order, ...] = _value(tuple[Order, ...], top.raw("planned"), "planned")
    cloths = top.each(
        "cloths",
        lambda data, at: _cloth(Fields(data, at), planned, int(at[len("cloths[") : -1])),
        most=MOST_PIECES,
    )
    top.done()
    if not planned or len(cloths) != kits * len(planned):
        raise Refusal("cloths", told("write each cloth once for each kit"))
    return Cutting(cloths, kits)


def project_of(document: dict[str, Any]) -> str | None:
    """The path of the project's file, "" for one that was never saved; None if it is not told."""
    project = document.get("project")
    return project if isinstance(project, str) else None


def mark_of(cutting: Cutting) -> str:
    """A short text that tells what was planned from every other plan."""
    text = json.dumps([_document(part) for part in laid(cutting)])
    return sha256(text.encode()).hexdigest()


def _cloth(top: Fields, planned: tuple[Order, ...], place: int) -> ClothCutting:
    if not planned:
        raise Refusal("planned", told("there is no cloth"))
    kit, which = divmod(place, len(planned))
    again: tuple[Order, ...] = _value(
        tuple[Order, ...], top.raw("laid_again"), top.at("laid_again")
    )
    done: tuple[int, ...] = _value(tuple[int, ...], top.raw("done"), top.at("done"))
    first: int = _value(int, top.raw("first", 0), top.at("first"))
    top.done()
    orders = (planned[which], *again)
    if (
        len(orders) != len(done)
        or not 0 <= first < len(orders)
        or not all(map(_fits, orders, done))
    ):
        raise Refusal(top.path, told("the cuts do not fit the cloth"))
    return ClothCutting(kit + 1, orders, done, first)


def _fits(order: Order, done: int) -> bool:
    """Whether an order can be cut, and so far."""
    if len(order.problem.cloths) != 1 or not 0 <= done <= len(order.cuts):
        return False
    try:
        on_table(order, len(order.cuts))
    except (ValueError, LookupError):
        return False
    return True


def _document(value: object) -> Any:  # noqa: ANN401 - JSON is any
    if is_dataclass(value):
        return {f.name: _document(getattr(value, f.name)) for f in fields(value)}
    if isinstance(value, tuple):
        return [_document(item) for item in value]
    return str(value) if isinstance(value, Fraction) else value


@cache
def _hints(kind: type) -> dict[str, Any]:
    return get_type_hints(kind)


def _value(kind: Any, data: object, path: str) -> Any:  # noqa: ANN401 - of the kind asked for
    """The value of type `kind` that JSON data stands for."""
    if is_dataclass(kind):
        return _fields(kind, data, path)
    if get_origin(kind) is tuple:
        return _items(get_args(kind), data, path)
    if get_origin(kind) is UnionType:
        [some] = [one for one in get_args(kind) if one is not NoneType]
        return None if data is None else _value(some, data, path)
    if kind is Fraction:
        if isinstance(data, str) and _FRACTION.fullmatch(data) and not data.endswith("/0"):
            return Fraction(data)
        raise Refusal(path, told('write an exact number in quotes, such as "5/2"'))
    if issubclass(kind, StrEnum):
        if data in [one.value for one in kind]:
            return kind(data)
        raise Refusal(path, told("this is not one of the known words"))
    if type(data) is not kind:
        raise Refusal(path, told(_WORDS[kind]))
    return data


def _fields(kind: Any, data: object, path: str) -> Any:  # noqa: ANN401 - a dataclass
    """A key may be absent where its value has a default: it is younger than the file."""
    names = [field.name for field in fields(kind)]
    needed = {f.name for f in fields(kind) if f.default is MISSING}
    if not isinstance(data, dict) or not needed <= set(data) <= set(names):
        raise Refusal(path, told("write an object with {keys}", keys=", ".join(names)))
    hints = _hints(kind)
    return kind(**{name: _value(hints[name], data[name], f"{path}.{name}") for name in data})


def _items(kinds: tuple[Any, ...], data: object, path: str) -> tuple[Any, ...]:
    if not isinstance(data, list):
        raise Refusal(path, told("write a list"))
    return tuple(_value(kinds[0], item, f"{path}[{place}]") for place, item in enumerate(data))
