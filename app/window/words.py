"""What the window says at length: the trade's words, and about the program."""

from __future__ import annotations

WORDS: tuple[tuple[str, str], ...] = (
    (
        "across, along",
        "Across runs from selvage to selvage; along runs parallel to the selvages. "
        "Sizes on cloth are given as across × along.",
    ),
    (
        "bias",
        "At 45° to the threads. Bias strips stretch, so they follow a curved edge.",
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
    (
        "join, join loss",
        "The seam between two strips, and the length it uses up: a diagonal join uses the "
        "strip's width, a straight join two seam allowances.",
    ),
    ("lay", "Where every piece and strip lies on the cloth."),
    ("offcut", "A rectangle left over that is worth keeping."),
    (
        "near edge, far edge",
        "The two long edges of a cloth as it is pictured. The near edge has the ruler; "
        "lengthwise cuts are measured from it.",
    ),
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
        "proved least",
        "No lay of these pieces can be bought in less of this cloth.",
    ),
    (
        "reach",
        "How far the folded edge of the binding lands past the seam line on the second face: "
        "the measure of whether a strip is wide enough.",
    ),
    (
        "run, segment",
        "A run is a long strip joined from shorter ones, such as the binding; its segments are "
        "the strips as they are cut.",
    ),
    ("sale unit", "The step a fabric is sold in, such as 1/8 yd or 10 cm."),
    (
        "selvage, usable width",
        "The selvage is the firm edge of the cloth, cut away before use. The usable width is "
        "the width after washing, less both selvages.",
    ),
    (
        "straightening",
        "What is lost at the cut end of a length of cloth when it is cut square to the selvage.",
    ),
    ("width of fabric (WOF)", "The whole width, selvage to selvage, as it comes off the bolt."),
)

ABOUT = (
    "Crossgrain turns a quilt and some cloth into a cutting plan: how much to buy, what to cut, "
    "from where on the cloth and in which order.",
    "It is free software under the MIT licence. Its letters are DejaVu Sans, under a licence of "
    "their own that comes with the program; the window is made with Qt, under the LGPL.",
    "Lengths are exact; text that was rounded to a ruler's marks carries the sign ≈.",
)
