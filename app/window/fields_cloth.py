"""The fields of the quilt and of its fabrics."""

from __future__ import annotations

from app.window.field import FINE, SALE, Field, Kind, PartKind
from app.window.fields_by_hand import FLAW, MOTIF, PIN

QUILT = PartKind(
    "quilt",
    "Quilt",
    "Quilt",
    "The quilt top as it lies on the table now.",
    "{width} × {length}",
    (
        Field("name", "Name", Kind.TEXT, "What you call this quilt. It heads the printed plan."),
        Field(
            "width",
            "Width",
            Kind.LENGTH,
            "The top as measured, raw edge to raw edge, before the borders listed below. "
            "Measure through the middle, not along an edge.",
        ),
        Field(
            "length",
            "Length",
            Kind.LENGTH,
            "The top as measured from top to bottom, raw edge to raw edge, before the borders "
            "listed below.",
        ),
        Field(
            "edge_thickness",
            "Edge thickness",
            Kind.LENGTH,
            "How thick the quilted edge is. The binding has to go round it, so a thick quilt "
            "needs a wider strip.",
            rare=True,
            steps=FINE,
        ),
        Field(
            "copies",
            "Copies",
            Kind.COUNT,
            "How many equal quilts to cut at once, as for a class.",
            rare=True,
        ),
        Field(
            "kits",
            "Several are cut",
            Kind.CHOICE,
            "Together: all copies are laid on one length of cloth, which buys least. Kit by kit: "
            "each is bought and cut by itself, from a length that can be handed over.",
            (("together", "Together, in one lay"), ("each", "Kit by kit, one lay each")),
            rare=True,
        ),
    ),
)

ON_HAND = PartKind(
    "on_hand",
    "Piece on hand",
    "Pieces on hand",
    "A piece you already own: its usable size, washed and cut straight.",
    "{across} × {along}, {count} of them",
    (
        Field("across", "Across", Kind.LENGTH, "Usable size across, between the selvages."),
        Field("along", "Along", Kind.LENGTH, "Usable size along, parallel to the selvages."),
        Field("count", "How many", Kind.COUNT, "How many pieces of this size you have."),
    ),
    many=True,
)

FABRIC = PartKind(
    "fabrics",
    "Fabric",
    "Fabrics",
    "A fabric you have or mean to buy.",
    "{width} wide",
    (
        Field("name", "Name", Kind.TEXT, "A name that tells this fabric from the others."),
        Field(
            "width",
            "Width of fabric",
            Kind.LENGTH,
            "Width of fabric (WOF): selvage to selvage, as it comes off the bolt. Measure it: "
            "cloth is often narrower than its label.",
        ),
        Field(
            "buy_more",
            "More can be bought",
            Kind.FLAG,
            "Untick this when only the pieces on hand may be used.",
        ),
        Field(
            "price_per_yard",
            "Price per yard",
            Kind.MONEY,
            "What a yard costs, in your money. Leave it empty if you do not know.",
            none_words="not known",
            rare=True,
        ),
        Field(
            "price_per_metre",
            "Price per metre",
            Kind.MONEY,
            "What a metre costs, in your money, where cloth is sold by the metre. A fabric has "
            "one price: per yard or per metre.",
            none_words="not known",
            rare=True,
        ),
        Field(
            "selvage",
            "Selvage",
            Kind.LENGTH,
            "The firm edge of the cloth that is cut away, on each side.",
            rare=True,
            steps=FINE,
        ),
        Field(
            "sale_unit",
            "Sold in steps of",
            Kind.LENGTH,
            "Sale unit: the step that the shop cuts this fabric in, such as 1/8 yd or 10 cm.",
            rare=True,
            steps=SALE,
        ),
        Field(
            "straightening",
            "Straightening",
            Kind.LENGTH,
            "What is lost at the cut end when it is cut square to the selvage: 1 to 2 inches "
            "(3 to 5 cm) are common.",
            rare=True,
        ),
        Field(
            "shrinkage.across",
            "Shrinks across",
            Kind.SHARE,
            "How much of its width the cloth loses in washing, in percent. 0 if you do not "
            "wash it first.",
            rare=True,
        ),
        Field(
            "shrinkage.along",
            "Shrinks along",
            Kind.SHARE,
            "How much of its length the cloth loses in washing, in percent. 0 if you do not "
            "wash it first.",
            rare=True,
        ),
        Field(
            "one_way_print",
            "One-way print",
            Kind.FLAG,
            "The print has a top and a bottom, so that pieces may not be turned.",
            rare=True,
        ),
        Field(
            "repeat",
            "Repeat",
            Kind.LENGTH,
            "How far along the cloth the print begins again. Needed only to match a print "
            "across a seam.",
            none_words="none",
            rare=True,
        ),
        Field(
            "colour",
            "Colour",
            Kind.COLOUR,
            "What colour the cloth is, for the pictures on the screen: a name such as navy, or a "
            "number such as #203050. The hatches stay, and tell the parts.",
            none_words="as the part",
            rare=True,
        ),
        Field(
            "photo",
            "Photo",
            Kind.PHOTO,
            "A photo of the cloth, to see in the pictures what of its print lies where. Take it "
            "from straight above, its top the way the print stands, and say how much cloth it "
            "shows from side to side. It stays a file of its own, beside the project.",
            none_words="none",
            rare=True,
        ),
    ),
    many=True,
    inner=(ON_HAND, FLAW, MOTIF, PIN),
)
