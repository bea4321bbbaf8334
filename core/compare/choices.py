"""The choices that can be varied, and how one value of a choice becomes a project.

A value is text as a person writes it; it goes through the file's own reader
(`core.edit`), so that a column refuses what a file would be refused for.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from core.edit import put
from core.fabric import Grain
from core.language import marked, told
from core.lengths import LengthError, Units, exact_text, parse
from core.numerals import told_decimal
from core.quilt import Closing, Corners, Fold, Joins, Project, Seams
from core.refusal import Refusal


class Kind(StrEnum):
    """What the values of a choice are: lengths, words, or whole numbers."""

    LENGTH = "length"
    WORD = "word"
    COUNT = "count"


@dataclass(frozen=True, slots=True)
class Choice:
    """One choice: `key` of the `part` of the project file that it varies.

    The program goes by its `name` and by a value's text; a person reads what is `said`.
    """

    name: str
    part: str
    key: str
    kind: Kind

    @property
    def said(self) -> str:
        """What it is called."""
        return told(self.name)

    @property
    def words(self) -> tuple[str, ...]:
        """The words that are its values; none where they are lengths, counts or cloths."""
        return tuple(word.value for word in _WORDS.get(self.name, ()))

    def value_said(self, text: str) -> str:
        """A value as a person reads it.

        >>> STRIP_WIDTH.value_said("2 1/4 in"), choice_named("joins").value_said("diagonal")
        ('2 1/4 in', 'diagonal')
        """
        if text in self.words:
            return told(text)
        return told_decimal(text) if self.kind is Kind.LENGTH else text

    def value_meant(self, text: str) -> str:
        """The value that a person means by what it is called, or by its word in the file."""
        asked = text.strip().casefold()
        said = (word for word in self.words if self.value_said(word).casefold() == asked)
        return next(said, text)

    @property
    def listed(self) -> bool:
        """Whether the project has a list of such parts, so that one must be meant."""
        return self.part in ("borders", "fabrics")

    def path(self, place: int) -> str:
        """Where the choice stands in the file; `place` counts in a list from 0."""
        where = f"{self.part}[{place}]" if self.listed else self.part
        return f"{where}.{self.key}"


STRIP_WIDTH = Choice(marked("strip width"), "binding", "strip_width", Kind.LENGTH)
USABLE_WIDTH = Choice(marked("usable width"), "fabrics", "width", Kind.LENGTH)
CHOICES = (
    STRIP_WIDTH,
    Choice(marked("joins"), "binding", "joins", Kind.WORD),
    Choice(marked("closing"), "binding", "closing", Kind.WORD),
    Choice(marked("grain"), "binding", "grain", Kind.WORD),
    Choice(marked("fold"), "binding", "fold", Kind.WORD),
    Choice(marked("cloth"), "binding", "fabric", Kind.WORD),
    Choice(marked("border width"), "borders", "width", Kind.LENGTH),
    Choice(marked("border corners"), "borders", "corners", Kind.WORD),
    Choice(marked("border grain"), "borders", "grain", Kind.WORD),
    Choice(marked("border cloth"), "borders", "fabric", Kind.WORD),
    Choice(marked("backing seams"), "backing", "seams", Kind.WORD),
    Choice(marked("backing cloth"), "backing", "fabric", Kind.WORD),
    Choice(marked("overage"), "backing", "overage", Kind.LENGTH),
    USABLE_WIDTH,
    Choice(marked("sale unit"), "fabrics", "sale_unit", Kind.LENGTH),
    Choice(marked("copies"), "quilt", "copies", Kind.COUNT),
)


# What people choose among where a choice is a length: round in inches, round in metric.
_USUAL: Final[dict[str, tuple[tuple[str, ...], tuple[str, ...]]]] = {
    "strip width": (("2 in", "2 1/4 in", "2 1/2 in"), ("5 cm", "6 cm", "6.5 cm")),
    "border width": (("2 in", "3 in", "4 in"), ("5 cm", "8 cm", "10 cm")),
    "overage": (("2 in", "3 in", "4 in"), ("5 cm", "8 cm", "10 cm")),
    "usable width": (("40 in", "42 in", "43 in"), ("104 cm", "107 cm", "110 cm")),
    "sale unit": (("1/8 yd", "1/4 yd", "1/2 yd"), ("10 cm", "25 cm", "50 cm")),
}
_WORDS: Final[dict[str, type[StrEnum]]] = {
    "joins": Joins,
    "closing": Closing,
    "grain": Grain,
    "fold": Fold,
    "border corners": Corners,
    "border grain": Grain,
    "backing seams": Seams,
}
# What these words are called, in the order above.
_SAID: Final = (
    marked("diagonal"),
    marked("straight"),
    marked("angled"),
    marked("tucked"),
    marked("crosswise"),
    marked("lengthwise"),
    marked("either"),
    marked("bias"),
    marked("double"),
    marked("single"),
    marked("faced"),
    marked("butted"),
    marked("mitred"),
    marked("squares"),
    marked("pinwheel"),
    marked("round"),
    marked("auto"),
    marked("none"),
)


def usual_values(project: Project, choice: Choice) -> tuple[str, ...]:
    """The values to begin a comparison with, at most six."""
    if choice.kind is Kind.COUNT:
        return ("1", "2", "3")
    if choice.key == "fabric":
        return tuple(fabric.name for fabric in project.fabrics)[:6]
    if choice.words:
        return choice.words[:6]
    inches, metric = _USUAL[choice.name]
    return inches if project.units is Units.INCHES else metric


def choice_named(name: str) -> Choice:
    """The choice of that name ("strip width"); raises `Refusal`."""
    for choice in CHOICES:
        if choice.name == name:
            return choice
    known = ", ".join(choice.name for choice in CHOICES)
    sentence = told("no choice is called {name}; write one of {known}", name=name, known=known)
    raise Refusal("choice", sentence)


def usual_place(project: Project, choice: Choice) -> int:
    """Which of several parts is meant where none is named: the binding's cloth, else the first."""
    if choice.part != "fabrics" or project.binding is None:
        return 0
    return [fabric.name for fabric in project.fabrics].index(project.binding.fabric)


