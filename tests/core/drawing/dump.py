"""A drawing as text to read: a line a mark, in painting order, inches to two places."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from core.by_hand.sheets import sheets_of
from core.drawing.cloth import draw_sheet
from core.drawing.frame import Heading
from core.drawing.marks import Area, Drawing, Label, Line, Mark, Point
from core.drawing.quilt import draw_quilt
from core.plan import make_plan
from tests.core.demos import DEMOS, demo

GOLDEN = Path(__file__).resolve().parents[2] / "golden"


def dump(drawing: Drawing) -> str:
    head = f"{drawing.title}\n{_number(drawing.width)} × {_number(drawing.height)}\n\n"
    return head + "".join(f"{line}\n" for line in _lines(drawing))


def _lines(drawing: Drawing) -> Iterator[str]:
    for mark in drawing.marks:
        yield _line(mark)


def _line(mark: Mark) -> str:
    if isinstance(mark, Label):
        words = " | ".join(text.replace("\n", " / ") for text in mark.texts)
        room = f"{_number(mark.room[0])} × {_number(mark.room[1])}"
        return f"label {_role(mark)} at {_point(mark.centre)} in {room}: {words}"
    points = " ".join(map(_point, mark.points))
    return f"{'area' if isinstance(mark, Area) else 'line'}  {_role(mark)} {points}"


def _role(mark: Mark) -> str:
    key = "" if isinstance(mark, Line) else mark.key
    return f"{mark.role} [{key}]" if key else mark.role


def _point(point: Point) -> str:
    return f"{_number(point[0])},{_number(point[1])}"


def _number(value: float) -> str:
    return f"{value + 0.0:.2f}".rstrip("0").rstrip(".")


def golden_drawings() -> dict[str, str]:
    """The text of every drawing of the demo projects, by the name of its file."""
    texts: dict[str, str] = {}
    for name in DEMOS:
        plan = make_plan(demo(name))
        texts[f"{name}-quilt.txt"] = dump(draw_quilt(plan))
        for place, fabric in enumerate(plan.fabrics):
            for number, sheet in enumerate(sheets_of(fabric), start=1):
                drawing = draw_sheet(plan, place, sheet, Heading.RIGHT)
                fabric_name = fabric.fabric.name.replace(" ", "-")
                texts[f"{name}-{fabric_name}-{number}.txt"] = dump(drawing)
    return texts


def regold() -> list[str]:
    """Write the golden files anew; the names of those that are there now."""
    texts = golden_drawings()
    GOLDEN.mkdir(exist_ok=True)
    for old in GOLDEN.glob("*.txt"):
        if old.name not in texts:
            old.unlink()
    for name, text in texts.items():
        (GOLDEN / name).write_text(text, encoding="utf-8", newline="\n")
    return sorted(texts)
