"""The fields of the binding."""

from __future__ import annotations

from app.window.field import FINE, Field, Kind, PartKind
from app.window.fields_binding_cloths import CLOTHS
from app.window.fields_edge import ROUND_THE_EDGE
from app.window.fields_finish import FABRIC_HELP, GRAIN_HELP, GRAINS, JOINS, JOINS_HELP, SEAM_HELP

_BIAS = ("grain", "bias")
_JOINED = ("closing", "diagonal", "straight")
_TUCKED = ("closing", "tucked")

_WIDTH = (
    Field("fabric", "Fabric", Kind.FABRIC, FABRIC_HELP),
    Field(
        "strip_width",
        "Strip width",
        Kind.LENGTH,
        "The width that the strip is cut. 2, 2 1/4 and 2 1/2 in (5, 5.7 and 6.4 cm) are common for "
        "a double fold. Writing it clears the finished width, since one follows from the other.",
        none_words="from the finished width",
    ),
    Field(
        "finished_width",
        "Finished width",
        Kind.LENGTH,
        "The width that the binding should show on each face; the strip's width then follows. "
        "Writing it clears the strip width.",
        none_words="from the strip width",
        steps=FINE,
    ),
    Field(
        "fold",
        "Fold",
        Kind.CHOICE,
        "Double: the strip is folded in half first, so two layers cover the edge. Single: "
        "its edge is turned under; it uses less cloth and wears less well. Faced: four strips are "
        "turned wholly to the back, and nothing shows on the front.",
        (("double", "Double"), ("single", "Single"), ("faced", "Faced")),
    ),
    Field(
        "finishing",
        "Finished by",
        Kind.CHOICE,
        "How the second face is sewn down. By hand the fold should reach 1/16 in (1.5 mm) past "
        "the seam, by machine 1/8 in (3 mm): common practice, no source.",
        (("hand", "Hand"), ("machine", "Machine")),
    ),
    Field(
        "grain",
        "Grain",
        Kind.CHOICE,
        GRAIN_HELP + " Bias strips, at 45°, stretch and follow a curve.",
        (*GRAINS, ("bias", "Bias")),
    ),
    Field(
        "bias.method",
        "Bias cut as",
        Kind.CHOICE,
        "Tube: the cloth is cut once on the diagonal, sewn into a tube and cut in one go, counted "
        "here in whole strips. One by one: strips are cut at 45° and joined.",
        (("tube", "A continuous tube"), ("strips", "Strips one by one")),
        only_if=_BIAS,
    ),
    Field(
        "bias.source",
        "Bias cut from",
        Kind.CHOICE,
        "A square, a rectangle across the whole cloth, or the pieces on hand as they are, "
        "such as fat quarters.",
        (
            ("square", "A square"),
            ("rectangle", "The full width"),
            ("on_hand", "Pieces on hand"),
        ),
        only_if=_BIAS,
    ),
    Field(
        "bias.step",
        "Cloth in steps of",
        Kind.LENGTH,
        "Squares and rectangles for bias are cut in whole steps of this. Our default, 1/2 inch or "
        "1 cm, has no source.",
        none_words="as usual",
        rare=True,
        only_if=_BIAS,
    ),
)

_SEWING = (
    Field(
        "width_rule",
        "A finished width means",
        Kind.CHOICE,
        "Published rules disagree. Both faces alike: the seam is as wide as the finished width, "
        "so the strip is six times it and a little (four times for a single fold); our default, "
        "since the binding is then filled to its edge. Seam as it is: the two faces together show "
        "twice the width. The rule of four times finished forgets the seam and is not offered.",
        (("faces", "Both faces alike"), ("seam", "Seam as it is")),
        rare=True,
    ),
    Field(
        "first_face",
        "Sewn first to the",
        Kind.CHOICE,
        "First face: the face of the quilt that the binding is first sewn to. It is folded over "
        "to the other one. Common practice: the front for hand finishing, the back for machine.",
        (("front", "Front"), ("back", "Back")),
        rare=True,
    ),
    Field(
        "reach",
        "Reach wanted",
        Kind.LENGTH,
        "How far the fold should land past the seam line on the second face, if not as usual for "
        "the way it is finished.",
        none_words="as usual",
        rare=True,
        steps=FINE,
    ),
    Field(
        "stitching",
        "Stitched from the fold",
        Kind.LENGTH,
        "How far inside the folded edge a machine sews the second face down; the fold must reach "
        "as far past the seam. Common practice, no source: 1/8 in (3 mm).",
        none_words="as usual",
        rare=True,
        steps=FINE,
        only_if=("finishing", "machine"),
    ),
    Field(
        "turn_in",
        "Facing's ends turned in",
        Kind.LENGTH,
        "What is turned under at the ends of a facing. Common practice, no source; ours is 1/2 in "
        "(12 mm).",
        none_words="as usual",
        rare=True,
        steps=FINE,
        only_if=("fold", "faced"),
    ),
    Field("seam", "Seam", Kind.LENGTH, SEAM_HELP, rare=True, steps=FINE),
    Field("joins", "Joins", Kind.CHOICE, JOINS_HELP, JOINS, rare=True),
    Field(
        "shortest",
        "Shortest segment",
        Kind.LENGTH,
        "The least length of a strip that is joined in. Our default, no source: 18 in (45 cm), the "
        "short side of a fat quarter, since shorter ones make more joins than they save cloth.",
        none_words="as usual",
        rare=True,
    ),
    Field(
        "allowance",
        "Allowance",
        Kind.LENGTH,
        "Handling slack added to the way round the quilt, so that you never run short. Published "
        "figures run from 8 to 24 in; ours is 10 in (25 cm), as the Waco Homespun Quilt Guild has "
        "it.",
        rare=True,
    ),
)

_CLOSING = (
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
        "tails.tail",
        "Tails",
        Kind.LENGTH,
        "What is left unsewn at either end of the strip. Published: 5 to 8 in; ours is 8 in "
        "(20 cm), less where the allowance gives less.",
        none_words="as usual",
        rare=True,
        only_if=_JOINED,
    ),
    Field(
        "tails.gap",
        "Gap",
        Kind.LENGTH,
        "The stretch of edge left unsewn between the two ends, for the hands to join them. Common "
        "practice, no source: 8 to 12 in; ours is 10 in (25 cm), half the side of a small quilt.",
        none_words="as usual",
        rare=True,
        only_if=_JOINED,
    ),
    Field(
        "tuck.turned",
        "End turned under",
        Kind.LENGTH,
        "How much of the first end is folded under. Common practice, no source: a little over "
        "1/4 in; ours is 3/8 in (10 mm).",
        none_words="as usual",
        rare=True,
        steps=FINE,
        only_if=_TUCKED,
    ),
    Field(
        "tuck.overlap",
        "Tucked in",
        Kind.LENGTH,
        "How far the other end lies inside the first. Common practice, no source: 1 to 2 in; ours "
        "is 2 in (5 cm).",
        none_words="as usual",
        rare=True,
        only_if=_TUCKED,
    ),
    Field(
        "tuck.start",
        "Sewing starts after",
        Kind.LENGTH,
        "How far past the fold the first stitch lies. Common practice, no source: 1 to 1 1/2 in; "
        "ours is 1 in (25 mm).",
        none_words="as usual",
        rare=True,
        only_if=_TUCKED,
    ),
)

BINDING = PartKind(
    "binding",
    "Binding",
    "Binding",
    "The strip that is folded over the raw edge of the quilted quilt.",
    "{strip_width} {fabric}",
    (*_WIDTH, *_SEWING, *_CLOSING, *ROUND_THE_EDGE, *CLOTHS),
)