def require_part(project: Project, choice: Choice, place: int) -> None:
    """Refuse a choice about a part that the project does not have."""
    holder = getattr(project, choice.part)
    if holder is None or (choice.listed and not 0 <= place < len(holder)):
        raise Refusal(
            choice.path(place),
            told(
                "the project has no such part, so its {choice} cannot be varied; add it first",
                choice=choice.said,
            ),
        )


def with_value(project: Project, choice: Choice, place: int, text: str) -> Project:
    """The project with that value of the choice. Raises `Refusal`, naming the value."""
    require_part(project, choice, place)
    path = choice.path(place)
    if choice.kind is Kind.COUNT:
        return put(project, path, _count(path, text))
    if choice == USABLE_WIDTH:
        text = _bolt_width(project, place, text)
    return put(project, path, text.strip())


def _count(path: str, text: str) -> int:
    if not text.strip().isdecimal():
        raise Refusal(path, told('write a whole number, such as 2, not "{text}"', text=text))
    return int(text)


def _bolt_width(project: Project, place: int, text: str) -> str:
    """The width of fabric that leaves the usable width of `text`."""
    fabric = project.fabrics[place]
    try:
        usable = parse(text, project.units)
    except LengthError as error:
        raise Refusal(USABLE_WIDTH.path(place), str(error)) from None
    if usable == 0:
        raise Refusal(USABLE_WIDTH.path(place), told("this cannot be 0; write a length above 0"))
    width = (usable + 2 * fabric.selvage) / (1 - fabric.shrinkage_across)
    return exact_text(width, project.units)
