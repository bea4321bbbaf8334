"""Published borders."""

from __future__ import annotations

from fractions import Fraction

from core.fabric import Grain
from core.lengths import Inches
from core.plan import Plan, make_plan
from core.quilt import Border, Corners, Project, Quilt
from tests.core.finish.published import Value, bordered, cloth, outer, strips, then

F = Fraction

GUIDE = (
    "Idiot's Guides: Quilting (Alpha Books, ISBN 9781615646142), pp. 150-151, "
    "https://ebookreading.net/view/book/Quilting-EB9781615646142_69.html"
)
DDD = "DDD Designs, https://www.ddddesigns.com/howdoi/makemiteredborders"
ARBEE = "Arbee Designs, https://arbeedesigns.com/pages/mitered-corners"
BOARD = "quiltingboard.com t109880"
ANNIE = "Annie's, 'Determining Border Lengths', https://anniesattic.com/determining-border-lengths"
HANDOUT = (
    "guild class handout '4Bs: Borders, Batting, Backing, Binding', "
    "https://oldmvc.villageserver.com/4Bs_Oct.html"
)
SLIDES = (
    "class slides 'Can you figure the amount of yardage to buy?', https://fr.slideserve.com/megan/"
    "can-you-f-igure-the-amount-of-yardage-to-buy-powerpoint-ppt-presentation"
)
LENGTHWISE = "quiltingboard.com 511807"
OZARK = (
    "Ozark Foothills quilt group, 2013, https://ozarkfoothillssaga.blogspot.com/2013/06/"
    "june-meeting-ozark-foothills-group-quilt.html"
)
CHESHIRE = "reprint 'How to Use Borders', http://icheshire.co.uk/How-To-Use-Borders-1593530270.html"
TOP = F(65, 2), F(44)  # the handout's top, 32 1/2 × 44


def lengthwise(cut_width: Inches | int, straightening: int, usable: int = 42) -> Plan:
    """Four strips of 80 in, cut lengthwise from cloth that is sold by the 1/4 yard."""
    fabric = cloth(usable, sale_unit=F(9), straightening=F(straightening))
    border = Border("cloth", F(cut_width) - F(1, 2), Corners.SQUARES, "squares", Grain.LENGTHWISE)
    return make_plan(
        Project(Quilt("", F(80), F(80)), (fabric, cloth(42, name="squares")), (border,))
    )


def lengths(plan: Plan) -> Inches:
    """How many lengths of 80 in the four strips take."""
    return plan.fabrics[0].lay.used_along / 80


def bought(plan: Plan) -> str:
    return plan.fabrics[0].buy.sale_text


BORDERS = (
    Value(
        "mitred, side 50, border 3, margin 4: side + 10", GUIDE, 60,
        lambda: strips(bordered(50, 50, 3, Corners.MITRED, 4))[0],
    ),
    Value(
        "mitred, side 50, border 4, margin 6", DDD, 64,
        lambda: strips(bordered(50, 50, 4, Corners.MITRED, 6))[0],
    ),
    Value(
        "mitred, side 50, border 4, margin 1/2", ARBEE, F(117, 2),
        lambda: strips(bordered(50, 50, 4, Corners.MITRED, F(1, 2)))[0],
    ),
    Value(
        "mitred, X + 2Y + 1", BOARD, 59,
        lambda: strips(bordered(50, 50, 4, Corners.MITRED, 1))[0],
    ),
    Value(
        "mitred, at least twice the border's width more", ANNIE, 58,
        lambda: strips(bordered(50, 50, 4, Corners.MITRED, 0))[0],
    ),
    Value(
        "butted, centre 36 × 48 finished: sides", ANNIE, F(97, 2),
        lambda: strips(bordered(F(73, 2), F(97, 2), 3))[0],
    ),
    Value(
        "butted, centre 36 finished, border 3: 36 + 2 × 3 + 1/2", ANNIE, F(85, 2),
        lambda: strips(bordered(F(73, 2), F(97, 2), 3))[1],
    ),
    Value(
        "strip for a finished side of 48: 48 + 1/2", CHESHIRE, F(97, 2),
        lambda: strips(bordered(F(73, 2), F(97, 2), 3))[0],
    ),
    Value("border 1, cut 1 1/2", HANDOUT, (44, F(69, 2)), lambda: strips(bordered(*TOP, 1))),
    Value("border 1: the quilt is", HANDOUT, (F(69, 2), 46), lambda: outer(bordered(*TOP, 1))),
    Value(
        "border 2, cut 2 1/2", HANDOUT, (46, F(77, 2)),
        lambda: strips(then(bordered(*TOP, 1), 2, Corners.BUTTED)),
    ),
    Value(
        "border 2: the quilt is", HANDOUT, (F(77, 2), 50),
        lambda: outer(then(bordered(*TOP, 1), 2, Corners.BUTTED)),
    ),
    Value(
        "border 3 with cornerstones: sides and ends as the quilt is", HANDOUT, (50, F(77, 2)),
        lambda: strips(
            then(then(bordered(*TOP, 1), 2, Corners.BUTTED), 3, Corners.SQUARES)
        ),
    ),
    Value("70 × 86, border cut 6 1/2", SLIDES, (82, 98), lambda: outer(bordered(70, 86, 6))),
    Value(
        "70 × 86, border cut 6 1/2: strip in all", SLIDES, 338,
        lambda: 2 * sum(strips(bordered(70, 86, 6))), 336,
        "the slides add four cut widths; butted ends reach over two finished widths each",
    ),
    Value(
        "four lengthwise strips of 80 from 42 wide, 10 to spare", LENGTHWISE, "2 1/2 yd",
        lambda: bought(lengthwise(F(21, 2), 10)),
    ),
    Value(
        "the same, 12 wide: 48 > 42", LENGTHWISE, "5 yd",
        lambda: bought(lengthwise(12, 20)),
    ),
    Value(
        "four lengthwise strips of 10 from 40 wide: one length", OZARK, 1,
        lambda: lengths(lengthwise(10, 0, 40)),
    ),
    Value(
        "and no wider ones", OZARK, 2, lambda: lengths(lengthwise(F(81, 8), 0, 40)),
    ),
)  # fmt: skip
