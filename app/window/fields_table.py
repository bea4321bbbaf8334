"""The fields of the cutting table."""

from __future__ import annotations

from app.window.field import Field, Kind, PartKind
from core.language import marked

TABLE = PartKind(
    "table",
    marked("Cutting table"),
    marked("Cutting table"),
    marked(
        "What you cut with. It changes no lay; the cut order says how often the ruler moves and "
        "the cloth is folded."
    ),
    marked("ruler {ruler}"),
    (
        Field(
            "ruler",
            marked("Ruler"),
            Kind.LENGTH,
            marked("How long your ruler is. A cut that is longer takes it in several steps."),
        ),
        Field(
            "folds",
            marked("Folds at most"),
            Kind.COUNT,
            marked(
                "How often you fold the cloth, selvage to selvage, for a crosswise cut: 0, 1 or 2. "
                "Each fold doubles the layers under the blade; keep to what its maker allows."
            ),
        ),
    ),
)
