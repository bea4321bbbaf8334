"""The left side: the project's parts, each a section with its fields.

The panel shows a document and turns what is typed into edits of it. What the
core refuses is said under the field; the document is then as it was.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QMenu,
    QScrollArea,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from app.window.document import Document
from app.window.fields import (
    BORDER,
    FABRIC,
    QUILT,
    SINGLE_PARTS,
    Field,
    part_name,
    value_at,
)
from app.window.part_form import FieldRow
from app.window.part_section import (
    BORDER_VERBS,
    FABRIC_VERBS,
    REMOVE,
    PartSection,
    SectionList,
)
from core import edit
from core.refusal import Refusal


class PartsPanel(QScrollArea):
    """The forms of one document. Emits `said(sentence)` for what has no place of its own."""

    said = Signal(str)

    def __init__(self, document: Document) -> None:
        super().__init__()
        self.document = document
        self.quilt = PartSection(QUILT, QUILT.key)
        self.fabrics = SectionList(FABRIC, FABRIC_VERBS)
        self.borders = SectionList(BORDER, BORDER_VERBS)
        self.singles = {kind.key: PartSection(kind, kind.key, REMOVE) for kind in SINGLE_PARTS}
        self._refused: FieldRow | PartSection | None = None
        self._gestures: dict[str, int] = {}
        self._lay_out()
        for source in (self.quilt, self.fabrics, self.borders, *self.singles.values()):
            source.edited.connect(self._edit)
            source.asked.connect(self._asked)
        document.changed.connect(self.refresh)
        document.renamed.connect(self.refresh)
        self.quilt.reveal()
        self.refresh()

    def _lay_out(self) -> None:
        inside = QWidget()
        column = QVBoxLayout(inside)
        column.setContentsMargins(8, 8, 8, 8)
        column.setSpacing(10)
        for widget in (self.quilt, self.fabrics, self.borders):
            column.addWidget(widget)
        column.addLayout(self._finish_heading())
        finish = QVBoxLayout()
        finish.setSpacing(0)
        for section in self.singles.values():
            finish.addWidget(section)
        column.addLayout(finish)
        column.addStretch(1)
        self.setWidget(inside)
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setMinimumWidth(300)
        self.setAccessibleName("The project's parts")

    def _finish_heading(self) -> QHBoxLayout:
        """Title and button for the parts that may be absent."""
        title = QLabel("Back and edge")
        title.setObjectName("group")
        self.add_part = QToolButton(text="Add a part", autoRaise=True)
        self.add_part.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        menu = QMenu(self.add_part)
        self.part_actions = {kind.key: menu.addAction(kind.title) for kind in SINGLE_PARTS}
        for kind in SINGLE_PARTS:
            action = self.part_actions[kind.key]
            action.triggered.connect(self._part_adder(kind.key))
        self.add_part.setMenu(menu)
        row = QHBoxLayout()
        row.addWidget(title, 1)
        row.addWidget(self.add_part)
        return row

    def _part_adder(self, key: str) -> Callable[[], None]:
        return lambda: self._asked("add part", key)

    def sections(self) -> Iterator[PartSection]:
        """Every section that stands for a part the project has."""
        yield self.quilt
        yield from self.fabrics.sections
        yield from self.borders.sections
        present = (key for key in self.singles if getattr(self.document.project, key))
        yield from (self.singles[key] for key in present)

    def all_sections(self) -> Iterator[PartSection]:
        """Those, and the sections of pieces on hand within them."""
        for section in self.sections():
            if section.on_hand is not None:
                yield from section.on_hand.sections
            yield section

    def rows(self) -> dict[str, FieldRow]:
        """Every field by its path in the file."""
        return {path: row for section in self.sections() for path, row in section.rows().items()}

    def refresh(self) -> None:
        """Show the document; text that was refused stays while its field is unchanged."""
        form, units = self.document.form, self.document.project.units
        self.quilt.refresh(form, units, anew=False)
        self.fabrics.refresh(FABRIC.key, form, units, anew=False)
        self.borders.refresh(BORDER.key, form, units, anew=False)
        for key, section in self.singles.items():
            present = form.get(key) is not None
            section.setVisible(present)
            self.part_actions[key].setEnabled(not present)
            if present:
                section.refresh(form, units, anew=False)
        self.add_part.setEnabled(any(a.isEnabled() for a in self.part_actions.values()))

    def _edit(self, prefix: str, field: Field, value: object, stepped: bool) -> None:
        """One field was edited: change the document, or say why not."""
        path = f"{prefix}.{field.key}"
        row = self.rows()[path]
        gesture = self._gestures.setdefault(path, len(self._gestures)) if stepped else -1
        text = f"Change {self._called(prefix)} {field.label.lower()}"
        try:
            self.document.put(path, value, text, gesture)
        except Refusal as refusal:
            row.tell(refusal.in_units(self.document.project.units).sentence)
        else:
            form = self.document.form
            row.show_value(value_at(form, path), self.document.project.units)
        self._mark()

    def _asked(self, verb: str, prefix: str) -> None:
        """Add, remove or move a part."""
        called = self._called(prefix)
        text, change = {
            "add": (f"Add {called}", lambda project: edit.add(project, prefix)),
            "add part": (f"Add {called}", lambda project: edit.add_part(project, prefix)),
            "up": (f"Move {called}", lambda project: edit.move(project, prefix, -1)),
            "down": (f"Move {called}", lambda project: edit.move(project, prefix, +1)),
            "remove": (f"Remove {called}", lambda project: edit.remove(project, prefix)),
        }[verb]
        try:
            self.document.edit(text, change)
        except Refusal as refusal:
            self.show_refusal(refusal, at=prefix)
        else:
            if verb.startswith("add"):
                self._show_added(prefix)

    def add(self, key: str) -> None:
        """Add a fabric or a border at the end of its list."""
        self._asked("add", key)

    def _called(self, prefix: str) -> str:
        """A part within a phrase: "border 2"; the name of its kind for a list."""
        name = part_name(self.document.form, prefix)
        return name[:1].lower() + name[1:]

    def _show_added(self, prefix: str) -> None:
        """Open what was just added, and put the cursor into its first field."""
        added = [s for s in self.all_sections() if s.prefix.startswith(prefix)][-1]
        for outer in self.sections():
            if prefix.startswith(outer.prefix):
                outer.reveal()
        added.reveal()
        first = next(iter(added.rows().values()))
        first.setFocus()
        QTimer.singleShot(0, lambda: self.ensureWidgetVisible(added))

    def show_refusal(self, refusal: Refusal, at: str = "") -> None:
        """Say a refusal at its field, else at its part; `at` is the part if it names none."""
        self.clear_refusal()
        sentence = refusal.in_units(self.document.project.units).sentence
        path = refusal.path or at
        if (row := self.rows().get(path)) is not None:
            row.tell(sentence)
            self._refused = row
        elif section := next((s for s in self.all_sections() if path.startswith(s.prefix)), None):
            section.tell(sentence)
            self._refused = section
        else:
            self.said.emit(sentence)
        self._mark()

    def clear_refusal(self) -> None:
        """The plan worked: what `show_refusal` said is over."""
        if self._refused is not None:
            self._refused.tell("")
            self._refused = None
            self._mark()

    def show_field(self, path: str) -> None:
        """Open the part of a field or of a part, and go there."""
        for section in self.sections():
            if path.startswith(section.prefix):
                row = section.rows().get(path)
                section.reveal(row)
                (row or section.heading).setFocus()
                QTimer.singleShot(0, lambda: self.ensureWidgetVisible(row or section.heading))

    def commit(self) -> None:
        """Hand over what is being typed, before the project is saved or left."""
        for row in self.rows().values():
            if row.isAncestorOf(row.window().focusWidget() or self):
                row.editor.commit()

    def _mark(self) -> None:
        for section in self.all_sections():
            section.mark()
