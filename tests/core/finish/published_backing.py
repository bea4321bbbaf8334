"""Published backings."""

from __future__ import annotations

from fractions import Fraction

from core.finish.backing import BackingPlan, backing_options
from core.lengths import Inches, round_up, sale_text
from core.plan import Plan, make_plan
from core.quilt import Backing, Frame, Panels, Project, Quilt, Seams
from tests.core.finish.published import Value, cloth

F = Fraction

PATCHWORK = (
    "American Patchwork & Quilting, Feb 2020, p. 102, "
    "https://issuhub.com/view/index/16041?pageIndex=104"
)
BERRY = "Sew Berry Chic, https://sewberrychic.com/backing"
MMM = "MMM Quilts, http://mmmquilts.blogspot.com/p/backing-material-and-preparation.html"
LR = "LR Designs, https://lrdesignsquilting.com/archives/123"
VALOR = "Quilts of Valor Foundation, https://www.qovf.org/basic-requirements/"
HERO = (
    "American Hero Quilts, reported 2014, http://woolleyfiberquilters.blogspot.com/2014/05/"
    "if-you-decide-to-donate-quilt-to.html"
)
PASTIMES = "Our Pastimes, https://ourpastimes.com/how-much-backing-is-needed-for-a-queen-quilt-12258985.html"
ABOUT = (
    "About.com Quilting, 'Pieced Backing', "
    "http://quilting.about.com/od/finishingsteps/ss/quilt_backing_3.htm"
)
TUTORIAL = (
    "I Love Fabric, 'Quilt Back Tutorial #2', 2009, "
    "http://blog.ilovefabric.com/2009/04/05/quilt-back-tutorial-2-pieced-method/"
)
TQA = (
    "TQA News, 'Math for Quilters, Part 4', 2012, "
    "http://tqanews.blogspot.com/2012/03/thursday-tidbit-math-for-quilters-part_22.html"
)
LONGARM = "longarmquilter.ca, http://longarmquilter.ca/index.php/preparing-a-quilt-top-and-backing/"
STOREY = (
    "How to Make a Quilt, ch. 5 (Storey Basics; author and publisher from memory), "
    "https://trantor.is/content/kw9KNWB7q2-hlr2a/HowToMakeQuilt-ebook-8.xhtml"
)
CROIX = "St. Croix quilters' site (Maine), http://www.stcroixquilters.com/quiltbacking.htm"
OLOGY = "Quiltology, http://quiltologynotes.squarespace.com/how-to-piece-a-back"
MOONLIGHT = "Moonlight Quilters Guild, http://www.moonlightquilters.org/tip-quilt-back-how-tos/"
BONSIB = "S. Bonsib, 'Confetti' class supply list, http://sandybonsib.com/supplylist_SBConfetti.htm"


def backed(width: Inches | int, length: Inches | int, overage: Inches | int) -> tuple[Inches, ...]:
    """The size of the finished backing."""
    plan = options(width, length, overage)[0]
    return plan.across, plan.along


def options(
    width: Inches | int,
    length: Inches | int,
    overage: Inches | int,
    seams: Seams = Seams.AUTO,
    usable: int = 42,
) -> tuple[BackingPlan, ...]:
    backing = Backing("cloth", F(overage), seams=seams)
    return backing_options(backing, F(width), F(length), cloth(usable))


def whole_panels(width: int, length: int, seams: Seams) -> Inches:
    """Cloth for a backing of whole panels, 3 in over on each side, all panels of full length."""
    plan = options(width, length, 3, seams)[0]
    return plan.panels * plan.panel_along


def two_lengths(side: Inches) -> Inches:
    """Cloth for the backing of a square quilt in whole panels, 4 in over on each side."""
    plan = options(side, side, 4)[0]
    return plan.panels * plan.panel_along


def example() -> Plan:
    """The tutorial's quilt: 48 × 60, 4 in over on each side, cloth 42 in wide."""
    fabric = cloth(42, sale_unit=F(1, 2))
    return make_plan(Project(Quilt("", F(48), F(60)), (fabric,), backing=Backing("cloth", F(4))))


def pieced_from(last: Inches) -> int:
    """The most strips that a last panel this narrow is pieced from."""
    plans = options(41 + last - 8, 60, 4, Seams.LENGTHWISE)
    return max(plan.pieced_last for plan in plans)


def plan_of(plan: Plan) -> BackingPlan:
    assert plan.backing is not None
    return plan.backing


def short_strips(plan: Plan) -> tuple[int, Inches | None]:
    part = plan.part("backing short strip")
    return part.count, part.along


def framed() -> tuple[Inches, ...]:
    """60 × 80 with 3 in over at the sides, 4 at top and bottom."""
    backing = Backing("cloth", F(3), overage_top=F(4), overage_bottom=F(4))
    plan = backing_options(backing, F(60), F(80), cloth(42))[0]
    return plan.across, plan.along


def single_width() -> str:
    """40 × 45 backed from one width of 42, so with 1 in over at the sides, 2 1/2 at the ends."""
    backing = Backing("cloth", F(5, 2), overage_left=F(1), overage_right=F(1))
    [plan, *_] = backing_options(backing, F(40), F(45), cloth(42))
    assert plan.panels == 1
    return sale_text(round_up(plan.panel_along, F(9)), F(9))


def inset() -> Plan:
    """50 × 60: 57 1/2 × 72 with a strip of 16 between the panels, all seams 5/8."""
    backing = Backing(
        "cloth", F(15, 4), F(5, 8), Seams.LENGTHWISE, Panels.HALVES, accent_fabric="dots",
        accent_width=16 - F(5, 4), overage_top=F(6), overage_bottom=F(6),
    )  # fmt: skip
    fabrics = cloth(42), cloth(42, name="dots")
    return make_plan(Project(Quilt("", F(50), F(60)), fabrics, backing=backing))


