"""A refusal: the one error that bad input ends in.

It is not a fault of the program. It names the field or part (`borders[1].width`)
and says in one plain sentence what is wrong and what to write instead.
"""

from __future__ import annotations

from collections.abc import Callable

from core.lengths import Inches, Units, show


class Refusal(ValueError):
    """Input that cannot be used, as one sentence about one field.

    `lengths` fill the sentence's `{names}`, shown in the units asked for.

    >>> str(Refusal("quilt.width", "write a length above {least}", least=Inches(5, 2)))
    'quilt.width: write a length above 2 1/2 in'
    """

    def __init__(
        self, path: str, template: str, units: Units = Units.INCHES, **lengths: Inches
    ) -> None:
        self.path = _one_line(path)
        self.template = template
        self.units = units
        self.lengths = lengths
        self.sentence = _one_line(_filled(template, units, lengths))
        super().__init__(f"{self.path}: {self.sentence}" if path else self.sentence)

    def in_units(self, units: Units) -> Refusal:
        """The same refusal with its lengths in `units`."""
        return Refusal(self.path, self.template, units, **self.lengths)

    def __reduce__(self) -> tuple[Callable[..., Refusal], tuple[object, ...]]:
        """For pickling: an error is else made again of its one sentence."""
        return _again, (self.path, self.template, self.units, self.lengths)


def _again(path: str, template: str, units: Units, lengths: dict[str, Inches]) -> Refusal:
    return Refusal(path, template, units, **lengths)


def _filled(template: str, units: Units, lengths: dict[str, Inches]) -> str:
    """`template` with its lengths; other braces stay, since a fabric may be called "{plum}"."""
    for name, length in lengths.items():
        template = template.replace(f"{{{name}}}", show(length, units))
    return template


def _one_line(text: str) -> str:
    """`text` without line breaks and control characters, which a file's own words may hold.

    >>> _one_line("no fabric is called \\u0007plum\\ndots")
    'no fabric is called ·plum dots'
    """
    return "".join(sign if sign.isprintable() else "·" for sign in " ".join(text.split()))
