"""A binding's layers and bias cloth in words, for window, paper and terminal alike."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from core.finish.bias_cloth import BiasPiece
from core.finish.binding_plan import BindingPlan
from core.finish.edge_layers import Layers
from core.language import marked, told, told_count
from core.lengths import Rounding, Units, show, show_size
from core.part_names import told_part

LAYER_PLACES: Final = (marked("along the edge"), marked("at a join"), marked("at a corner"))


def layers_said(layers: Layers) -> str:
    """
    >>> layers_said(Layers(4, 2, 2))
    '4 on the first face, 2 round the edge, 2 on the second'
    """
    return told(
        "{first} on the first face, {edge} round the edge, {second} on the second",
        first=layers.first_face,
        edge=layers.edge,
        second=layers.second_face,
    )


def bias_given(binding: BindingPlan, units: Units) -> Iterator[tuple[str, str]]:
    """What each bias cloth gives, beside what charts print for it by its bare area."""
    for bias in binding.bias_cloths:
        for piece in bias.pieces:
            yield told_part(piece.name), _given(piece, units)


def _given(piece: BiasPiece, units: Units) -> str:
    gives = show(piece.gives, units, Rounding.DOWN)
    if piece.segments:
        gives = told_count(
            "{count} segment of {length}",
            "{count} segments of {length}",
            piece.segments,
            length=show(piece.segment, units),
        )
    size = show_size(piece.across, piece.along, units)
    bare = show(piece.bare_area, units, Rounding.DOWN)
    if piece.count == 1:
        return told(
            "{size} gives {length}; charts print {bare} by bare area",
            size=size,
            length=gives,
            bare=bare,
        )
    return told(
        "{count} of {size}, each gives {length}; charts print {bare} by bare area",
        count=piece.count,
        size=size,
        length=gives,
        bare=bare,
    )


def layers_by_place(binding: BindingPlan) -> Iterator[tuple[str, str]]:
    """Where layers are counted, and how many lie there; no corner where there is none."""
    for where, layers in zip(LAYER_PLACES, binding.layers, strict=True):
        if layers is not None:
            yield told(where), layers_said(layers)
