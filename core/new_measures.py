"""What the measures of a quilt start as: a quilt that is true, and as large as is said."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

from core.edge.curves import root
from core.figures import figure
from core.finish.coping import finished_widths
from core.lengths import Rounding, exact_text, rounded
from core.measured import Measured, Squaring, TakeUp
from core.project_file.measured_form import measure_documents
from core.quilt import Project


def new_measures(part: str, project: Project) -> dict[str, Any]:
    """The part `measured`, `squaring` or `take_up` in the form of a file."""
    width, length = project.top
    mark = figure(width, Fraction(1, 16), Fraction(1))
    diagonal = rounded(root(width**2 + length**2), mark, Rounding.NEAREST)
    made = replace(
        project,
        measured=Measured((width,) * 3, (length,) * 3),
        squaring=Squaring(width, length, width, length, diagonal, diagonal),
        take_up=TakeUp(),
    )
    document: dict[str, Any] = measure_documents(made)[part]
    return document


def new_points(project: Project) -> list[list[str]]:
    """The four corners of the quilt with its borders, in the form of a file."""
    size = project.top
    for place, border in enumerate(project.borders):
        sides, ends = finished_widths(border, f"borders[{place}]", size)
        size = size[0] + 2 * sides, size[1] + 2 * ends
    zero, width, length = (exact_text(at, project.units) for at in (Fraction(0), *size))
    return [[zero, zero], [width, zero], [width, length], [zero, length]]
