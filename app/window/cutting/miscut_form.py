"""What went wrong, said in a form: cloth of another size, a spoilt piece, a wrong width."""

from __future__ import annotations

from collections.abc import Iterator

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QCheckBox,
    QComboBox,
    QFormLayout,
    QHBoxLayout,
    QLabel,
    QRadioButton,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from app.window.cutting.pages import BigButton, Words, shorten
from app.window.field import with_unit
from app.window.line_edit import LineEdit
from app.wording import upper_first
from core.cloth_names import told_cloth
from core.cutting.cutting import ClothCutting
from core.cutting.miscut import Miscut, OtherSize, Spoilt, WrongWidth, may_be_wrong
from core.cutting.order import Marked, Order
from core.cutting.progress import Bit, OnTable, on_table
from core.cutting.words import sheet_words
from core.language import marked, told
from core.lay.lay import THE_BOLT
from core.lengths import Inches, LengthError, Units, exact_text, parse, show_size, typeset
from core.part_names import told_part
from core.steps import CLOTH

TITLE = marked("What happened?")
AGAIN = marked(
    "The rest is then laid again on what is left. Nothing changes before you have seen "
    "the new cut order."
)


class MiscutForm(QWidget):
    """Emits `said(Miscut)` for what happened, `given_up` if nothing did."""

    said = Signal(object)
    given_up = Signal()

    def __init__(self, units: Units) -> None:
        super().__init__()
        self._units = units
        self._table = OnTable((), ())
        self.title, self.note, self.problem = Words("headline"), Words(), Words("problem")
        self.other_size = QRadioButton(told("Cloth in hand &measures otherwise"))
        self.spoilt = QRadioButton(told("A piece is &spoilt or lost"))
        self.wrong_width = QRadioButton(told("What was just cut off has the wrong &width"))
        self.bits, self.pieces = QComboBox(), QComboBox()
        self.across, self.along, self.measure = LineEdit(), LineEdit(), LineEdit()
        self.keep = QCheckBox(told("It can be cut further"))
        self.lay = BigButton(told("&Lay the rest again (Enter)"))
        self.cancel = BigButton(told("Nothing happened (Esc)"))
        self._choices = QButtonGroup(self)
        self._lay_out()
        self._listen()

    def _lay_out(self) -> None:
        form = QFormLayout()
        form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.ExpandingFieldsGrow)
        for box in (self.bits, self.pieces):
            shorten(box)
            box.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        for line in (self.across, self.along, self.measure):
            line.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        self.title.say(told(TITLE))
        self.note.say(told(AGAIN))
        column.addWidget(self.title)
        column.addLayout(form)
        form.addRow(self.other_size)
        form.addRow(_under(told("Which &cloth"), self.bits), self.bits)
        form.addRow(_under(told("&Across, really"), self.across), self.across)
        form.addRow(_under(told("Alon&g, really"), self.along), self.along)
        form.addRow(self.spoilt)
        form.addRow(_under(told("Which &piece"), self.pieces), self.pieces)
        form.addRow(self.wrong_width)
        form.addRow(_under(told("Really cu&t at"), self.measure), self.measure)
        form.addRow("", self.keep)
        column.addWidget(self.problem)
        column.addWidget(self.note)
        column.addStretch(1)
        row = QHBoxLayout()
        row.addWidget(self.cancel)
        row.addWidget(self.lay, 1)
        column.addLayout(row)

    def _listen(self) -> None:
        for place, radio in enumerate((self.other_size, self.spoilt, self.wrong_width)):
            self._choices.addButton(radio, place)
            radio.toggled.connect(self._follow)
        self.bits.currentIndexChanged.connect(self._show_size)
        self.lay.clicked.connect(self._say)
        self.cancel.clicked.connect(self.given_up)

    def ask(self, cloth: ClothCutting) -> None:
        """Ask about what lies on the table now; what was just cut is likeliest to be wrong."""
        order, done = cloth.order, cloth.cuts_done
        self._table = on_table(order, done)
        self._fill(self.bits, (self._bit(order, bit) for bit in self._table.hand))
        if (cut := cloth.next_cut) is not None:
            names = [(bit.sheet, bit.name) for bit in self._table.hand]
            self.bits.setCurrentIndex(names.index((cut.step.sheet, cut.step.source)))
        newest = list(self._table.pieces)[::-1]
        self._fill(self.pieces, (self._piece(mark) for mark in newest))
        self._newest = newest
        wrong = may_be_wrong(order, done)
        if wrong:
            self.measure.setText(self._text(order.cuts[done - 1].step.measure))
        self.keep.setChecked(True)
        can = (bool(self._table.hand), bool(newest), wrong)
        radios = (self.other_size, self.spoilt, self.wrong_width)
        for radio, possible in zip(radios, can, strict=True):
            radio.setEnabled(possible)
        likeliest = next(r for r in radios[::-1] if r.isEnabled())
        likeliest.setChecked(True)
        likeliest.setFocus()
        self.lay.setDefault(True)
        self.lay.setEnabled(True)
        self.tell("")
        self._show_size()
        self._follow()

    @staticmethod
    def _fill(box: QComboBox, texts: Iterator[str]) -> None:
        box.clear()
        box.addItems([typeset(text) for text in texts])

    def _bit(self, order: Order, bit: Bit) -> str:
        """A whole sheet by its title, which has its size where it is no bolt."""
        if bit.name == CLOTH and bit.sheet != THE_BOLT:
            return sheet_words(order, bit.sheet, self._units)
        size = show_size(bit.rect.across, bit.rect.along, self._units)
        return told("{cloth}, said to be {size}", cloth=told_cloth(bit.name), size=size)

    def _piece(self, mark: Marked) -> str:
        rect = mark.placed.rect
        size = show_size(rect.across, rect.along, self._units)
        return f"{mark.label}, {told_part(mark.placed.name)}, {size}"

    def _text(self, length: Inches) -> str:
        return with_unit(exact_text(length, self._units), self._units.value)

    def _show_size(self) -> None:
        """The size that the chosen cloth is said to have, to be mended."""
        place = self.bits.currentIndex()
        if 0 <= place < len(self._table.hand):
            rect = self._table.hand[place].rect
            self.across.setText(self._text(rect.across))
            self.along.setText(self._text(rect.along))

    def _follow(self) -> None:
        """Only the fields of what happened can be filled in."""
        for radio, fields in (
            (self.other_size, (self.bits, self.across, self.along)),
            (self.spoilt, (self.pieces,)),
            (self.wrong_width, (self.measure, self.keep)),
        ):
            for field in fields:
                field.setEnabled(radio.isChecked())

    def _say(self) -> None:
        try:
            miscut = self._miscut()
        except LengthError as error:
            self.tell(str(error))
            return
        self.tell("")
        self.lay.setEnabled(False)
        self.said.emit(miscut)

    def _miscut(self) -> Miscut:
        """What happened; raises `LengthError` for a length that cannot be read."""
        if self.spoilt.isChecked():
            return Spoilt(self._newest[self.pieces.currentIndex()].label)
        if self.wrong_width.isChecked():
            return WrongWidth(self._length(self.measure), self.keep.isChecked())
        bit = self.bits.currentIndex()
        return OtherSize(bit, self._length(self.across), self._length(self.along))

    def _length(self, line: LineEdit) -> Inches:
        try:
            return parse(line.text(), self._units)
        except LengthError:
            line.setFocus()
            line.selectAll()
            raise

    def tell(self, problem: str) -> None:
        """Say why it cannot be so; "" for no reason."""
        self.problem.say(upper_first(f"{problem}.") if problem else "")
        self.note.say(told(AGAIN))
        self.lay.setEnabled(True)

    def wait(self) -> None:
        """Say that it takes its time."""
        self.note.say(told("Laying the rest again…"))


def _under(words: str, field: QWidget) -> QLabel:
    """The label of a field that belongs to the choice above it."""
    label = QLabel(words)
    label.setObjectName("under")
    label.setBuddy(field)
    return label
