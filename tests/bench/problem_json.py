"""A lay problem as the JSON that `python3 -m app lay` reads, so that a finding can be repeated."""

from __future__ import annotations

import json
from fractions import Fraction
from typing import Any

from core.lay.lay_file import FORMAT, VERSION
from core.lay.problem import Cloth, LayProblem, Piece, Run


def problem_text(problem: LayProblem) -> str:
    """The problem on one line; `core.lay.lay_file.problem_from_text` reads it back."""
    return json.dumps(
        {
            "format": FORMAT,
            "version": VERSION,
            "cloths": [_cloth(cloth) for cloth in problem.cloths],
            "pieces": [_piece(piece) for piece in problem.pieces],
            "runs": [_run(run) for run in problem.runs],
        }
    )


def _cloth(cloth: Cloth) -> dict[str, Any]:
    return {
        "name": cloth.name,
        "usable_width": str(cloth.usable_width),
        "sale_unit": str(cloth.sale_unit),
        "straightening": str(cloth.straightening),
        "shrinkage_along": _percent(cloth.shrinkage_along),
        "on_hand": [
            {"across": str(hand.across), "along": str(hand.along), "count": hand.count}
            for hand in cloth.on_hand
        ],
        "buy_more": cloth.buy_more,
    }


def _percent(share: Fraction) -> str:
    return f"{float(100 * share):g}%"


def _piece(piece: Piece) -> dict[str, Any]:
    return {
        "name": piece.name,
        "cloth": piece.cloth,
        "across": str(piece.across),
        "along": str(piece.along),
        "count": piece.count,
        "may_turn": piece.may_turn,
    }


def _run(run: Run) -> dict[str, Any]:
    return {
        "name": run.name,
        "cloth": run.cloth,
        "strip": str(run.strip),
        "needs": str(run.needs),
        "join_loss": str(run.join_loss),
        "shortest": str(run.shortest),
        "grain": run.grain.value,
        "count": run.count,
    }
