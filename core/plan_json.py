"""A plan as JSON: exact inches as text that Python's `Fraction` reads."""

from __future__ import annotations

from typing import Any

from core.binding_json import binding_document
from core.by_hand_json import by_hand_document
from core.edge_json import edge_map_document, measured_document, outline_document
from core.finish.backing import BackingPlan
from core.finish.batting import BattingPlan
from core.finish.binding_plan import BindingPlan
from core.finish.border import BorderPlan
from core.finish.label import LabelPlan
from core.finish.sleeve import SleevePlan
from core.lay.lay_file import cloth_document
from core.lay.problem import Piece
from core.lengths import Inches
from core.money import bare_money
from core.plan import FabricPlan, Plan
from core.steps import sentence


def plan_document(plan: Plan) -> dict[str, Any]:
    """The plan as a JSON object; keys are only ever added to it."""
    return {
        "format": "crossgrain-plan",
        "version": 1,
        "quilt": {
            "name": plan.project.quilt.name,
            "finished_width": str(plan.finished_width),
            "finished_length": str(plan.finished_length),
            "copies": plan.project.quilt.copies,
            "kits": plan.project.quilt.kits.value,
        },
        "parts": [
            {
                "letter": part.letter,
                "name": part.name,
                "fabric": part.fabric,
                "across": str(part.across),
                "along": _maybe(part.along),
                "count": part.count,
            }
            for part in plan.parts
        ],
        "fabrics": [_fabric(plan, fabric) for fabric in plan.fabrics],
        "borders": [{**_border(border), **_otherwise(plan, border)} for border in plan.borders],
        "backing": _backing(plan, plan.backing) if plan.backing else None,
        "batting": _batting(plan.batting) if plan.batting else None,
        "outline": outline_document(plan),
        "measured": measured_document(plan),
        "binding": _binding(plan, plan.binding) if plan.binding else None,
        "sleeve": _sleeve(plan.sleeve) if plan.sleeve else None,
        "label": _label(plan.label_patch) if plan.label_patch else None,
        "warnings": [{"path": notice.path, "text": notice.text} for notice in plan.warnings],
    }


def _maybe(length: Inches | None) -> str | None:
    return None if length is None else str(length)


def _fabric(plan: Plan, fabric: FabricPlan) -> dict[str, Any]:
    cost = fabric.buy.cost
    return {
        **cloth_document(fabric.lay, plan.project.cutting_table),
        "buy": {
            "along": str(fabric.buy.along),
            "sale_text": fabric.buy.sale_text,
            "cost": None if cost is None else bare_money(cost),
            "lays": fabric.buy.lays,
        },
        "waste_share": str(fabric.waste_share),
        **by_hand_document(plan, fabric),
        "steps": [
            {
                "number": step.number,
                "on": step.sheet.on,
                "on_copy": step.sheet.copy,
                "text": sentence(step, plan.project.units, plan.project.cutting_table),
            }
            for step in fabric.steps
        ],
    }


def _border(border: BorderPlan) -> dict[str, Any]:
    crosswise = border.grain.value == "crosswise"
    strips = [
        {
            "name": strip.name,
            "fabric": strip.fabric,
            "across": str(strip.length if crosswise else strip.cut_width),
            "along": str(strip.cut_width if crosswise else strip.length),
            "count": strip.count,
            "parts": [str(part) for part in strip.parts],
        }
        for strip in border.strips
    ]
    corners = [
        {
            "name": demand.wanted.name,
            "across": str(demand.wanted.across),
            "along": str(demand.wanted.along),
            "count": demand.wanted.count,
        }
        for demand in border.demands
        if demand.role == "border corner" and isinstance(demand.wanted, Piece)
    ]
    return {
        "finished_width": str(border.sides_width or border.ends_width),
        "sides_width": str(border.sides_width),
        "ends_width": str(border.ends_width),
        "cut_width": str(border.cut_width),
        "corners": border.border.corners.value,
        "first": border.border.first.value,
        "grain": border.grain.value,
        "joined": border.joined,
        "pieces": strips + corners,
        "joins_at": {side.value: [str(at) for at in places] for side, places in border.joins_at},
        "outer_width": str(border.outer_width),
        "outer_length": str(border.outer_length),
        "blocks": list(border.blocks) if border.blocks else None,
    }


def _otherwise(plan: Plan, border: BorderPlan) -> dict[str, Any]:
    """What the other grain would buy, if the border can be cut so."""
    found = [other for other in plan.otherwise if other.path == border.path]
    if not found:
        return {"otherwise": None}
    [other] = found
    return {
        "otherwise": {
            "how": other.how,
            "more": {name: str(along) for name, along in other.more},
            "text": other.sentence(plan.project),
        }
    }


def _backing(plan: Plan, backing: BackingPlan) -> dict[str, Any]:
    return {
        "across": str(backing.across),
        "along": str(backing.along),
        "panels": backing.panels,
        "seams": backing.seams.value,
        "panel_along": str(backing.panel_along),
        "panel_widths": [str(width) for width in backing.widths],
        "last_panel_strips": backing.pieced_last,
        "accent_at": backing.accent_at,
        "off_frame": backing.off_frame,
        "otherwise": [o.sentence(plan.project) for o in plan.otherwise if o.path == "backing"],
        "beside": None
        if plan.from_backing is None
        else {
            "names": list(plan.from_backing.names),
            "more": str(plan.from_backing.more),
            "offers": [
                {"name": name, "across": str(rect.across), "along": str(rect.along)}
                for name, rect in plan.from_backing.offers
            ],
        },
    }


def _batting(batting: BattingPlan) -> dict[str, Any]:
    package, roll = batting.package, batting.roll
    return {
        "across": str(batting.across),
        "along": str(batting.along),
        "package": None if package is None else package.name,
        "package_size": None if package is None else [str(package.width), str(package.length)],
        "too_small": batting.too_small,
        "roll": None
        if roll is None
        else {
            "width": str(roll.width),
            "pieces": roll.pieces,
            "cut": str(roll.cut),
            "along": str(roll.along),
            "sale_text": roll.sale_text,
        },
    }


def _binding(plan: Plan, binding: BindingPlan) -> dict[str, Any]:
    edge = edge_map_document(plan.sewn, plan.sizes.outline) if plan.sewn else None
    return {**binding_document(binding), "edge_map": edge}


def _sleeve(sleeve: SleevePlan) -> dict[str, Any]:
    return {
        "depth": str(sleeve.depth),
        "cut_width": str(sleeve.cut_width),
        "length": str(sleeve.length),
        "joined": sleeve.joined,
        "shape": sleeve.shape.value,
        "ease": str(sleeve.ease),
        "parts": sleeve.parts,
    }


def _label(label: LabelPlan) -> dict[str, Any]:
    return {"across": str(label.across), "along": str(label.along)}
