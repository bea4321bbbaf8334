"""Projects that are hard on paper: long cloth, long names, foreign letters, slivers, nothing."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Final

from core.by_hand.said import HandFlaw, HandMotif, HandPin
from core.fabric import Fabric, Grain, OnHand
from core.lay.lay import Rect
from core.lengths import INCHES_PER_MM, Inches, Units
from core.quilt import Backing, Batting, Binding, Border, Corners, Label, Project, Quilt, Sleeve

HALF, QUARTER = Fraction(1, 2), Fraction(1, 4)


def _mm(millimetres: int) -> Inches:
    return millimetres * INCHES_PER_MM


def _bolt(name: str, width: int = 43, price: str | None = "12.50") -> Fabric:
    cost = None if price is None else Fraction(price)
    return Fabric(name, Fraction(width), HALF, price_per_yard=cost, straightening=Fraction(1))


_LONG = "midnight indigo batik with silver birch leaves and very small stars, second dye"
_WIDE_LETTERS = "W" * 80
_HINDI = "नीला कपड़ा"
_HEBREW = "שמיים"


def king() -> Project:
    """Four borders on five cloths, a wide backing, and names that no column holds."""
    fabrics = (_bolt(_LONG), _bolt("muslin", 108), *map(_bolt, (_HINDI, _HEBREW, _WIDE_LETTERS)))
    borders = (
        Border(_LONG, Fraction(3, 2), Corners.MITRED),
        Border(_HINDI, Fraction(3), Corners.SQUARES, corner_fabric=_HEBREW),
        Border(_HEBREW, Fraction(2), grain=Grain.LENGTHWISE),
        Border(_WIDE_LETTERS, Fraction(6), Corners.MITRED, grain=Grain.EITHER),
    )
    name = "A king-sized quilt with a name that goes on and on, past the edge of the page"
    return Project(
        Quilt(name, Fraction(185, 2), Fraction(193, 2)),
        fabrics,
        borders,
        Backing("muslin"),
        Batting(),
        Binding(_LONG, Fraction(9, 4)),
        Sleeve("muslin"),
    )


def long_cloth() -> Project:
    """Everything from one narrow cloth, so that the lay is many yards long."""
    linen = Fabric(
        "grey linen",
        Fraction(43),
        HALF,
        straightening=Fraction(1),
        on_hand=(OnHand(Fraction(20), Fraction(30), 2),),
    )
    return Project(
        Quilt("Long", Fraction(80), Fraction(100)),
        (linen,),
        (Border("grey linen", Fraction(8), Corners.MITRED, grain=Grain.LENGTHWISE),),
        Backing("grey linen"),
        Batting(),
        Binding("grey linen", Fraction(5, 2)),
        Sleeve("grey linen"),
    )


def metric_class() -> Project:
    """Three equal quilts in centimetres, one print with one way up."""
    plain = Fabric("żółć", _mm(1100), _mm(10), sale_unit=_mm(100), straightening=_mm(20))
    print_ = Fabric("fond", _mm(1100), _mm(10), sale_unit=_mm(100), one_way_print=True)
    seam = _mm(6)
    return Project(
        Quilt("Żółta łąka", _mm(1280), _mm(1600), _mm(3), copies=3),
        (plain, print_),
        (Border("żółć", _mm(50), Corners.SQUARES, seam=seam),),
        Backing("fond", _mm(100), _mm(10)),
        Batting(_mm(100)),
        Binding("żółć", _mm(60), allowance=_mm(250), seam=seam),
        Sleeve("fond", _mm(100)),
        Units.CENTIMETRES,
    )


def bias() -> Project:
    return Project(
        Quilt("Bias baby", Fraction(36), Fraction(45)),
        (_bolt("gingham", price=None),),
        binding=Binding("gingham", Fraction(5, 2), grain=Grain.BIAS),
    )


def slivers() -> Project:
    """Many borders of next to nothing, so that strips are thinner than their letters."""
    names = ("ash", "beech", "cedar")
    thin = tuple(Border(names[i % 3], QUARTER) for i in range(9))
    return Project(
        Quilt("Slivers", Fraction(20), Fraction(24)),
        tuple(_bolt(name) for name in names),
        thin,
        binding=Binding("ash", Fraction(2)),
    )


def small_squares() -> Project:
    """Corner squares on a wide cloth, too small on paper to hold their letters."""
    return Project(
        Quilt("Small squares", Fraction(60), Fraction(60), copies=6),
        (_bolt("muslin", 108),),
        (Border("muslin", Fraction(3, 4), Corners.SQUARES),),
        Backing("muslin"),
    )


def said_by_hand() -> Project:
    """A stain, a pinhole, a motif that a square must hold and one for later, a pinned square."""
    print_ = replace(
        _bolt("harbour print"),
        flaws=(
            HandFlaw(Rect(Fraction(8), Fraction(20), Fraction(3), Fraction(4)), word="stain"),
            HandFlaw(Rect(Fraction(30), Fraction(6), HALF, HALF), word="hole"),
        ),
        motifs=(
            HandMotif("border 1 corner", Rect(Fraction(20), Fraction(10), *[Fraction(2)] * 2)),
            HandMotif(None, Rect(Fraction(36), Fraction(30), Fraction(3), Fraction(3))),
        ),
        pins=(HandPin("border 1 corner", Fraction(0), Fraction(0), copy=1),),
    )
    return Project(
        Quilt("By hand", Fraction(30), Fraction(36)),
        (print_, _bolt("plain")),
        (Border("harbour print", Fraction(4), Corners.SQUARES),),
        binding=Binding("plain", Fraction(5, 2)),
    )


def crowded() -> Project:
    """More than 40 pieces of 6 metric cloths with long names; slivers among them."""
    names = (
        "Mitternachtsblau mit silbernen Birkenblättern und sehr kleinen Sternen",
        "Ungebleichter Nessel, überbreit gelegt, aus dem Restekorb der Großmutter",
        "Rot-weiß gestreiftes Inlett, vorgewaschen",
        "Höstlöv på mörkgrön botten, storblommig",
        "Écru à pois minuscules",
        "Ocker",
    )
    cloths = tuple(
        Fabric(
            name,
            _mm(1120 if place % 2 else 1480),
            _mm(10),
            sale_unit=_mm(100),
            price_per_metre=Fraction(18) + place,
            one_way_print=place == 3,
            straightening=_mm(30),
            on_hand=(OnHand(_mm(460), _mm(550), 2),) if place == 2 else (),
        )
        for place, name in enumerate(names)
    )
    seam = _mm(6)
    borders = (
        Border(names[4], _mm(8), seam=seam),
        Border(names[2], _mm(60), Corners.SQUARES, corner_fabric=names[5], seam=seam),
        Border(names[5], _mm(10), seam=seam),
        Border(names[3], _mm(120), Corners.MITRED, grain=Grain.EITHER, seam=seam),
        Border(names[4], _mm(15), Corners.SQUARES, corner_fabric=names[0], seam=seam),
    )
    return Project(
        Quilt("Großer Quilt für das Gästezimmer im Obergeschoss", _mm(1440), _mm(1870), _mm(4)),
        cloths,
        borders,
        Backing(names[1], _mm(100), _mm(10)),
        Batting(_mm(100)),
        Binding(names[0], _mm(57), allowance=_mm(250), seam=seam),
        Sleeve(names[1], _mm(100)),
        Units.CENTIMETRES,
        label=Label(names[3], _mm(150), _mm(100)),
    )


def bare() -> Project:
    """A quilt without a name and with nothing to cut."""
    return Project(Quilt("", Fraction(20), Fraction(20)), (_bolt("ash"),))


HARD: Final = {
    "king": king,
    "long cloth": long_cloth,
    "metric class": metric_class,
    "bias": bias,
    "slivers": slivers,
    "small squares": small_squares,
    "crowded": crowded,
    "by hand": said_by_hand,
    "bare": bare,
}
