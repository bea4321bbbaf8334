"""A field for a length, over the exact parser.

It takes whatever the parser takes and shows the length exactly, never rounded,
so that a value that was only looked at cannot change. No key is ever swallowed:
what cannot be read stays where it was typed, and the form says what is wrong.
"""

from __future__ import annotations

from fractions import Fraction

from PySide6.QtCore import Property, Qt, Signal
from PySide6.QtGui import QKeyEvent, QValidator, QWheelEvent
from PySide6.QtWidgets import QAbstractSpinBox, QSizePolicy, QWidget

from app.window.field import Field, with_unit
from app.window.line_edit import LineEdit
from core.language import told
from core.lengths import Inches, LengthError, Units, exact_text, parse


class LengthEditor(QAbstractSpinBox):
    """Emits `edited(value, stepped)`: the text to be read as a length, or None if empty.

    Up and down step from the exact value. Esc brings the last good value back, and
    `restored` tells.
    """

    edited = Signal(object, bool)
    restored = Signal()

    def __init__(self, field: Field, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._optional = bool(field.none_words)
        self._steps = field.steps
        self._value: str | None = None
        self._units = Units.INCHES
        # Not the line's own "modified": that is lost when Enter is pressed.
        self._touched = False
        self._line = LineEdit(self)
        self.setLineEdit(self._line)
        self._line.setPlaceholderText(told(field.none_words))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setKeyboardTracking(False)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self._line.textEdited.connect(self._touch)
        self.editingFinished.connect(self.commit)

    def setAccessibleName(self, name: str) -> None:  # noqa: N802 - Qt's name
        super().setAccessibleName(name)
        self._line.setAccessibleName(name)

    def setAccessibleDescription(self, description: str) -> None:  # noqa: N802 - Qt's name
        super().setAccessibleDescription(description)
        self._line.setAccessibleDescription(description)

    def _touch(self) -> None:
        self._touched = True

    def show_value(self, value: str | None, units: Units) -> None:
        """Show the file's text for the length, with its unit."""
        self._value, self._units = value, units
        self._line.setText(with_unit(value, units.value))
        self._touched = False
        if self.hasFocus():
            self.selectAll()

    def commit(self) -> None:
        """Hand over what was typed, if anything was."""
        if self._touched:
            text = self._line.text().strip()
            self.edited.emit(text if text or not self._optional else None, False)

    def problem(self) -> str:
        """Why the text as typed is no length, or nothing; for a hint while typing."""
        try:
            self._length()
        except LengthError as error:
            return str(error)
        return ""

    def _length(self) -> Inches | None:
        text = self._line.text().strip()
        return None if not text and self._optional else parse(text, self._units)

    def _number(self) -> float:
        """The length in the project's units, 0 for none: what Qt tells a screen reader."""
        try:
            length = self._length()
        except LengthError:
            return 0.0
        return float((length or Fraction(0)) / parse(f"1 {self._units.value}"))

    value = Property(float, _number)

    def validate(self, text: str, position: int) -> tuple[QValidator.State, str, int]:
        """Nothing is invalid: text that cannot be read yet may be on its way."""
        return QValidator.State.Acceptable, text, position

    def stepEnabled(self) -> QAbstractSpinBox.StepEnabledFlag:  # noqa: N802 - Qt's name
        both = QAbstractSpinBox.StepEnabledFlag
        return both.StepUpEnabled | both.StepDownEnabled

    def stepBy(self, steps: int) -> None:  # noqa: N802 - Qt's name
        """Step from what is written, or from the last good value; never to 0 or below."""
        try:
            start = self._length()
        except LengthError:
            start = parse(self._value, self._units) if self._value else None
        step = parse(self._steps[0 if self._units is Units.INCHES else 1])
        reached = (start or Fraction(0)) + steps * step
        if reached <= 0:
            return
        text = exact_text(reached, self._units)
        self._line.setText(with_unit(text, self._units.value))
        self.selectAll()
        self.edited.emit(text, True)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        if event.key() == Qt.Key.Key_Escape and self._touched:
            self.show_value(self._value, self._units)
            self.restored.emit()
            return
        super().keyPressEvent(event)

    def wheelEvent(self, event: QWheelEvent) -> None:  # noqa: N802 - Qt's name
        """The wheel scrolls the panel, unless the field is being edited."""
        if self.hasFocus():
            super().wheelEvent(event)
        else:
            event.ignore()
