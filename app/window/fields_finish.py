"""The fields of the binding, and words that several parts share."""

from __future__ import annotations

GRAINS = (
    ("crosswise", "Crosswise"),
    ("lengthwise", "Lengthwise"),
    ("either", "Whichever buys less"),
)
GRAIN_HELP = (
    "Crosswise strips run from selvage to selvage and are joined to length. Lengthwise strips "
    "run parallel to the selvages: they stretch least, and need a long cloth."
)
JOINS = (
    ("diagonal", "Diagonal"),
    ("straight", "Straight"),
    ("angled", "Ends cut at 45° first"),
)
JOINS_HELP = (
    "How two strips are sewn end to end. A diagonal join spreads its bulk and uses up one strip "
    "width; a straight join uses up two seam allowances. Ends cut at 45° first lie true under "
    "the needle, and use up a strip width and the slanted seams."
)
SEAM_HELP = "Seam allowance: the distance from the raw edge to the line of stitching."
FABRIC_HELP = "The fabric that it is cut from. Fabrics are listed above."
