"""What the window says at length: the trade's words, and about the program."""

from __future__ import annotations

import re
import unicodedata
from itertools import islice

from core.language import marked, told

WORDS: tuple[tuple[str, str], ...] = (
    (
        marked("accent, flange, piping"),
        marked(
            "A narrow strip of another cloth sewn in under the binding: flat it is a flange, "
            "round a cord a piping."
        ),
    ),
    (
        marked("across, along"),
        marked(
            "Across runs from selvage to selvage; along runs parallel to the selvages. "
            "Sizes on cloth are given as across × along."
        ),
    ),
    (
        marked("allowance"),
        marked(
            "What is added so that nothing runs short: to a strip for handling, to an edge for its "
            "seam."
        ),
    ),
    (
        marked("bias"),
        marked("At 45° to the threads. Bias strips stretch, so they follow a curved edge."),
    ),
    (
        marked("bolt"),
        marked(
            "The roll that a shop cuts cloth from. What comes from it is paid for; pieces on hand "
            "are not."
        ),
    ),
    (
        marked("butted, mitred, corner square"),
        marked(
            "How border strips meet. Butted: two go on first, the other two across their ends. "
            "Mitred: all four meet at 45°. Corner squares: a square of cloth fills each corner."
        ),
    ),
    (
        marked("closing"),
        marked(
            "How the two ends of the binding meet: joined on the diagonal, joined straight, or "
            "tucked (one end is folded into a pocket and the other tucked into it)."
        ),
    ),
    (
        marked("cloth"),
        marked(
            "One length of one fabric that pieces are laid on: cut from the bolt, or a piece on "
            "hand."
        ),
    ),
    (
        marked("coping strip"),
        marked("A border whose width is worked out, so that the quilt reaches a wished size."),
    ),
    (
        marked("crosswise, lengthwise"),
        marked(
            "The two straight grains. A crosswise strip runs from selvage to selvage and gives a "
            "little; a lengthwise strip runs parallel to the selvages and hardly stretches."
        ),
    ),
    (
        marked("cut order"),
        marked("The cuts in sequence. Each goes from edge to edge of the cloth in hand."),
    ),
    (
        marked("first face, second face"),
        marked(
            "The binding is first sewn to one face of the quilt, then folded over the edge to "
            "the other, where it is finished."
        ),
    ),
    (
        marked("flaw"),
        marked("A rectangle of the cloth that nothing laid may touch: a stain, a hole, a fold."),
    ),
    (
        marked("fold"),
        marked(
            "A double-fold binding is folded in half first, so that two layers cover the edge; a "
            "single fold has one layer, its edge turned under; a facing does not show at the front."
        ),
    ),
    (
        marked("join, join loss"),
        marked(
            "The seam between two strips, and the length it uses up: a diagonal join uses the "
            "strip's width, a straight join two seam allowances."
        ),
    ),
    (marked("lay"), marked("Where every piece and strip lies on the cloth.")),
    (
        marked("mitre"),
        marked(
            "A corner where two edges meet at 45°. The binding folds into one by itself if the "
            "seam stops short of the corner and the strip is folded up and down again; a lump, "
            "such as a join, will not mitre."
        ),
    ),
    (
        marked("motif"),
        marked("A rectangle of the cloth that one piece must contain whole, as in fussy cutting."),
    ),
    (
        marked("near edge, far edge"),
        marked(
            "The two long edges of a cloth as it is pictured. The near edge has the ruler; "
            "lengthwise cuts are measured from it."
        ),
    ),
    (marked("offcut"), marked("A rectangle left over that is worth keeping.")),
    (
        marked("overage"),
        marked(
            "How far backing and batting stand out beyond the quilt on each side, to be trimmed "
            "off after quilting."
        ),
    ),
    (
        marked("piece"),
        marked("One rectangle to cut, with its size across and along."),
    ),
    (
        marked("pin"),
        marked(
            "A place on the cloth that a piece must have, because you put it down there. The rest "
            "is laid round it."
        ),
    ),
    (
        marked("proved least"),
        marked(
            "No lay of these pieces can be bought in less of this cloth. Where it is not proved, "
            "less was looked for and not found."
        ),
    ),
    (
        marked("reach"),
        marked(
            "How far the folded edge of the binding lands past the seam line on the second face: "
            "the measure of whether a strip is wide enough."
        ),
    ),
    (
        marked("repeat, one-way print"),
        marked(
            "A repeat is the length after which a print begins again, to be matched across a "
            "seam. A one-way print has a top, so that its pieces may not be turned."
        ),
    ),
    (
        marked("run, segment"),
        marked(
            "A run is a long strip joined from shorter ones, such as the binding; its segments are "
            "the strips as they are cut."
        ),
    ),
    (marked("sale unit"), marked("The step a fabric is sold in, such as 1/8 yd or 10 cm.")),
    (
        marked("section"),
        marked("A rectangle of cloth in hand that further cuts are made of."),
    ),
    (
        marked("selvage, usable width"),
        marked(
            "The selvage is the firm edge of the cloth, cut away before use. The usable width is "
            "the width after washing, less both selvages."
        ),
    ),
    (
        marked("shrinkage, take-up"),
        marked(
            "What cloth loses in washing, and what a quilt loses when it is quilted and washed."
        ),
    ),
    (
        marked("squaring"),
        marked("Cutting an edge or an end straight and square; and the length kept for it."),
    ),
    (
        marked("staircase"),
        marked(
            "What is bought as one width grows: it stays the same for a while, then takes a step."
        ),
    ),
    (
        marked("stop"),
        marked(
            "Where the binding's seam ends before a corner: as far from the edge as the seam is "
            "wide. Sewn further, the corner will not fold."
        ),
    ),
    (
        marked("straightening"),
        marked(
            "What is lost at the cut end of a length of cloth when it is cut square to the selvage."
        ),
    ),
    (
        marked("tails, gap"),
        marked(
            "The ends of the binding that are left unsewn until they are joined, and the stretch "
            "of edge left open between them."
        ),
    ),
    (
        marked("waste"),
        marked("What is neither cut nor worth keeping, as a share of the cloth that is bought."),
    ),
    (
        marked("width of fabric (WOF)"),
        marked("The whole width, selvage to selvage, as it comes off the bolt."),
    ),
)

