"""Random projects and documents for hypothesis: what a person may have and make.

Sizes are modest, so that a project plans in milliseconds. A project is always
well-formed; whether it can be planned is for the program to say.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from functools import cache
from typing import Any

from hypothesis import strategies as st

from core.binding_choices import (
    Accent,
    AccentKind,
    BiasCut,
    BiasMethod,
    BiasSource,
    Face,
    Finishing,
    Order,
    Scrappy,
    Tails,
    Tuck,
    WidthRule,
)
from core.by_hand.said import HandFlaw, HandMotif, HandPin
from core.fabric import Fabric, Grain, OnHand, Photo, RealCloth
from core.lay.lay import THE_BOLT, Rect, Sheet
from core.lengths import INCHES_PER_MM, Units
from core.project_file import to_document
from core.quilt import (
    Backing,
    Batting,
    BattingFrom,
    Binding,
    Border,
    Closing,
    Corners,
    First,
    Fold,
    Frame,
    Joins,
    Kits,
    Label,
    Panels,
    Piecing,
    Project,
    Quilt,
    Seams,
    Sizing,
    Sleeve,
    SleeveShape,
)
from core.shape import Facing, Shape, ShapeKind, Upright

F = Fraction
NAMES = ("plum", "dots", "tide")
_MARK = {  # the least step of a length that a person writes
    Units.INCHES: F(1, 8),
    Units.CENTIMETRES: 5 * INCHES_PER_MM,
    Units.MILLIMETRES: INCHES_PER_MM,
}
_SALE_UNITS = {
    Units.INCHES: (F(9, 2), F(9), F(12), F(36)),
    Units.CENTIMETRES: (100 * INCHES_PER_MM, 250 * INCHES_PER_MM),
    Units.MILLIMETRES: (100 * INCHES_PER_MM,),
}


@cache
def lengths(low: float, high: float, units: Units) -> st.SearchStrategy[Fraction]:
    """Lengths from about `low` to about `high` inches, in marks of `units`."""
    mark = _MARK[units]
    return st.integers(int(low / mark), int(high / mark)).map(lambda marks: marks * mark)


@cache
def shrinkages() -> st.SearchStrategy[Fraction]:
    """None for most, else up to 6 % in half percents."""
    return st.just(F(0)) | st.integers(0, 12).map(lambda halves: F(halves, 200))


@cache
def fabrics(name: str, units: Units) -> st.SearchStrategy[Fabric]:
    pieces = st.builds(OnHand, lengths(8, 45, units), lengths(8, 60, units), st.integers(1, 3))
    return st.builds(
        Fabric,
        st.just(name),
        width=lengths(30, 60, units) | lengths(90, 118, units),
        selvage=lengths(0, 1, units),
        sale_unit=st.sampled_from(_SALE_UNITS[units]),
        price_per_yard=st.none() | st.integers(0, 4000).map(lambda cents: F(cents, 100)),
        one_way_print=st.booleans(),
        repeat=st.none() | st.none() | lengths(2, 26, units).filter(bool),
        shrinkage_across=shrinkages(),
        shrinkage_along=shrinkages(),
        straightening=lengths(0, 2, units),
        on_hand=st.lists(pieces, max_size=2).map(tuple),
        buy_more=st.sampled_from((*(True,) * 8, False)),
        real=real_cloths(units),
    )


@cache
def real_cloths(units: Units) -> st.SearchStrategy[RealCloth | None]:
    colours = st.none() | st.sampled_from(("#203050", "#f4e9d8"))
    photos = st.none() | st.builds(Photo, st.just("photos/a.jpg"), lengths(1, 40, units))
    real = st.builds(RealCloth, colours, photos)
    return st.none() | real.filter(lambda r: r.colour is not None or r.photo is not None)


@cache
def borders(units: Units) -> st.SearchStrategy[Border]:
    return st.builds(
        Border,
        st.sampled_from(NAMES),
        width=lengths(0.5, 9, units).filter(bool),
        corners=st.sampled_from(list(Corners)),
        corner_fabric=st.none() | st.sampled_from(NAMES),
        grain=st.sampled_from((Grain.CROSSWISE, Grain.LENGTHWISE, Grain.EITHER)),
        joins=st.sampled_from(list(Joins)),
        seam=lengths(0.125, 0.5, units).filter(bool),
        mitre_margin=lengths(0, 6, units),
        first=st.sampled_from(First),
        piecing=st.sampled_from(Piecing),
        squaring=lengths(0, 1, units),
        sizing=st.sampled_from((*(Sizing.WIDTH,) * 6, *Sizing)),
        to_width=lengths(100, 130, units),
        to_length=st.none() | lengths(100, 130, units),
        block=lengths(2, 12, units).filter(bool),
        left_fabric=st.none() | st.sampled_from(NAMES),
        top_fabric=st.none() | st.none() | st.sampled_from(NAMES),
        right_fabric=st.none() | st.none() | st.sampled_from(NAMES),
        bottom_fabric=st.none() | st.sampled_from(NAMES),
        off_middle=_maybe(lengths(0.5, 12, units)),
        shortest=_maybe(lengths(4, 30, units)),
    )


@cache
def backings(units: Units) -> st.SearchStrategy[Backing]:
    return st.builds(
        Backing,
        st.sampled_from(NAMES),
        overage=lengths(0, 6, units),
        seam=lengths(0.25, 1, units).filter(bool),
        seams=st.sampled_from((Seams.AUTO, Seams.AUTO, *Seams)),
        panels=st.sampled_from((Panels.LEAST, *Panels)),
        frame=st.sampled_from((Frame.NONE, *Frame)),
        narrowest_panel=lengths(1, 8, units).filter(bool),
        accent_fabric=st.none() | st.none() | st.sampled_from(NAMES),
        accent_width=lengths(1, 12, units).filter(bool),
        most_short_strips=st.integers(1, 12),
        **overages(units),
    )


@cache
def overages(units: Units) -> dict[str, st.SearchStrategy[Any]]:
    """Each side's own overage, or none."""
    sides = ("top", "right", "bottom", "left")
    return {f"overage_{side}": st.none() | st.none() | lengths(0, 6, units) for side in sides}


