"""The fields of what a hand says of a fabric's cloths: flaws, motifs, pins."""

from __future__ import annotations

from app.window.field import Field, Kind, PartKind
from core.language import marked

SHEET = Field(
    "on",
    marked("On"),
    Kind.SHEET,
    marked("Which cloth of this fabric: the length from the bolt, or a piece on hand."),
)
SHEET_COPY = Field(
    "on_copy",
    marked("Of equal pieces, no."),
    Kind.COUNT,
    marked("Where several pieces on hand are of one size: which of them. 1 for the first."),
    rare=True,
)
PLACE = (
    Field(
        "x",
        marked("From near edge"),
        Kind.LENGTH,
        marked(
            "How far from the near edge, the one with the ruler in the pictures, inside its "
            "selvage."
        ),
    ),
    Field(
        "y",
        marked("From end"),
        Kind.LENGTH,
        marked("How far from the straightened end of the cloth."),
    ),
)
SIZE = (
    Field(
        "across", marked("Across"), Kind.LENGTH, marked("How wide it is, from selvage to selvage.")
    ),
    Field("along", marked("Along"), Kind.LENGTH, marked("How long it is, along the cloth.")),
)

FLAW = PartKind(
    "flaws",
    marked("Flaw"),
    marked("Flaws"),
    marked(
        "A rectangle of cloth to keep clear of. The lay goes round it, and the pictures show it."
    ),
    "{word} {across} × {along}",
    (
        Field(
            "word",
            marked("What it is"),
            Kind.TEXT,
            marked("A short word, such as stain, hole or fold. It is written on the pictures."),
        ),
        SHEET,
        *PLACE,
        *SIZE,
        SHEET_COPY,
    ),
    many=True,
)

MOTIF = PartKind(
    "motifs",
    marked("Motif"),
    marked("Motifs"),
    marked("A rectangle of cloth that one piece must contain whole, as in fussy cutting."),
    "{across} × {along}",
    (
        Field(
            "name",
            marked("For the piece"),
            Kind.PIECE,
            marked(
                "The piece that must contain it, of those that are cut from this cloth. The lay "
                "chooses which of several equal ones."
            ),
            none_words=marked("none as yet"),
        ),
        SHEET,
        *PLACE,
        *SIZE,
        SHEET_COPY,
    ),
    many=True,
)

PIN = PartKind(
    "pins",
    marked("Pin"),
    marked("Pins"),
    marked(
        "A piece that you put down on the yardage yourself. It stays there; the rest is laid round "
        "it."
    ),
    "{name}",
    (
        *PLACE,
        SHEET,
        Field(
            "turned",
            marked("Turned"),
            Kind.FLAG,
            marked("It lies a quarter turn from how it is listed."),
        ),
        Field(
            "name",
            marked("Piece"),
            Kind.LAID,
            marked("The piece, or the joined length whose strip this is."),
            rare=True,
        ),
        Field(
            "copy",
            marked("Which of them"),
            Kind.COUNT,
            marked("Which of several equal pieces; strips of a joined length have no number."),
            none_words=marked("any"),
            rare=True,
        ),
        Field(
            "length",
            marked("Strip length"),
            Kind.LENGTH,
            marked("How long the strip is, of a joined length. Empty for a piece."),
            none_words=marked("as the piece"),
            rare=True,
        ),
        Field(
            "run_copy",
            marked("Of joined length no."),
            Kind.COUNT,
            marked("Which of several equal joined lengths the strip belongs to."),
            rare=True,
        ),
        SHEET_COPY,
    ),
    many=True,
    adds=False,
)
