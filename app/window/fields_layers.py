"""The fields of what lies behind the top: backing, batting, hanging sleeve, label."""

from __future__ import annotations

from app.window.field import FINE, SALE, Field, Kind, PartKind
from app.window.fields_finish import FABRIC_HELP, SEAM_HELP

OVERAGE_HELP = (
    "Overage: how far it stands out beyond the quilt on each side, to be trimmed off after "
    "quilting. Published: 2 to 6 inches (5 to 15 cm); our default is 4 (10 cm), as American "
    "Patchwork & Quilting (Feb 2020) asks."
)


def _overages() -> tuple[Field, ...]:
    return tuple(
        Field(
            f"overage_{side}",
            f"Overage, {side}",
            Kind.LENGTH,
            f"Overage at the {side}, where it is not as on the other sides: a long-arm frame may "
            "need more at top and bottom.",
            none_words="as overage",
            rare=True,
        )
        for side in ("top", "right", "bottom", "left")
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
        Field(
            "panels",
            "Panels",
            Kind.CHOICE,
            "How the panels are shared out. Two halves: a full panel in the middle and a narrow "
            "one on each side, so that no seam runs down the middle of the back.",
            (
                ("least", "What buys least"),
                ("whole", "No panel of short strips"),
                ("halves", "Full panel and two halves"),
            ),
        ),
        Field(
            "frame",
            "On a frame",
            Kind.CHOICE,
            "Long-arm quilters prefer seams that run along the rollers. Say which edge of the "
            "quilt goes on them, and seams are laid so wherever they can be; the plan says what "
            "the other way would take.",
            (
                ("none", "No preference"),
                ("top", "Top on the rollers"),
                ("side", "Side on the rollers"),
            ),
            rare=True,
        ),
        Field(
            "accent_fabric",
            "Accent strip",
            Kind.FABRIC,
            "A strip of another fabric between the first two panels, which widens the backing "
            "and may save a panel.",
            none_words="none",
            rare=True,
        ),
        Field(
            "accent_width",
            "Accent width",
            Kind.LENGTH,
            "How wide the accent strip shows. Our default, 6 inches or 15 cm, has no source.",
            rare=True,
        ),
        Field("seam", "Panel seam", Kind.LENGTH, SEAM_HELP, rare=True, steps=FINE),
        Field(
            "narrowest_panel",
            "Narrowest panel",
            Kind.LENGTH,
            "A sliver at the edge pulls out of true; no panel is made narrower than this. Our "
            "default, 6 inches or 15 cm, has no source.",
            rare=True,
        ),
        Field(
            "most_short_strips",
            "Short strips at most",
            Kind.COUNT,
            "A narrow last panel may be pieced from short strips, where that buys less. This is "
            "how many it may have. Our default, 4, has no source.",
            rare=True,
            only_if=("panels", "least"),
        ),
        *_overages(),
    ),
)

PACKAGE = PartKind(
    "packages",
    "Package",
    "Packages of batting",
    "A size that batting is packed in. It may be turned. Makers' sizes differ: change the table "
    "to what your shop has.",
    "{name}: {width} × {length}",
    (
        Field("name", "Name", Kind.TEXT, "What this size is called."),
        Field("width", "Width", Kind.LENGTH, "How wide the batting in the package is."),
        Field("length", "Length", Kind.LENGTH, "How long the batting in the package is."),
    ),
    many=True,
)

