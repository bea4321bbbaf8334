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
JOINS = (("diagonal", "Diagonal"), ("straight", "Straight"))
JOINS_HELP = (
    "How two strips are sewn end to end. A diagonal join spreads its bulk and uses up one strip "
    "width; a straight join uses up two seam allowances."
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

BINDING = PartKind(
    "binding",
    "Binding",
    "Binding",
    "The strip that is folded over the raw edge of the quilted quilt.",
    "{strip_width} {fabric}",
    (
        Field("fabric", "Fabric", Kind.FABRIC, FABRIC_HELP),
        Field(
            "strip_width",
            "Strip width",
            Kind.LENGTH,
            "The width that the strip is cut. 2, 2 1/4 and 2 1/2 are common for a double fold.",
        ),
        Field(
            "fold",
            "Fold",
            Kind.CHOICE,
            "Double: the strip is folded in half first, so two layers cover the edge. Single: "
            "its edge is turned under; it uses less cloth and wears less well.",
            (("double", "Double"), ("single", "Single")),
        ),
        Field(
            "grain",
            "Grain",
            Kind.CHOICE,
            GRAIN_HELP + " Bias strips, at 45°, stretch and follow a curve.",
            (*GRAINS, ("bias", "Bias")),
        ),
        Field("joins", "Joins", Kind.CHOICE, JOINS_HELP, JOINS, rare=True),
        Field(
            "closing",
            "Closing",
            Kind.CHOICE,
            "How the two ends of the binding meet. Tucked: one end is folded into a pocket and "
            "the other tucked into it.",
            (
                ("diagonal", "Diagonal join"),
                ("tucked", "Tucked end"),
                ("straight", "Straight join"),
            ),
            rare=True,
        ),
        Field(
            "allowance",
            "Allowance",
            Kind.LENGTH,
            "Handling slack added to the way round the quilt, so that you never run short.",
            rare=True,
        ),
        Field("seam", "Seam", Kind.LENGTH, SEAM_HELP, rare=True, steps=FINE),
    ),
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
