"""The fields of a binding's other cloths: one on the back, an accent under it, several in turn."""

from __future__ import annotations

from app.window.field import FINE, Field, Kind
from core.language import marked

_SCRAPPY = ("scrappy.order", "repeating", "random")

CLOTHS = (
    Field(
        "back_fabric",
        marked("Fabric on the back"),
        Kind.FABRIC,
        marked(
            "For a binding of two cloths, one on each face: two strips are sewn edge to edge, and "
            "their seam lies on the quilt's edge."
        ),
        none_words=marked("same as the front"),
        rare=True,
    ),
    Field(
        "cloths_seam",
        marked("Seam between the two"),
        Kind.LENGTH,
        marked(
            "The seam that joins the front's strip to the back's. Common practice, no source: the "
            "usual seam; ours is 1/4 in (6 mm)."
        ),
        none_words=marked("as usual"),
        rare=True,
        steps=FINE,
    ),
    Field(
        "accent.kind",
        marked("Accent under it"),
        Kind.CHOICE,
        marked(
            "Flange: a flat folded strip that shows along the binding. Piping: a strip wrapped "
            "round a cord. Both are sewn into the binding's seam."
        ),
        (("none", marked("None")), ("flange", marked("Flange")), ("piping", marked("Piping"))),
        rare=True,
    ),
    Field(
        "accent.cloth",
        marked("Accent fabric"),
        Kind.FABRIC,
        marked("The fabric that the accent is cut from."),
        none_words=marked("same as the binding"),
        rare=True,
        only_if=("accent.kind", "flange", "piping"),
    ),
    Field(
        "accent.shows",
        marked("Flange shows"),
        Kind.LENGTH,
        marked(
            "The width of the flange that is seen. Common practice, no source: 1/8 to 1/4 in; ours "
            "is 1/8 in (3 mm)."
        ),
        none_words=marked("as usual"),
        rare=True,
        steps=FINE,
        only_if=("accent.kind", "flange"),
    ),
    Field(
        "accent.cord",
        marked("Cord"),
        Kind.LENGTH,
        marked(
            "The thickness of the piping's cord. Common practice, no source: 1/16 to 1/8 in; ours "
            "is 1/8 in (3 mm)."
        ),
        none_words=marked("as usual"),
        rare=True,
        steps=FINE,
        only_if=("accent.kind", "piping"),
    ),
    Field(
        "accent.overlap",
        marked("Piping's ends overlap"),
        Kind.LENGTH,
        marked(
            "How far the two ends of a piping lie over each other. Common practice, no source: 1 "
            "in or so; ours is 1 in (25 mm)."
        ),
        none_words=marked("as usual"),
        rare=True,
        only_if=("accent.kind", "piping"),
    ),
    Field(
        "scrappy.cloths",
        marked("Scrappy fabrics"),
        Kind.FABRICS,
        marked(
            "For a binding of several fabrics: tick them in the order in which they should follow, "
            "at least two, then say below how they follow."
        ),
        rare=True,
    ),
    Field(
        "scrappy.order",
        marked("Scrappy"),
        Kind.CHOICE,
        marked(
            "A binding of segments from several fabrics, one after the other in turn or in a "
            "random order. No two of one fabric lie side by side, round the whole ring."
        ),
        (
            ("none", marked("No, one fabric")),
            ("repeating", marked("In turn")),
            ("random", marked("In random order")),
        ),
        rare=True,
    ),
    Field(
        "scrappy.shortest",
        marked("Segments at least"),
        Kind.LENGTH,
        marked(
            "The least length of a segment. As many are cut as it allows, all alike. Our default, "
            "no source: 10 in (25 cm)."
        ),
        none_words=marked("as usual"),
        rare=True,
        only_if=_SCRAPPY,
    ),
    Field(
        "scrappy.seed",
        marked("Random order number"),
        Kind.COUNT,
        marked("Another number gives another order; the same number always the same one."),
        rare=True,
        only_if=("scrappy.order", "random"),
    ),
)