@cache
def battings(units: Units) -> st.SearchStrategy[Batting]:
    return st.builds(
        Batting,
        lengths(0, 6, units),
        source=st.sampled_from(BattingFrom),
        package=st.none() | st.just("queen"),
        roll_width=lengths(60, 120, units),
        roll_sale_unit=st.sampled_from(_SALE_UNITS[units]),
        **overages(units),
    )


@cache
def sleeves(units: Units) -> st.SearchStrategy[Sleeve]:
    return st.builds(
        Sleeve,
        st.sampled_from(NAMES),
        lengths(2, 6, units),
        shape=st.sampled_from(SleeveShape),
        ease=st.none() | lengths(0, 2, units),
        shorter=lengths(0, 2, units),
        split_above=lengths(40, 96, units),
        gap=lengths(0, 6, units),
        seam=_maybe(lengths(0.125, 0.5, units)),
        hem=_maybe(lengths(0.125, 1, units)),
        shortest=_maybe(lengths(4, 30, units)),
    )


@cache
def labels(units: Units) -> st.SearchStrategy[Label]:
    side = lengths(2, 8, units)
    return st.builds(Label, st.sampled_from(NAMES), side, side, lengths(0, 0.5, units))


@cache
def _maybe(lengths_: st.SearchStrategy[Fraction]) -> st.SearchStrategy[Fraction | None]:
    return st.none() | lengths_.filter(bool)


