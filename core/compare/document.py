"""Comparisons, staircases and answers as JSON: exact inches as text."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction
from typing import Any

from core.compare.columns import Column, Comparison
from core.compare.reverse import Answer, Enough
from core.compare.rows import Cell, Row, rows
from core.compare.staircase import Staircase, Step
from core.compare.withstands import AtWidth, Withstands
from core.money import bare_money
from core.plan import Plan
from core.plan_json import plan_document


def comparison_document(comparison: Comparison) -> dict[str, Any]:
    """The columns with their plans, and the rows that compare them."""
    return {
        **_head("crossgrain-comparison"),
        "choice": comparison.choice.name,
        "path": comparison.choice.path(comparison.place),
        "columns": [_column(column) for column in comparison.columns],
        "rows": [_row(row) for row in rows(comparison)],
        "notice": comparison.notice,
    }


def staircase_document(stairs: Staircase) -> dict[str, Any]:
    """Every step, the present value, and the mark that the steps are exact to."""
    return {
        **_head("crossgrain-staircase"),
        "choice": stairs.choice.name,
        "path": stairs.choice.path(stairs.place),
        "mark": str(stairs.mark),
        "present": str(stairs.present),
        "steps": [_step(stairs, step) for step in stairs.steps],
    }


def answer_document(question: str, answer: Answer) -> dict[str, Any]:
    """The greatest value that can be planned, with its plan, and why no more."""
    return {
        **_head("crossgrain-answer"),
        "question": question,
        "value": _text(answer.value),
        "step": str(answer.step),
        "refusal": answer.refusal,
        "plan": _plan(answer.plan),
    }


def enough_document(question: str, found: Sequence[Enough]) -> dict[str, Any]:
    return {
        **_head("crossgrain-answer"),
        "question": question,
        "fabrics": [
            {"name": e.fabric, "enough": e.plan is not None, "refusal": e.refusal} for e in found
        ],
    }


def withstands_document(
    question: str, found: Sequence[Withstands], tables: Mapping[str, Sequence[AtWidth]]
) -> dict[str, Any]:
    """How narrow and how short each bought fabric may be, and what it takes at other widths."""
    return {
        **_head("crossgrain-answer"),
        "question": question,
        "fabrics": [
            {
                "name": one.fabric,
                "narrowest_usable_width": str(one.narrowest),
                "narrowest_as_drawn": str(one.as_cut),
                "fails_first_if_narrower": one.narrower,
                "shortest": str(one.shortest),
                "fails_first_if_shorter": one.shorter,
                "at_widths": [_at_width(each) for each in tables[one.fabric]],
            }
            for one in found
        ],
    }


def _head(kind: str) -> dict[str, Any]:
    return {"format": kind, "version": 1}


def _text(value: Fraction | None) -> str | None:
    return None if value is None else str(value)


def _plan(plan: Plan | None) -> dict[str, Any] | None:
    return None if plan is None else plan_document(plan)


def _column(column: Column) -> dict[str, Any]:
    return {
        "value": column.text,
        "present": column.present,
        "refusal": column.refusal,
        "plan": _plan(column.plan),
    }


def _row(row: Row) -> dict[str, Any]:
    return {
        "name": row.name,
        "measured": row.measured.value,
        "cells": [_cell(cell) for cell in row.cells],
    }


def _cell(cell: Cell) -> dict[str, Any]:
    value = None if cell.value is None else str(cell.value)
    loses = None if cell.loses is None else str(cell.loses)
    return {"value": value, "best": cell.best, "loses": loses}


def _step(stairs: Staircase, step: Step) -> dict[str, Any]:
    return {
        "first": str(step.first),
        "last": str(step.last),
        "bought": [str(along) for along in step.bought] or None,
        "cost": None if step.cost is None else bare_money(step.cost),
        "refusal": step.refusal,
        "present": step is stairs.present_step,
    }


def _at_width(at: AtWidth) -> dict[str, Any]:
    return {"usable_width": str(at.width), "bought": _text(at.bought), "refusal": at.refusal}