# Of these the lists are full; they are in the help.
EVERYDAY = {"across, along", "bolt", "cloth", "fold", "lay", "piece"}
MOST_TAUGHT = 3


def glossary() -> list[tuple[str, str]]:
    """The trade's words, each with its meaning, in the order of the alphabet."""
    return sorted(((told(words), told(meaning)) for words, meaning in WORDS), key=_in_alphabet)


def _in_alphabet(entry: tuple[str, str]) -> str:
    """Letters with marks, such as ü, are sorted as those without."""
    parts = unicodedata.normalize("NFKD", entry[0].lower())
    return "".join(part for part in parts if not unicodedata.combining(part))


def taught(text: str) -> str:
    """The first few trade words that a text has, each with its meaning; "" for none.

    >>> taught("Binding: reach past the seam")[:12]
    'reach: How f'
    """
    said = text.lower()
    found = (
        f"{word}: {told(meaning)}"
        for words, meaning in WORDS
        if words not in EVERYDAY
        for word in told(words).split(", ")
        if re.search(rf"\b{re.escape(word.lower())}\b", said)
    )
    return "\n\n".join(islice(found, MOST_TAUGHT))


ABOUT = (
    marked(
        "Crossgrain turns a quilt and some cloth into a cutting plan: how much to buy, what to "
        "cut, from where on the cloth and in which order."
    ),
    marked(
        "It is free software under the MIT licence. Its letters are DejaVu Sans, under a licence "
        "of their own that comes with the program; the window is made with Qt, under the LGPL."
    ),
    marked("Lengths are exact; text that was rounded to a ruler's marks carries the sign ≈."),
)
