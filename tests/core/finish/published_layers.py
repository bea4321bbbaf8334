"""Published battings and hanging sleeves."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from core.batting_packages import COMMON, Package
from core.finish.batting import plan_batting
from core.finish.sleeve import plan_sleeve
from core.lengths import Inches, parse
from core.plan import make_plan
from core.quilt import Batting, Project, Quilt, Sleeve, SleeveShape
from tests.core.finish.published import Value, cloth

F = Fraction

BONSIB = "S. Bonsib, 'Confetti' class supply list, http://sandybonsib.com/supplylist_SBConfetti.htm"
BERRY = "Sew Berry Chic, https://sewberrychic.com/backing"
STYLEBOOK = (
    "Better Homes & Gardens Stylebook, 'Quilts: Materials Lists', "
    "http://bhgstylebook.com/qmaterialslists/"
)
HONEY = (
    "Honey Be Good, 'Common Quilt and Batting Sizes', 2012, http://www.honeybegood.com/blogs/"
    "resources/12653533-common-quilt-and-batting-sizes; and Stitching Times, 2011"
)
PROJECT_12 = (
    "Project 12 Quilts, 2012, "
    "https://project12quilts.blogspot.com/2012/01/quilting-basics-standard-quilt-sizes.html"
)
BLOSSOMS = (
    "Thimble Blossoms, 'Flower Patch', "
    "https://thimbleblossoms.com/products/flower-patch-paper-pattern"
)


def batted(
    width: Inches | int, length: Inches | int, overage: Inches | int
) -> tuple[Inches, Inches]:
    plan = plan_batting(Batting(F(overage)), F(width), F(length))
    return plan.across, plan.along


def package(width: Inches | int, length: Inches | int, *more: Package) -> str | None:
    """The package for a batting of exactly this size, of the common ones and `more`."""
    found = plan_batting(Batting(F(0), packages=(*more, *COMMON)), F(width), F(length)).package
    return None if found is None else found.name


BATTINGS = (
    Value("44 1/2 square", BONSIB, (50, 50), lambda: batted(F(89, 2), F(89, 2), F(11, 4))),
    Value("73 1/2 square", BLOSSOMS, (80, 80), lambda: batted(F(147, 2), F(147, 2), F(13, 4))),
    Value("60 × 80, at least 5 in all", BERRY, (65, 85), lambda: batted(60, 80, F(5, 2))),
    Value("60 × 80, + 8", STYLEBOOK, (68, 88), lambda: batted(60, 80, Batting().overage)),
    Value(
        "44 1/2 square, rounded up and + 8", STYLEBOOK, (53, 53),
        lambda: batted(F(89, 2), F(89, 2), 4), (F(105, 2), F(105, 2)),
        "the rule rounds the quilt up to whole inches for a list; here nothing is rounded",
    ),
    Value("about 6 to each dimension", HONEY, (66, 86), lambda: batted(60, 80, 3)),
    Value("craft 34 × 45", PROJECT_12, "craft", lambda: package(34, 45)),
    Value("crib 45 × 60", HONEY, "crib", lambda: package(45, 60)),
    Value("twin 72 × 90", HONEY, "twin", lambda: package(72, 90)),
    Value("full 81 × 96", HONEY, "full", lambda: package(81, 96)),
    Value("queen 90 × 108", HONEY, "queen", lambda: package(90, 108)),
    Value("king 120 × 120", HONEY, "king", lambda: package(120, 120)),
    Value(
        "full 84 × 96", PROJECT_12, "full", lambda: package(84, 96), "queen",
        "makers' packs differ (81 or 84 wide); the program's table counts on the smaller",
    ),
    Value(
        "full 84 × 96, in a table of one's own", PROJECT_12, "full",
        lambda: package(84, 96, Package("full", F(84), F(96))),
    ),
    Value(
        "king 124 × 120", PROJECT_12, "king", lambda: package(124, 120), None,
        "makers' packs differ (120 or 124); the program's table counts on the smaller",
    ),
    Value(
        "king 124 × 120, in a table of one's own", PROJECT_12, "king",
        lambda: package(124, 120, Package("king", F(124), F(120))),
    ),
    Value("a quarter inch over a king pack", HONEY, None, lambda: package(120, F(481, 4))),
)  # fmt: skip

HILL = (
    "Hill Country Quilt Guild, show rules 2017/2023, https://hillcountryquiltguild.com/"
    "2023-quilt-show/2023-quilt-show-quilt-sleeve-instructions/"
)
PRAIRIE = "Gems of the Prairie Quilters, https://gemsoftheprairie.com/quilt-sleeves/"
HAPPY = (
    "Sew Happy Stitchers guild, http://www.sewhappystitchers.com/how-to-make-a-hanging-sleve.html"
)
FABRICATION = (
    "Quilt Fabrication, 2015, https://quiltfabrication.com/2015/04/hanging-sleeve-tutorial.html"
)
CONTEMPORARY = (
    "Contemporary Quilt group (Quilters' Guild of the British Isles), 2019, "
    "https://www.cqchallenges.org/guidelines-2019.html"
)
MOONLIGHTING = "Moonlighting Quilts, https://moonlightingquilts.wordpress.com/tag/laura-wasilowski/"
LONE_STAR = "Lone Star quilt page, http://www.omniport.net/lonestar/sleeve.html"
PIE = (
    "Patchwork Pie, 'Quilt Sleeve: Almost show style', 2008, "
    "https://patchworkpie.blogspot.com/2008/06/quilt-sleeve-almost-show-style.html"
)
IRELAND = (
    "Northern Ireland Patchwork Guild exhibition rules, 2023, "
    "https://northernirelandpatchworkguild.com/"
)
BLUE = (
    "Blue Mountains Quilters, conditions 2016-19, "
    "https://bluemountainsquilters.blogspot.com/p/2016-conditions-of-entry.html"
)
TASMANIA = (
    "Tasmanian quilt guild, Island Quilts 2017, https://tasquiltguild.org.au/island-quilts/iq-2017/"
    "preparing-your-quilt-for-exhibition/"
)


def sleeve(
    depth: Inches | int,
    width: Inches | int = 40,
    **choices: Any,  # noqa: ANN401 - a sleeve's other fields
) -> tuple[Inches, Inches]:
    """The sleeve's strip: cut width and length."""
    plan = plan_sleeve(Sleeve("cloth", F(depth), **choices), F(width), cloth(42))
    return plan.cut_width, plan.length


