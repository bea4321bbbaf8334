"""The fields of the quilt and of its fabrics."""

from __future__ import annotations

from app.window.field import FINE, SALE, Field, Kind, PartKind
from app.window.fields_by_hand import FLAW, MOTIF, PIN
from core.language import marked

QUILT = PartKind(
    "quilt",
    marked("Quilt"),
    marked("Quilt"),
    marked("The quilt top as it lies on the table now."),
    "{width} × {length}",
    (
        Field(
            "name",
            marked("Name"),
            Kind.TEXT,
            marked("What you call this quilt. It heads the printed plan."),
        ),
        Field(
            "width",
            marked("Width"),
            Kind.LENGTH,
            marked(
                "The top as measured, raw edge to raw edge, before the borders listed below. "
                "Measure through the middle, not along an edge."
            ),
        ),
        Field(
            "length",
            marked("Length"),
            Kind.LENGTH,
            marked(
                "The top as measured from top to bottom, raw edge to raw edge, before the borders "
                "listed below."
            ),
        ),
        Field(
            "edge_thickness",
            marked("Edge thickness"),
            Kind.LENGTH,
            marked(
                "How thick the quilted edge is. The binding has to go round it, so a thick quilt "
                "needs a wider strip."
            ),
            rare=True,
            steps=FINE,
        ),
        Field(
            "copies",
            marked("Copies"),
            Kind.COUNT,
            marked("How many equal quilts to cut at once, as for a class."),
            rare=True,
        ),
        Field(
            "kits",
            marked("Several are cut"),
            Kind.CHOICE,
            marked(
                "Together: all copies are laid on one length of cloth, which buys least. Kit by "
                "kit: each is bought and cut by itself, from a length that can be handed over."
            ),
            (
                ("together", marked("Together, in one lay")),
                ("each", marked("Kit by kit, one lay each")),
            ),
            rare=True,
        ),
    ),
)

ON_HAND = PartKind(
    "on_hand",
    marked("Piece on hand"),
    marked("Pieces on hand"),
    marked("A piece you already own: its usable size, washed and cut straight."),
    marked("{across} × {along}, {count} of them"),
    (
        Field(
            "across",
            marked("Across"),
            Kind.LENGTH,
            marked("Usable size across, between the selvages."),
        ),
        Field(
            "along",
            marked("Along"),
            Kind.LENGTH,
            marked("Usable size along, parallel to the selvages."),
        ),
        Field(
            "count",
            marked("How many"),
            Kind.COUNT,
            marked("How many pieces of this size you have."),
        ),
    ),
    many=True,
)

FABRIC = PartKind(
    "fabrics",
    marked("Fabric"),
    marked("Fabrics"),
    marked("A fabric you have or mean to buy."),
    marked("{width} wide"),
    (
        Field(
            "name",
            marked("Name"),
            Kind.TEXT,
            marked("A name that tells this fabric from the others."),
        ),
        Field(
            "width",
            marked("Width of fabric"),
            Kind.LENGTH,
            marked(
                "Width of fabric (WOF): selvage to selvage, as it comes off the bolt. Measure it: "
                "cloth is often narrower than its label."
            ),
        ),
        Field(
            "buy_more",
            marked("More can be bought"),
            Kind.FLAG,
            marked("Untick this when only the pieces on hand may be used."),
        ),
        Field(
            "price_per_yard",
            marked("Price per yard"),
            Kind.MONEY,
            marked("What a yard costs, in your money. Leave it empty if you do not know."),
            none_words=marked("not known"),
            rare=True,
        ),
        Field(
            "price_per_metre",
            marked("Price per metre"),
            Kind.MONEY,
            marked(
                "What a metre costs, in your money, where cloth is sold by the metre. A fabric has "
                "one price: per yard or per metre."
            ),
            none_words=marked("not known"),
            rare=True,
        ),
        Field(
            "selvage",
            marked("Selvage"),
            Kind.LENGTH,
            marked("The firm edge of the cloth that is cut away, on each side."),
            rare=True,
            steps=FINE,
        ),
        Field(
            "sale_unit",
            marked("Sold in steps of"),
            Kind.LENGTH,
            marked(
                "Sale unit: the step that the shop cuts this fabric in, such as 1/8 yd or 10 cm."
            ),
            rare=True,
            steps=SALE,
        ),
        Field(
            "straightening",
            marked("Straightening"),
            Kind.LENGTH,
            marked(
                "What is lost at the cut end when it is cut square to the selvage: 1 to 2 inches "
                "(3 to 5 cm) are common."
            ),
            rare=True,
        ),
        Field(
            "shrinkage.across",
            marked("Shrinks across"),
            Kind.SHARE,
            marked(
                "How much of its width the cloth loses in washing, in percent. 0 if you do not "
                "wash it first."
            ),
            rare=True,
        ),
        Field(
            "shrinkage.along",
            marked("Shrinks along"),
            Kind.SHARE,
            marked(
                "How much of its length the cloth loses in washing, in percent. 0 if you do not "
                "wash it first."
            ),
            rare=True,
        ),
        Field(
            "one_way_print",
            marked("One-way print"),
            Kind.FLAG,
            marked("The print has a top and a bottom, so that pieces may not be turned."),
            rare=True,
        ),
        Field(
            "repeat",
            marked("Repeat"),
            Kind.LENGTH,
            marked(
                "How far along the cloth the print begins again. Needed only to match a print "
                "across a seam."
            ),
            none_words=marked("none"),
            rare=True,
        ),
        Field(
            "colour",
            marked("Colour"),
            Kind.COLOUR,
            marked(
                "What colour the cloth is, for the pictures on the screen: a name such as navy, or "
                "a number such as #203050. The hatches stay, and tell the parts."
            ),
            none_words=marked("as the part"),
            rare=True,
        ),
        Field(
            "photo",
            marked("Photo"),
            Kind.PHOTO,
            marked(
                "A photo of the cloth, to see in the pictures what of its print lies where. Take "
                "it from straight above, its top the way the print stands, and say how much cloth "
                "it shows from side to side. It stays a file of its own, beside the project."
            ),
            none_words=marked("none"),
            rare=True,
        ),
    ),
    many=True,
    inner=(ON_HAND, FLAW, MOTIF, PIN),
)
