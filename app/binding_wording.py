"""A binding's layers and bias cloth in words, for window, paper and terminal alike."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from core.finish.binding_plan import BindingPlan
from core.finish.edge_layers import Layers
from core.lengths import Rounding, Units, show, show_size

LAYER_PLACES: Final = ("along the edge", "at a join", "at a corner")


def layers_said(layers: Layers) -> str:
    """
    >>> layers_said(Layers(4, 2, 2))
    '4 on the first face, 2 round the edge, 2 on the second'
    """
    return (
        f"{layers.first_face} on the first face, {layers.edge} round the edge, "
        f"{layers.second_face} on the second"
    )


def bias_given(binding: BindingPlan, units: Units) -> Iterator[tuple[str, str]]:
    """What each bias cloth gives, beside what charts print for it by its bare area."""
    for bias in binding.bias_cloths:
        for piece in bias.pieces:
            size = show_size(piece.across, piece.along, units)
            gives = show(piece.gives, units, Rounding.DOWN)
            if piece.segments:
                gives = f"{piece.segments} segments of {show(piece.segment, units)}"
            bare = show(piece.bare_area, units, Rounding.DOWN)
            each = f"{piece.count} of {size}, each" if piece.count > 1 else size
            yield piece.name, f"{each} gives {gives}; charts print {bare} by bare area"


def layers_by_place(binding: BindingPlan) -> Iterator[tuple[str, str]]:
    """Where layers are counted, and how many lie there; no corner where there is none."""
    for where, layers in zip(LAYER_PLACES, binding.layers, strict=True):
        if layers is not None:
            yield where, layers_said(layers)
