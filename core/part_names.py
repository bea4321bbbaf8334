"""The names of a plan's parts, told in the language spoken.

A part has one name that the program goes by, in files and between its rooms
("border 1 side, half"), and that is English. It is told where it is shown. Each
text below is a form of such names, made where the part is worked out, in
`core.finish`; what stands in its braces is a number, a fabric's own name, or
another part.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Final

from core.language import marked, told

_FORMS: Final = (
    marked("backing panel"),
    marked("first backing panel"),
    marked("second backing panel"),
    marked("narrow backing panel"),
    marked("backing short strip"),
    marked("backing accent strip"),
    marked("sleeve"),
    marked("label"),
    marked("binding"),
    marked("binding, back cloth"),
    marked("binding segment, {fabric}"),
    marked("binding, {fabric}"),
    marked("bias square for the {part}"),
    marked("bias cloth for the {part}"),
    marked("bias piece {number} for the {part}"),
    marked("facing"),
    marked("facing side"),
    marked("facing top and bottom"),
    marked("facing {number}"),
    marked("facing, {fabric}"),
    marked("flange"),
    marked("flange side"),
    marked("flange top and bottom"),
    marked("flange {number}"),
    marked("piping"),
    marked("piping side"),
    marked("piping top and bottom"),
    marked("piping {number}"),
    marked("border {number} side"),
    marked("border {number} top and bottom"),
    marked("border {number} left"),
    marked("border {number} top"),
    marked("border {number} right"),
    marked("border {number} bottom"),
    marked("border {number} corner"),
    marked("border {number} strip"),
    marked("border {number} strip {place}"),
    marked("{border}, half"),
    marked("{border}, part"),
    marked("{border}, long part"),
    marked("{border}, middle part"),
    marked("{border}, short part"),
)
_VALUES: Final = {
    "number": r"\d+",
    "place": r"\d+",
    "fabric": r".+",
    "part": r".+",
    "border": r"border \d+ .+",
}
_PARTS: Final = ("part", "border")


def _pattern(form: str) -> re.Pattern[str]:
    found = re.escape(form)
    for value, values in _VALUES.items():
        found = found.replace(rf"\{{{value}\}}", f"(?P<{value}>{values})")
    return re.compile(found, re.DOTALL)


_PATTERNS: Final = tuple((form, _pattern(form)) for form in _FORMS)


def told_part(name: str) -> str:
    """The name of a plan's part as a person reads it; one of no known form as it is.

    >>> told_part("border 1 side, half"), told_part("bias square for the binding, {plum}")
    ('border 1 side, half', 'bias square for the binding, {plum}')
    """
    form, values = _form(name)
    if form is None:
        return name
    return told(form, **{key: told_part(v) if key in _PARTS else v for key, v in values.items()})


@lru_cache(maxsize=1024)
def _form(name: str) -> tuple[str | None, dict[str, str]]:
    """The form of a name, None if it is of none, and its values; kept, since it has no language."""
    for form, pattern in _PATTERNS:
        found = pattern.fullmatch(name)
        if found is not None:
            return form, found.groupdict()
    return None, {}
