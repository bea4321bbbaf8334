"""The fields of the binding."""

from __future__ import annotations

from app.window.field import FINE, Field, Kind, PartKind
from app.window.fields_binding_cloths import CLOTHS
from app.window.fields_edge import ROUND_THE_EDGE
from app.window.fields_finish import FABRIC_HELP, GRAINS, JOINS, JOINS_HELP, SEAM_HELP
from core.language import marked

_BIAS = ("grain", "bias")
_JOINED = ("closing", "diagonal", "straight")
_TUCKED = ("closing", "tucked")

_WIDTH = (
    Field("fabric", marked("Fabric"), Kind.FABRIC, FABRIC_HELP),
    Field(
        "strip_width",
        marked("Strip width"),
        Kind.LENGTH,
        marked(
            "The width that the strip is cut. 2, 2 1/4 and 2 1/2 in (5, 5.7 and 6.4 cm) are common "
            "for a double fold. Writing it clears the finished width, since one follows from the "
            "other."
        ),
        none_words=marked("from the finished width"),
    ),
    Field(
        "finished_width",
        marked("Finished width"),
        Kind.LENGTH,
        marked(
            "The width that the binding should show on each face; the strip's width then follows. "
            "Writing it clears the strip width."
        ),
        none_words=marked("from the strip width"),
        steps=FINE,
    ),
    Field(
        "fold",
        marked("Fold"),
        Kind.CHOICE,
        marked(
            "Double: the strip is folded in half first, so two layers cover the edge. Single: "
            "its edge is turned under; it uses less cloth and wears less well. Faced: four strips "
            "are turned wholly to the back, and nothing shows on the front."
        ),
        (("double", marked("Double")), ("single", marked("Single")), ("faced", marked("Faced"))),
    ),
    Field(
        "finishing",
        marked("Finished by"),
        Kind.CHOICE,
        marked(
            "How the second face is sewn down. By hand the fold should reach 1/16 in (1.5 mm) past "
            "the seam, by machine 1/8 in (3 mm): common practice, no source."
        ),
        (("hand", marked("Hand")), ("machine", marked("Machine"))),
    ),
    Field(
        "grain",
        marked("Grain"),
        Kind.CHOICE,
        marked(
            "Crosswise strips run from selvage to selvage and are joined to length. Lengthwise "
            "strips run parallel to the selvages: they stretch least, and need a long cloth. Bias "
            "strips, at 45°, stretch and follow a curve."
        ),
        (*GRAINS, ("bias", marked("Bias"))),
    ),
    Field(
        "bias.method",
        marked("Bias cut as"),
        Kind.CHOICE,
        marked(
            "Tube: the cloth is cut once on the diagonal, sewn into a tube and cut in one go, "
            "counted here in whole strips. One by one: strips are cut at 45° and joined."
        ),
        (("tube", marked("A continuous tube")), ("strips", marked("Strips one by one"))),
        only_if=_BIAS,
    ),
    Field(
        "bias.source",
        marked("Bias cut from"),
        Kind.CHOICE,
        marked(
            "A square, a rectangle across the whole cloth, or the pieces on hand as they are, "
            "such as fat quarters."
        ),
        (
            ("square", marked("A square")),
            ("rectangle", marked("The full width")),
            ("on_hand", marked("Pieces on hand")),
        ),
        only_if=_BIAS,
    ),
    Field(
        "bias.step",
        marked("Cloth in steps of"),
        Kind.LENGTH,
        marked(
            "Squares and rectangles for bias are cut in whole steps of this. Our default, 1/2 inch "
            "or 1 cm, has no source."
        ),
        none_words=marked("as usual"),
        rare=True,
        only_if=_BIAS,
    ),
)

