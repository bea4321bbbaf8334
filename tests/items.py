"""Every way of finishing a quilt as a person describes it: what is written in which field.

Each item starts from one plain quilt on four cloths. `adds` are the parts it adds,
`writes` the values in the fields, by their path in the file. `shows` is what the
plan's JSON then holds, by path, and `prints` what is read on its packet.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any, Final

from core.project_file import from_document
from core.quilt import Project

Writes = dict[str, Any]


@dataclass(frozen=True)
class Item:
    """One way of finishing."""

    adds: tuple[str, ...]
    writes: Writes = field(default_factory=dict)
    shows: Writes = field(default_factory=dict)
    prints: str = ""


def plain_quilt() -> Project:
    """A quilt of 46 × 58 in, raw edge to raw edge, and four cloths from the bolt."""
    cloths: list[Writes] = [
        {
            "name": name, "width": "43", "selvage": "1/2", "sale_unit": "1/8 yd",
            "price_per_yard": "12", "one_way_print": False, "repeat": None,
            "shrinkage": {"across": "0%", "along": "0%"}, "straightening": "1",
            "on_hand": [], "buy_more": True,
        }
        for name in ("plum", "dots", "tide", "moss")
    ]  # fmt: skip
    return from_document(
        {
            "format": "crossgrain-project", "version": 1, "units": "in",
            "quilt": {"name": "Plain", "width": "46", "length": "58", "edge_thickness": "1/8",
                      "copies": 1},
            "fabrics": cloths,
        }
    )  # fmt: skip


def _shape(kind: str, *, bias: bool = False, **more: object) -> Writes:
    writes: Writes = {"outline.kind": kind, **{f"outline.{k}": v for k, v in more.items()}}
    return {**writes, "binding.grain": "bias"} if bias else writes


BOUND, EDGED = ("binding",), ("binding", "outline")
FRAMED, BACKED = ("borders",), ("backing",)
MEASURED_SIX: Final = {
    "measured.width_top": "46 1/2",
    "measured.width_centre": "46",
    "measured.width_bottom": "46 1/4",
    "measured.length_left": "58 1/4",
    "measured.length_centre": "58",
    "measured.length_right": "58",
}

ITEMS: Final[dict[str, Item]] = {
    "three widths and lengths, their mean": Item(
        ("measured",),
        MEASURED_SIX,
        {"measured.top": ["185/4", "929/16"]},
        "ease in 1/4 in at the top",
    ),
    "the measures through the centre": Item(
        ("measured",),
        {**MEASURED_SIX, "measured.use": "centre"},
        {"measured.top": ["46", "58"]},
        "ease in 1/2 in at the top",
    ),
    "sides and diagonals": Item(
        ("binding", "squaring"),
        {
            "squaring.top": "46",
            "squaring.bottom": "46 1/2",
            "squaring.left": "58",
            "squaring.right": "58 1/4",
            "squaring.down": "74 1/4",
            "squaring.up": "74 1/4",
            "squaring.tolerance": "3/4",
        },
        {"measured.out_of_square.widths": "1/2", "measured.out_of_square.diagonals": "0"},
        "out of square",
    ),
    "take-up": Item(
        ("binding", "take_up"),
        {"take_up.quilting": "4%", "take_up.washing": "5%"},
        {
            "quilt.finished_width": "707/16",
            "measured.layers": ["46", "58"],
            "measured.washed": ["42", "847/16"],
        },
        "Washed, the quilt comes to",
    ),
    "rounded corners": Item(
        EDGED,
        _shape("rounded", bias=True, radius="5"),
        {"outline.smallest_radius": "5"},
        "bias grain",
    ),
    "clipped corners": Item(
        EDGED,
        _shape("clipped", clip="6"),
        {"outline.corners[7].interior_angle": "135", "outline.corners[0].stop_before": "0.104"},
        "135°",
    ),
    "hexagon": Item(
        EDGED,
        _shape("hexagon", upright="corner"),
        {
            "outline.corners[5].interior_angle": "120",
            "outline.corners[5].mitre_angle": "60",
            "outline.sides[0].length": "13279/500",
        },
        "120°",
    ),
    "octagon": Item(
        EDGED,
        _shape("octagon"),
        {"outline.corners[7].interior_angle": "135", "outline.sides[7].length": "9527/500"},
        "67.5°",
    ),
    "circle": Item(
        EDGED,
        {"quilt.length": "46", **_shape("circle", bias=True)},
        {"outline.smallest_radius": "23", "outline.corners": []},
        "bias grain",
    ),
    "oval": Item(
        EDGED,
        _shape("oval", bias=True),
        {"outline.smallest_radius": "529/29"},
        "bias grain",
    ),
    "scallops, one side its own": Item(
        EDGED,
        _shape("scalloped", bias=True, depth="2", scallops_bottom=4, depth_bottom="3"),
        {"outline.smallest_radius": "541/100", "outline.corners[20].inside": True},
        "clip",
    ),
    "a polygon with an inside corner": Item(
        EDGED,
        _shape(
            "polygon",
            points=[["0", "0"], ["46", "0"], ["46", "30"], ["23", "30"], ["23", "58"], ["0", "58"]],
        ),
        {"outline.perimeter": "208", "outline.corners[3].inside": True},
        "270°",
    ),
    "double fold, by hand": Item(
        BOUND,
        {"binding.fold": "double"},
        {"binding.second_face_width": "5/8", "binding.reach": "3/8", "binding.needs": "441/2"},
        "double fold",
    ),
    "single fold": Item(
        BOUND,
        {"binding.fold": "single", "binding.strip_width": "1 1/2"},
        {"binding.second_face_width": "5/8", "binding.reach": "3/8"},
        "single fold",
    ),
    "faced": Item(
        BOUND,
        {"binding.fold": "faced"},
        {
            "binding.facing.side": "58",
            "binding.facing.top_and_bottom": "47",
            "binding.second_face_width": "7/8",
        },
        "wholly to the back",
    ),
    "faced, clipped corners": Item(
        EDGED,
        {"binding.fold": "faced", **_shape("clipped")},
        {
            "binding.facing.strips[0].length": "51",
            "binding.facing.strips[1].length": "107/16",
            "binding.facing.strips[1].sides": [2, 4, 6, 8],
        },
        "halves its corner",
    ),
    "faced, curved": Item(
        EDGED,
        {"binding.fold": "faced", **_shape("rounded", bias=True, radius="8")},
        {"binding.facing": None, "binding.bias.method": "tube"},
        "ease its folded edge in",
    ),
    "lengthwise binding": Item(
        BOUND,
        {"binding.grain": "lengthwise"},
        {"binding.needs": "441/2"},
        "lengthwise grain",
    ),
    "bias tube from a square": Item(
        BOUND,
        {"binding.grain": "bias"},
        {"binding.bias.pieces[0].across": "51/2", "binding.bias.pieces[0].tube_strips": 7},
        "charts print",
    ),
    "bias tube from a rectangle": Item(
        BOUND,
        {"binding.grain": "bias", "binding.bias.source": "rectangle"},
        {"binding.bias.pieces[0].along": "15", "binding.bias.pieces[0].tube_strips": 11},
        "charts print",
    ),
    "bias strips from a rectangle": Item(
        BOUND,
        {
            "binding.grain": "bias",
            "binding.bias.method": "strips",
            "binding.bias.source": "rectangle",
        },
        {"binding.bias.method": "strips", "binding.bias.pieces[0].across": "42"},
        "slant the same way",
    ),
    "bias strips from fat quarters": Item(
        ("fabrics[0].on_hand", "binding"),
        {
            "fabrics[0].on_hand[0].count": 4,
            "binding.grain": "bias",
            "binding.shortest": "9",
            "binding.bias.method": "strips",
            "binding.bias.source": "on_hand",
        },
        {"binding.bias.pieces[0].across": "18", "binding.bias.pieces[0].along": "21"},
        "slant the same way",
    ),
    "straight joins": Item(
        BOUND,
        {"binding.joins": "straight"},
        {"binding.join_loss": "1/2"},
        "straight joins",
    ),
    "ends cut at 45° first": Item(
        BOUND,
        {"binding.joins": "angled"},
        {"binding.strips": 6},
        "angled joins",
    ),
    "straight closing": Item(
        BOUND,
        {"binding.closing": "straight", "binding.tails.tail": "7"},
        {"binding.closing": "1/2", "binding.ends.tail": "7"},
        "two seams, and join them straight",
    ),
    "tucked end": Item(
        BOUND,
        {
            "binding.closing": "tucked",
            "binding.tuck.turned": "1/2",
            "binding.tuck.overlap": "1 1/2",
            "binding.tuck.start": "1 1/4",
        },
        {"binding.closing": "9/2", "binding.ends.start": "5/4"},
        "1 1/2 in lies inside the fold",
    ),
    "back first, by machine": Item(
        BOUND,
        {"binding.first_face": "back", "binding.finishing": "machine"},
        {"binding.needed_reach": "1/8"},
        "on the back of the quilt",
    ),
    "a reach of one's own": Item(
        BOUND,
        {"binding.reach": "3/16"},
        {"binding.needed_reach": "3/16"},
        "3/16 in wanted",
    ),
    "a finished width, both faces alike": Item(
        BOUND,
        {"binding.finished_width": "1/2"},
        {"binding.strip_width": "27/8", "binding.seam": "1/2", "binding.second_face_width": "9/16"},
        "3 3/8 in wide",
    ),
    "a finished width, the seam kept": Item(
        BOUND,
        {"binding.finished_width": "3/8", "binding.width_rule": "seam"},
        {"binding.strip_width": "9/4", "binding.seam": "1/4"},
        "2 1/4 in wide",
    ),
    "a flange": Item(
        BOUND,
        {"binding.accent.kind": "flange", "binding.accent.cloth": "dots"},
        {"binding.accent.strip_width": "3/4", "binding.layers.along_edge.first_face": 6},
        "Flange",
    ),
    "a piping": Item(
        BOUND,
        {"binding.grain": "bias", "binding.accent.kind": "piping", "binding.accent.cloth": "dots"},
        {"binding.accent.strip_width": "15/16"},
        "round a cord",
    ),
    "two cloths": Item(
        BOUND,
        {"binding.back_fabric": "dots"},
        {"binding.two_cloth.front_width": "13/16", "binding.two_cloth.back_width": "35/16"},
        "edge to edge",
    ),
    "scrappy in turn": Item(
        BOUND,
        {"binding.scrappy.cloths": ["plum", "dots", "tide"], "binding.scrappy.order": "repeating"},
        {"binding.scrappy.segment_length": "83/8", "binding.strips": 28},
        "in this order",
    ),
    "scrappy at random, on the bias": Item(
        BOUND,
        {
            "binding.grain": "bias",
            "binding.bias.method": "strips",
            "binding.scrappy.cloths": ["plum", "dots", "tide"],
            "binding.scrappy.order": "random",
            "binding.scrappy.shortest": "12",
            "binding.scrappy.seed": 4,
        },
        {"binding.scrappy.segment_length": "99/8", "binding.strips": 19},
        "segments of 12 3/8 in",
    ),
    "a side to start on": Item(
        BOUND,
        {"binding.start_side": "left"},
        {"binding.edge_map.closing.facing": "left"},
        "on the left side",
    ),
    "a least distance to the corners": Item(
        BOUND,
        {"binding.least_to_corner": "16"},
        {"binding.edge_map.wished_to_corner": "16", "binding.edge_map.least_to_corner": "37/4"},
        "where 16 in were wished",
    ),
    "butted, ends first": Item(
        FRAMED,
        {"borders[0].first": "ends"},
        {"borders[0].pieces[0].across": "64", "borders[0].pieces[1].across": "46"},
        "top and bottom on first",
    ),
    "corner squares": Item(
        FRAMED,
        {"borders[0].corners": "squares", "borders[0].corner_fabric": "dots"},
        {"borders[0].pieces[0].across": "58", "borders[0].pieces[2].count": 4},
        "corner square",
    ),
    "mitred": Item(
        FRAMED,
        {"borders[0].corners": "mitred", "borders[0].mitre_margin": "3"},
        {"borders[0].pieces[0].across": "67", "borders[0].pieces[1].across": "55"},
        "sew the mitre",
    ),
    "round, as a log cabin": Item(
        FRAMED,
        {"borders[0].corners": "round"},
        {
            "borders[0].pieces[0].across": "58",
            "borders[0].pieces[1].across": "61",
            "borders[0].pieces[2].across": "49",
            "borders[0].pieces[3].across": "52",
        },
        "across the end of the one before",
    ),
    "pinwheel, a cloth a side": Item(
        FRAMED,
        {
            "borders[0].corners": "pinwheel",
            "borders[0].top_fabric": "dots",
            "borders[0].right_fabric": "tide",
            "borders[0].bottom_fabric": "moss",
        },
        {
            "borders[0].pieces[0].across": "61",
            "borders[0].pieces[2].across": "49",
            "borders[0].pieces[2].fabric": "dots",
        },
        "a partial seam",
    ),
    "joins in the middle": Item(
        FRAMED,
        {"borders[0].piecing": "centred"},
        {"borders[0].joins_at.left": ["29"], "borders[0].joins_at.top": ["26"]},
        "lies in the middle",
    ),
    "joins off the middle": Item(
        FRAMED,
        {"borders[0].piecing": "off_centre", "borders[0].off_middle": "5"},
        {"borders[0].pieces[0].across": "58"},
        "do not face each other",
    ),
    "joins where they land": Item(
        FRAMED,
        {"borders[0].piecing": "end_to_end"},
        {"borders[0].joined": True},
        "cut from the long strip",
    ),
    "borders lengthwise": Item(
        FRAMED,
        {"borders[0].grain": "lengthwise"},
        {"borders[0].grain": "lengthwise", "borders[0].pieces[0].along": "58"},
        "two sides on first",
    ),
    "borders from the backing's cloth": Item(
        ("borders", "backing"),
        {"borders[0].fabric": "dots", "backing.fabric": "dots"},
        {"backing.across": "60"},
        "Cut from the same cloth",
    ),
    "coping to a size": Item(
        FRAMED,
        {"borders[0].sizing": "size", "borders[0].to_width": "50", "borders[0].to_length": "64"},
        {"borders[0].sides_width": "2", "borders[0].ends_width": "3"},
        "coping strip",
    ),
    "coping to whole blocks": Item(
        FRAMED,
        {"borders[0].sizing": "blocks", "borders[0].block": "6", "borders[0].width": "1"},
        {"borders[0].outer_width": "97/2", "borders[0].outer_length": "121/2"},
        "8 × 10 blocks",
    ),
    "panels lengthwise": Item(
        BACKED,
        {"backing.seams": "lengthwise"},
        {"backing.seams": "lengthwise", "backing.panel_along": "66"},
        "run along the quilt",
    ),
    "panels crosswise": Item(
        BACKED,
        {"backing.seams": "crosswise"},
        {
            "backing.seams": "crosswise",
            "backing.panel_along": "54",
            "backing.panel_widths": ["42", "25"],
        },
        "run across the quilt",
    ),
    "a full panel and two halves": Item(
        BACKED,
        {"backing.panels": "halves"},
        {"backing.panels": 3},
        "on either side of the full",
    ),
    "a last panel of short strips": Item(
        BACKED,
        {
            "quilt.width": "76",
            "quilt.length": "94 1/2",
            "backing.seams": "crosswise",
            "backing.most_short_strips": 3,
        },
        {
            "backing.along": "205/2",
            "backing.panel_widths": ["42", "42", "41/2"],
            "backing.last_panel_strips": 2,
        },
        "short strips",
    ),
    "an accent strip in the back": Item(
        BACKED,
        {"backing.accent_fabric": "moss", "backing.accent_width": "8"},
        {"backing.panel_widths": ["42", "9", "17"]},
        "accent strip",
    ),
    "wide cloth": Item(
        BACKED,
        {"fabrics[0].width": "108", "backing.seams": "none"},
        {"backing.panels": 1},
        "measures 54 × 66",
    ),
    "a repeat to match": Item(
        BACKED,
        {"fabrics[0].repeat": "12"},
        {"backing.panel_widths": ["42", "25"]},
        "print matches",
    ),
    "a one-way print": Item(
        BACKED,
        {"fabrics[0].one_way_print": True},
        {"backing.seams": "lengthwise"},
        "one way up",
    ),
    "shrinkage": Item(
        BACKED,
        {"fabrics[0].shrinkage.across": "3%", "fabrics[0].shrinkage.along": "4%"},
        {"parts[0].across": "651/16"},
        "cloth that has shrunk",
    ),
    "overage a side": Item(
        BACKED,
        {"backing.overage_top": "8", "backing.overage_left": "2"},
        {"backing.across": "52", "backing.along": "70"},
        "52 × 70",
    ),
    "seams along the rollers": Item(
        BACKED,
        {"backing.frame": "top"},
        {"backing.seams": "crosswise", "backing.off_frame": False},
        "run across the quilt",
    ),
    "offcuts of the backing": Item(
        ("backing", "binding", "sleeve", "label"),
        {"quilt.width": "46", "backing.fabric": "plum"},
        {"sleeve.length": "45", "label.across": "13/2"},
        "Cut from the same cloth",
    ),
    "batting from a package": Item(
        ("batting",),
        {"batting.package": "twin"},
        {"batting.package": "twin"},
        "batting 54 × 66",
    ),
    "batting by the roll": Item(
        ("batting",),
        {"batting.source": "roll", "batting.roll_width": "48"},
        {"batting.roll.pieces": 2, "batting.roll.along": "108"},
        "3 yd",
    ),
    "a sleeve of one layer": Item(
        ("sleeve",),
        {"sleeve.shape": "single", "sleeve.hem": "3/8", "sleeve.ease": "1"},
        {"sleeve.cut_width": "23/4"},
        "to spare stands out",
    ),
    "a D-shaped sleeve": Item(
        ("sleeve",),
        {"sleeve.shape": "d", "sleeve.seam": "3/8"},
        {"sleeve.cut_width": "41/4"},
        "hangs flat",
    ),
    "a split sleeve": Item(
        ("sleeve",),
        {"sleeve.split_above": "40", "sleeve.gap": "3"},
        {"sleeve.parts": 2, "sleeve.length": "21"},
        "bracket",
    ),
    "a label": Item(
        ("label",),
        {"label.width": "5", "label.length": "4"},
        {"label.across": "11/2", "label.along": "9/2"},
        "Label",
    ),
    "several quilts in one lay": Item(
        ("binding", "backing"),
        {"quilt.copies": 4},
        {"quilt.copies": 4, "quilt.kits": "together"},
        "cuts 4 of them",
    ),
    "a lay for each kit": Item(
        ("binding", "backing"),
        {"quilt.copies": 4, "quilt.kits": "each"},
        {"quilt.copies": 4, "quilt.kits": "each"},
        "one of 4 equal kits",
    ),
}
