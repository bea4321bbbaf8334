"""The fields of what is sewn to the back of the quilt: hanging sleeve, label."""

from __future__ import annotations

from app.window.field import FINE, Field, Kind, PartKind
from app.window.fields_finish import FABRIC_HELP
from core.language import marked

SLEEVE = PartKind(
    "sleeve",
    marked("Hanging sleeve"),
    marked("Hanging sleeve"),
    marked("The tube on the back of a quilt that a hanging rod goes through."),
    "{depth} {fabric}",
    (
        Field("fabric", marked("Fabric"), Kind.FABRIC, FABRIC_HELP),
        Field(
            "depth",
            marked("Depth lying flat"),
            Kind.LENGTH,
            marked(
                "The depth of the sleeve lying flat. 4 inches (10 cm) take the rods of most shows."
            ),
        ),
        Field(
            "shape",
            marked("Shape"),
            Kind.CHOICE,
            marked(
                "A flat tube; a D, whose front is deeper than its back so that the rod does not "
                "push the quilt out; or one layer, hemmed and sewn on by both edges."
            ),
            (
                ("tube", marked("Flat tube")),
                ("d", marked("D-shaped tube")),
                ("single", marked("One layer")),
            ),
        ),
        Field(
            "ease",
            marked("Ease in front"),
            Kind.LENGTH,
            marked(
                "How much deeper the front is cut. Strips of 8 1/2, 9, 9 1/2 and 10 inches (21.5 "
                "to 25.5 cm) are printed for a 4 inch (10 cm) sleeve; ours is 8 1/2 flat (Hill "
                "Country Quilt Guild) and 10 for a D (Contemporary Quilt group, 2019)."
            ),
            none_words=marked("as the shape has it"),
            rare=True,
        ),
        Field(
            "shorter",
            marked("Shorter than quilt"),
            Kind.LENGTH,
            marked(
                "How much shorter than the quilt is wide it is cut. Rules print 0 to 2 inches (5 "
                "cm); ours is 1 (2.5 cm) (Hill Country Quilt Guild, 2023)."
            ),
            rare=True,
        ),
        Field(
            "split_above",
            marked("Split if longer than"),
            Kind.LENGTH,
            marked(
                "A longer sleeve is made in two, for a bracket at the middle. 90 inches (229 cm) "
                "are published (Hill Country Quilt Guild, 2023); others allow 96 (244 cm)."
            ),
            rare=True,
        ),
        Field(
            "gap",
            marked("Gap if split"),
            Kind.LENGTH,
            marked(
                "What is left free between the two. Our default, 4 inches or 10 cm, has no source."
            ),
            rare=True,
        ),
        Field(
            "seam",
            marked("Seam"),
            Kind.LENGTH,
            marked(
                "Seam allowance: the distance from the raw edge to the line of stitching. Ours is "
                "1/4 inch (Hill Country Quilt Guild, 2023) or 7.5 mm."
            ),
            none_words=marked("as usual"),
            rare=True,
            steps=FINE,
            only_if=("shape", "tube", "d"),
        ),
        Field(
            "hem",
            marked("Hem"),
            Kind.LENGTH,
            marked(
                "What is turned under along both long edges of a sleeve of one layer. Our default, "
                "1/2 inch or 12 mm, has no source."
            ),
            none_words=marked("as usual"),
            rare=True,
            steps=FINE,
            only_if=("shape", "single"),
        ),
        Field(
            "shortest",
            marked("Shortest segment"),
            Kind.LENGTH,
            marked(
                "The least length of a strip that is joined in, where the sleeve is longer than "
                "its cloth is wide. Our default, no source: 18 in (45 cm)."
            ),
            none_words=marked("as usual"),
            rare=True,
        ),
    ),
)

LABEL = PartKind(
    "label",
    marked("Label"),
    marked("Label"),
    marked("A patch on the back that says who made the quilt, for whom and when."),
    "{width} × {length} {fabric}",
    (
        Field("fabric", marked("Fabric"), Kind.FABRIC, FABRIC_HELP),
        Field("width", marked("Finished width"), Kind.LENGTH, marked("How wide the label shows.")),
        Field(
            "length", marked("Finished length"), Kind.LENGTH, marked("How long the label shows.")
        ),
        Field(
            "hem",
            marked("Hem"),
            Kind.LENGTH,
            marked(
                "What is turned under on each side. Our default, 1/4 inch or 7.5 mm, has no source."
            ),
            rare=True,
            steps=FINE,
        ),
    ),
)
