"""Published binding lengths, strips, yardage and widths."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

from core.binding_choices import Finishing
from core.edge.bias import square_for, tube_yield
from core.edge.joins import chain_length, closing_takes, join_loss
from core.fabric import Grain
from core.finish.binding_width import reach_warning, widths_of
from core.lengths import Units, round_up, sale_text
from core.quilt import Binding, Closing, Joins
from core.refusal import Refusal
from tests.core.finish.published import EDGE, Value, bare, bound, single_fold

F = Fraction
EIGHTH_YARD, QUARTER_YARD, THIRD_YARD = F(9, 2), F(9), F(12)
JOINS_COUNT = "the published figure forgets the strip width that each diagonal join uses"

CURRY = (
    "M. Curry, 'How to Make Double Fold Flange Quilt Binding', 2019, "
    "https://www.monicacurryquiltdesign.com/2019/06/how-to-make-double-fold-flange-quilt.html"
)
ONCE = "'Tips and Tricks', Once Upon a Quilt, http://onceuponaquilt.blogspot.com/p/tips-and-tricks.html"
ADVENTURES = (
    "newsletter 61376, Quilting Adventures, "
    "https://www.quiltingadventures.com/module/newsletter.htm?newsletterId=61376"
)
DEPOT = (
    "'Measuring fabric for continuous binding', "
    "https://www.sylviasquiltdepot.com/measuring-fabric-for-continuous-strips.htm"
)
STITCHES = (
    "Always in Stitches, 'How to figure binding', 2009, "
    "http://alwaysinstitchesohio.blogspot.com/2009/08/how-to-figure-binding-shhh-marys-not.html"
)
COTTON_PATCH = "Cotton Patch, 'Measuring for Binding', https://cottonpatchfabrics.com"
HOW_MANY_YARDS = (
    "'How many yards do I need? Binding', "
    "http://blog.missouriquiltco.com/how-many-yards-do-i-need-binding/"
)
CHART = (
    "unsigned chart, two copies: "
    "https://sewmanypins.com/crocheting/question-what-size-should-a-quilt-binding-be.html and "
    "https://melgeecrafts.com/needlework/how-do-you-figure-out-how-much-binding-you-need-for-a-quilt.html"
)
HERO = (
    "American Hero Quilts standard, reported by Woolley Fiber Quilters, 2014, "
    "http://woolleyfiberquilters.blogspot.com/2014/05/if-you-decide-to-donate-quilt-to.html"
)
CHRISSIED = (
    "Made by ChrissieD, 2016, "
    "http://madebychrissied.blogspot.com/2016/10/single-fold-binding-tute-aka-flat-binding.html"
)
LOOKOUT = (
    "Lookout Mountain Quilter, 'Single-fold binding', "
    "https://lookoutmountainquilter.com/single-fold-binding/"
)
PRACTICE = "common practice, no source"


def double_faces(strip: Fraction, seam: Fraction, thickness: Fraction) -> tuple[Fraction, Fraction]:
    """Finished widths of the two faces of a double-fold binding."""
    plan = bound(40, 50, 42, strip, seam=seam, thickness=thickness)
    return plan.first_face_width, plan.second_face_width


def both_faces(strip: Fraction) -> Fraction:
    """What the two faces show together, with the usual seam and nothing for the turn."""
    return sum(double_faces(strip, F(1, 4), F(0)), F(0))


def warning(strip: Fraction, finishing: Finishing = Finishing.MACHINE) -> str | None:
    binding = Binding("cloth", strip, finishing=finishing)
    return reach_warning(binding, widths_of(binding, EDGE), Units.INCHES)


def reach(strip: Fraction, thickness: Fraction) -> Fraction:
    return bound(40, 50, 42, strip, thickness=thickness).reach


def refused(strip: Fraction, seam: Fraction) -> str | None:
    """The field that a strip all used up by its seams is refused for."""
    try:
        bound(40, 50, 42, strip, seam=seam)
    except Refusal as refusal:
        return refusal.path
    return None


LENGTHS = (
    Value("54 × 60, allowance 10: total", CURRY, 238, lambda: bare(54, 60, 42, 10).needs),
    Value("54 × 60, 42 wide: strips by the rule", CURRY, 6, lambda: bare(54, 60, 42, 10).strips),
    Value(
        "54 × 60, 42 wide: strips of 2 1/2", CURRY, 6, lambda: bound(54, 60, 42).strips, 7,
        "238 in are 5.67 widths, but six joined strips are 6 × 42 − 5 × 2 1/2 = 239 1/2 and the "
        "closing takes 2 1/2 more",
    ),
    Value("78 × 56, 1 a corner and 4: total", ONCE, 276, lambda: bare(78, 56, 40, 8).needs),
    Value("78 × 56, 40 wide: strips by the rule", ONCE, 7, lambda: bare(78, 56, 40, 8).strips),
    Value(
        "78 × 56, 40 wide: strips of 2", ONCE, 7, lambda: bound(78, 56, 40, 2, 8).strips, 8,
        JOINS_COUNT,
    ),
    Value("64 × 72: perimeter", ADVENTURES, 272, lambda: bound(64, 72, 42, 3, 0).perimeter),
    Value("64 × 72, 42 wide, strip 3", ADVENTURES, 7, lambda: bound(64, 72, 42, 3, 0).strips),
    Value("64 × 72: cloth", ADVENTURES, 21, lambda: 3 * bound(64, 72, 42, 3, 0).strips),
    Value(
        "64 × 72: to buy", ADVENTURES, "2/3 yd",
        lambda: sale_text(round_up(F(21), THIRD_YARD), THIRD_YARD),
    ),
    Value("46 × 46, 40 wide", DEPOT, 5, lambda: bound(46, 46, 40, allowance=0).strips),
    Value(
        "46 × 46: to buy", DEPOT, "1/2 yd",
        lambda: sale_text(round_up(F(5, 2) * 5, QUARTER_YARD), QUARTER_YARD),
    ),
    Value("40 × 50, 40 wide", STITCHES, 5, lambda: bound(40, 50, 40, allowance=0).strips),
    Value(
        "40 × 50, 42 wide, strip 3 1/2: cloth", COTTON_PATCH, 15,
        lambda: F(7, 2) * bound(40, 50, 42, F(7, 2), 0).strips, F(35, 2),
        "the page multiplies 4.29 strips by the width; a strip is cut whole (still inside 1/2 yd)",
    ),
    Value(
        "40 × 50, strip 3 1/2: to buy", COTTON_PATCH, "1/2 yd",
        lambda: sale_text(round_up(F(35, 2), QUARTER_YARD), QUARTER_YARD),
    ),
    Value("51 × 61, allowance 20", HOW_MANY_YARDS, 244, lambda: bare(51, 61, 42, 20).needs),
    Value("63 × 87: perimeter", CHART, 300, lambda: bound(63, 87, 42).perimeter),
    Value("84 × 92: perimeter", CHART, 352, lambda: bound(84, 92, 42).perimeter),
    Value(
        "63 × 87: at least 300", HERO, 300, lambda: bound(63, 87, 42).needs, F(625, 2),
        "300 is the bare perimeter; an allowance of 10 and the closing come on top",
    ),
    Value("50 × 50, strips of 2 1/2", PRACTICE, 6, lambda: bound(50, 50, 42).strips),
    Value(
        "single fold, 8 × 4 3/8: 24 3/4 + 5 1/4", CHRISSIED, 30,
        lambda: bare(8, F(35, 8), 42, F(21, 4)).needs,
    ),
    Value(
        "single fold, 18 1/4 × 14 1/4: 65 + 10", LOOKOUT, 75,
        lambda: bare(F(73, 4), F(57, 4), 44, 10).needs,
    ),
    Value(
        "single fold, 18 1/4 × 14 1/4: strips of 44", LOOKOUT, 2,
        lambda: single_fold(F(73, 4), F(57, 4), 44, F(5, 4)).strips,
    ),
)  # fmt: skip

SMILING = (
    "The Smiling Cat, 'Creating bias strips', https://sites.google.com/view/the-smiling-cat-info"
)
HOW_WIDE = (
    "Learn How to Quilt, 'Binding: How Wide?', https://learnhowtoquilt.com/quilt-tutorials/"
    "finishing-the-quilt/double-fold-binding/binding-how-wide/"
)
SUITE = "Suite101, 'How much binding fabric', 2009, http://www.suite101.com/blog/cdmwriter/2009"
FOUR_TIMES = (
    "unsigned Q&A, https://vandcdesign.com/beading/how-wide-should-my-quilt-binding-be.html"
)
DAILY = (
    "Quilting Daily, 'Binding & Finishing', "
    "https://www.quiltingdaily.com/category/binding-finishing/page/3/"
)
THICK = "unsigned copy of a craft-book passage, http://ridhvi.in (double-fold width)"
QUARTER, EIGHTH, NONE = F(1, 4), F(1, 8), F(0)

WIDTHS = (
    Value(
        "strip 3, seam 1/2: both faces", HOW_WIDE, (F(1, 2), F(1, 2)),
        lambda: double_faces(F(3), F(1, 2), NONE),
    ),
    Value(
        "3 1/4 for 1/2 finished, rounded up for the turn of cloth", SMILING, (F(1, 2), F(1, 2)),
        lambda: double_faces(F(13, 4), F(1, 2), EIGHTH),
    ),
    Value(
        "1 7/8 for 1/4 finished", SMILING, (QUARTER, QUARTER),
        lambda: double_faces(F(15, 8), QUARTER, EIGHTH), (QUARTER, F(5, 16)),
        "six times and 3/8: a turn of 1/8 on either side leaves the fold 1/16 past the seam",
    ),
    *(
        Value(
            f"2 × (2 × {finished} + 1/4): what both faces show", SUITE, 2 * finished,
            partial(both_faces, strip),
        )
        for finished, strip in ((QUARTER, F(3, 2)), (F(1, 2), F(5, 2)), (F(3, 4), F(7, 2)))
    ),
    Value(
        "1/2 finished, 2 × (2 × 1/2 + 1/4): each face", SUITE, (F(1, 2), F(1, 2)),
        lambda: double_faces(F(5, 2), QUARTER, NONE), (QUARTER, F(3, 4)),
        "the rule shares what shows alike; filled to the quilt's edge, the first face shows the "
        "seam's 1/4 and the second the rest",
    ),
    Value(
        "4 × finished, 1/2 from 2: what both faces show with no seam", FOUR_TIMES, 1,
        lambda: sum(double_faces(F(2), NONE, NONE)),
    ),
    Value(
        "4 × finished, 1/2 from 2, with seams of 1/2", FOUR_TIMES, None,
        lambda: refused(F(2), F(1, 2)), "binding.strip_width",
        "the rule has no seam in it: with one, nothing is left for the second face",
    ),
    *(
        Value(
            f"strips of {strip} in are usual for a 1/4 seam: no warning", DAILY, None,
            partial(warning, strip),
        )
        for strip in (F(2), F(9, 4), F(5, 2))
    ),
    Value(
        "strip 2: a little over 1/4 on the back", ONCE, True,
        lambda: QUARTER < double_faces(F(2), QUARTER, EIGHTH)[1] <= F(3, 8),
    ),
    Value(
        "very thick batting: 1/4 wider reaches as far", THICK, reach(F(9, 4), EIGHTH),
        lambda: reach(F(5, 2), QUARTER),
    ),
    Value(
        "single fold, 1/4 finished, seam 1/4: cut 1 1/8", CHRISSIED, QUARTER,
        lambda: single_fold(20, 20, 42, F(9, 8)).second_face_width,
    ),
)  # fmt: skip

CRAYON = (
    "Crayon Box Quilt Studio, 'What is lost?', 2012 (measured with paper), "
    "http://www.crayonboxquiltstudio.com/2012/04/what-is-lost.html"
)
BOARD = "quiltingboard.com t109880"
ANGIE = (
    "Angie Quilts, 'Brilliant Binding', https://angiequilts.blogspot.com/p/brilliant-binding.html"
)
BIND = "'How to Bind a Quilt', http://www.sccmag.com/how-to-bind-a-quilt/"
QUILTOLOGY = "Quiltology, http://quiltologynotes.squarespace.com/how-to-piece-a-back"


def joined(width: Fraction, *lengths: int) -> Fraction:
    loss = join_loss(Joins.DIAGONAL, width, QUARTER)
    return chain_length(tuple(F(length) for length in lengths), loss)


def overlap(width: Fraction) -> Fraction:
    return closing_takes(Closing.DIAGONAL, width, QUARTER)


JOIN_LOSSES = (
    Value("two of 3 × 10, joined on the diagonal", CRAYON, 17, lambda: joined(F(3), 10, 10)),
    Value("two of 1 1/2 × 20", CRAYON, F(77, 2), lambda: joined(F(3, 2), 20, 20)),
    Value(
        "border strips 8 wide: extra a seam", BOARD, 8,
        lambda: join_loss(Joins.DIAGONAL, F(8), QUARTER),
    ),
    Value("tails overlap, 2 1/2", ANGIE, F(5, 2), lambda: overlap(F(5, 2))),
    Value("tails overlap, 2 1/4", ANGIE, F(9, 4), lambda: overlap(F(9, 4))),
    Value("tails overlap, 3", ANGIE, 3, lambda: overlap(F(3))),
    Value(
        "tails overlap, strip 2 1/4", BIND, F(5, 2), lambda: overlap(F(9, 4)), F(9, 4),
        "the page leaves 1/4 in of slack; the overlap that just closes is the strip's width",
    ),
    Value(
        "panels 22 + 16 + 22 with seams of 5/8", QUILTOLOGY, 58,
        lambda: chain_length((F(22), F(16), F(22)), 2 * F(5, 8)), F(115, 2),
        "two seams of 5/8 take 2 1/2 in, not the 2 in that the page allows",
    ),
)  # fmt: skip

MAGIC = (
    "American Patchwork & Quilting, 'Save fabric with this magic way to make bias binding', 2020, "
    "https://www.allpeoplequilt.com/how-to-quilt/finishing/"
    "save-fabric-with-this-magic-way-to-make-bias-binding"
)
DECOZO = (
    "myDecozo soft-furnishing FAQ, https://www.mydecozo.co.uk/forum/mydecozo/"
    "soft-furnishing-faq-s/680-making-continuous-piping-strips-bias-binding"
)
TAPE = "Sew a Quilt, 'Bias Tape', http://www.sewaquilt.com/bias-tape.html"
GETA = (
    "Geta's Quilting Studio, 2018, https://www.getasquiltingstudio.com/2018/04/"
    "continuous-bias-binding-cheat-sheets-formulas-and-more.html"
)
QUESTION = (
    "Quilters Question Time, 2021, https://www.quiltersquestiontime.com/blog/"
    "how-do-i-calculate-how-much-fabric-i-need-for-bias-binding"
)
GUILD = (
    "Waco Homespun Quilt Guild, 'Continuous Bias Binding Tutorial', "
    "http://wacohomespunquiltguild.org/resources.html"
)
HOWARD = (
    "S. Howard, 2009, http://sherimhoward.blogspot.com/2009/03/making-bias-binding-tutorial.html"
)
AREA = "the square's bare area forgets the seams and the part strip that is left over"


def square(length: int, width: Fraction) -> Fraction:
    return square_for(F(length), width, QUARTER, F(1))


def inches(side: int, width: Fraction) -> int:
    return int(tube_yield(F(side), width, QUARTER))


BIAS = (
    Value(
        "135 of 2 1/2: 19 and 3 for seams", MAGIC, 22, lambda: square(135, F(5, 2)), 20,
        "22 is plenty (182 in); 19 is short (130 in), and 20 is the least whole inch (137 in)",
    ),
    Value("22 square, 2 1/2: gives at least 135", MAGIC, True, lambda: inches(22, F(5, 2)) >= 135),
    Value("20 square, strip 2", DECOZO, 200, lambda: inches(20, F(2)), 165, AREA),
    Value("250 of 2", DECOZO, 23, lambda: square(250, F(2)), 24, AREA),
    Value("12 square, strip 2", TAPE, 72, lambda: inches(12, F(2)), 65, AREA),
    Value("55 of 2 1/2", GETA, 12, lambda: square(55, F(5, 2)), 14, AREA),
    Value("100 of 3 1/2", QUESTION, 19, lambda: square(100, F(7, 2)), 21, AREA),
    Value("244 of 2 1/2: 24.7", HOW_MANY_YARDS, 25, lambda: square(244, F(5, 2)), 26, AREA),
    Value("110 of 1 1/2", GUILD, 14, lambda: square(110, F(3, 2))),
    Value("110 of 3", GUILD, 20, lambda: square(110, F(3))),
    Value("110 of 2", GUILD, 16, lambda: square(110, F(2)), 17, "16 gives 109 in whole strips"),
    Value("110 of 2 1/2", GUILD, 18, lambda: square(110, F(5, 2)), 19, "18 gives 99 in"),
    Value(
        "220 of 1 1/2", GUILD, 19, lambda: square(220, F(3, 2)), 20, "19 gives 209 in"
    ),
    Value("220 of 2", GUILD, 23, lambda: square(220, F(2))),
    Value(
        "90 × 108, strip 2 1/2, 42 wide: cloth", HOWARD, F(63, 2),
        lambda: bound(90, 108, 42, grain=Grain.BIAS).narrowest_usable_width, F(33),
        "7/8 yd holds enough as a slanted rectangle across the cloth; this program cuts a tube "
        "from one square",
    ),
)  # fmt: skip