def split_notice(width: int) -> bool:
    """Whether the plan of a quilt this wide says that its sleeve is better split."""
    quilt = Quilt("", F(width), F(60))
    plan = make_plan(Project(quilt, (cloth(42),), sleeve=Sleeve("cloth", F(4))))
    return any(notice.path == "sleeve" for notice in plan.warnings)


SLEEVES = (
    Value("4 in: strip 8 1/2 × (width − 1)", HILL, (F(17, 2), 39), lambda: sleeve(4)),
    Value("3 in: strip 6 1/2", HILL, F(13, 2), lambda: sleeve(3, 28)[0]),
    Value("never under 6 1/2", PRAIRIE, F(13, 2), lambda: sleeve(3)[0]),
    Value("8 1/2 advised", PRAIRIE, F(17, 2), lambda: sleeve(4, 60)[0]),
    Value("wider than 90: split", HILL, 90, lambda: Sleeve("").split_above),
    Value("a sleeve of 91 is told to be split", HILL, True, lambda: split_notice(92)),
    Value("a sleeve of 90 is not", HILL, False, lambda: split_notice(91)),
    Value("flat tube 4 1/4: strip 9", HAPPY, 9, lambda: sleeve(F(17, 4))[0]),
    Value("strip 9 × (width − 1)", FABRICATION, (9, 39), lambda: sleeve(F(17, 4))),
    Value("flat tube 4 1/2: strip 9 1/2", PIE, F(19, 2), lambda: sleeve(F(9, 2))[0]),
    Value(
        "D-sleeve: 10 × (width − 1 1/2)", CONTEMPORARY, (10, F(77, 2)),
        lambda: sleeve(4, shape=SleeveShape.D, shorter=F(3, 2)),
    ),
    Value(
        "18 wide, seams of 1/2: 10 × 17", MOONLIGHTING, (10, 17),
        lambda: sleeve(F(9, 2), 18, ease=F(1, 2)),
    ),
    Value("a miniature's sleeve of 2: strip 4 1/2", HILL, F(9, 2), lambda: sleeve(2)[0]),
    Value("hung length up to 96: in one", PRAIRIE, (F(17, 2), 96),
          lambda: sleeve(4, 97, split_above=F(96))),
    Value("over 100 cm: across the full width", TASMANIA, parse("120 cm"),
          lambda: sleeve(parse("10 cm"), parse("120 cm"), shorter=F(0))[1]),
    Value("1 shorter than the quilt", LONE_STAR, 39, lambda: sleeve(4)[1]),
    Value(
        "10 cm is called 4 in", IRELAND, F(17, 2), lambda: sleeve(parse("10 cm"))[0],
        parse("21.5 cm"), "10 cm is 1/16 less than 4 in, and a metric sleeve has seams of 7.5 mm",
    ),
    Value(
        "a pocket of 8 cm is called 3 in", BLUE, F(13, 2), lambda: sleeve(parse("8 cm"))[0],
        parse("17.5 cm"), "8 cm is 1/8 more than 3 in, and a metric sleeve has seams of 7.5 mm",
    ),
)  # fmt: skip
