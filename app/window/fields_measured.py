"""The fields of what was measured: three places, squareness, take-up."""

from __future__ import annotations

from app.window.field import FINE, Field, Kind, PartKind
from core.language import marked


def _lengths(words: tuple[tuple[str, str, str], ...]) -> tuple[Field, ...]:
    return tuple(Field(key, label, Kind.LENGTH, text) for key, label, text in words)


MEASURED = PartKind(
    "measured",
    marked("Measured in three places"),
    marked("Measured in three places"),
    marked(
        "The top measured three times each way. The plan goes by these, not by the quilt's width "
        "and length, and says how far each edge is eased."
    ),
    marked("by the {use}"),
    (
        Field(
            "use",
            marked("Go by the"),
            Kind.CHOICE,
            marked(
                "The mean of three measures, or the one through the middle. Edges stretch; never "
                "go by an edge alone."
            ),
            (
                # The heading says "by the mean".
                (marked("mean"), marked("Mean of three")),
                (marked("centre"), marked("Through the centre")),
            ),
        ),
        *_lengths(
            (
                ("width_top", marked("Width at the top"), marked("The width along the top edge.")),
                ("width_centre", marked("Width, centre"), marked("The width through the middle.")),
                (
                    "width_bottom",
                    marked("Width, bottom"),
                    marked("The width along the bottom edge."),
                ),
                ("length_left", marked("Length, left"), marked("The length along the left edge.")),
                (
                    "length_centre",
                    marked("Length, centre"),
                    marked("The length through the middle."),
                ),
                (
                    "length_right",
                    marked("Length, right"),
                    marked("The length along the right edge."),
                ),
            )
        ),
    ),
)

SQUARING = PartKind(
    "squaring",
    marked("Squaring up"),
    marked("Squaring up"),
    marked(
        "The quilted quilt's four sides and two diagonals. The largest true rectangle is trimmed "
        "from it, and the binding goes round that."
    ),
    "{top} × {left}",
    (
        *_lengths(
            (
                ("top", marked("Top side"), marked("The top side of the quilted quilt.")),
                ("right", marked("Right side"), marked("The right side of the quilted quilt.")),
                ("bottom", marked("Bottom side"), marked("The bottom side of the quilted quilt.")),
                ("left", marked("Left side"), marked("The left side of the quilted quilt.")),
                (
                    "down",
                    marked("Diagonal down"),
                    marked("From the upper left to the lower right corner."),
                ),
                (
                    "up",
                    marked("Diagonal up"),
                    marked("From the lower left to the upper right corner."),
                ),
            )
        ),
        Field(
            "tolerance",
            marked("Tape may be off by"),
            Kind.LENGTH,
            marked(
                "Four sides and one diagonal settle the shape, so the other diagonal is a check. "
                "Where they disagree by more than this, the plan asks you to measure again. Our "
                "default, 1/2 inch or 12 mm, has no source."
            ),
            none_words=marked("as usual"),
            rare=True,
            steps=FINE,
        ),
    ),
)

TAKE_UP = PartKind(
    "take_up",
    marked("Take-up"),
    marked("Take-up"),
    marked(
        "What the quilt loses of its size. Backing and batting are planned for the size before "
        "quilting, the binding for the size after it."
    ),
    marked("{quilting} in quilting"),
    (
        Field(
            "quilting",
            marked("By quilting"),
            Kind.SHARE,
            marked(
                "Published: 3 to 5 % (Stitching Times, 2011). 0 if the quilted quilt was measured."
            ),
        ),
        Field(
            "washing",
            marked("By washing"),
            Kind.SHARE,
            marked(
                "Published: up to 5 % for most cotton. It changes no cut, since the binding comes "
                "before the wash; the plan tells the size that is left."
            ),
        ),
    ),
)
