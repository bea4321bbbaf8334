"""A form: the fields of one part, each with a place for what is wrong with it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import cast

from PySide6.QtCore import QEvent, Qt, QTimer, Signal
from PySide6.QtGui import QFontMetrics
from PySide6.QtWidgets import QFormLayout, QLabel, QVBoxLayout, QWidget

from app.window.editors import Editor, FabricEditor, PieceEditor, SheetEditor, editor_for
from app.window.fabrics_editor import FabricsEditor
from app.window.field import Field, FileForm, Kind, value_at
from app.window.fields import INNER, PARTS
from app.window.furniture import Sentence
from app.window.length_editor import LengthEditor
from app.window.offers import Laid, Offers
from core.language import told
from core.lengths import Units

HINT_PAUSE_MS = 700
LEAST_LETTERS = 20  # of average width, in a field: most choices are read whole
LINE_AIR = 10  # pixels, above and below the letters of a field
MOST_LABEL = 170  # pixels; longer labels stand above their fields, else the panel scrolls sideways


def widest_label(metrics: QFontMetrics) -> int:
    """How wide the widest is that stands beside a field, of all parts."""
    fields = (field for kind in (*PARTS, *INNER) for field in kind.fields)
    labels = (field.called for field in fields if field.kind is not Kind.FLAG)
    return max(map(metrics.horizontalAdvance, labels))


class FieldRow(QWidget):
    """One editor, and under it a sentence when its value cannot be used.

    While a length is being typed the sentence waits for a pause, and goes as
    soon as the text can be read again. `untaken` is set while the editor holds
    text that the project refused.
    """

    edited = Signal(object, bool)

    def __init__(self, field: Field) -> None:
        super().__init__()
        self.field = field
        self.value: object = None
        self.untaken = False
        self.editor: Editor = editor_for(field)
        self.problem = Sentence("problem")
        self.note = Sentence("note")
        widget = cast(QWidget, self.editor)
        widget.setToolTip(f"<p>{told(field.help)}</p>")
        widget.setAccessibleDescription(told(field.help))
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(2)
        layout.addWidget(widget)
        layout.addWidget(self.problem)
        layout.addWidget(self.note)
        # Else Qt stops at the row's own place in the chain, but lets nobody move it there.
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setFocusProxy(widget)
        self.editor.edited.connect(self.edited)
        self._watch_typing()
        self._take_room()

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 - Qt's name
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange and hasattr(self, "editor"):
            self._take_room()

    def _take_room(self) -> None:
        """Room for a line of some letters, whatever their size."""
        widget, metrics = cast(QWidget, self.editor), self.fontMetrics()
        widget.setMinimumHeight(metrics.height() + LINE_AIR)
        if self.field.kind not in (Kind.FLAG, Kind.CHOICE):  # which are as wide as their words
            widget.setMinimumWidth(LEAST_LETTERS * metrics.averageCharWidth())

    def _watch_typing(self) -> None:
        self._pause = QTimer(self)
        self._pause.setSingleShot(True)
        self._pause.setInterval(HINT_PAUSE_MS)
        self._pause.timeout.connect(self._hint)
        if isinstance(self.editor, LengthEditor):
            self.editor.lineEdit().textEdited.connect(self._typed)
            self.editor.restored.connect(self._hint)

    def _typed(self) -> None:
        if self.problem.isVisibleTo(self):
            self._hint()
        else:
            self._pause.start()

    def _hint(self) -> None:
        if isinstance(self.editor, LengthEditor):
            self.tell(self.editor.problem())

    def show_value(self, value: object, units: Units, *, anew: bool = True) -> None:
        """Show the project's value; text that was refused stays while that is unchanged."""
        refused = self.problem.isVisibleTo(self) and value == self.value
        self.value = value
        if anew or not refused:
            self.editor.show_value(value, units)
            self.tell("")

    def explain(self, note: str) -> None:
        """Say what the plan makes of the value, unless something is wrong with it."""
        self.note.say(note)
        self.note.setHidden(not note or bool(self.problem.text()))

    def refuse(self, sentence: str) -> None:
        """Keep what was typed, and say why the project did not take it."""
        self.tell(sentence)
        self.untaken = True

    def tell(self, sentence: str) -> None:
        """Say what is wrong, to the eye and to a screen reader; "" for nothing."""
        self.untaken = self.untaken and bool(sentence)
        self._pause.stop()
        self.problem.say(sentence)
        self.explain(self.note.text())
        widget = cast(QWidget, self.editor)
        widget.setAccessibleDescription(sentence or told(self.field.help))


