"""What is compared: the choice, which border or fabric it is about, and its values."""

from __future__ import annotations

import re
from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QLabel, QLineEdit

from app.window.furniture import RowOrColumn
from core.compare.choices import Choice, usual_place, usual_values
from core.language import told
from core.quilt import Project

ROOM = 70  # letters, for the choice and its values beside each other
_BETWEEN = re.compile(r"\s*;\s*|,\s+")


class ChoiceBar(RowOrColumn):
    """Emits `asked` when another comparison is wanted. `values` shows the line of values."""

    asked = Signal()

    def __init__(self, choices: Sequence[Choice], *, values: bool) -> None:
        super().__init__(ROOM)
        self._choices = tuple(choices)
        self._project: Project | None = None
        self.choice_box = QComboBox()
        self.choice_box.setAccessibleName(told("What to vary"))
        self.choice_box.addItems([choice.said for choice in choices])
        self.place_box = QComboBox()
        self.place_box.setAccessibleName(told("Which one"))
        self.values_line = QLineEdit()
        self.values_line.setAccessibleName(told("Values to compare"))
        self.values_line.setToolTip(told("Two to six values with ; between them"))
        row = QHBoxLayout()
        label = QLabel(told("&Vary"))
        label.setBuddy(self.choice_box)
        for widget in (label, self.choice_box, self.place_box):
            row.addWidget(widget)
        self.box.addLayout(row)
        if values:
            self.box.addWidget(self.values_line, 1)
        else:
            row.addStretch(1)
        self.choice_box.activated.connect(self._other_choice)
        self.place_box.activated.connect(lambda: self.asked.emit())
        self.values_line.editingFinished.connect(self._other_values)
        self._last_values = ""

    @property
    def choice(self) -> Choice:
        return self._choices[self.choice_box.currentIndex()]

    @property
    def place(self) -> int | None:
        """Which border or fabric; None where the choice is about one part alone."""
        return self.place_box.currentIndex() if self.place_box.count() else None

    @property
    def values(self) -> tuple[str, ...]:
        """The values as they were typed, without what is empty."""
        parts = _BETWEEN.split(self.values_line.text().strip())
        return tuple(self.choice.value_meant(part) for part in parts if part)

    def show_project(self, project: Project) -> None:
        """Follow another project; the choice and its values stay."""
        first, before = self._project is None, self._project
        self._project = project
        units_changed = before is not None and before.units is not project.units
        if first or units_changed:
            self._usual(project)
        self._places(project)

    def _usual(self, project: Project) -> None:
        usual = usual_values(project, self.choice)
        self._last_values = "; ".join(map(self.choice.value_said, usual))
        self.values_line.setText(self._last_values)
        self.values_line.setPlaceholderText(self._last_values)

    def _places(self, project: Project) -> None:
        """The borders or fabrics to choose from, the usual one first chosen."""
        names: list[str] = []
        if self.choice.part == "borders":
            names = [
                told("border {number}", number=place + 1) for place in range(len(project.borders))
            ]
        elif self.choice.part == "fabrics":
            names = [fabric.name for fabric in project.fabrics]
        shown = [self.place_box.itemText(place) for place in range(self.place_box.count())]
        if names != shown:
            self.place_box.clear()
            self.place_box.addItems(names)
            if names:
                self.place_box.setCurrentIndex(usual_place(project, self.choice))
        self.place_box.setVisible(bool(names))

    def _other_choice(self) -> None:
        if self._project is not None:
            self._usual(self._project)
            self._places(self._project)
        self.asked.emit()

    def _other_values(self) -> None:
        if self.values_line.text() != self._last_values:
            self._last_values = self.values_line.text()
            self.asked.emit()
