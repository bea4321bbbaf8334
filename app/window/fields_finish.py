"""The fields of what finishes the quilt: borders, backing, batting, binding, sleeve."""

from __future__ import annotations

from app.window.field import FINE, Field, Kind, PartKind

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
OVERAGE_HELP = (
    "Overage: how far it stands out beyond the quilt on each side, to be trimmed off after "
    "quilting."
)

BACKING = PartKind(
    "backing",
    "Backing",
    "Backing",
    "The back of the quilt, sewn from panels where the cloth is too narrow.",
    "{fabric}",
    (
        Field("fabric", "Fabric", Kind.FABRIC, FABRIC_HELP),
        Field("overage", "Overage", Kind.LENGTH, OVERAGE_HELP),
        Field(
            "seams",
            "Seams",
            Kind.CHOICE,
            "Which way the seams between panels run. Lengthwise seams run from the top of the "
            "quilt to its bottom.",
            (
                ("auto", "Whichever buys less"),
                ("lengthwise", "Lengthwise"),
                ("crosswise", "Crosswise"),
                ("none", "None: one wide cloth"),
            ),
        ),
        Field("seam", "Panel seam", Kind.LENGTH, SEAM_HELP, rare=True, steps=FINE),
    ),
)

BATTING = PartKind(
    "batting",
    "Batting",
    "Batting",
    "The soft layer between top and backing, bought as a package.",
    "{overage} each side",
    (Field("overage", "Overage", Kind.LENGTH, OVERAGE_HELP),),
)

SLEEVE = PartKind(
    "sleeve",
    "Hanging sleeve",
    "Hanging sleeve",
    "The tube on the back of a quilt that a hanging rod goes through.",
    "{depth} {fabric}",
    (
        Field("fabric", "Fabric", Kind.FABRIC, FABRIC_HELP),
        Field(
            "depth",
            "Depth",
            Kind.LENGTH,
            "The depth of the sleeve lying flat. 4 inches take the rods of most shows.",
        ),
    ),
)
