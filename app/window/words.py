"""What the window says at length: the trade's words, and about the program."""

from __future__ import annotations

import re
from itertools import islice

WORDS: tuple[tuple[str, str], ...] = (
    (
        "accent, flange, piping",
        "A narrow strip of another cloth sewn in under the binding: flat it is a flange, round a "
        "cord a piping.",
    ),
    (
        "across, along",
        "Across runs from selvage to selvage; along runs parallel to the selvages. "
        "Sizes on cloth are given as across × along.",
    ),
    (
        "allowance",
        "What is added so that nothing runs short: to a strip for handling, to an edge for its "
        "seam.",
    ),
    (
        "bias",
        "At 45° to the threads. Bias strips stretch, so they follow a curved edge.",
    ),
    (
        "bolt",
        "The roll that a shop cuts cloth from. What comes from it is paid for; pieces on hand are "
        "not.",
    ),
    (
        "butted, mitred, corner square",
        "How border strips meet. Butted: two go on first, the other two across their ends. Mitred: "
        "all four meet at 45°. Corner squares: a square of cloth fills each corner.",
    ),
    (
        "closing",
        "How the two ends of the binding meet: joined on the diagonal, joined straight, or "
        "tucked (one end is folded into a pocket and the other tucked into it).",
    ),
    (
        "cloth",
        "One length of one fabric that pieces are laid on: cut from the bolt, or a piece on hand.",
    ),
    (
        "coping strip",
        "A border whose width is worked out, so that the quilt reaches a wished size.",
    ),
    (
        "crosswise, lengthwise",
        "The two straight grains. A crosswise strip runs from selvage to selvage and gives a "
        "little; a lengthwise strip runs parallel to the selvages and hardly stretches.",
    ),
    (
        "cut order",
        "The cuts in sequence. Each goes from edge to edge of the cloth in hand.",
    ),
    (
        "first face, second face",
        "The binding is first sewn to one face of the quilt, then folded over the edge to "
        "the other, where it is finished.",
    ),
    ("flaw", "A rectangle of the cloth that nothing laid may touch: a stain, a hole, a fold."),
    (
        "fold",
        "A double-fold binding is folded in half first, so that two layers cover the edge; a "
        "single fold has one layer, its edge turned under; a facing does not show at the front.",
    ),
    (
        "join, join loss",
        "The seam between two strips, and the length it uses up: a diagonal join uses the "
        "strip's width, a straight join two seam allowances.",
    ),
    ("lay", "Where every piece and strip lies on the cloth."),
    (
        "mitre",
        "A corner where two edges meet at 45°. The binding folds into one by itself if the seam "
        "stops short of the corner and the strip is folded up and down again; a lump, such as a "
        "join, will not mitre.",
    ),
    (
        "motif",
        "A rectangle of the cloth that one piece must contain whole, as in fussy cutting.",
    ),
    (
        "near edge, far edge",
        "The two long edges of a cloth as it is pictured. The near edge has the ruler; "
        "lengthwise cuts are measured from it.",
    ),
    ("offcut", "A rectangle left over that is worth keeping."),
    (
        "overage",
        "How far backing and batting stand out beyond the quilt on each side, to be trimmed "
        "off after quilting.",
    ),
    (
        "piece",
        "One rectangle to cut, with its size across and along.",
    ),
    (
        "pin",
        "A place on the cloth that a piece must have, because you put it down there. The rest is "
        "laid round it.",
    ),
    (
        "proved least",
        "No lay of these pieces can be bought in less of this cloth. Where it is not proved, less "
        "was looked for and not found.",
    ),
    (
        "reach",
        "How far the folded edge of the binding lands past the seam line on the second face: "
        "the measure of whether a strip is wide enough.",
    ),
    (
        "repeat, one-way print",
        "A repeat is the length after which a print begins again, to be matched across a seam. A "
        "one-way print has a top, so that its pieces may not be turned.",
    ),
    (
        "run, segment",
        "A run is a long strip joined from shorter ones, such as the binding; its segments are "
        "the strips as they are cut.",
    ),
    ("sale unit", "The step a fabric is sold in, such as 1/8 yd or 10 cm."),
    (
        "section",
        "A rectangle of cloth in hand that further cuts are made of.",
    ),
    (
        "selvage, usable width",
        "The selvage is the firm edge of the cloth, cut away before use. The usable width is "
        "the width after washing, less both selvages.",
    ),
    (
        "shrinkage, take-up",
        "What cloth loses in washing, and what a quilt loses when it is quilted and washed.",
    ),
    (
        "squaring",
        "Cutting an edge or an end straight and square; and the length kept for it.",
    ),
    (
        "staircase",
        "What is bought as one width grows: it stays the same for a while, then takes a step.",
    ),
    (
        "stop",
        "Where the binding's seam ends before a corner: as far from the edge as the seam is wide. "
        "Sewn further, the corner will not fold.",
    ),
    (
        "straightening",
        "What is lost at the cut end of a length of cloth when it is cut square to the selvage.",
    ),
    (
        "tails, gap",
        "The ends of the binding that are left unsewn until they are joined, and the stretch of "
        "edge left open between them.",
    ),
    ("waste", "What is neither cut nor worth keeping, as a share of the cloth that is bought."),
    ("width of fabric (WOF)", "The whole width, selvage to selvage, as it comes off the bolt."),
)

