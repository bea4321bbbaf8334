"""Published facts of cloth: widths, shrinkage, what a fat quarter gives, measures."""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache, partial

from core.fabric import Fabric, OnHand
from core.lay.check import check
from core.lay.problem import Cloth, LayProblem, Piece
from core.lay.solve import solve
from core.lengths import Units, exact_text, parse, sale_text
from tests.core.finish.published import Value, bound

F = Fraction
NONE = F(0)

MEASURED = "quiltingboard.com t190588, 2012"
AFTER = "quiltingboard.com 6723231"
PIECE = "Piece o' Cake blog, 2018, https://pieceocakeblog.com/2018/01/page/2"
STYLEBOOK = (
    "Better Homes & Gardens Stylebook, 'Quilts: Materials Lists', "
    "http://bhgstylebook.com/qmaterialslists/"
)
COPIES = "list of squares, copies at redbey.ae"
RESOURCES = "Quilters Resources, 'Measurements', https://quiltersresources.com/measurements.html"
CIRCULAR = (
    "National Bureau of Standards, Addendum (22 January 1960) to Circular 572, "
    "https://books.google.gr/books?id=SeRcAAAAIAAJ"
)
YARD = (
    "Wikipedia, 'Yard' (old revision 640524846), https://en.wikipedia.org/wiki/Yard?oldid=640524846"
)


def fabric(width: int, selvage: Fraction = NONE, shrinkage_across: Fraction = NONE) -> Fabric:
    return Fabric("cloth", F(width), selvage, shrinkage_across=shrinkage_across)


@lru_cache
def squares(side: Fraction) -> int:
    """The most squares that a lay, passed by the checker, finds in a fat quarter of 18 × 22."""
    quarter = Cloth("cloth", F(42), F(9, 2), on_hand=(OnHand(F(22), F(18)),), buy_more=False)
    asked = int(18 * 22 / side**2) + 1
    problem = LayProblem((quarter,), (Piece("square", "cloth", side, side, asked),))
    lay = solve(problem)
    assert check(problem, lay) == ()
    return len(lay.cloths[0].placements)


def yards(text: str) -> Fraction:
    return parse(f"{text} yd")


def sold(inches: str) -> str:
    return sale_text(parse(inches), F(9, 2))


CLOTH = (
    Value("43 wide, 42 1/4 without the white edges", MEASURED, F(169, 4),
          lambda: fabric(43, selvage=F(3, 8)).usable_width),
    Value("95 after 5 %: enough for 90", AFTER, F(361, 4),
          lambda: fabric(95, shrinkage_across=F(1, 20)).usable_width),
    Value("90 wanted after 5 %: make 95", AFTER, 95,
          lambda: Cloth("cloth", F(42), F(1), shrinkage_along=F(1, 20)).bought(F(90))),
    Value("5/8 in 10 shorter: 2 1/2 across 40", PIECE, F(75, 2),
          lambda: fabric(40, shrinkage_across=F(1, 16)).usable_width),
    Value("42 usable of 43 with selvages of 1/2", STYLEBOOK, 42,
          lambda: fabric(43, selvage=F(1, 2)).cutting_width),
    *(
        Value(f"squares of {side} from 18 × 22", COPIES, count, partial(squares, side))
        for side, count in ((F(2), 99), (F(5, 2), 56), (F(3), 42), (F(7, 2), 30), (F(4), 20))
    ),
    *(
        Value(f"squares of {side} from 18 × 22", RESOURCES, count, partial(squares, side))
        for side, count in ((F(9, 2), 16), (F(11, 2), 12), (F(6), 9), (F(13, 2), 6))
    ),
    Value("squares of 2 1/2 from 18 × 22", RESOURCES, 55, lambda: squares(F(5, 2)), 56,
          "seven rows of eight: the list is one short"),
    Value("squares of 5 from 18 × 22", RESOURCES, 15, lambda: squares(F(5)), 12,
          "15 squares of 5 in would need 18 × 25 or 15 × 25; three rows of four fit"),
)  # fmt: skip

MEASURES = (
    *(
        Value(f"{part} yd", RESOURCES, parse(inches), partial(yards, part))
        for part, inches in (
            ("7/8", "31 1/2"), ("3/4", "27"), ("5/8", "22 1/2"), ("1/2", "18"), ("3/8", "13 1/2"),
            ("1/4", "9"),
        )
    ),
    *(
        Value(f"{inches} in is sold as", RESOURCES, f"{part} yd",
              partial(sold, inches))
        for part, inches in (("7/8", "31 1/2"), ("5/8", "22 1/2"), ("3/8", "13 1/2"))
    ),
    Value("1 yd is 0.9144 m", CIRCULAR, parse("0.9144 m"), lambda: yards("1")),
    Value("1 in is 25.4 mm", CIRCULAR, "25.4", lambda: exact_text(F(1), Units.MILLIMETRES)),
    Value("a quarter of cloth yard", YARD, 9, lambda: yards("1/4")),
    Value("an eighth, or finger", YARD, F(9, 2), lambda: yards("1/8")),
    Value("a sixteenth, or nail", YARD, F(9, 4), lambda: yards("1/16")),
)  # fmt: skip

ALLOWANCES = (
    Value(
        "published allowances run from 8 to 24; the program's own lies among them",
        "Waco Homespun Quilt Guild, 'Resources' (10); Fons & Porter, Quilter's Complete Guide, "
        "pp. 94-95, reported by the Minneapolis Modern Quilt Guild, 2014 (15); Quick Tips "
        "Sewing, 2011 (24); unsigned Q&A copies (8)",
        True, lambda: 8 <= bound(50, 60, 42).needs - 220 - F(5, 2) <= 24,
    ),
)  # fmt: skip
