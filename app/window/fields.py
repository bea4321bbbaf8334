"""The fields of a project as the window shows them: one table, no widgets.

Each `PartKind` is a part of the project file and lists its `Field`s by their
key in that file. A field's words teach the trade term it stands for. Paths are
those of the file ("borders[1].width"), so that a refusal's path finds its field.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import Enum, auto
from typing import Any, TypeAlias

# A project in the file's JSON form, as `core.project_file.to_document` gives it.
FileForm: TypeAlias = dict[str, Any]


class Kind(Enum):
    """What a field holds, and so which editor it gets."""

    TEXT = auto()
    LENGTH = auto()
    MONEY = auto()
    SHARE = auto()
    COUNT = auto()
    FLAG = auto()
    CHOICE = auto()
    FABRIC = auto()


COARSE = ("1/8 in", "5 mm")
FINE = ("1/16 in", "1 mm")
SALE = ("1/8 yd", "10 cm")


@dataclass(frozen=True, slots=True)
class Field:
    """One field of a part.

    `none_words` is set where the value may be absent, and says what that means.
    `rare` fields are folded away until asked for. `only_if` names a sibling and
    the value of it for which this field matters. `steps` is what the arrow keys add
    to a length, in a project in inches and in a metric one.
    """

    key: str
    label: str
    kind: Kind
    help: str
    choices: tuple[tuple[str, str], ...] = ()
    none_words: str = ""
    rare: bool = False
    steps: tuple[str, str] = COARSE
    only_if: tuple[str, str] | None = None


@dataclass(frozen=True, slots=True)
class PartKind:
    """A part of the project; `summary` is what its heading says while folded."""

    key: str
    title: str
    plural: str
    help: str
    summary: str
    fields: tuple[Field, ...]
    many: bool = False


GRAINS = (
    ("crosswise", "Crosswise"),
    ("lengthwise", "Lengthwise"),
    ("either", "Whichever buys less"),
)
GRAIN_HELP = (
    "Crosswise strips run from selvage to selvage and are joined to length. Lengthwise strips "
    "run parallel to the selvages: they stretch least, and need a long cloth."
)
JOINS = (("diagonal", "Diagonal"), ("straight", "Straight"))
JOINS_HELP = (
    "How two strips are sewn end to end. A diagonal join spreads its bulk and uses up one strip "
    "width; a straight join uses up two seam allowances."
)
SEAM_HELP = "Seam allowance: the distance from the raw edge to the line of stitching."
FABRIC_HELP = "The fabric that it is cut from. Fabrics are listed above."
OVERAGE_HELP = (
    "Overage: how far it stands out beyond the quilt on each side, to be trimmed off after "
    "quilting."
)

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
    ),
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
            "are common.",
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
    ),
    many=True,
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

BORDER = PartKind(
    "borders",
    "Border",
    "Borders, from the inside out",
    "A frame of strips round the quilt top. Borders are listed from the inside out.",
    "{width} {fabric}",
    (
        Field("fabric", "Fabric", Kind.FABRIC, FABRIC_HELP),
        Field(
            "width",
            "Finished width",
            Kind.LENGTH,
            "The width that shows once it is sewn. The strip is cut wider by two seam allowances.",
        ),
        Field(
            "corners",
            "Corners",
            Kind.CHOICE,
            "How the four strips meet. Butted: the sides go on first, then top and bottom over "
            "their ends. Mitred: the strips meet on the diagonal. Squares: a square of cloth "
            "in each corner.",
            (("butted", "Butted"), ("mitred", "Mitred"), ("squares", "Corner squares")),
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
            "Extra length on each strip so that a mitre can be fitted, then trimmed.",
            only_if=("corners", "mitred"),
        ),
        Field("grain", "Grain", Kind.CHOICE, GRAIN_HELP, GRAINS, rare=True),
        Field("joins", "Joins", Kind.CHOICE, JOINS_HELP, JOINS, rare=True),
        Field("seam", "Seam", Kind.LENGTH, SEAM_HELP, rare=True, steps=FINE),
    ),
    many=True,
)

BACKING = PartKind(
    "backing",
    "Backing",
    "Backing",
    "The back of the quilt, sewn from panels where the cloth is too narrow.",
    "{fabric}",
    (
        Field("fabric", "Fabric", Kind.FABRIC, FABRIC_HELP),
        Field("overage", "Overage", Kind.LENGTH, OVERAGE_HELP),
        Field(
            "seams",
            "Seams",
            Kind.CHOICE,
            "Which way the seams between panels run. Lengthwise seams run from the top of the "
            "quilt to its bottom.",
            (
                ("auto", "Whichever buys less"),
                ("lengthwise", "Lengthwise"),
                ("crosswise", "Crosswise"),
                ("none", "None: one wide cloth"),
            ),
        ),
        Field("seam", "Panel seam", Kind.LENGTH, SEAM_HELP, rare=True, steps=FINE),
    ),
)

BATTING = PartKind(
    "batting",
    "Batting",
    "Batting",
    "The soft layer between top and backing, bought as a package.",
    "{overage} each side",
    (Field("overage", "Overage", Kind.LENGTH, OVERAGE_HELP),),
)

BINDING = PartKind(
    "binding",
    "Binding",
    "Binding",
    "The strip that is folded over the raw edge of the quilted quilt.",
    "{strip_width} {fabric}",
    (
        Field("fabric", "Fabric", Kind.FABRIC, FABRIC_HELP),
        Field(
            "strip_width",
            "Strip width",
            Kind.LENGTH,
            "The width that the strip is cut. 2, 2 1/4 and 2 1/2 are common for a double fold.",
        ),
        Field(
            "fold",
            "Fold",
            Kind.CHOICE,
            "Double: the strip is folded in half first, so two layers cover the edge. Single: "
            "its edge is turned under; it uses less cloth and wears less well.",
            (("double", "Double"), ("single", "Single")),
        ),
        Field(
            "grain",
            "Grain",
            Kind.CHOICE,
            GRAIN_HELP + " Bias strips, at 45°, stretch and follow a curve.",
            (*GRAINS, ("bias", "Bias")),
        ),
        Field("joins", "Joins", Kind.CHOICE, JOINS_HELP, JOINS, rare=True),
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
            "allowance",
            "Allowance",
            Kind.LENGTH,
            "Handling slack added to the way round the quilt, so that you never run short.",
            rare=True,
        ),
        Field("seam", "Seam", Kind.LENGTH, SEAM_HELP, rare=True, steps=FINE),
    ),
)

SLEEVE = PartKind(
    "sleeve",
    "Hanging sleeve",
    "Hanging sleeve",
    "The tube on the back of a quilt that a hanging rod goes through.",
    "{depth} {fabric}",
    (
        Field("fabric", "Fabric", Kind.FABRIC, FABRIC_HELP),
        Field(
            "depth",
            "Depth",
            Kind.LENGTH,
            "The depth of the sleeve lying flat. 4 inches take the rods of most shows.",
        ),
    ),
)

# In the window's order. The first three are always there; the rest may be absent.
PARTS = (QUILT, FABRIC, BORDER, BACKING, BATTING, BINDING, SLEEVE)
SINGLE_PARTS = (BACKING, BATTING, BINDING, SLEEVE)

_STEP = re.compile(r"(\w+)|\[(\d+)\]")


def value_at(form: FileForm, path: str) -> Any:
    """The value at a file path; None where an optional part or key is absent.

    >>> value_at({"borders": [{"width": "3 1/2"}]}, "borders[0].width")
    '3 1/2'
    """
    value: Any = form
    for key, index in _STEP.findall(path):
        if value is None:
            return None
        value = value[int(index)] if index else value.get(key)
    return value


def part_name(form: FileForm, prefix: str) -> str:
    """A part as a person calls it: "Border 2", "Fabric plum", "Piece on hand 1".

    >>> part_name({"borders": [{}, {}]}, "borders[1]")
    'Border 2'
    >>> part_name({}, "fabrics")
    'Fabric'
    """
    key, _, index = prefix.rpartition(".")[2].partition("[")
    kind = next(kind for kind in (*PARTS, ON_HAND) if kind.key == key)
    if kind is FABRIC and index:
        return f"{kind.title} {value_at(form, prefix)['name']}"
    return f"{kind.title} {int(index[:-1]) + 1}" if index else kind.title


def summary(kind: PartKind, values: FileForm, units: str) -> str:
    """What the folded heading of a part says, in plain words.

    >>> summary(BORDER, {"width": "3 1/2", "fabric": "plum"}, "in")
    '3 1/2 in plum'
    """
    lengths = {field.key for field in kind.fields if field.kind is Kind.LENGTH}
    shown = {
        key: with_unit(value, units) if key in lengths else value for key, value in values.items()
    }
    return kind.summary.format_map(shown)


def with_unit(text: str | None, units: str) -> str:
    """A length's text with its unit, which a bare number takes from the project.

    >>> with_unit("50 1/2", "in"), with_unit("128 cm", "in")
    ('50 1/2 in', '128 cm')
    """
    if text is None:
        return ""
    return f"{text} {units}" if text[-1:].isdigit() else text
