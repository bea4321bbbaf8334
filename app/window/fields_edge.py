"""The fields of the quilt's outline, and of how the binding starts on it."""

from __future__ import annotations

from app.window.field import Field, Kind, PartKind
from core.language import marked

_SCALLOPED = ("kind", "scalloped")


_SIDES = ("top", "right", "bottom", "left")


def _each_side(key: str, labels: tuple[str, ...], kind: Kind, text: str) -> tuple[Field, ...]:
    return tuple(
        Field(
            f"{key}_{side}",
            label,
            kind,
            text,
            none_words=marked("as above"),
            rare=True,
            only_if=_SCALLOPED,
        )
        for side, label in zip(_SIDES, labels, strict=True)
    )


OUTLINE = PartKind(
    "outline",
    marked("Outline"),
    marked("Outline"),
    marked("The shape that the quilt is cut to. Without an outline it is a rectangle."),
    "{kind}",
    (
        Field(
            "kind",
            marked("Shape"),
            Kind.CHOICE,
            marked(
                "The shape is cut from the quilt with its borders, and the binding goes round it. "
                "Curves ask for a bias binding."
            ),
            (
                # The shapes' own names are told too: the folded heading says them.
                (marked("rectangle"), marked("Rectangle")),
                (marked("rounded"), marked("Rounded corners")),
                (marked("clipped"), marked("Clipped corners")),
                (marked("hexagon"), marked("Regular hexagon")),
                (marked("octagon"), marked("Regular octagon")),
                (marked("circle"), marked("Circle")),
                (marked("oval"), marked("Oval")),
                (marked("scalloped"), marked("Scalloped edge")),
                (marked("polygon"), marked("Other corners")),
            ),
        ),
        Field(
            "radius",
            marked("Corner radius"),
            Kind.LENGTH,
            marked(
                "The radius that the corners are rounded with: half the plate you draw them round."
            ),
            only_if=("kind", "rounded"),
        ),
        Field(
            "clip",
            marked("Clipped off"),
            Kind.LENGTH,
            marked("How much of each of its two edges a clipped corner takes away."),
            only_if=("kind", "clipped"),
        ),
        Field(
            "upright",
            marked("At the top"),
            Kind.CHOICE,
            marked("Whether the hexagon has a side or a corner at its top."),
            (("side", marked("A side")), ("corner", marked("A corner"))),
            only_if=("kind", "hexagon"),
        ),
        Field(
            "scallops_across",
            marked("Scallops across"),
            Kind.COUNT,
            marked("How many scallops the top has; the bottom has as many."),
            only_if=("kind", "scalloped"),
        ),
        Field(
            "scallops_along",
            marked("Scallops along"),
            Kind.COUNT,
            marked("How many scallops each side has."),
            only_if=("kind", "scalloped"),
        ),
        Field(
            "depth",
            marked("Depth"),
            Kind.LENGTH,
            marked(
                "How deep the cut between two scallops is, measured from the edge of the quilt."
            ),
            only_if=("kind", "scalloped"),
        ),
        *_each_side(
            "scallops",
            (
                marked("Scallops, top"),
                marked("Scallops, right"),
                marked("Scallops, bottom"),
                marked("Scallops, left"),
            ),
            Kind.COUNT,
            marked("How many scallops this side has, where it is not as many as the others."),
        ),
        *_each_side(
            "depth",
            (
                marked("Depth, top"),
                marked("Depth, right"),
                marked("Depth, bottom"),
                marked("Depth, left"),
            ),
            Kind.LENGTH,
            marked(
                "How deep the scallops of this side are, where they are not as deep as the others."
            ),
        ),
        Field(
            "points",
            marked("Corners"),
            Kind.POINTS,
            marked(
                "The corners in order round the quilt, each as its distance from the left edge and "
                "from the top: 0 × 0; 40 × 0; 20 × 30."
            ),
            none_words="0 × 0; 40 × 0; 20 × 30",
            only_if=("kind", "polygon"),
        ),
    ),
)

# Fields of the binding that say where it starts.
ROUND_THE_EDGE = (
    Field(
        "start_side",
        marked("Ends meet on"),
        Kind.CHOICE,
        marked(
            "The side on which the two ends of the binding are to meet. Seen from the face that "
            "it is sewn to first."
        ),
        (
            (None, marked("Where joins land best")),
            ("bottom", marked("The bottom")),
            ("left", marked("The left side")),
            ("right", marked("The right side")),
            ("top", marked("The top")),
        ),
        rare=True,
    ),
    Field(
        "start_at",
        marked("Ends meet at"),
        Kind.LENGTH,
        marked(
            "The place at which the two ends meet: how far round the edge from the upper left "
            "corner, first down the left side. Seen from the face that it is sewn to first. The "
            "start can also be drawn along on the Edge picture."
        ),
        none_words=marked("the best place"),
        rare=True,
    ),
    Field(
        "least_to_corner",
        marked("Joins from corners"),
        Kind.LENGTH,
        marked(
            "How far every join and the closing should stay from the corners, where a lump will "
            "not mitre. Our default, no source: one strip width."
        ),
        none_words=marked("one strip width"),
        rare=True,
    ),
)
