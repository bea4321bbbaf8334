"""The start of the binding as an edit of the document."""

from __future__ import annotations

from app.window.document import Document
from core import edit
from core.language import told
from core.lengths import Inches, exact_text

MOVING = 1_000_000  # one gesture; those of the fields count from 0


def start_binding(document: Document, place: Inches | None) -> None:
    """Start the binding at a place on the edge; None for where its joins land best.

    Its picture is shown a moment longer than it is there; then there is nothing to start.
    """
    if document.project.binding is None:
        return
    if place is None:
        document.edit(told("Start binding where it lands best"), edit.best_start)
        return
    text = exact_text(place, document.project.units)
    document.put("binding.start_at", text, told("Move binding start"), MOVING)
