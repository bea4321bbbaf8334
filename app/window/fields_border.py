"""The fields of a border."""

from __future__ import annotations

from app.window.field import FINE, Field, Kind, PartKind
from app.window.fields_finish import FABRIC_HELP, GRAIN_HELP, GRAINS, JOINS, JOINS_HELP, SEAM_HELP

_SIDES = tuple(
    Field(
        f"{side}_fabric",
        f"{called} strip's fabric",
        Kind.FABRIC,
        f"The fabric of the {side} strip, where it is not the border's.",
        none_words="same as the border",
        rare=True,
    )
    for side, called in (
        ("left", "Left"),
        ("top", "Top"),
        ("right", "Right"),
        ("bottom", "Bottom"),
    )
)

BORDER = PartKind(
    "borders",
    "Border",
    "Borders, from the inside out",
    "A frame of strips round the quilt top. Borders are listed from the inside out.",
    "{width} {fabric}",
    (
        Field("fabric", "Fabric", Kind.FABRIC, FABRIC_HELP),
        Field(
            "sizing",
            "Width is set by",
            Kind.CHOICE,
            "A coping strip brings the quilt to a wished size, or to a whole number of blocks, "
            "so that a pieced border fits round it; its width is then worked out.",
            (
                ("width", "The width below"),
                ("size", "A size to reach"),
                ("blocks", "Blocks to come round it"),
            ),
        ),
        Field(
            "width",
            "Finished width",
            Kind.LENGTH,
            "The width that shows once it is sewn, or at least that for blocks. The strip is cut "
            "wider by two seam allowances.",
            only_if=("sizing", "width", "blocks"),
        ),
        Field(
            "block",
            "Finished block",
            Kind.LENGTH,
            "The finished size of the blocks that will be sewn round this strip.",
            none_words="not known",
            only_if=("sizing", "blocks"),
        ),
        Field(
            "to_width",
            "Quilt's width then",
            Kind.LENGTH,
            "How wide the quilt shall be with this strip on, raw edge to raw edge.",
            none_words="as it is",
            only_if=("sizing", "size"),
        ),
        Field(
            "to_length",
            "Quilt's length then",
            Kind.LENGTH,
            "How long the quilt shall be with this strip on, raw edge to raw edge.",
            none_words="as it is",
            only_if=("sizing", "size"),
        ),
        Field(
            "corners",
            "Corners",
            Kind.CHOICE,
            "How the four strips meet. Butted, as courthouse steps are: two go on first, then two "
            "over their ends. Mitred: on the diagonal. Squares: a square of cloth in each corner. "
            "Pinwheel: each over the end of the next, begun with a partial seam. Round, as a log "
            "cabin: one after another.",
            (
                ("butted", "Butted"),
                ("mitred", "Mitred"),
                ("squares", "Corner squares"),
                ("pinwheel", "Pinwheel, partial seam"),
                ("round", "Round, one after another"),
            ),
        ),
        Field(
            "first",
            "Sewn on first",
            Kind.CHOICE,
            "Which strips go on first: the two sides, or the top and bottom.",
            (("sides", "The sides"), ("ends", "Top and bottom")),
            only_if=("corners", "butted", "squares", "round"),
        ),
        Field(
            "corner_fabric",
            "Corner fabric",
            Kind.FABRIC,
            "The fabric of the four corner squares.",
            none_words="same as the border",
            only_if=("corners", "squares"),
        ),
        Field(
            "mitre_margin",
            "Mitre margin",
            Kind.LENGTH,
            "Extra length on each strip so that a mitre can be fitted, then trimmed. Books print "
            "0 to 6 inches (15 cm); our default is 4 (10 cm), as Idiot's Guides: Quilting has it.",
            only_if=("corners", "mitred"),
        ),
        Field("grain", "Grain", Kind.CHOICE, GRAIN_HELP, GRAINS, rare=True),
        Field("joins", "Joins", Kind.CHOICE, JOINS_HELP, JOINS, rare=True),
        Field(
            "piecing",
            "Joins fall",
            Kind.CHOICE,
            "Where the joins fall if a strip is longer than the cloth is wide. End to end: all "
            "strips are joined and the border is cut from the long one, which takes least cloth. "
            "In the middle: each strip is made of equal parts. Off the middle: of whole strips "
            "and a shorter rest.",
            (
                ("end_to_end", "Where they land, end to end"),
                ("centred", "In the middle of each side"),
                ("off_centre", "Off the middle"),
            ),
            rare=True,
        ),
        Field(
            "squaring",
            "Squaring slack",
            Kind.LENGTH,
            "What is cut on to each strip that comes from a joined one, to square its ends. Our "
            "default, 1/2 inch or 1 cm, has no source.",
            rare=True,
        ),
        Field(
            "off_middle",
            "Off the middle by",
            Kind.LENGTH,
            "How far from the middle of a side a join must lie that is set off it; a nearer one "
            "would look like a centred join that missed. Our default, 6 inches or 15 cm, has no "
            "source.",
            none_words="as usual",
            rare=True,
            only_if=("piecing", "off_centre"),
        ),
        Field(
            "shortest",
            "Shortest part",
            Kind.LENGTH,
            "The least length of a strip that is joined in. Our default, no source: 18 in (45 cm), "
            "the short side of a fat quarter.",
            none_words="as usual",
            rare=True,
        ),
        Field("seam", "Seam", Kind.LENGTH, SEAM_HELP, rare=True, steps=FINE),
        *_SIDES,
    ),
    many=True,
)
