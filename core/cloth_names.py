"""What cloth in hand is called while it is cut, told in the language spoken.

The names by which the program goes ("section 2") are English; they are told where
they are shown.
"""

from __future__ import annotations

from typing import Final

from core.language import marked, told

_NAMES: Final = (
    marked("cloth"),
    marked("offcut"),
    marked("waste"),
    marked("the raw end"),
    marked("strip cut wrong"),
)
BOLT: Final = "bolt"
ON_HAND: Final = "on hand"
BOUGHT: Final = "newly bought"
LEFT: Final = "what is left"
_SHEETS: Final = {
    BOLT: marked("{cloth}, from the bolt"),
    ON_HAND: marked("{cloth}, on hand {size}"),
    BOUGHT: marked("{cloth}, newly bought"),
    LEFT: marked("{cloth}, what is left, {size}"),
}
_FORMS: Final = {"section": marked("section {label}"), "piece": marked("piece {label}")}


def told_cloth(name: str) -> str:
    """The name of cloth in hand as a person reads it; a letter that is written on it stays.

    >>> told_cloth("section 2"), told_cloth("cloth"), told_cloth("B1")
    ('section 2', 'cloth', 'B1')
    """
    if name in _NAMES:
        return told(name)
    kind, _, label = name.partition(" ")
    return told(_FORMS[kind], label=label) if kind in _FORMS else name


def told_sheet(cloth: str, called: str, size: str, number: int = 1, count: int = 1) -> str:
    """A sheet of a cloth as a person reads it: which one, and of what `size`.

    `called` is `BOLT`, `ON_HAND`, `BOUGHT`, `LEFT`, or a name of cloth in hand. `number` is
    its own among `count` equal ones on hand.

    >>> told_sheet("linen", BOLT, "54 × 36 in"), told_sheet("linen", "section 2", "9 × 4 in")
    ('linen, from the bolt', 'linen, section 2, 9 × 4 in')
    """
    if called == ON_HAND and count > 1:
        return told(
            "{cloth}, on hand {size}, piece {number} of {count}",
            cloth=cloth,
            size=size,
            number=number,
            count=count,
        )
    if called in _SHEETS:
        return told(_SHEETS[called], cloth=cloth, size=size)
    return f"{cloth}, {told_cloth(called)}, {size}"
