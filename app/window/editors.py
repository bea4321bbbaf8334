"""The other fields: text, choices, ticks and counts, all with one interface.

Each emits `edited(value, stepped)` with a value in the file's JSON form, and
shows what it is told to. What is right is for the project file's reader to say.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Protocol, cast

from PySide6.QtCore import Qt, Signal, SignalInstance
from PySide6.QtGui import QPaintEvent, QWheelEvent
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QSizePolicy,
    QStyle,
    QStyleOptionComboBox,
    QStylePainter,
    QWidget,
)

from app.window.cloth_editors import ColourEditor, PhotoEditor
from app.window.fabrics_editor import FabricsEditor
from app.window.field import Field, Kind
from app.window.length_editor import LengthEditor
from app.window.line_edit import LineEdit
from app.window.offers import Laid
from core.language import told
from core.lengths import Units
from core.numerals import told_to_edit
from core.part_names import told_part

LONGEST_COUNT = 20  # digits; what is longer is refused as well, and Python reads no thousands
LEAST_OF_A_NAME = 8  # letters that are seen of it


class Editor(Protocol):
    """What a form asks of every editor; each is a widget as well."""

    edited: SignalInstance

    def show_value(self, value: object, units: Units) -> None: ...
    def commit(self) -> None: ...


def editor_for(field: Field) -> Editor:
    """A fresh editor for the field's kind."""
    match field.kind:
        case Kind.LENGTH:
            made: QWidget = LengthEditor(field)
        case Kind.TEXT | Kind.MONEY | Kind.SHARE | Kind.COUNT:
            made = TextEditor(field)
        case Kind.PIECE | Kind.LAID:
            made = PieceEditor(field)
        case Kind.FLAG:
            made = FlagEditor(field)
        case Kind.CHOICE:
            made = ChoiceEditor([(value, told(words)) for value, words in field.choices])
        case Kind.FABRIC:
            made = FabricEditor(field)
        case Kind.SHEET:
            made = SheetEditor()
        case Kind.FABRICS:
            made = FabricsEditor()
        case Kind.POINTS:
            made = PointsEditor(field)
        case Kind.COLOUR:
            made = ColourEditor(field)
        case Kind.PHOTO:
            made = PhotoEditor(field)
    return cast(Editor, made)


class TextEditor(LineEdit):
    """A line of text; a share gets its percent sign, a count is handed over as a number."""

    edited = Signal(object, bool)

    def __init__(self, field: Field) -> None:
        super().__init__()
        self._kind = field.kind
        self._optional = bool(field.none_words)
        self.setPlaceholderText(told(field.none_words))
        self.editingFinished.connect(self.commit)

    def show_value(self, value: str | int | None, units: Units) -> None:
        text = "" if value is None else str(value)
        self.setText(told_to_edit(text) if self._kind in (Kind.MONEY, Kind.SHARE) else text)
        self.setModified(False)

    def commit(self) -> None:
        """Hand over what was typed, if anything was."""
        if self.isModified():
            self.edited.emit(self._value(), False)

    def _value(self) -> str | int | None:
        text = self.text().strip()
        if self._optional and not text:
            return None
        if self._kind is Kind.SHARE and text[-1:].isdigit():
            return f"{text}%"
        if self._kind is Kind.COUNT and text.removeprefix("-").isdecimal():
            return int(text[:LONGEST_COUNT])
        return text


class PointsEditor(LineEdit):
    """Corners in one line: "0 × 0; 40 × 0; 20 × 30"."""

    edited = Signal(object, bool)

    def __init__(self, field: Field) -> None:
        super().__init__()
        self.setPlaceholderText(told(field.none_words))
        self.editingFinished.connect(self.commit)

    def show_value(self, value: list[list[str]], units: Units) -> None:
        corners = (" × ".join(map(told_to_edit, point)) for point in value)
        self.setText("; ".join(corners))
        self.setModified(False)

    def commit(self) -> None:
        """Hand over what was typed, if anything was, as lists of lengths."""
        if self.isModified():
            corners = [corner for corner in self.text().split(";") if corner.strip()]
            pairs = [[side.strip() for side in re.split("[×xX]", corner)] for corner in corners]
            self.edited.emit(pairs, False)


