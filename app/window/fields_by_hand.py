"""The fields of what a hand says of a fabric's cloths: flaws, motifs, pins."""

from __future__ import annotations

from app.window.field import Field, Kind, PartKind

SHEET = Field(
    "on",
    "On",
    Kind.SHEET,
    "Which cloth of this fabric: the length from the bolt, or a piece on hand.",
)
SHEET_COPY = Field(
    "on_copy",
    "Of equal pieces, no.",
    Kind.COUNT,
    "Where several pieces on hand are of one size: which of them. 1 for the first.",
    rare=True,
)
PLACE = (
    Field(
        "x",
        "From near edge",
        Kind.LENGTH,
        "How far from the near edge, the one with the ruler in the pictures, inside its selvage.",
    ),
    Field("y", "From end", Kind.LENGTH, "How far from the straightened end of the cloth."),
)
SIZE = (
    Field("across", "Across", Kind.LENGTH, "How wide it is, from selvage to selvage."),
    Field("along", "Along", Kind.LENGTH, "How long it is, along the cloth."),
)

FLAW = PartKind(
    "flaws",
    "Flaw",
    "Flaws",
    "A rectangle of cloth to keep clear of. The lay goes round it, and the pictures show it.",
    "{word} {across} × {along}",
    (
        Field(
            "word",
            "What it is",
            Kind.TEXT,
            "A short word, such as stain, hole or fold. It is written on the pictures.",
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
    "Motif",
    "Motifs",
    "A rectangle of cloth that one piece must contain whole, as in fussy cutting.",
    "{across} × {along}",
    (
        Field(
            "name",
            "For the piece",
            Kind.TEXT,
            "The name of the piece that must contain it, as in the list of what to cut. The lay "
            "chooses which of several equal ones.",
            none_words="none as yet",
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
    "Pin",
    "Pins",
    "A piece that you put down on the yardage yourself. It stays there; the rest is laid round it.",
    "{name}",
    (
        *PLACE,
        SHEET,
        Field("turned", "Turned", Kind.FLAG, "It lies a quarter turn from how it is listed."),
        Field(
            "name",
            "Piece",
            Kind.TEXT,
            "The name of the piece, or of the joined length whose strip this is.",
            rare=True,
        ),
        Field(
            "copy",
            "Which of them",
            Kind.COUNT,
            "Which of several equal pieces; strips of a joined length have no number.",
            none_words="any",
            rare=True,
        ),
        Field(
            "length",
            "Strip length",
            Kind.LENGTH,
            "How long the strip is, of a joined length. Empty for a piece.",
            none_words="as the piece",
            rare=True,
        ),
        Field(
            "run_copy",
            "Of joined length no.",
            Kind.COUNT,
            "Which of several equal joined lengths the strip belongs to.",
            rare=True,
        ),
        SHEET_COPY,
    ),
    many=True,
    adds=False,
)
