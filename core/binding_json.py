"""The binding of a plan as JSON: exact inches as text that Python's `Fraction` reads."""

from __future__ import annotations

from typing import Any

from core.finish.accent import AccentPlan
from core.finish.bias_cloth import BiasPlan
from core.finish.binding_plan import BindingPlan
from core.finish.closing import JoinedClosing, TuckedClosing
from core.finish.edge_layers import Layers
from core.finish.scrappy import ScrappyPlan
from core.finish.side_strips import SideStrips
from core.finish.two_cloth import TwoCloth


def binding_document(binding: BindingPlan) -> dict[str, Any]:
    """The binding; keys of ways that it is not made in hold null."""
    along, join, corner = binding.layers
    return {
        "perimeter": str(binding.perimeter),
        "closing": str(binding.closing),
        "needs": str(binding.needs),
        "join_loss": str(binding.join_loss),
        "strips": binding.strips,
        "strip_length": str(binding.strip_length),
        "joined_length": str(binding.joined_length),
        "spare": str(binding.spare),
        "joins": binding.joins,
        "narrowest_usable_width": str(binding.narrowest_usable_width),
        "strip_width": str(binding.widths.strip),
        "seam": str(binding.widths.seam),
        "first_face_width": str(binding.first_face_width),
        "second_face_width": str(binding.second_face_width),
        "reach": str(binding.reach),
        "needed_reach": str(binding.widths.needed_reach),
        "layers": {
            "along_edge": _layers(along),
            "at_join": _layers(join),
            "at_corner": None if corner is None else _layers(corner),
        },
        "ends": _ends(binding.ends) if binding.ends else None,
        "bias": _bias(binding.bias) if binding.bias else None,
        "scrappy": _scrappy(binding.scrappy) if binding.scrappy else None,
        "two_cloth": _two_cloth(binding.two_cloth) if binding.two_cloth else None,
        "accent": _accent(binding.accent) if binding.accent else None,
        "facing": _facing(binding.facing) if binding.facing else None,
    }


def _layers(layers: Layers) -> dict[str, int]:
    return {
        "first_face": layers.first_face,
        "edge": layers.edge,
        "second_face": layers.second_face,
    }


def _ends(ends: JoinedClosing | TuckedClosing) -> dict[str, str]:
    if isinstance(ends, JoinedClosing):
        return {"tail": str(ends.tail), "gap": str(ends.gap)}
    return {"fold": str(ends.fold), "overlap": str(ends.overlap), "start": str(ends.start)}


def _bias(bias: BiasPlan) -> dict[str, Any]:
    return {
        "method": bias.method.value,
        "join_loss": str(bias.join_loss),
        "joined_length": str(bias.joined_length),
        "pieces": [
            {
                "name": piece.name,
                "across": str(piece.across),
                "along": str(piece.along),
                "count": piece.count,
                "gives": str(piece.gives),
                "bare_area_rule": str(piece.bare_area),
                "tube_strips": piece.turns,
                "segments": piece.segments,
                "strips": [
                    {"place": strip.place, "usable": str(strip.usable)} for strip in piece.strips
                ],
            }
            for piece in bias.pieces
        ],
    }


def _scrappy(scrappy: ScrappyPlan) -> dict[str, Any]:
    return {
        "segment_length": str(scrappy.length),
        "order": list(scrappy.order),
        "bias": [{"fabric": name, **_bias(cut)} for name, cut in scrappy.bias],
    }


def _two_cloth(two: TwoCloth) -> dict[str, str]:
    return {
        "front_fabric": two.front_fabric,
        "front_width": str(two.front),
        "back_fabric": two.back_fabric,
        "back_width": str(two.back),
        "seam": str(two.seam),
    }


def _accent(accent: AccentPlan) -> dict[str, Any]:
    return {
        "kind": accent.kind.value,
        "fabric": accent.fabric,
        "strip_width": str(accent.strip),
        "shows": str(accent.shows),
        "needs": str(accent.needs),
        "join_loss": str(accent.join_loss),
        "cut_whole": accent.whole,
        "bias": _bias(accent.bias) if accent.bias else None,
    }


def _facing(facing: SideStrips) -> dict[str, Any]:
    """`side` and `top_and_bottom` are null unless it has four strips, equal ones opposite."""
    lengths = {side: strip.length for strip in facing.strips for side in strip.sides}
    paired = len(lengths) == 4 and lengths[1] == lengths[3] and lengths[2] == lengths[4]
    return {
        "side": str(lengths[1]) if paired else None,
        "top_and_bottom": str(lengths[2]) if paired else None,
        "strips": [
            {
                "name": strip.name,
                "fabric": strip.fabric,
                "length": str(strip.length),
                "sides": list(strip.sides),
            }
            for strip in facing.strips
        ],
    }
