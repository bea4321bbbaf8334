"""All parts of a project in the window's order, and what each is called."""

from __future__ import annotations

from app.window.field import Called, FileForm, value_at
from app.window.fields_binding import BINDING
from app.window.fields_border import BORDER
from app.window.fields_cloth import FABRIC, QUILT
from app.window.fields_edge import OUTLINE
from app.window.fields_layers import BACKING, BATTING
from app.window.fields_measured import MEASURED, SQUARING, TAKE_UP
from app.window.fields_on_back import LABEL, SLEEVE
from app.window.fields_table import TABLE

# The first three are always there; the rest may be absent.
PARTS = (
    QUILT,
    FABRIC,
    BORDER,
    MEASURED,
    TAKE_UP,
    SQUARING,
    OUTLINE,
    BACKING,
    BATTING,
    BINDING,
    SLEEVE,
    LABEL,
    TABLE,
)
INNER = tuple(inner for kind in PARTS for inner in kind.inner)
SINGLE_PARTS = PARTS[3:]


def part_name(form: FileForm, prefix: str) -> Called:
    """A part, told, as a person calls it: "Border 2", "Fabric plum", "Piece on hand 1".

    >>> part_name({"borders": [{}, {}]}, "borders[1]")
    'Border 2'
    >>> part_name({}, "fabrics")
    'Fabric'
    """
    key, _, index = prefix.rpartition(".")[2].partition("[")
    kind = next(kind for kind in (*PARTS, *INNER) if kind.key == key)
    if kind is FABRIC and index:
        return Called(f"{kind.called} {value_at(form, prefix)['name']}")
    return Called(f"{kind.called} {int(index[:-1]) + 1}") if index else kind.called