class PartForm(QWidget):
    """The fields of the part at `prefix`, told apart into common and rare ones.

    Emits `edited(field, value, stepped)`.
    """

    edited = Signal(object, object, bool)

    def __init__(self, fields: Sequence[Field]) -> None:
        super().__init__()
        self.rows: dict[str, FieldRow] = {}
        self._form = QFormLayout(self)
        self._form.setContentsMargins(0, 0, 0, 0)
        self._form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.ExpandingFieldsGrow)
        self._form.setLabelAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
        self._form.setHorizontalSpacing(8)
        self._labels: list[QLabel] = []
        for field in fields:
            self._add(field)
        self._settle()

    def _add(self, field: Field) -> None:
        row = FieldRow(field)
        row.edited.connect(self._passer(field))
        self.rows[field.key] = row
        if field.kind is Kind.FLAG:
            self._form.addRow("", row)
            return
        label = QLabel(field.called)
        label.setToolTip(f"<p>{told(field.help)}</p>")
        label.setAccessibleDescription(told(field.help))  # else the tool tip is read, marks and all
        label.setBuddy(cast(QWidget, row.editor))
        self._labels.append(label)
        self._form.addRow(label, row)

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 - Qt's name
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange and hasattr(self, "_labels"):
            self._settle()

    def _settle(self) -> None:
        """Labels beside their fields, all as wide as the widest; above them in large letters."""
        metrics = self.fontMetrics()
        widest = widest_label(metrics)
        above = widest > MOST_LABEL
        policies = QFormLayout.RowWrapPolicy
        self._form.setRowWrapPolicy(policies.WrapAllRows if above else policies.DontWrapRows)
        for label in self._labels:
            label.setWordWrap(not above)  # above a field there is room
            label.setMinimumWidth(0 if above else widest)
            label.setMinimumHeight(0 if above else metrics.height() + LINE_AIR)

    def _passer(self, field: Field) -> Callable[[object, bool], None]:
        def passed(value: object, stepped: bool) -> None:
            self.edited.emit(field, value, stepped)

        return passed

    def refresh(self, values: FileForm, units: Units, offers: Offers, *, anew: bool) -> None:
        """Show a part's values; `anew` also clears text that was refused."""
        for key, row in self.rows.items():
            if isinstance(row.editor, FabricEditor | FabricsEditor):
                row.editor.offer_fabrics(offers.fabrics)
            elif isinstance(row.editor, SheetEditor):
                row.editor.offer(offers.sheets)
            row.show_value(value_at(values, key), units, anew=anew)
            if condition := row.field.only_if:
                matters = value_at(values, condition[0]) in condition[1:]
                self._form.setRowVisible(row, matters)

    def call(self, part: str) -> None:
        """Let every field be heard with the part's own name: there may be several of a kind."""
        for row in self.rows.values():
            cast(QWidget, row.editor).setAccessibleName(f"{part}: {row.field.called}")

    def offer_laid(self, laid: tuple[Laid, ...]) -> None:
        """Put up for choice what is cut from the part's fabric."""
        for row in self.rows.values():
            if isinstance(row.editor, PieceEditor):
                row.editor.offer_laid(laid)

    def commit(self) -> None:
        """Hand over whatever is still being typed."""
        for row in self.rows.values():
            row.editor.commit()