def split_length() -> Inches:
    """Cloth for 60 × 80 without a centre seam: a full panel, and one length split in two."""
    backing = Backing("cloth", F(4), seams=Seams.LENGTHWISE, panels=Panels.HALVES)
    plan = make_plan(Project(Quilt("", F(60), F(80)), (cloth(42),), backing=backing))
    return plan.fabrics[0].lay.used_along


def seamed(width: int, length: int, frame: Frame = Frame.NONE) -> str:
    """Which way the seams of whole panels run, 3 in over on each side."""
    backing = Backing("cloth", F(3), panels=Panels.WHOLE, frame=frame)
    fabric = cloth(42, sale_unit=F(1))
    plan = make_plan(Project(Quilt("", F(width), F(length)), (fabric,), backing=backing))
    return plan_of(plan).seams.value


BACKINGS = (
    Value(
        "at least 4 on every side", PATCHWORK, (48, 68),
        lambda: backed(40, 60, Backing("").overage),
    ),
    Value("60 × 80", BERRY, (68, 88), lambda: backed(60, 80, 4)),
    Value("40 × 50", MMM, (48, 58), lambda: backed(40, 50, 4)),
    Value("50 × 50, 4 on all sides", LR, (58, 58), lambda: backed(50, 50, 4)),
    Value("8 wider and 8 longer", VALOR, (68, 88), lambda: backed(60, 80, 4)),
    Value("63 × 87, 10 in all", HERO, (73, 97), lambda: backed(63, 87, 5)),
    Value(
        "63 × 87, '10 on each side'", HERO, (73, 97), lambda: backed(63, 87, 10), (83, 107),
        "the text says each side, but its own figures add 10 in all",
    ),
    Value("queen 84 × 94, 6 in all", PASTIMES, (90, 100), lambda: backed(84, 94, 3)),
    Value("45 wide, 4 in all", ABOUT, 49, lambda: backed(45, 45, 2)[0]),
    Value("48 × 60, 8 in all", TUTORIAL, (56, 68), lambda: backed(48, 60, 4)),
    Value(
        "48 × 60: cloth, the least of all ways", TUTORIAL, F(205, 2),
        lambda: example().fabrics[0].lay.used_along,
    ),
    Value("48 × 60: short strips", TUTORIAL, (2, F(69, 2)), lambda: short_strips(example())),
    Value(
        "48 × 60: widths of the panels", TUTORIAL, (F(81, 2), F(33, 2)),
        lambda: plan_of(example()).widths, (42, 15),
        "any two widths of 57 in together will do; the first panel here keeps the cloth's width",
    ),
    Value("remainder over half the width: a whole length", TUTORIAL, 1, lambda: pieced_from(F(22))),
    Value("remainder of 16: two side by side", TUTORIAL, 2, lambda: pieced_from(F(16))),
    Value("remainder under 14: three", TUTORIAL, 3, lambda: pieced_from(F(27, 2))),
    Value("60 × 75: seam across", TQA, 132, lambda: whole_panels(60, 75, Seams.CROSSWISE)),
    Value("70 × 90: seam along", TQA, 192, lambda: whole_panels(70, 90, Seams.LENGTHWISE)),
    Value("90 × 100: three panels", TQA, 288, lambda: whole_panels(90, 100, Seams.CROSSWISE)),
    Value("60 × 75: to buy", TQA, "3 2/3 yd", lambda: sale_text(F(132), F(12))),
    Value("70 × 90: to buy", TQA, "5 1/3 yd", lambda: sale_text(F(192), F(12))),
    Value("90 × 100: to buy", TQA, "8 yd", lambda: sale_text(F(288), F(12))),
    Value("60 × 80, 3 at the sides, 4 at top and bottom", LONGARM, (66, 88), framed),
    Value("small quilt 30 × 36, 2 all round", STOREY, (34, 40), lambda: backed(30, 36, 2)),
    Value("small project 12 × 12, 1 all round", STOREY, (14, 14), lambda: backed(12, 12, 1)),
    Value("40 × 45 from a single width", CROIX, "1 1/2 yd", single_width),
    Value(
        "50 × 60, an insert of 16 between", OLOGY, (22, 16, 22), lambda: plan_of(inset()).widths
    ),
    Value(
        "the insert is made of two strips", OLOGY, 2,
        lambda: inset().part("backing accent strip").count,
    ),
    Value(
        "panels 22 + 16 + 22 make", OLOGY, 58, lambda: plan_of(inset()).across, F(115, 2),
        "two seams of 5/8 take 2 1/2 of the 60, and the page allows 2",
    ),
    Value("no centre seam: two lengths, one of them split", ABOUT, 2 * 88, split_length),
    Value("a half on each side of a full panel", MOONLIGHT, 2 * 88, split_length),
    Value("40 × 50: seam along the rollers", MMM, "crosswise", lambda: seamed(40, 50, Frame.TOP)),
    Value("60 × 75: the horizontal seam takes less", TQA, "crosswise", lambda: seamed(60, 75)),
    Value("70 × 90: the vertical seam takes less", TQA, "lengthwise", lambda: seamed(70, 90)),
    Value(
        "44 1/2 square: two whole lengths", BONSIB, "3 yd",
        lambda: sale_text(round_up(two_lengths(F(89, 2)), F(9, 2)), F(9, 2)),
    ),
)  # fmt: skip
