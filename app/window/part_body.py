"""What a part's section unfolds: its common fields, and its rare ones when asked for."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QSize, Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.window.field import Called, Field, FileForm, PartKind
from app.window.furniture import Sentence, call, quiet_button
from app.window.offers import Laid, Offers
from app.window.part_form import FieldRow, PartForm
from core.language import told
from core.lengths import Units


class PartBody(QWidget):
    """The fields of one part; `below` are put under them. Emits `edited(field, value, stepped)`."""

    edited = Signal(object, object, bool)

    def __init__(self, kind: PartKind, below: Sequence[QWidget]) -> None:
        super().__init__()
        self.problem = Sentence("problem")
        self._common = self._form(kind, [field for field in kind.fields if not field.rare])
        self._rare = self._form(kind, [field for field in kind.fields if field.rare])
        self._more = quiet_button(told("More"))
        self._more.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
        self._more.setObjectName("more")
        self._more.clicked.connect(self._toggle_more)
        column = QVBoxLayout(self)
        column.setContentsMargins(10, 4, 8, 12)
        column.setSpacing(8)
        column.addWidget(self.problem)
        column.addWidget(self._common)
        if self._rare.rows:
            column.addWidget(self._more)
            column.addWidget(self._rare)
        for widget in below:
            column.addWidget(widget)
        self.show_more(False)
        self._take_room()

    def _form(self, kind: PartKind, fields: Sequence[Field]) -> PartForm:
        form = PartForm(fields)
        form.edited.connect(self.edited)
        return form

    @property
    def rows(self) -> dict[str, FieldRow]:
        """Every field by its key within the part."""
        return {**self._common.rows, **self._rare.rows}

    def refresh(self, values: FileForm, units: Units, offers: Offers, anew: bool) -> None:
        """Show the part's values; `anew` also clears text that was refused."""
        for form in (self._common, self._rare):
            form.refresh(values, units, offers, anew=anew)
        rare = self._rare.rows.values()
        self._more.setHidden(all(row.isHidden() for row in rare))

    def call(self, part: Called) -> None:
        """Let the fields and the button be heard with the part's own name."""
        for form in (self._common, self._rare):
            form.call(part)
        call(self._more, told("More about the {part:small}", part=part))

    def offer_laid(self, laid: tuple[Laid, ...]) -> None:
        """Put up for choice what is cut from the part's fabric."""
        for form in (self._common, self._rare):
            form.offer_laid(laid)

    def show_more(self, shown: bool) -> None:
        """Show or fold away the rare fields."""
        self._rare.setVisible(shown)
        self._more.setText(told("Less") if shown else told("More"))
        self._more.setArrowType(Qt.ArrowType.DownArrow if shown else Qt.ArrowType.RightArrow)

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 - Qt's name
        """The arrow grows with the words."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange and hasattr(self, "_more"):
            self._take_room()

    def _take_room(self) -> None:
        high = self.fontMetrics().height()
        self._more.setIconSize(QSize(high, high))

    def _toggle_more(self) -> None:
        self.show_more(self._rare.isHidden())

    def reveal(self, row: FieldRow) -> None:
        """Show the rare fields if `row` is among them."""
        if row in self._rare.rows.values():
            self.show_more(True)
