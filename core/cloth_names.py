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
