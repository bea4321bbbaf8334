"""A refusal: the one error that bad input ends in.

It is not a fault of the program. It names the field or part (`borders[1].width`)
and says in one plain sentence what is wrong and what to write instead.
"""

from __future__ import annotations

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
        shown = {name: show(length, units) for name, length in lengths.items()}
        self.path = path
        self.template = template
        self.lengths = lengths
        self.sentence = template.format(**shown) if lengths else template
        super().__init__(f"{path}: {self.sentence}" if path else self.sentence)

    def in_units(self, units: Units) -> Refusal:
        """The same refusal with its lengths in `units`."""
        return Refusal(self.path, self.template, units, **self.lengths)