class FlagEditor(QCheckBox):
    """Yes or no; its words are the field's label."""

    edited = Signal(object, bool)

    def __init__(self, field: Field) -> None:
        super().__init__(field.called)
        self.clicked.connect(self._clicked)

    def show_value(self, value: bool, units: Units) -> None:
        self.setChecked(value)

    def commit(self) -> None:
        """A tick is handed over at once; nothing is left to do."""

    def _clicked(self, ticked: bool) -> None:
        self.edited.emit(ticked, False)


class ChoiceEditor(QComboBox):
    """One of a few values, in plain words."""

    edited = Signal(object, bool)

    def __init__(self, choices: Sequence[tuple[str | None, str]] = ()) -> None:
        super().__init__()
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        policies = QComboBox.SizeAdjustPolicy
        names = policies.AdjustToMinimumContentsLengthWithIcon  # they may be of any length
        self.setSizeAdjustPolicy(policies.AdjustToContents if choices else names)
        self.setMinimumContentsLength(0 if choices else LEAST_OF_A_NAME)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.offer(choices)
        self.activated.connect(self._activated)

    def offer(self, choices: Sequence[tuple[str | None, str]]) -> None:
        """Put these values up for choice, if they are not yet."""
        if [(self.itemData(i), self.itemText(i)) for i in range(self.count())] != list(choices):
            self.clear()
            for value, words in choices:
                self.addItem(words, value)

    def show_value(self, value: str | None, units: Units) -> None:
        self.setCurrentIndex(self.findData(value))

    def commit(self) -> None:
        """A choice is handed over at once; nothing is left to do."""

    def _activated(self, index: int) -> None:
        self.edited.emit(self.itemData(index), False)

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """What has no room ends in dots."""
        painter, option = QStylePainter(self), QStyleOptionComboBox()
        self.initStyleOption(option)
        controls = QStyle.ComplexControl.CC_ComboBox
        box = QStyle.SubControl.SC_ComboBoxEditField
        room = self.style().subControlRect(controls, option, box, self).width()
        end = Qt.TextElideMode.ElideRight
        option.currentText = self.fontMetrics().elidedText(self.currentText(), end, room)
        painter.drawComplexControl(controls, option)
        painter.drawControl(QStyle.ControlElement.CE_ComboBoxLabel, option)

    def showPopup(self) -> None:  # noqa: N802 - Qt's name
        """As wide as what is to be chosen."""
        self.view().setMinimumWidth(self.view().sizeHintForColumn(0))
        super().showPopup()

    def wheelEvent(self, event: QWheelEvent) -> None:  # noqa: N802 - Qt's name
        """The wheel scrolls the panel; a choice is not changed in passing."""
        event.ignore()


class SheetEditor(ChoiceEditor):
    """One of a fabric's cloths; one that is not on hand any more is shown as none."""


class PieceEditor(ChoiceEditor):
    """One of the parts that are cut from a fabric; one that is cut no more stays, to be seen."""

    def __init__(self, field: Field) -> None:
        super().__init__()
        self._none_words = told(field.none_words)
        self._joined = field.kind is Kind.LAID
        self._laid: tuple[Laid, ...] = ()
        self._value: str | None = None

    def offer_laid(self, laid: tuple[Laid, ...]) -> None:
        """Follow the plan's pieces, and its joined lengths where they may be chosen."""
        self._laid = laid
        self._follow()

    def show_value(self, value: str | None, units: Units) -> None:
        self._value = value
        self._follow()

    def _follow(self) -> None:
        choices: dict[str | None, str] = {None: self._none_words} if self._none_words else {}
        for one in self._laid:
            if self._joined or not one.joined:
                choices[one.name] = f"{one.letter}  {told_part(one.name)}"
        if self._value is not None:
            choices.setdefault(self._value, told_part(self._value))
        self.offer(list(choices.items()))
        self.setCurrentIndex(self.findData(self._value))


class FabricEditor(ChoiceEditor):
    """One of the project's fabrics, or none where the field allows it."""

    def __init__(self, field: Field) -> None:
        super().__init__()
        self._none_words = told(field.none_words)

    def offer_fabrics(self, names: Sequence[str]) -> None:
        """Follow the project's fabrics."""
        none: list[tuple[str | None, str]] = [(None, self._none_words)] if self._none_words else []
        self.offer(none + [(name, name) for name in names])
