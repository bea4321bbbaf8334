"""The project file: written exactly, read back equal, refused by the name of the field."""

from __future__ import annotations

import json
import re
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from core.lengths import Units
from core.project_file import dumps, from_document, load, loads, save, to_document
from core.project_file.read import fabric_names
from core.quilt import Project
from core.refusal import Refusal
from tests.core.demos import DEMOS, demo, demo_path
from tests.strategies import projects

F = Fraction
UNHURRIED = settings(suppress_health_check=[HealthCheck.too_slow])


def document() -> dict[str, Any]:
    """The demo as a JSON object that a test may spoil."""
    return to_document(demo("harbour-lights"))


def with_value(document: dict[str, Any], path: str, value: object) -> dict[str, Any]:
    """The document with one value set, such as that at `fabrics[0].name`."""
    *way, last = re.findall(r"[a-z_]+|\d+", path)
    holder: Any = document
    for step in way:
        holder = holder[int(step) if step.isdigit() else step]
    holder[int(last) if last.isdigit() else last] = value
    return document


@UNHURRIED
@given(projects())
def test_a_project_reads_back_equal(project: Project) -> None:
    assert loads(dumps(project)) == project


@UNHURRIED
@given(projects(), st.sampled_from(list(Units)))
def test_a_project_reads_back_equal_in_any_units(project: Project, units: Units) -> None:
    document = to_document(project)
    there = loads(dumps(from_document(document)))
    assert there == project
    other = Project(**{**_fields(project), "units": units})
    assert loads(dumps(other)) == other


def _fields(project: Project) -> dict[str, Any]:
    return {name: getattr(project, name) for name in Project.__slots__}


@pytest.mark.parametrize("name", DEMOS)
def test_a_demo_is_written_as_it_stands(name: str) -> None:
    assert json.loads(demo_path(name).read_text("utf-8")) == to_document(demo(name))
    assert dumps(demo(name)) == demo_path(name).read_text("utf-8")


def test_equal_projects_give_the_same_text() -> None:
    assert dumps(loads(dumps(demo("harbour-lights")))) == dumps(demo("harbour-lights"))


def test_a_saved_project_loads_equal_and_leaves_nothing_beside(tmp_path: Path) -> None:
    path = tmp_path / "möwe.crossgrain"
    save(demo("harbour-lights"), path)
    assert load(path) == demo("harbour-lights")
    assert [found.name for found in tmp_path.iterdir()] == ["möwe.crossgrain"]


def test_a_file_with_a_byte_order_mark_is_read(tmp_path: Path) -> None:
    path = tmp_path / "marked.crossgrain"
    path.write_bytes(b"\xef\xbb\xbf" + dumps(demo("harbour-lights")).encode())
    assert load(path) == demo("harbour-lights")


def test_parts_may_be_absent_or_null() -> None:
    bare = {key: document()[key] for key in ("format", "version", "units", "quilt", "fabrics")}
    nulls = {**bare, "backing": None, "batting": None, "binding": None, "sleeve": None}
    assert from_document(bare) == from_document(nulls)
    assert from_document(bare).borders == ()


def test_the_margin_of_a_mitre_may_be_absent() -> None:
    spoilt = document()
    del spoilt["borders"][0]["mitre_margin"]
    assert from_document(spoilt).borders[0].mitre_margin == 4


@pytest.mark.parametrize(
    ("sale_unit", "written"), [("1/8 yd", "1/8 yd"), ("9", "1/4 yd"), ("10 cm", "10 cm")]
)
def test_a_sale_unit_is_written_as_the_shop_says_it(sale_unit: str, written: str) -> None:
    spoilt = document()
    spoilt["fabrics"][0]["sale_unit"] = sale_unit
    assert to_document(from_document(spoilt))["fabrics"][0]["sale_unit"] == written