@cache
@st.composite
def bindings(draw: st.DrawFn, units: Units) -> Binding:
    """A binding in any of its ways; choices that rule each other out come up as well."""
    strip = draw(st.none() | lengths(1.75, 4, units))
    scrappy = draw(st.lists(st.sampled_from(NAMES), unique=True, max_size=3))
    orders = list(Order) if len(scrappy) > 1 else [Order.NONE]
    accent = st.builds(
        Accent,
        st.sampled_from((AccentKind.NONE, *AccentKind)),
        st.none() | st.sampled_from(NAMES),
        _maybe(lengths(0.125, 0.5, units)),
        _maybe(lengths(0.0625, 0.25, units)),
        _maybe(lengths(0.5, 2, units)),
    )
    return Binding(
        draw(st.sampled_from(NAMES)),
        strip_width=strip,
        fold=draw(st.sampled_from((Fold.DOUBLE, *Fold))),
        grain=draw(st.sampled_from(list(Grain))),
        joins=draw(st.sampled_from(list(Joins))),
        closing=draw(st.sampled_from(list(Closing))),
        allowance=draw(lengths(0, 24, units)),
        seam=draw(lengths(0.125, 0.375, units).filter(bool)),
        finished_width=None if strip is not None else draw(lengths(0.25, 1, units)),
        width_rule=draw(st.sampled_from(list(WidthRule))),
        first_face=draw(st.sampled_from(list(Face))),
        finishing=draw(st.sampled_from(list(Finishing))),
        reach=draw(st.none() | lengths(0, 0.25, units)),
        shortest=draw(_maybe(lengths(4, 30, units))),
        back_fabric=draw(st.none() | st.none() | st.sampled_from(NAMES)),
        tails=Tails(draw(_maybe(lengths(2, 12, units))), draw(st.none() | lengths(0, 14, units))),
        tuck=Tuck(*(draw(_maybe(lengths(0.25, 3, units))) for _ in range(3))),
        bias=BiasCut(
            draw(st.sampled_from(list(BiasMethod))),
            draw(st.sampled_from(list(BiasSource))),
            draw(_maybe(lengths(0.25, 2, units))),
        ),
        accent=draw(accent),
        scrappy=Scrappy(
            draw(st.sampled_from(orders)),
            tuple(scrappy),
            draw(_maybe(lengths(4, 40, units))),
            draw(st.integers(1, 99)),
        ),
        start_side=draw(st.none() | st.sampled_from(list(Facing))),
        least_to_corner=draw(_maybe(lengths(0.5, 20, units))),
        start_at=draw(st.none() | st.none() | lengths(0, 60, units)),
        cloths_seam=draw(_maybe(lengths(0.125, 0.5, units))),
        turn_in=draw(_maybe(lengths(0.25, 1, units))),
        stitching=draw(_maybe(lengths(0.0625, 0.25, units))),
    )


@cache
def outlines(units: Units) -> st.SearchStrategy[Shape]:
    """Shapes of every kind; a polygon has random corners, and so is refused now and then."""
    return st.builds(
        Shape,
        st.sampled_from(list(ShapeKind)),
        radius=lengths(0.25, 12, units).filter(bool),
        clip=lengths(0.25, 12, units).filter(bool),
        upright=st.sampled_from(list(Upright)),
        scallops_across=st.integers(1, 9),
        scallops_along=st.integers(1, 9),
        depth=lengths(0.5, 4, units),
        **{f"scallops_{side}": st.none() | st.integers(1, 9) for side in Facing},
        **{f"depth_{side}": st.none() | lengths(0.5, 4, units) for side in Facing},
        points=st.lists(
            st.tuples(lengths(0, 40, units), lengths(0, 40, units)), min_size=3, max_size=5
        ).map(tuple),
    )


def may_be_cut(project: Project, fabric: str) -> tuple[list[str], list[str]]:
    """The pieces, and the joined lengths, that a quilt may have of a fabric."""
    pieces, runs = [], []
    if project.label is not None and project.label.fabric == fabric:
        pieces.append("label")
    for number, border in enumerate(project.borders, 1):
        if border.fabric == fabric:
            pieces += [f"border {number} side", f"border {number} top and bottom"]
            runs.append(f"border {number} strip")
        if border.corner_fabric == fabric:
            pieces.append(f"border {number} corner")
    if project.backing is not None and project.backing.fabric == fabric:
        pieces += ["backing panel", "narrow backing panel"]
    if project.sleeve is not None and project.sleeve.fabric == fabric:
        runs.append("sleeve")
    if project.binding is not None and project.binding.fabric == fabric:
        runs.append("binding")
    return pieces, runs


