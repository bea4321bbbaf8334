"""The table of fields: it covers the project file, no more and no less."""

from __future__ import annotations

from collections.abc import Iterator
from collections.abc import Set as AbstractSet
from enum import StrEnum
from pathlib import Path
from typing import Any

import pytest

from app.window.field import Field, Kind, PartKind, summary, value_at
from app.window.fields import INNER, PARTS, SINGLE_PARTS
from core.binding_choices import (
    AccentKind,
    BiasMethod,
    BiasSource,
    Face,
    Finishing,
    Order,
    WidthRule,
)
from core.edit import add_part
from core.fabric import Grain
from core.measured import Use
from core.project_file import load, to_document
from core.quilt import (
    BattingFrom,
    Closing,
    Corners,
    First,
    Fold,
    Frame,
    Joins,
    Kits,
    Panels,
    Piecing,
    Project,
    Seams,
    Sizing,
    SleeveShape,
)
from core.shape import Facing, ShapeKind, Upright

DATA = Path(__file__).resolve().parents[2] / "data"
KINDS = (*PARTS, *INNER)
FIELDS = [
    pytest.param(kind, field, id=f"{kind.key}.{field.key}")
    for kind in KINDS
    for field in kind.fields
]
CHOICES: dict[str, AbstractSet[StrEnum]] = {
    "quilt.kits": set(Kits),
    "borders.corners": set(Corners),
    "borders.grain": set(Grain) - {Grain.BIAS},
    "borders.joins": set(Joins),
    "borders.first": set(First),
    "borders.piecing": set(Piecing),
    "borders.sizing": set(Sizing),
    "backing.seams": set(Seams),
    "backing.panels": set(Panels),
    "backing.frame": set(Frame),
    "batting.source": set(BattingFrom),
    "sleeve.shape": set(SleeveShape),
    "binding.fold": set(Fold),
    "binding.grain": set(Grain),
    "binding.joins": set(Joins),
    "binding.closing": set(Closing),
    "binding.finishing": set(Finishing),
    "binding.first_face": set(Face),
    "binding.width_rule": set(WidthRule),
    "binding.bias.method": set(BiasMethod),
    "binding.bias.source": set(BiasSource),
    "binding.accent.kind": set(AccentKind),
    "binding.scrappy.order": set(Order),
    "binding.start_side": set(Facing),
    "outline.kind": set(ShapeKind),
    "measured.use": set(Use),
    "outline.upright": set(Upright),
}


def keys(part: dict[str, Any], parent: str = "") -> Iterator[str]:
    """The keys of a part in its file, nested objects as "shrinkage.across"."""
    for key, value in part.items():
        if isinstance(value, dict):
            yield from keys(value, f"{parent}{key}.")
        elif key not in {kind.key for kind in INNER}:
            yield f"{parent}{key}"


def example(demo: Project, kind: PartKind) -> dict[str, Any]:
    path = {
        "fabrics": "fabrics[1]",
        "borders": "borders[0]",
        "on_hand": "fabrics[1].on_hand[0]",
        "packages": "batting.packages[0]",
        "flaws": "fabrics[0].flaws[0]",
        "motifs": "fabrics[2].motifs[0]",
        "pins": "fabrics[0].pins[0]",
    }
    if kind.key in ("flaws", "motifs", "pins"):
        demo = load(DATA / "by-hand.crossgrain")
    if kind in SINGLE_PARTS and value_at(to_document(demo), kind.key) is None:
        demo = add_part(demo, kind.key)
    part: dict[str, Any] = value_at(to_document(demo), path.get(kind.key, kind.key))
    return part


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.key)
def test_every_value_of_the_file_has_a_field_and_every_field_a_value(
    demo: Project, kind: PartKind
) -> None:
    assert {field.key for field in kind.fields} == set(keys(example(demo, kind)))


@pytest.mark.parametrize(("kind", "field"), FIELDS)
def test_every_field_teaches_in_a_sentence(kind: PartKind, field: Field) -> None:
    assert field.help.endswith(".")
    assert len(field.help) > 15


@pytest.mark.parametrize(("kind", "field"), FIELDS)
def test_the_choices_are_those_of_the_file(kind: PartKind, field: Field) -> None:
    offered = {value for value, _ in field.choices if value is not None}
    assert offered == {c.value for c in CHOICES.get(f"{kind.key}.{field.key}", set())}
    assert bool(offered) == (field.kind is Kind.CHOICE)


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.key)
def test_every_folded_heading_says_something_of_its_part(demo: Project, kind: PartKind) -> None:
    said = summary(kind, example(demo, kind), "in")
    assert said
    assert "None" not in said