@pytest.mark.parametrize("share", ["0%", "3%", "2.5%", "0,75 %", "60%"])
def test_shrinkage_is_a_share_in_percent(share: str) -> None:
    spoilt = document()
    spoilt["fabrics"][0]["shrinkage"] = {"across": share, "along": "0%"}
    [fabric, *_] = from_document(spoilt).fabrics
    assert fabric.shrinkage_across == F(share.rstrip(" %").replace(",", ".")) / 100


@pytest.mark.parametrize("price", ["12.50", "12,5", "0", "7"])
def test_a_price_is_read_exactly(price: str) -> None:
    spoilt = document()
    spoilt["fabrics"][0]["price_per_yard"] = price
    assert from_document(spoilt).fabrics[0].price_per_yard == F(price.replace(",", "."))


def test_a_project_names_its_fabrics_in_the_order_of_the_file() -> None:
    assert fabric_names(demo("harbour-lights")) == (
        ("borders[0].fabric", "lamp gold"),
        ("borders[1].fabric", "night sky"),
        ("borders[1].corner_fabric", "lamp gold"),
        ("backing.fabric", "tide stripe"),
        ("binding.fabric", "night sky"),
        ("sleeve.fabric", "tide stripe"),
        ("label.fabric", "tide stripe"),
    )


SPOILT: list[tuple[str, object, str]] = [
    ("borders[0].fabric", "velvet", "borders[0].fabric"),
    ("borders[1].corner_fabric", "velvet", "borders[1].corner_fabric"),
    ("backing.fabric", "velvet", "backing.fabric"),
    ("binding.fabric", "velvet", "binding.fabric"),
    ("sleeve.fabric", "velvet", "sleeve.fabric"),
    ("fabrics[1].name", "night sky", "fabrics[1].name"),
    ("fabrics[0].name", "", "fabrics[0].name"),
    ("fabrics[0].name", "x" * 81, "fabrics[0].name"),
    ("fabrics[0].name", "two\nlines", "fabrics[0].name"),
    ("fabrics[0].selvage", "22", "fabrics[0].selvage"),
    ("fabrics[0].selvage", "21.49", "fabrics[0].selvage"),
    ("fabrics[0].shrinkage", {"across": "99%", "along": "0%"}, "fabrics[0].selvage"),
    ("fabrics[0].price_per_yard", "cheap", "fabrics[0].price_per_yard"),
    ("fabrics[0].price_per_yard", "-1", "fabrics[0].price_per_yard"),
    ("fabrics[0].price_per_yard", 12.5, "fabrics[0].price_per_yard"),
    ("fabrics[0].shrinkage", {"across": "3%"}, "fabrics[0].shrinkage.along"),
    ("fabrics[0].shrinkage", {"across": "3", "along": "3%"}, "fabrics[0].shrinkage.across"),
    ("fabrics[0].shrinkage", {"across": "-3%", "along": "3%"}, "fabrics[0].shrinkage.across"),
    ("fabrics[0].shrinkage", {"across": "100%", "along": "3%"}, "fabrics[0].shrinkage.across"),
    ("fabrics[0].shrinkage", {"across": "1.234%", "along": "3%"}, "fabrics[0].shrinkage.across"),
    ("fabrics[0].shrinkage", "3%", "fabrics[0].shrinkage"),
    ("borders[0].grain", "bias", "borders[0].grain"),
    ("borders[0].corners", "oval", "borders[0].corners"),
    ("binding.closing", None, "binding.closing"),
    ("quilt.copies", 0, "quilt.copies"),
    ("quilt.copies", 101, "quilt.copies"),
    ("quilt.copies", True, "quilt.copies"),
    ("quilt.copies", 1.0, "quilt.copies"),
    ("units", "furlong", "units"),
    ("quilt", [], "quilt"),
    ("fabrics", {}, "fabrics"),
    ("borders", [{}] * 51, "borders"),
]


@pytest.mark.parametrize(("path", "value", "named"), SPOILT)
def test_a_value_that_cannot_be_is_refused_by_name(path: str, value: object, named: str) -> None:
    spoilt = with_value(document(), path, value)
    with pytest.raises(Refusal) as refused:
        from_document(spoilt)
    assert refused.value.path == named
