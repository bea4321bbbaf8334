"""The fields of the binding, and words that several parts share."""

from __future__ import annotations

from core.language import marked

GRAINS = (
    ("crosswise", marked("Crosswise")),
    ("lengthwise", marked("Lengthwise")),
    ("either", marked("Whichever buys less")),
)
GRAIN_HELP = marked(
    "Crosswise strips run from selvage to selvage and are joined to length. Lengthwise strips "
    "run parallel to the selvages: they stretch least, and need a long cloth."
)
JOINS = (
    ("diagonal", marked("Diagonal")),
    ("straight", marked("Straight")),
    ("angled", marked("Ends cut at 45° first")),
)
JOINS_HELP = marked(
    "How two strips are sewn end to end. A diagonal join spreads its bulk and uses up one strip "
    "width; a straight join uses up two seam allowances. Ends cut at 45° first lie true under "
    "the needle, and use up a strip width and the slanted seams."
)
SEAM_HELP = marked("Seam allowance: the distance from the raw edge to the line of stitching.")
FABRIC_HELP = marked("The fabric that it is cut from. Fabrics are listed above.")
