"""Published values of layers, strips from a finished width, slanted ends and bias strips."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

from core.binding_choices import WidthRule
from core.edge.bias_strips import best_strips, bias_strips
from core.edge.joins import chain_length, slanted_loss
from core.finish.binding_width import strip_for
from core.finish.closing import TAIL
from core.finish.edge_layers import plain_layers
from core.quilt import Binding, Fold
from tests.core.finish.published import Value

F = Fraction
NONE = F(0)
FIRST_LIGHT = "First Light Designs, https://firstlightdesigns.com/?p=18968"
ADVENTURES = (
    "newsletter 61376, Quilting Adventures, "
    "https://www.quiltingadventures.com/module/newsletter.htm?newsletterId=61376"
)
SUITE = "Suite101, 'How much binding fabric', 2009, http://www.suite101.com/blog/cdmwriter/2009"
STUDIO = "Go to Your Studio, 2008, http://gotoyourstudio.blogspot.com/2008_08_05_archive.html"
ANGIE = (
    "Angie Quilts, 'Brilliant Binding', https://angiequilts.blogspot.com/p/brilliant-binding.html"
)
PARTNERS = (
    "Creative Partners, 'How to Make Bias Strips', "
    "http://creativepartnersllc.com/HowTo-MakeBiasStrips.html"
)


def layers(fold: Fold) -> tuple[int, int, int]:
    """On the front, on the back, round the edge."""
    made = plain_layers(fold)
    return made.first_face, made.second_face, made.edge


def strip(finished: Fraction, rule: WidthRule) -> Fraction:
    """The bare rule: a thin edge, and no reach past the seam."""
    binding = Binding("cloth", None, finished_width=finished, width_rule=rule, reach=NONE)
    return strip_for(binding, finished, NONE)


def one_by_one(side: int) -> int:
    """What all strips of 2 1/2 from a square make when joined, in whole inches."""
    loss = slanted_loss(F(1, 4))
    used = best_strips(bias_strips(F(side), F(side), F(5, 2)), F(1000), loss, NONE)
    return int(chain_length(tuple(one.usable for one in used), loss))


WAYS = (
    Value("double fold: 4 layers, 2 and 2", FIRST_LIGHT, (4, 2, 2), lambda: layers(Fold.DOUBLE)),
    Value("single fold: 2 layers, 2 and 1", FIRST_LIGHT, (2, 2, 1), lambda: layers(Fold.SINGLE)),
    Value(
        "1/2 finished, six times: cut 3", ADVENTURES, 3, lambda: strip(F(1, 2), WidthRule.FACES)
    ),
    *(
        Value(f"{finished} finished, seam kept at 1/4: cut {cut}", SUITE, cut,
              partial(strip, finished, WidthRule.SEAM))
        for finished, cut in ((F(1, 4), F(3, 2)), (F(1, 2), F(5, 2)), (F(3, 4), F(7, 2)))
    ),
    Value(
        "both ends cut at 45° with a seam past the meeting line: 1/2 in square to the cut", STUDIO,
        True, lambda: F(1, 2) * F(1414, 1000) <= slanted_loss(F(1, 4)) <= F(1, 2) * F(1415, 1000)
        + F(1, 64),
    ),
    Value("unsewn tails of 5 to 8 in", ANGIE, True, lambda: 5 <= TAIL <= 8),
    Value(
        "18 square, 2 1/2, strips one by one: about 90", PARTNERS, True,
        lambda: 90 <= one_by_one(18) <= 100,
    ),
    Value(
        "24 square, 2 1/2, strips one by one", PARTNERS, 120, lambda: one_by_one(24),
        189, "the page is far too low: the square holds 576 / 2 1/2 = 230 in by area",
    ),
)  # fmt: skip