# What the tabs of the window show, for their tool tips.
TABS = {
    "Yardage": "Every cloth to scale: what is cut from where, and what is left over",
    "Quilt": "The finished quilt from the front, and its back",
    "Binding": "The bound edge cut through, and how bias cloth is marked",
    "Side by side": "One choice with several values: what each buys, and how it is laid",
    "Staircase": "From which width to which the same is bought",
    "In hand": "What your own cloth is enough for, and how narrow or short it may turn out",
    "Edge": "Where the binding starts, where each join lands, and how far it is from a corner",
    "To cut": "Every part with its letter, its size and how many",
    "Pieces": "Every single piece, and where on its cloth it lies",
    "Cut order": "The cuts in sequence, each from edge to edge of the cloth in hand",
    "Sewing": "How the pieces become borders, backing and binding",
    "Figures": "How the plan's figures come about: widths, lengths, reach",
}

# What the columns of a list mean, for their tool tips.
HEADERS = {
    "Buy": "What to ask for in the shop, in the steps that the cloth is sold in",
    "Cost": "What that costs, where the fabric has a price",
    "Waste": "The share of the bought cloth that is neither cut nor worth keeping",
    "Size": "Across × along: from selvage to selvage, and parallel to the selvages",
    "From edge": "How far the piece lies from the near edge, the one with the ruler",
    "From end": "How far the piece lies from the straightened end of the cloth",
}

# Of these the lists are full; they are in the help.
EVERYDAY = {"across", "along", "bolt", "cloth", "fold", "lay", "piece"}
MOST_TAUGHT = 3


def taught(text: str) -> str:
    """The first few trade words that a text has, each with its meaning; "" for none.

    >>> taught("Binding: reach past the seam")[:12]
    'reach: How f'
    """
    said = text.lower()
    found = (
        f"{word}: {meaning}"
        for words, meaning in WORDS
        for word in words.split(", ")
        if word not in EVERYDAY and re.search(rf"\b{re.escape(word)}\b", said)
    )
    return "\n\n".join(islice(found, MOST_TAUGHT))


ABOUT = (
    "Crossgrain turns a quilt and some cloth into a cutting plan: how much to buy, what to cut, "
    "from where on the cloth and in which order.",
    "It is free software under the MIT licence. Its letters are DejaVu Sans, under a licence of "
    "their own that comes with the program; the window is made with Qt, under the LGPL.",
    "Lengths are exact; text that was rounded to a ruler's marks carries the sign ≈.",
)
