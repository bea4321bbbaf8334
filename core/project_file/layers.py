"""Backing, batting, sleeve and label in the project file: their keys, read and written."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction
from typing import Any, Final

from core.batting_packages import COMMON, Package
from core.figures import figure
from core.language import told
from core.layers import MOST_SHORT_STRIPS
from core.lengths import Inches, Units, exact_text
from core.project_file.sale_units import sale_unit_text
from core.quilt import (
    Backing,
    Batting,
    BattingFrom,
    Frame,
    Label,
    Panels,
    Project,
    Seams,
    Sleeve,
    SleeveShape,
)
from core.reading import Fields
from core.refusal import Refusal

MOST_PACKAGES: Final = 50
MOST_PIECED: Final = 12
_SIDES: Final = ("overage_top", "overage_right", "overage_bottom", "overage_left")
# Rules of thumb, in inches and in millimetres; each is a key that a person can change.
NARROWEST_PANEL: Final = Fraction(6), Fraction(150)  # our default, no source
ACCENT_WIDTH: Final = Fraction(6), Fraction(150)  # our default, no source
ROLL_WIDTH: Final = Fraction(96), Fraction(2400)  # common practice, no source
ROLL_SALE_UNIT: Final = Fraction(9), Fraction(100)  # common practice, no source
SHORTER: Final = Fraction(1), Fraction(25)  # Hill Country Quilt Guild show rules, 2023
SPLIT_ABOVE: Final = Fraction(90), Fraction(2300)  # the same
GAP: Final = Fraction(4), Fraction(100)  # our default, no source
LABEL_HEM: Final = Fraction(1, 4), Fraction(15, 2)  # our default, no source


def read_backing(fields: Fields) -> Backing:
    overage = fields.length("overage", zero=True)
    like = fields.length("seam")
    backing = Backing(
        fabric=fields.text("fabric"),
        overage=overage,
        seam=like,
        seams=fields.choice("seams", Seams),
        panels=fields.choice("panels", Panels, "least"),
        frame=fields.choice("frame", Frame, "none"),
        narrowest_panel=fields.length("narrowest_panel", figure(like, *NARROWEST_PANEL)),
        accent_fabric=fields.text("accent_fabric") if fields.has("accent_fabric") else None,
        accent_width=fields.length("accent_width", figure(like, *ACCENT_WIDTH)),
        most_short_strips=fields.count("most_short_strips", MOST_SHORT_STRIPS, most=MOST_PIECED),
        **_sides(fields),
    )
    fields.done()
    return backing


def _sides(fields: Fields) -> dict[str, Any]:
    return {key: _maybe_length(fields, key, zero=True) for key in _SIDES}


def _maybe_length(fields: Fields, key: str, *, zero: bool = False) -> Inches | None:
    return fields.length(key, zero=zero) if fields.has(key) else None


def read_batting(fields: Fields) -> Batting:
    overage = fields.length("overage", zero=True)
    packages = COMMON
    if "packages" in fields.data:
        packages = fields.each(
            "packages", lambda d, p: _package(Fields(d, p, fields.units)), most=MOST_PACKAGES
        )
    batting = Batting(
        overage=overage,
        source=fields.choice("source", BattingFrom, "package"),
        package=fields.text("package") if fields.has("package") else None,
        roll_width=fields.length("roll_width", figure(overage, *ROLL_WIDTH)),
        roll_sale_unit=fields.length("roll_sale_unit", figure(overage, *ROLL_SALE_UNIT)),
        packages=packages,
        **_sides(fields),
    )
    fields.done()
    _refuse_packages(fields, batting)
    return batting


def _package(fields: Fields) -> Package:
    package = Package(fields.text("name"), fields.length("width"), fields.length("length"))
    fields.done()
    return package


def _refuse_packages(fields: Fields, batting: Batting) -> None:
    names = [package.name for package in batting.packages]
    for name, uses in Counter(names).items():
        if uses > 1:
            again = len(names) - 1 - names[::-1].index(name)
            raise Refusal(
                f"{fields.at('packages')}[{again}].name",
                told('"{name}" is in the table already; write another name', name=name),
            )
    if batting.package is not None and batting.package not in names:
        raise Refusal(
            fields.at("package"),
            told(
                'no package is called "{package}"; write one of {names}, or nothing for the '
                "smallest that will do",
                package=batting.package,
                names=", ".join(names),
            ),
        )


def read_sleeve(fields: Fields) -> Sleeve:
    depth = fields.length("depth")
    sleeve = Sleeve(
        fabric=fields.text("fabric"),
        depth=depth,
        shape=fields.choice("shape", SleeveShape, "tube"),
        ease=_maybe_length(fields, "ease", zero=True),
        shorter=fields.length("shorter", figure(depth, *SHORTER), zero=True),
        split_above=fields.length("split_above", figure(depth, *SPLIT_ABOVE)),
        gap=fields.length("gap", figure(depth, *GAP), zero=True),
        seam=_maybe_length(fields, "seam"),
        hem=_maybe_length(fields, "hem"),
        shortest=_maybe_length(fields, "shortest"),
    )
    fields.done()
    return sleeve


def read_label(fields: Fields) -> Label:
    width = fields.length("width")
    label = Label(
        fabric=fields.text("fabric"),
        width=width,
        length=fields.length("length"),
        hem=fields.length("hem", figure(width, *LABEL_HEM), zero=True),
    )
    fields.done()
    return label


def backing_fabrics(project: Project) -> Iterator[tuple[str, str]]:
    """Where the backing names a fabric: (path, name)."""
    if (backing := project.backing) is not None:
        yield "backing.fabric", backing.fabric
        if backing.accent_fabric is not None:
            yield "backing.accent_fabric", backing.accent_fabric


def hung_fabrics(project: Project) -> Iterator[tuple[str, str]]:
    """Where sleeve and label name a fabric: (path, name)."""
    if project.sleeve is not None:
        yield "sleeve.fabric", project.sleeve.fabric
    if project.label is not None:
        yield "label.fabric", project.label.fabric


def layer_documents(project: Project) -> dict[str, Any]:
    """The parts that the project has, as the file has them."""
    found: dict[str, Any] = {}
    if project.backing is not None:
        found["backing"] = _backing_document(project.backing, project.units)
    if project.batting is not None:
        found["batting"] = _batting_document(project.batting, project.units)
    if project.sleeve is not None:
        found["sleeve"] = _sleeve_document(project.sleeve, project.units)
    if project.label is not None:
        found["label"] = _label_document(project.label, project.units)
    return found


def _maybe(length: Inches | None, units: Units) -> str | None:
    return None if length is None else exact_text(length, units)


def _overages(layer: Backing | Batting, units: Units) -> dict[str, Any]:
    return {
        "overage": exact_text(layer.overage, units),
        **{key: _maybe(getattr(layer, key), units) for key in _SIDES},
    }


def _backing_document(backing: Backing, units: Units) -> dict[str, Any]:
    return {
        "fabric": backing.fabric,
        **_overages(backing, units),
        "seam": exact_text(backing.seam, units),
        "seams": backing.seams.value,
        "panels": backing.panels.value,
        "frame": backing.frame.value,
        "narrowest_panel": exact_text(backing.narrowest_panel, units),
        "accent_fabric": backing.accent_fabric,
        "accent_width": exact_text(backing.accent_width, units),
        "most_short_strips": backing.most_short_strips,
    }


def _batting_document(batting: Batting, units: Units) -> dict[str, Any]:
    return {
        **_overages(batting, units),
        "source": batting.source.value,
        "package": batting.package,
        "roll_width": exact_text(batting.roll_width, units),
        "roll_sale_unit": sale_unit_text(batting.roll_sale_unit, units),
        "packages": [
            {
                "name": package.name,
                "width": exact_text(package.width, units),
                "length": exact_text(package.length, units),
            }
            for package in batting.packages
        ],
    }


def _sleeve_document(sleeve: Sleeve, units: Units) -> dict[str, Any]:
    return {
        "fabric": sleeve.fabric,
        "depth": exact_text(sleeve.depth, units),
        "shape": sleeve.shape.value,
        "ease": _maybe(sleeve.ease, units),
        "shorter": exact_text(sleeve.shorter, units),
        "split_above": exact_text(sleeve.split_above, units),
        "gap": exact_text(sleeve.gap, units),
        "seam": _maybe(sleeve.seam, units),
        "hem": _maybe(sleeve.hem, units),
        "shortest": _maybe(sleeve.shortest, units),
    }


def _label_document(label: Label, units: Units) -> dict[str, Any]:
    return {
        "fabric": label.fabric,
        "width": exact_text(label.width, units),
        "length": exact_text(label.length, units),
        "hem": exact_text(label.hem, units),
    }
