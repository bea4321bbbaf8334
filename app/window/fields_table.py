"""The fields of the cutting table."""

from __future__ import annotations

from app.window.field import Field, Kind, PartKind

TABLE = PartKind(
    "table",
    "Cutting table",
    "Cutting table",
    "What you cut with. It changes no lay; the cut order says how often the ruler moves and the "
    "cloth is folded.",
    "ruler {ruler}",
    (
        Field(
            "ruler",
            "Ruler",
            Kind.LENGTH,
            "How long your ruler is. A cut that is longer takes it in several steps.",
        ),
        Field(
            "folds",
            "Folds at most",
            Kind.COUNT,
            "How often you fold the cloth, selvage to selvage, for a crosswise cut: 0, 1 or 2. "
            "Each fold doubles the layers under the blade; keep to what its maker allows.",
        ),
    ),
)
