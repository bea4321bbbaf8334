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
    accent = binding.accent.bias if binding.accent else None
    for bias in (binding.bias, accent):
        for piece in bias.pieces if bias else ():
            size = show_size(piece.across, piece.along, units)
            gives = show(piece.gives, units, Rounding.DOWN)
            bare = show(piece.bare_area, units, Rounding.DOWN)
            each = f"{piece.count} of {size}, each" if piece.count > 1 else size
            yield piece.name, f"{each} gives {gives}; charts print {bare} by bare area"
