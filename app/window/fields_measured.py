"""The fields of what was measured: three places, squareness, take-up."""

from __future__ import annotations

from app.window.field import FINE, Field, Kind, PartKind


def _lengths(words: tuple[tuple[str, str, str], ...]) -> tuple[Field, ...]:
    return tuple(Field(key, label, Kind.LENGTH, text) for key, label, text in words)


MEASURED = PartKind(
    "measured",
    "Measured in three places",
    "Measured in three places",
    "The top measured three times each way. The plan goes by these, not by the quilt's width and "
    "length, and says how far each edge is eased.",
    "by the {use}",
    (
        Field(
            "use",
            "Go by the",
            Kind.CHOICE,
            "The mean of three measures, or the one through the middle. Edges stretch; never go "
            "by an edge alone.",
            (("mean", "Mean of three"), ("centre", "Measure through the centre")),
        ),
        *_lengths(
            (
                ("width_top", "Width at the top", "The width along the top edge."),
                ("width_centre", "Width, centre", "The width through the middle."),
                ("width_bottom", "Width, bottom", "The width along the bottom edge."),
                ("length_left", "Length, left", "The length along the left edge."),
                ("length_centre", "Length, centre", "The length through the middle."),
                ("length_right", "Length, right", "The length along the right edge."),
            )
        ),
    ),
)

SQUARING = PartKind(
    "squaring",
    "Squaring up",
    "Squaring up",
    "The quilted quilt's four sides and two diagonals. The largest true rectangle is trimmed from "
    "it, and the binding goes round that.",
    "{top} × {left}",
    (
        *_lengths(
            (
                ("top", "Top side", "The top side of the quilted quilt."),
                ("right", "Right side", "The right side of the quilted quilt."),
                ("bottom", "Bottom side", "The bottom side of the quilted quilt."),
                ("left", "Left side", "The left side of the quilted quilt."),
                ("down", "Diagonal down", "From the upper left to the lower right corner."),
                ("up", "Diagonal up", "From the lower left to the upper right corner."),
            )
        ),
        Field(
            "tolerance",
            "Tape may be off by",
            Kind.LENGTH,
            "Four sides and one diagonal settle the shape, so the other diagonal is a check. Where "
            "they disagree by more than this, the plan asks you to measure again. Our default, "
            "1/2 inch or 12 mm, has no source.",
            none_words="as usual",
            rare=True,
            steps=FINE,
        ),
    ),
)

TAKE_UP = PartKind(
    "take_up",
    "Take-up",
    "Take-up",
    "What the quilt loses of its size. Backing and batting are planned for the size before "
    "quilting, the binding for the size after it.",
    "{quilting} in quilting",
    (
        Field(
            "quilting",
            "By quilting",
            Kind.SHARE,
            "Published: 3 to 5 % (Stitching Times, 2011). 0 if the quilted quilt was measured.",
        ),
        Field(
            "washing",
            "By washing",
            Kind.SHARE,
            "Published: up to 5 % for most cotton. It changes no cut, since the binding comes "
            "before the wash; the plan tells the size that is left.",
        ),
    ),
)
