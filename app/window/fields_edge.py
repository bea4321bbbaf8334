"""The fields of the quilt's outline, and of how the binding starts on it."""

from __future__ import annotations

from app.window.field import Field, Kind, PartKind

_SCALLOPED = ("kind", "scalloped")


def _each_side(key: str, label: str, kind: Kind, text: str, none_words: str) -> tuple[Field, ...]:
    return tuple(
        Field(
            f"{key}_{side}",
            f"{label}, {side}",
            kind,
            text,
            none_words=none_words,
            rare=True,
            only_if=_SCALLOPED,
        )
        for side in ("top", "right", "bottom", "left")
    )


OUTLINE = PartKind(
    "outline",
    "Outline",
    "Outline",
    "The shape that the quilt is cut to. Without an outline it is a rectangle.",
    "{kind}",
    (
        Field(
            "kind",
            "Shape",
            Kind.CHOICE,
            "The shape is cut from the quilt with its borders, and the binding goes round it. "
            "Curves ask for a bias binding.",
            (
                ("rectangle", "Rectangle"),
                ("rounded", "Rounded corners"),
                ("clipped", "Clipped corners"),
                ("hexagon", "Regular hexagon"),
                ("octagon", "Regular octagon"),
                ("circle", "Circle"),
                ("oval", "Oval"),
                ("scalloped", "Scalloped edge"),
                ("polygon", "Other corners"),
            ),
        ),
        Field(
            "radius",
            "Corner radius",
            Kind.LENGTH,
            "The radius that the corners are rounded with: half the plate you draw them round.",
            only_if=("kind", "rounded"),
        ),
        Field(
            "clip",
            "Clipped off",
            Kind.LENGTH,
            "How much of each of its two edges a clipped corner takes away.",
            only_if=("kind", "clipped"),
        ),
        Field(
            "upright",
            "At the top",
            Kind.CHOICE,
            "Whether the hexagon has a side or a corner at its top.",
            (("side", "A side"), ("corner", "A corner")),
            only_if=("kind", "hexagon"),
        ),
        Field(
            "scallops_across",
            "Scallops across",
            Kind.COUNT,
            "How many scallops the top has; the bottom has as many.",
            only_if=("kind", "scalloped"),
        ),
        Field(
            "scallops_along",
            "Scallops along",
            Kind.COUNT,
            "How many scallops each side has.",
            only_if=("kind", "scalloped"),
        ),
        Field(
            "depth",
            "Depth",
            Kind.LENGTH,
            "How deep the cut between two scallops is, measured from the edge of the quilt.",
            only_if=("kind", "scalloped"),
        ),
        *_each_side(
            "scallops",
            "Scallops",
            Kind.COUNT,
            "How many scallops this side has, where it is not as many as the others.",
            "as above",
        ),
        *_each_side(
            "depth",
            "Depth",
            Kind.LENGTH,
            "How deep the scallops of this side are, where they are not as deep as the others.",
            "as above",
        ),
        Field(
            "points",
            "Corners",
            Kind.POINTS,
            "The corners in order round the quilt, each as its distance from the left edge and "
            "from the top: 0 × 0; 40 × 0; 20 × 30.",
            none_words="0 × 0; 40 × 0; 20 × 30",
            only_if=("kind", "polygon"),
        ),
    ),
)

# Fields of the binding that say where it starts.
ROUND_THE_EDGE = (
    Field(
        "start_side",
        "Ends meet on",
        Kind.CHOICE,
        "The side on which the two ends of the binding are to meet. Seen from the face that "
        "it is sewn to first.",
        (
            (None, "Wherever the joins land best"),
            ("bottom", "The bottom"),
            ("left", "The left side"),
            ("right", "The right side"),
            ("top", "The top"),
        ),
        rare=True,
    ),
    Field(
        "start_at",
        "Ends meet at",
        Kind.LENGTH,
        "The place at which the two ends meet: how far round the edge from the upper left "
        "corner, first down the left side. Seen from the face that it is sewn to first. The "
        "start can also be drawn along on the Edge picture.",
        none_words="the best place",
        rare=True,
    ),
    Field(
        "least_to_corner",
        "Joins from corners",
        Kind.LENGTH,
        "How far every join and the closing should stay from the corners, where a lump will "
        "not mitre. Our default, no source: one strip width.",
        none_words="one strip width",
        rare=True,
    ),
)