_SEWING = (
    Field(
        "width_rule",
        marked("A finished width means"),
        Kind.CHOICE,
        marked(
            "Published rules disagree. Both faces alike: the seam is as wide as the finished "
            "width, so the strip is six times it and a little (four times for a single fold); our "
            "default, since the binding is then filled to its edge. Seam as it is: the two faces "
            "together show twice the width. The rule of four times finished forgets the seam and "
            "is not offered."
        ),
        (("faces", marked("Both faces alike")), ("seam", marked("Seam as it is"))),
        rare=True,
    ),
    Field(
        "first_face",
        marked("Sewn first to the"),
        Kind.CHOICE,
        marked(
            "First face: the face of the quilt that the binding is first sewn to. It is folded "
            "over to the other one. Common practice: the front for hand finishing, the back for "
            "machine."
        ),
        (("front", marked("Front")), ("back", marked("Back"))),
        rare=True,
    ),
    Field(
        "reach",
        marked("Reach wanted"),
        Kind.LENGTH,
        marked(
            "How far the fold should land past the seam line on the second face, if not as usual "
            "for the way it is finished."
        ),
        none_words=marked("as usual"),
        rare=True,
        steps=FINE,
    ),
    Field(
        "stitching",
        marked("Stitched from the fold"),
        Kind.LENGTH,
        marked(
            "How far inside the folded edge a machine sews the second face down; the fold must "
            "reach as far past the seam. Common practice, no source: 1/8 in (3 mm)."
        ),
        none_words=marked("as usual"),
        rare=True,
        steps=FINE,
        only_if=("finishing", "machine"),
    ),
    Field(
        "turn_in",
        marked("Facing's ends turned in"),
        Kind.LENGTH,
        marked(
            "What is turned under at the ends of a facing. Common practice, no source; ours is 1/2 "
            "in (12 mm)."
        ),
        none_words=marked("as usual"),
        rare=True,
        steps=FINE,
        only_if=("fold", "faced"),
    ),
    Field("seam", marked("Seam"), Kind.LENGTH, SEAM_HELP, rare=True, steps=FINE),
    Field("joins", marked("Joins"), Kind.CHOICE, JOINS_HELP, JOINS, rare=True),
    Field(
        "shortest",
        marked("Shortest segment"),
        Kind.LENGTH,
        marked(
            "The least length of a strip that is joined in. Our default, no source: 18 in (45 cm), "
            "the short side of a fat quarter, since shorter ones make more joins than they save "
            "cloth."
        ),
        none_words=marked("as usual"),
        rare=True,
    ),
    Field(
        "allowance",
        marked("Allowance"),
        Kind.LENGTH,
        marked(
            "Handling slack added to the way round the quilt, so that you never run short. "
            "Published figures run from 8 to 24 in; ours is 10 in (25 cm), as the Waco Homespun "
            "Quilt Guild has it."
        ),
        rare=True,
    ),
)

_CLOSING = (
    Field(
        "closing",
        marked("Closing"),
        Kind.CHOICE,
        marked(
            "How the two ends of the binding meet. Tucked: one end is folded into a pocket and "
            "the other tucked into it."
        ),
        (
            ("diagonal", marked("Diagonal join")),
            ("tucked", marked("Tucked end")),
            ("straight", marked("Straight join")),
        ),
        rare=True,
    ),
    Field(
        "tails.tail",
        marked("Tails"),
        Kind.LENGTH,
        marked(
            "What is left unsewn at either end of the strip. Published: 5 to 8 in; ours is 8 in "
            "(20 cm), less where the allowance gives less."
        ),
        none_words=marked("as usual"),
        rare=True,
        only_if=_JOINED,
    ),
    Field(
        "tails.gap",
        marked("Gap"),
        Kind.LENGTH,
        marked(
            "The stretch of edge left unsewn between the two ends, for the hands to join them. "
            "Common practice, no source: 8 to 12 in; ours is 10 in (25 cm), half the side of a "
            "small quilt."
        ),
        none_words=marked("as usual"),
        rare=True,
        only_if=_JOINED,
    ),
    Field(
        "tuck.turned",
        marked("End turned under"),
        Kind.LENGTH,
        marked(
            "How much of the first end is folded under. Common practice, no source: a little over "
            "1/4 in; ours is 3/8 in (10 mm)."
        ),
        none_words=marked("as usual"),
        rare=True,
        steps=FINE,
        only_if=_TUCKED,
    ),
    Field(
        "tuck.overlap",
        marked("Tucked in"),
        Kind.LENGTH,
        marked(
            "How far the other end lies inside the first. Common practice, no source: 1 to 2 in; "
            "ours is 2 in (5 cm)."
        ),
        none_words=marked("as usual"),
        rare=True,
        only_if=_TUCKED,
    ),
    Field(
        "tuck.start",
        marked("Sewing starts after"),
        Kind.LENGTH,
        marked(
            "How far past the fold the first stitch lies. Common practice, no source: 1 to 1 1/2 "
            "in; ours is 1 in (25 mm)."
        ),
        none_words=marked("as usual"),
        rare=True,
        only_if=_TUCKED,
    ),
)

BINDING = PartKind(
    "binding",
    marked("Binding"),
    marked("Binding"),
    marked("The strip that is folded over the raw edge of the quilted quilt."),
    "{strip_width} {fabric}",
    (*_WIDTH, *_SEWING, *_CLOSING, *ROUND_THE_EDGE, *CLOTHS),
)
