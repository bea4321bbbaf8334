"""The strips that a binding is joined from, with the letters they bear when they are cut."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from typing import TypeAlias

from core.finish.binding_plan import BindingPlan, segment_length
from core.finish.scrappy import segment_name
from core.lay.lay import Placement
from core.lengths import Inches

Segment: TypeAlias = tuple[str, Inches]
Label: TypeAlias = Callable[[str, int], str]


def segments_of(
    binding: BindingPlan, laid: Sequence[Placement], label: Label
) -> tuple[Segment, ...]:
    """Each strip's label and length, in the order in which they are cut.

    `laid` are the run's segments where it is one; `label` gives what is written
    on a copy of a part. Of two cloths it is the first one's strips; of several
    on the bias, each one's first piece and the segment's number.
    """
    if binding.bias is not None:
        return tuple(_bias(binding, label))
    if binding.scrappy is not None:
        return tuple(_scrappy(binding, label))
    return tuple((label(placed.name, placed.copy), segment_length(placed)) for placed in laid)


def _bias(binding: BindingPlan, label: Label) -> Iterator[Segment]:
    """A tube is one strip; of a piece cut strip by strip each has a number of its own."""
    for piece in binding.bias.pieces if binding.bias else ():
        for copy in range(1, piece.count + 1):
            name = label(piece.name, copy)
            for number, length in enumerate(piece.lengths, start=1):
                yield (f"{name}-{number}" if len(piece.lengths) > 1 else name), length


def _scrappy(binding: BindingPlan, label: Label) -> Iterator[Segment]:
    if binding.scrappy is None:
        return
    used: Counter[str] = Counter()
    first = {cloth: cut.pieces[0].name for cloth, cut in binding.scrappy.bias}
    for cloth in binding.scrappy.order:
        used[cloth] += 1
        number = used[cloth]
        name = f"{label(first[cloth], 1)}-{number}" if first else label(segment_name(cloth), number)
        yield name, binding.scrappy.length