@cache
def spots(units: Units, most: int) -> st.SearchStrategy[Rect]:
    """Rectangles of up to so many inches; they may lie beside narrow cloth."""
    side = lengths(0.5, most, units).filter(bool)
    return st.builds(Rect, lengths(0, 20, units), lengths(0, 40, units), side, side)


@st.composite
def by_hand(draw: st.DrawFn, project: Project) -> Project:
    """The project, with pins, flaws and motifs on the cloths of one of its fabrics."""
    units = project.units
    cut = {at: may_be_cut(project, one.name) for at, one in enumerate(project.fabrics)}
    place = draw(st.sampled_from([at for at, names in cut.items() if any(names)] or [0]))
    fabric = project.fabrics[place]
    pieces, runs = (st.sampled_from(names) if names else st.nothing() for names in cut[place])
    sheets = (Sheet(f"on_hand[{at}]") for at in range(len(fabric.on_hand)))
    on = st.sampled_from((THE_BOLT, THE_BOLT, *sheets))
    x, y = (st.just(F(0)) | lengths(0, most, units) for most in (30, 60))
    turned = st.sampled_from((False, False, True))
    length = lengths(18, 40, units)
    pins = st.builds(HandPin, pieces, x, y, on, turned, copy=st.none() | st.integers(1, 2))
    pins |= st.builds(HandPin, pieces, x, y, on, turned, across=length, along=length)
    pins |= st.builds(HandPin, runs, x, y, on, turned, length=length)
    flaws = st.builds(HandFlaw, spots(units, 8), on, st.sampled_from(("", "stain", "Loch ½")))
    motifs = st.builds(HandMotif, st.none() | pieces, spots(units, 2), on)
    handled = replace(
        fabric,
        pins=tuple(draw(st.lists(pins, max_size=2))),
        flaws=tuple(draw(st.lists(flaws, max_size=2))),
        motifs=tuple(draw(st.lists(motifs, max_size=2))),
    )
    return replace(
        project, fabrics=(*project.fabrics[:place], handled, *project.fabrics[place + 1 :])
    )


@st.composite
def projects(draw: st.DrawFn) -> Project:
    """A quilt of up to 100 in with up to three borders, on three fabrics; some handled."""
    project = draw(plain_projects())
    return draw(by_hand(project)) if draw(st.booleans()) else project


@st.composite
def plain_projects(draw: st.DrawFn) -> Project:
    """A quilt whose cloths nothing is said of by hand."""
    units = draw(st.sampled_from((Units.INCHES, Units.INCHES, *Units)))

    def maybe(part: st.SearchStrategy[Any]) -> Any:  # noqa: ANN401 - whatever the part is
        return draw(st.none() | part)

    quilt = Quilt(
        draw(st.sampled_from(("", "Harbour Lights", "Möwe & Düne"))),
        draw(lengths(6, 100, units)),
        draw(lengths(6, 100, units)),
        draw(lengths(0, 0.5, units)),
        draw(st.sampled_from((1, 1, 1, 2, 3))),
        draw(st.sampled_from(Kits)),
    )
    return Project(
        quilt,
        tuple(draw(fabrics(name, units)) for name in NAMES),
        tuple(draw(st.lists(borders(units), max_size=3))),
        maybe(backings(units)),
        maybe(battings(units)),
        maybe(bindings(units)),
        maybe(sleeves(units)),
        units,
        maybe(labels(units)),
        draw(st.none() | st.none() | outlines(units)),
    )


def documents() -> st.SearchStrategy[dict[str, Any]]:
    """The JSON objects of random projects."""
    return projects().map(to_document)
