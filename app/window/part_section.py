"""A part of the project as a section that folds: its heading, its menu, its forms."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QMenu,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from app.window.fields import (
    FABRIC,
    ON_HAND,
    Field,
    FileForm,
    PartKind,
    part_name,
    summary,
    value_at,
)
from app.window.fold_heading import FoldHeading
from app.window.part_form import FieldRow, PartForm
from core.lengths import Units

Verbs = Sequence[tuple[str, str]]  # (what is asked, the words in the menu)
REMOVE: Verbs = (("remove", "Remove"),)
FABRIC_VERBS: Verbs = (("up", "Move up"), ("down", "Move down"), *REMOVE)
BORDER_VERBS: Verbs = (("up", "Move inwards"), ("down", "Move outwards"), *REMOVE)


class PartSection(QFrame):
    """One part. Emits `edited(prefix, field, value, stepped)` and `asked(verb, prefix)`."""

    edited = Signal(str, object, object, bool)
    asked = Signal(str, str)

    def __init__(self, kind: PartKind, prefix: str, verbs: Verbs = ()) -> None:
        super().__init__()
        self.kind = kind
        self.prefix = prefix
        self.heading = FoldHeading()
        self.heading.setToolTip(f"<p>{kind.help}</p>")
        self.heading.toggled.connect(self._fold)
        self.body = QWidget(visible=False)
        self.problem = QLabel(wordWrap=True, visible=False)
        self.problem.setObjectName("problem")
        self._words = ("", "")
        self.common = self._form([field for field in kind.fields if not field.rare])
        self.rare = self._form([field for field in kind.fields if field.rare])
        self.more = QToolButton(text="More", checkable=True, autoRaise=True)
        self.more.setArrowType(Qt.ArrowType.RightArrow)
        self.more.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
        self.more.toggled.connect(self._show_more)
        self.on_hand = SectionList(ON_HAND, REMOVE) if kind is FABRIC else None
        self._lay_out(verbs)

    def _form(self, fields: Sequence[Field]) -> PartForm:
        form = PartForm(fields, self.kind.title)
        form.edited.connect(self._pass)
        return form

    def _lay_out(self, verbs: Verbs) -> None:
        top = QHBoxLayout()
        top.setSpacing(0)
        top.addWidget(self.heading, 1)
        if verbs:
            top.addWidget(self._menu_button(verbs))
        inside = QVBoxLayout(self.body)
        inside.setContentsMargins(12, 4, 12, 12)
        inside.setSpacing(8)
        inside.addWidget(self.problem)
        inside.addWidget(self.common)
        if self.rare.rows:
            inside.addWidget(self.more)
            inside.addWidget(self.rare)
        self.rare.setVisible(False)
        if self.on_hand is not None:
            self.on_hand.edited.connect(self.edited)
            self.on_hand.asked.connect(self.asked)
            inside.addWidget(self.on_hand)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(top)
        column.addWidget(self.body)

    def _menu_button(self, verbs: Verbs) -> QToolButton:
        self.menu = QMenu(self)
        for verb, words in verbs:
            self.menu.addAction(words).triggered.connect(self._asker(verb))
        button = QToolButton(text="⋯", autoRaise=True)
        button.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        button.setMenu(self.menu)
        button.setObjectName("part-menu")
        button.setAccessibleName(f"{self.kind.title}: move or remove")
        button.setToolTip("Move or remove")
        return button

    def _asker(self, verb: str) -> Callable[[], None]:
        return lambda: self.asked.emit(verb, self.prefix)

    def _pass(self, field: Field, value: object, stepped: bool) -> None:
        self.edited.emit(self.prefix, field, value, stepped)

    def _fold(self, opened: bool) -> None:
        self.body.setVisible(opened)

    def _show_more(self, shown: bool) -> None:
        self.rare.setVisible(shown)
        self.more.setText("Less" if shown else "More")
        self.more.setArrowType(Qt.ArrowType.DownArrow if shown else Qt.ArrowType.RightArrow)

    def refresh(self, form: FileForm, units: Units, *, anew: bool) -> None:
        """Show the project's values for this part."""
        values = value_at(form, self.prefix)
        fabrics = [fabric["name"] for fabric in form["fabrics"]]
        for fields in (self.common, self.rare):
            fields.refresh(values, units, fabrics, anew=anew)
        if self.on_hand is not None:
            self.on_hand.refresh(f"{self.prefix}.on_hand", form, units, anew=anew)
        title = values["name"] if self.kind is FABRIC else part_name(form, self.prefix)
        self._words = title, summary(self.kind, values, units.value)
        self.mark()

    def mark(self) -> None:
        """Let the heading tell whether something in here is to be mended."""
        problems = [self.problem, *(row.problem for row in self.rows().values())]
        trouble = any(problem.text() for problem in problems)
        self.heading.say(*self._words, trouble=trouble)

    def rows(self) -> dict[str, FieldRow]:
        """Every field of this part, and of the pieces on hand in it, by its path."""
        own = {**self.common.rows, **self.rare.rows}
        rows = {f"{self.prefix}.{key}": row for key, row in own.items()}
        for piece in self.on_hand.sections if self.on_hand is not None else ():
            rows.update(piece.rows())
        return rows

    def reveal(self, row: FieldRow | None = None) -> None:
        """Unfold so far that `row` can be seen."""
        self.heading.setChecked(True)
        if row in self.rare.rows.values():
            self.more.setChecked(True)
        for piece in self.on_hand.sections if self.on_hand is not None else ():
            if row in piece.rows().values():
                piece.reveal(row)

    def tell(self, sentence: str) -> None:
        """Say what is wrong with the part as a whole; "" for nothing."""
        self.problem.setText(sentence)
        self.problem.setVisible(bool(sentence))
        self.mark()


class SectionList(QWidget):
    """The parts of one kind, in order, with a button that adds one.

    Emits what its sections emit, and `asked("add", prefix)`.
    """

    edited = Signal(str, object, object, bool)
    asked = Signal(str, str)

    def __init__(self, kind: PartKind, verbs: Verbs) -> None:
        super().__init__()
        self.kind = kind
        self.sections: list[PartSection] = []
        self._verbs = verbs
        self._prefix = kind.key
        self.add = QToolButton(text=f"Add a {kind.title.lower()}", autoRaise=True)
        self.add.clicked.connect(self._add)
        top = QHBoxLayout()
        title = QLabel(kind.plural)
        title.setObjectName("group")
        top.addWidget(title, 1)
        top.addWidget(self.add)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)
        self._column.addLayout(top)

    def _add(self) -> None:
        self.asked.emit("add", self._prefix)

    def refresh(self, prefix: str, form: FileForm, units: Units, *, anew: bool) -> None:
        """Show as many sections as the project has parts here."""
        self._prefix = prefix
        wanted = len(value_at(form, prefix))
        while len(self.sections) > wanted:
            self._drop(self.sections[-1])
        while len(self.sections) < wanted:
            self._append(f"{prefix}[{len(self.sections)}]")
        for i, section in enumerate(self.sections):
            section.prefix = f"{prefix}[{i}]"
            section.refresh(form, units, anew=anew)

    def _append(self, prefix: str) -> None:
        section = PartSection(self.kind, prefix, self._verbs)
        section.edited.connect(self.edited)
        section.asked.connect(self.asked)
        self.sections.append(section)
        self._column.addWidget(section)

    def _drop(self, section: PartSection) -> None:
        self.sections.remove(section)
        section.hide()
        section.deleteLater()
