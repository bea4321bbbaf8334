"""The fields of the layers behind the top: backing and batting."""

from __future__ import annotations

from app.window.field import FINE, SALE, Field, Kind, PartKind
from app.window.fields_finish import FABRIC_HELP, SEAM_HELP
from core.language import marked

OVERAGE_HELP = marked(
    "Overage: how far it stands out beyond the quilt on each side, to be trimmed off after "
    "quilting. Published: 2 to 6 inches (5 to 15 cm); our default is 4 (10 cm), as American "
    "Patchwork & Quilting (Feb 2020) asks."
)
_OVERAGES = (
    (
        "top",
        marked("Overage, top"),
        marked(
            "Overage at the top, where it is not as on the other sides: a long-arm frame may "
            "need more at top and bottom."
        ),
    ),
    (
        "right",
        marked("Overage, right"),
        marked(
            "Overage at the right, where it is not as on the other sides: a long-arm frame may "
            "need more at top and bottom."
        ),
    ),
    (
        "bottom",
        marked("Overage, bottom"),
        marked(
            "Overage at the bottom, where it is not as on the other sides: a long-arm frame may "
            "need more at top and bottom."
        ),
    ),
    (
        "left",
        marked("Overage, left"),
        marked(
            "Overage at the left, where it is not as on the other sides: a long-arm frame may "
            "need more at top and bottom."
        ),
    ),
)


def _overages() -> tuple[Field, ...]:
    return tuple(
        Field(
            f"overage_{side}",
            label,
            Kind.LENGTH,
            text,
            none_words=marked("as overage"),
            rare=True,
        )
        for side, label, text in _OVERAGES
    )


BACKING = PartKind(
    "backing",
    marked("Backing"),
    marked("Backing"),
    marked("The back of the quilt, sewn from panels where the cloth is too narrow."),
    "{fabric}",
    (
        Field("fabric", marked("Fabric"), Kind.FABRIC, FABRIC_HELP),
        Field("overage", marked("Overage"), Kind.LENGTH, OVERAGE_HELP),
        Field(
            "seams",
            marked("Seams"),
            Kind.CHOICE,
            marked(
                "Which way the seams between panels run. Lengthwise seams run from the top of the "
                "quilt to its bottom."
            ),
            (
                ("auto", marked("Whichever buys less")),
                ("lengthwise", marked("Lengthwise")),
                ("crosswise", marked("Crosswise")),
                ("none", marked("None: one wide cloth")),
            ),
        ),
        Field(
            "panels",
            marked("Panels"),
            Kind.CHOICE,
            marked(
                "How the panels are shared out. Two halves: a full panel in the middle and a "
                "narrow one on each side, so that no seam runs down the middle of the back."
            ),
            (
                ("least", marked("What buys least")),
                ("whole", marked("No panel of short strips")),
                ("halves", marked("One full, two halves")),
            ),
        ),
        Field(
            "frame",
            marked("On a frame"),
            Kind.CHOICE,
            marked(
                "Long-arm quilters prefer seams that run along the rollers. Say which edge of the "
                "quilt goes on them, and seams are laid so wherever they can be; the plan says "
                "what the other way would take."
            ),
            (
                ("none", marked("No preference")),
                ("top", marked("Top on the rollers")),
                ("side", marked("Side on the rollers")),
            ),
            rare=True,
        ),
        Field(
            "accent_fabric",
            marked("Accent strip"),
            Kind.FABRIC,
            marked(
                "A strip of another fabric between the first two panels, which widens the backing "
                "and may save a panel."
            ),
            none_words=marked("none"),
            rare=True,
        ),
        Field(
            "accent_width",
            marked("Accent width"),
            Kind.LENGTH,
            marked(
                "How wide the accent strip shows. Our default, 6 inches or 15 cm, has no source."
            ),
            rare=True,
        ),
        Field("seam", marked("Panel seam"), Kind.LENGTH, SEAM_HELP, rare=True, steps=FINE),
        Field(
            "narrowest_panel",
            marked("Narrowest panel"),
            Kind.LENGTH,
            marked(
                "A sliver at the edge pulls out of true; no panel is made narrower than this. Our "
                "default, 6 inches or 15 cm, has no source."
            ),
            rare=True,
        ),
        Field(
            "most_short_strips",
            marked("Short strips at most"),
            Kind.COUNT,
            marked(
                "A narrow last panel may be pieced from short strips, where that buys less. This "
                "is how many it may have. Our default, 4, has no source."
            ),
            rare=True,
            only_if=("panels", "least"),
        ),
        *_overages(),
    ),
)

PACKAGE = PartKind(
    "packages",
    marked("Package"),
    marked("Packages of batting"),
    marked(
        "A size that batting is packed in. It may be turned. Makers' sizes differ: change the "
        "table to what your shop has."
    ),
    "{name}: {width} × {length}",
    (
        Field("name", marked("Name"), Kind.TEXT, marked("What this size is called.")),
        Field(
            "width", marked("Width"), Kind.LENGTH, marked("How wide the batting in the package is.")
        ),
        Field(
            "length",
            marked("Length"),
            Kind.LENGTH,
            marked("How long the batting in the package is."),
        ),
    ),
    many=True,
)

BATTING = PartKind(
    "batting",
    marked("Batting"),
    marked("Batting"),
    marked("The soft layer between top and backing, from a package or from the roll."),
    marked("{overage} each side"),
    (
        Field("overage", marked("Overage"), Kind.LENGTH, OVERAGE_HELP),
        Field(
            "source",
            marked("Bought"),
            Kind.CHOICE,
            marked(
                "As a package, or cut from a roll; pieces from a roll are joined edge to edge "
                "where it is too narrow."
            ),
            (("package", marked("As a package")), ("roll", marked("By the roll"))),
        ),
        Field(
            "package",
            marked("Package"),
            Kind.TEXT,
            marked("Which package of the table below to use; empty for the smallest that will do."),
            none_words=marked("the smallest that will do"),
            rare=True,
            only_if=("source", "package"),
        ),
        Field(
            "roll_width",
            marked("Roll's width"),
            Kind.LENGTH,
            marked("How wide the batting on the roll is. 96 inches (244 cm) is common practice."),
            rare=True,
        ),
        Field(
            "roll_sale_unit",
            marked("Roll sold in steps of"),
            Kind.LENGTH,
            marked("The step that the shop cuts the roll in, such as 1/4 yd or 10 cm."),
            rare=True,
            steps=SALE,
        ),
        *_overages(),
    ),
    inner=(PACKAGE,),
)
