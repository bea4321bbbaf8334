"""The fields of a border."""

from __future__ import annotations

from app.window.field import FINE, Field, Kind, PartKind
from app.window.fields_finish import FABRIC_HELP, GRAIN_HELP, GRAINS, JOINS, JOINS_HELP, SEAM_HELP
from core.language import marked

_SIDES = tuple(
    Field(
        f"{side}_fabric",
        called,
        Kind.FABRIC,
        text,
        none_words=marked("same as the border"),
        rare=True,
    )
    for side, called, text in (
        (
            "left",
            marked("Left strip's fabric"),
            marked("The fabric of the left strip, where it is not the border's."),
        ),
        (
            "top",
            marked("Top strip's fabric"),
            marked("The fabric of the top strip, where it is not the border's."),
        ),
        (
            "right",
            marked("Right strip's fabric"),
            marked("The fabric of the right strip, where it is not the border's."),
        ),
        (
            "bottom",
            marked("Bottom strip's fabric"),
            marked("The fabric of the bottom strip, where it is not the border's."),
        ),
    )
)

BORDER = PartKind(
    "borders",
    marked("Border"),
    marked("Borders, from the inside out"),
    marked("A frame of strips round the quilt top. Borders are listed from the inside out."),
    "{width} {fabric}",
    (
        Field("fabric", marked("Fabric"), Kind.FABRIC, FABRIC_HELP),
        Field(
            "sizing",
            marked("Width is set by"),
            Kind.CHOICE,
            marked(
                "A coping strip brings the quilt to a wished size, or to a whole number of blocks, "
                "so that a pieced border fits round it; its width is then worked out."
            ),
            (
                ("width", marked("The width below")),
                ("size", marked("A size to reach")),
                ("blocks", marked("Blocks to come round it")),
            ),
        ),
        Field(
            "width",
            marked("Finished width"),
            Kind.LENGTH,
            marked(
                "The width that shows once it is sewn, or at least that for blocks. The strip is "
                "cut wider by two seam allowances."
            ),
            only_if=("sizing", "width", "blocks"),
        ),
        Field(
            "block",
            marked("Finished block"),
            Kind.LENGTH,
            marked("The finished size of the blocks that will be sewn round this strip."),
            none_words=marked("not known"),
            only_if=("sizing", "blocks"),
        ),
        Field(
            "to_width",
            marked("Quilt's width then"),
            Kind.LENGTH,
            marked("How wide the quilt shall be with this strip on, raw edge to raw edge."),
            none_words=marked("as it is"),
            only_if=("sizing", "size"),
        ),
        Field(
            "to_length",
            marked("Quilt's length then"),
            Kind.LENGTH,
            marked("How long the quilt shall be with this strip on, raw edge to raw edge."),
            none_words=marked("as it is"),
            only_if=("sizing", "size"),
        ),
        Field(
            "corners",
            marked("Corners"),
            Kind.CHOICE,
            marked(
                "How the four strips meet. Butted, as courthouse steps are: two go on first, then "
                "two over their ends. Mitred: on the diagonal. Squares: a square of cloth in each "
                "corner. Pinwheel: each over the end of the next, begun with a partial seam. "
                "Round, as a log cabin: one after another."
            ),
            (
                ("butted", marked("Butted")),
                ("mitred", marked("Mitred")),
                ("squares", marked("Corner squares")),
                ("pinwheel", marked("Pinwheel, partial seam")),
                ("round", marked("Round, each in turn")),
            ),
        ),
        Field(
            "first",
            marked("Sewn on first"),
            Kind.CHOICE,
            marked("Which strips go on first: the two sides, or the top and bottom."),
            (("sides", marked("The sides")), ("ends", marked("Top and bottom"))),
            only_if=("corners", "butted", "squares", "round"),
        ),
        Field(
            "corner_fabric",
            marked("Corner fabric"),
            Kind.FABRIC,
            marked("The fabric of the four corner squares."),
            none_words=marked("same as the border"),
            only_if=("corners", "squares"),
        ),
        Field(
            "mitre_margin",
            marked("Mitre margin"),
            Kind.LENGTH,
            marked(
                "Extra length on each strip so that a mitre can be fitted, then trimmed. Books "
                "print 0 to 6 inches (15 cm); our default is 4 (10 cm), as Idiot's Guides: "
                "Quilting has it."
            ),
            only_if=("corners", "mitred"),
        ),
        Field("grain", marked("Grain"), Kind.CHOICE, GRAIN_HELP, GRAINS, rare=True),
        Field("joins", marked("Joins"), Kind.CHOICE, JOINS_HELP, JOINS, rare=True),
        Field(
            "piecing",
            marked("Joins fall"),
            Kind.CHOICE,
            marked(
                "Where the joins fall if a strip is longer than the cloth is wide. End to end: all "
                "strips are joined and the border is cut from the long one, which takes least "
                "cloth. In the middle: each strip is made of equal parts. Off the middle: of whole "
                "strips and a shorter rest."
            ),
            (
                ("end_to_end", marked("Where they land")),
                ("centred", marked("Middle of each side")),
                ("off_centre", marked("Off the middle")),
            ),
            rare=True,
        ),
        Field(
            "squaring",
            marked("Squaring slack"),
            Kind.LENGTH,
            marked(
                "What is cut on to each strip that comes from a joined one, to square its ends. "
                "Our default, 1/2 inch or 1 cm, has no source."
            ),
            rare=True,
        ),
        Field(
            "off_middle",
            marked("Off the middle by"),
            Kind.LENGTH,
            marked(
                "How far from the middle of a side a join must lie that is set off it; a nearer "
                "one would look like a centred join that missed. Our default, 6 inches or 15 cm, "
                "has no source."
            ),
            none_words=marked("as usual"),
            rare=True,
            only_if=("piecing", "off_centre"),
        ),
        Field(
            "shortest",
            marked("Shortest part"),
            Kind.LENGTH,
            marked(
                "The least length of a strip that is joined in. Our default, no source: 18 in (45 "
                "cm), the short side of a fat quarter."
            ),
            none_words=marked("as usual"),
            rare=True,
        ),
        Field("seam", marked("Seam"), Kind.LENGTH, SEAM_HELP, rare=True, steps=FINE),
        *_SIDES,
    ),
    many=True,
)
