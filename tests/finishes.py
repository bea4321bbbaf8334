"""Quilts finished in each way that the program knows, for the tests of all its parts."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from typing import Final

from core.batting_packages import Package
from core.fabric import Fabric, Grain, OnHand
from core.lengths import Units, parse
from core.quilt import (
    Backing,
    Batting,
    BattingFrom,
    Binding,
    Border,
    Corners,
    First,
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

F = Fraction
PLUM = Fabric("plum", F(43), F(1, 2), price_per_yard=F(12), straightening=F(1))
DOTS, TIDE, MOSS = (replace(PLUM, name=name) for name in ("dots", "tide", "moss"))
CLOTHS = (PLUM, DOTS, TIDE, MOSS)


def coping() -> Project:
    """A coping strip so that whole 4 in blocks come round, and one that only lengthens."""
    borders = (
        Border("plum", F(1), sizing=Sizing.BLOCKS, block=F(4)),
        Border("dots", F(4), Corners.SQUARES, "tide"),
        Border("plum", F(1), sizing=Sizing.SIZE, to_length=F(80)),
    )
    return Project(Quilt("Coping", F(101, 2), F(123, 2)), CLOTHS, borders)


def pinwheel() -> Project:
    """Four cloths round the quilt, sewn with a partial seam."""
    border = Border(
        "plum",
        F(5),
        Corners.PINWHEEL,
        top_fabric="dots",
        right_fabric="tide",
        bottom_fabric="moss",
        joins=Joins.STRAIGHT,
    )
    return Project(Quilt("Pinwheel", F(50), F(60)), CLOTHS, (border,), Backing("dots"))


def log_cabin() -> Project:
    """One strip after another, ends first, each with one join in the middle."""
    border = Border("plum", F(3), Corners.ROUND, first=First.ENDS, piecing=Piecing.CENTRED)
    second = Border("dots", F(2), first=First.ENDS, piecing=Piecing.OFF_CENTRE)
    return Project(Quilt("Log cabin", F(60), F(70)), CLOTHS, (border, second))


def framed() -> Project:
    """No centre seam, more at top and bottom for a frame, batting by the roll, a split D-sleeve."""
    return Project(
        Quilt("Framed", F(92), F(98)),
        CLOTHS,
        backing=Backing(
            "dots",
            F(3),
            panels=Panels.HALVES,
            frame=Frame.TOP,
            overage_top=F(6),
            overage_bottom=F(6),
        ),
        batting=Batting(F(3), BattingFrom.ROLL, overage_top=F(5), overage_bottom=F(5)),
        binding=Binding("plum", F(5, 2)),
        sleeve=Sleeve("dots", F(4), SleeveShape.D),
        label=Label("tide"),
    )


def accent() -> Project:
    """A backing widened by an accent strip of another cloth; a border from the backing's cloth."""
    return Project(
        Quilt("Accent", F(46), F(58)),
        CLOTHS,
        (Border("dots", F(4), grain=Grain.LENGTHWISE),),
        Backing("dots", seams=Seams.LENGTHWISE, accent_fabric="moss", accent_width=F(12)),
        Batting(packages=(Package("shop's own", F(70), F(100)),)),
        sleeve=Sleeve("dots", F(4), SleeveShape.SINGLE),
    )


def matched() -> Project:
    """A print that has one way up, shrinks, and is matched at the seam."""
    print_ = replace(
        PLUM, one_way_print=True, repeat=F(24), shrinkage_along=F(1, 20), sale_unit=F(9)
    )
    return Project(Quilt("Matched", F(60), F(75)), (print_, DOTS), backing=Backing("plum"))


def turned() -> Project:
    """One piece on hand, wider than the bolt, that backs the quilt only if it is turned."""
    piece = replace(DOTS, on_hand=(OnHand(F(80), F(60)),), buy_more=False)
    return Project(Quilt("Turned", F(50), F(70)), (PLUM, piece), backing=Backing("dots"))


def class_kits() -> Project:
    """Twelve metric kits, each bought and cut by itself; sold by 10 cm, priced by the metre."""

    def mm(millimetres: str) -> Fraction:
        return parse(f"{millimetres} mm")

    cloth = Fabric(
        "Baumwolle",
        mm("1100"),
        mm("10"),
        sale_unit=mm("100"),
        straightening=mm("30"),
        price_per_metre=F(18),
    )
    return Project(
        Quilt("Kursdecke", mm("900"), mm("1200"), mm("3"), copies=12, kits=Kits.EACH),
        (cloth, replace(cloth, name="Rückseite")),
        (
            Border(
                "Baumwolle",
                mm("80"),
                seam=mm("7.5"),
                squaring=mm("10"),
                mitre_margin=mm("100"),
                piecing=Piecing.CENTRED,
            ),
        ),
        Backing(
            "Rückseite",
            mm("100"),
            mm("15"),
            narrowest_panel=mm("150"),
            accent_width=mm("150"),
        ),
        Batting(mm("100"), BattingFrom.ROLL, roll_width=mm("2400"), roll_sale_unit=mm("100")),
        Binding("Baumwolle", mm("60"), allowance=mm("250"), seam=mm("6")),
        Sleeve("Rückseite", mm("100"), shorter=mm("25"), split_above=mm("2300"), gap=mm("100")),
        Units.MILLIMETRES,
        Label("Rückseite", mm("150"), mm("100"), mm("7.5")),
    )


FINISHES: Final[dict[str, Callable[[], Project]]] = {
    project().quilt.name: project
    for project in (coping, pinwheel, log_cabin, framed, accent, matched, turned, class_kits)
}