BATTING = PartKind(
    "batting",
    "Batting",
    "Batting",
    "The soft layer between top and backing, from a package or from the roll.",
    "{overage} each side",
    (
        Field("overage", "Overage", Kind.LENGTH, OVERAGE_HELP),
        Field(
            "source",
            "Bought",
            Kind.CHOICE,
            "As a package, or cut from a roll; pieces from a roll are joined edge to edge where "
            "it is too narrow.",
            (("package", "As a package"), ("roll", "By the roll")),
        ),
        Field(
            "package",
            "Package",
            Kind.TEXT,
            "Which package of the table below to use; empty for the smallest that will do.",
            none_words="the smallest that will do",
            rare=True,
            only_if=("source", "package"),
        ),
        Field(
            "roll_width",
            "Roll's width",
            Kind.LENGTH,
            "How wide the batting on the roll is. 96 inches (244 cm) is common practice.",
            rare=True,
        ),
        Field(
            "roll_sale_unit",
            "Roll sold in steps of",
            Kind.LENGTH,
            "The step that the shop cuts the roll in, such as 1/4 yd or 10 cm.",
            rare=True,
            steps=SALE,
        ),
        *_overages(),
    ),
    inner=(PACKAGE,),
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
            "The depth of the sleeve lying flat. 4 inches (10 cm) take the rods of most shows.",
        ),
        Field(
            "shape",
            "Shape",
            Kind.CHOICE,
            "A flat tube; a D, whose front is deeper than its back so that the rod does not push "
            "the quilt out; or one layer, hemmed and sewn on by both edges.",
            (("tube", "Flat tube"), ("d", "D-shaped tube"), ("single", "One layer")),
        ),
        Field(
            "ease",
            "Ease in front",
            Kind.LENGTH,
            "How much deeper the front is cut. Strips of 8 1/2, 9, 9 1/2 and 10 inches (21.5 to "
            "25.5 cm) are printed for a 4 inch (10 cm) sleeve; ours is 8 1/2 flat (Hill Country "
            "Quilt Guild) and 10 for a D (Contemporary Quilt group, 2019).",
            none_words="as the shape has it",
            rare=True,
        ),
        Field(
            "shorter",
            "Shorter than quilt",
            Kind.LENGTH,
            "How much shorter than the quilt is wide it is cut. Rules print 0 to 2 inches (5 cm); "
            "ours is 1 (2.5 cm) (Hill Country Quilt Guild, 2023).",
            rare=True,
        ),
        Field(
            "split_above",
            "Split if longer than",
            Kind.LENGTH,
            "A longer sleeve is made in two, for a bracket at the middle. 90 inches (229 cm) are "
            "published (Hill Country Quilt Guild, 2023); others allow 96 (244 cm).",
            rare=True,
        ),
        Field(
            "gap",
            "Gap if split",
            Kind.LENGTH,
            "What is left free between the two. Our default, 4 inches or 10 cm, has no source.",
            rare=True,
        ),
        Field(
            "seam",
            "Seam",
            Kind.LENGTH,
            SEAM_HELP + " Ours is 1/4 inch (Hill Country Quilt Guild, 2023) or 7.5 mm.",
            none_words="as usual",
            rare=True,
            steps=FINE,
            only_if=("shape", "tube", "d"),
        ),
        Field(
            "hem",
            "Hem",
            Kind.LENGTH,
            "What is turned under along both long edges of a sleeve of one layer. Our default, "
            "1/2 inch or 12 mm, has no source.",
            none_words="as usual",
            rare=True,
            steps=FINE,
            only_if=("shape", "single"),
        ),
        Field(
            "shortest",
            "Shortest segment",
            Kind.LENGTH,
            "The least length of a strip that is joined in, where the sleeve is longer than its "
            "cloth is wide. Our default, no source: 18 in (45 cm).",
            none_words="as usual",
            rare=True,
        ),
    ),
)

LABEL = PartKind(
    "label",
    "Label",
    "Label",
    "A patch on the back that says who made the quilt, for whom and when.",
    "{width} × {length} {fabric}",
    (
        Field("fabric", "Fabric", Kind.FABRIC, FABRIC_HELP),
        Field("width", "Finished width", Kind.LENGTH, "How wide the label shows."),
        Field("length", "Finished length", Kind.LENGTH, "How long the label shows."),
        Field(
            "hem",
            "Hem",
            Kind.LENGTH,
            "What is turned under on each side. Our default, 1/4 inch or 7.5 mm, has no source.",
            rare=True,
            steps=FINE,
        ),
    ),
)
