"""The left side: the project's parts, each a section with its fields.

The panel shows a document and turns what is typed into edits of it. What the
core refuses is said under the field; the document is then as it was.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QMenu,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from app.photos_qt import Photos
from app.window.border_notes import NOTED, border_notes
from app.window.column_scroll import ColumnScroll
from app.window.document import Document
from app.window.field import Field, value_at
from app.window.fields import SINGLE_PARTS, part_name
from app.window.fields_border import BORDER
from app.window.fields_cloth import FABRIC, QUILT
from app.window.furniture import leave, quiet_button
from app.window.offers import laid_of
from app.window.part_form import FieldRow
from app.window.part_section import (
    BORDER_VERBS,
    FABRIC_VERBS,
    REMOVE,
    PartSection,
    SectionList,
)
from app.window.tab_order import TabOrder
from app.window.title_row import TitleRow
from core import edit
from core.language import marked, told
from core.lengths import typeset
from core.plan import Plan
from core.refusal import Refusal

LEAST_WIDTH = 300
# In the menus, with the letter that chooses each.
SINGLE_WORDS = {
    "measured": marked("&Measured in three places"),
    "take_up": marked("Ta&ke-up"),
    "squaring": marked("S&quaring up"),
    "outline": marked("&Outline"),
    "backing": marked("B&acking"),
    "batting": marked("Ba&tting"),
    "binding": marked("Bi&nding"),
    "sleeve": marked("&Hanging sleeve"),
    "label": marked("&Label"),
    "table": marked("&Cutting table"),
}


class PartsPanel(ColumnScroll):
    """The forms of one document. Emits `said(sentence)` for what has no place of its own."""

    said = Signal(str)

    def __init__(self, document: Document) -> None:
        super().__init__(QWidget(), LEAST_WIDTH)
        self.document = document
        self.quilt = PartSection(QUILT, QUILT.key)
        self.fabrics = SectionList(FABRIC, FABRIC_VERBS)
        self.borders = SectionList(BORDER, BORDER_VERBS)
        self.singles = {kind.key: PartSection(kind, kind.key, REMOVE) for kind in SINGLE_PARTS}
        self._refused = ""
        self._gestures: dict[str, int] = {}
        self._lay_out()
        sources: list[PartSection | SectionList] = [self.quilt, self.fabrics, self.borders]
        for source in (*sources, *self.singles.values()):
            source.edited.connect(self._edit)
            source.asked.connect(self._asked)
        document.changed.connect(self.refresh)
        document.started.connect(self._begin)
        self.quilt.reveal()
        self.refresh()

    def _lay_out(self) -> None:
        column = QVBoxLayout(self.column)
        column.setContentsMargins(4, 8, 4, 8)
        column.setSpacing(10)
        for widget in (self.quilt, self.fabrics, self.borders):
            column.addWidget(widget)
        column.addWidget(self._finish_heading())
        finish = QVBoxLayout()
        finish.setSpacing(2)
        for section in self.singles.values():
            finish.addWidget(section)
        column.addLayout(finish)
        column.addStretch(1)
        self.tab_order = TabOrder(self.column)
        self.setAccessibleName(told("The project's parts"))

    def _finish_heading(self) -> TitleRow:
        """Title and button for the parts that may be absent."""
        self.add_part = quiet_button(told("+ Part"), told("Add a part"))
        self.add_part.setObjectName("add")
        self.add_part.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        menu = QMenu(self.add_part)
        self.part_actions = {
            key: menu.addAction(told(words)) for key, words in SINGLE_WORDS.items()
        }
        for key, action in self.part_actions.items():
            action.triggered.connect(self._part_adder(key))
        self.add_part.setMenu(menu)
        return TitleRow(told("Back and edge"), self.add_part)

    def _part_adder(self, key: str) -> Callable[[], None]:
        return lambda: self._asked("add part", key)

    def sections(self) -> Iterator[PartSection]:
        """Every section that stands for a part the project has."""
        yield self.quilt
        yield from self.fabrics.sections
        yield from self.borders.sections
        present = (key for key in self.singles if getattr(self.document.project, key))
        yield from (self.singles[key] for key in present)

    def section_at(self, path: str) -> PartSection | None:
        """The innermost section of the part, or of the field, at a path of the file."""
        for outer in self.sections():
            if _leads_to(outer.prefix, path):
                inner = outer.within() if path != outer.prefix else [outer]
                return next(section for section in inner if _leads_to(section.prefix, path))
        return None

    def row_at(self, path: str) -> FieldRow | None:
        """The field at a path of the file, if there is one."""
        section = self.section_at(path)
        return section.row(path) if section is not None else None

    def refresh(self, *, anew: bool = False) -> None:
        """Show the document; text that was refused stays while its field is unchanged."""
        form, units = self.document.form, self.document.project.units
        self.quilt.refresh(form, units, anew=anew)
        self.fabrics.refresh(FABRIC.key, form, units, anew=anew)
        self.borders.refresh(BORDER.key, form, units, anew=anew)
        self.add_part.setEnabled(any(form.get(key) is None for key in self.singles))
        for key, section in self.singles.items():
            present = form.get(key) is not None
            if not present:
                leave(section, self.add_part)
            section.setVisible(present)
            self.part_actions[key].setEnabled(not present)
            if present:
                section.refresh(form, units, anew=anew)

    def _begin(self) -> None:
        """Another project: nothing refused is left, and only the quilt is open."""
        self.refresh(anew=True)
        for section in self.sections():
            section.heading.setChecked(section is self.quilt)

    def _edit(self, prefix: str, field: Field, value: object, stepped: bool) -> None:
        """One field was edited: change the document, or say why not."""
        path = f"{prefix}.{field.key}"
        row = self.row_at(path)
        gesture = self._gestures.setdefault(path, len(self._gestures)) if stepped else -1
        called = part_name(self.document.form, prefix)
        text = told("Change {part:small} {field:small}", part=called, field=field.called)
        try:
            self.document.put(path, value, text, gesture)
        except Refusal as refusal:
            if row is not None:
                row.refuse(refusal.in_units(self.document.project.units).sentence)
        else:
            if row is not None:
                row.show_value(value_at(self.document.form, path), self.document.project.units)
        self._mark(path)

    def _asked(self, verb: str, prefix: str) -> None:
        """Add, remove or move a part."""
        called = part_name(self.document.form, prefix)
        adding = told("Add {part:small}", part=called)
        moving = told("Move {part:small}", part=called)
        removing = told("Remove {part:small}", part=called)
        text, change = {
            "add": (adding, lambda project: edit.add(project, prefix)),
            "add part": (adding, lambda project: edit.add_part(project, prefix)),
            "up": (moving, lambda project: edit.move(project, prefix, -1)),
            "down": (moving, lambda project: edit.move(project, prefix, +1)),
            "remove": (removing, lambda project: edit.remove(project, prefix)),
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

    def _show_added(self, prefix: str) -> None:
        """Open what was just added, and put the cursor into its first field."""
        added = self._newest(prefix)
        added.reveal()
        next(iter(added.body.rows.values())).setFocus(Qt.FocusReason.TabFocusReason)
        self.bring_into_view(added)

    def _newest(self, prefix: str) -> PartSection:
        """The section of what was added to the list at `prefix`, or as the part of that name."""
        for whole in (self.fabrics, self.borders):
            if prefix == whole.kind.key:
                return whole.sections[-1]
        parent = self.section_at(prefix) or self.quilt
        parent.reveal()
        key = prefix.rpartition(".")[2]
        lists = (inner for inner in parent.inner if inner.kind.key == key)
        return next((inner.sections[-1] for inner in lists if prefix != parent.prefix), parent)

    def show_refusal(self, refusal: Refusal, at: str = "") -> None:
        """Say a refusal at its field, else at its part; `at` is the part if it names none."""
        self.clear_refusal()
        self._refused = refusal.path or at
        sentence = refusal.in_units(self.document.project.units).sentence
        if (place := self._place_of(self._refused)) is not None:
            place.tell(sentence)
        else:
            self.said.emit(sentence)
        self._mark(self._refused)

    def clear_refusal(self) -> None:
        """The plan worked: what `show_refusal` said is over."""
        place = self._place_of(self._refused)
        if place is not None and not (isinstance(place, FieldRow) and place.untaken):
            place.tell("")
        self._mark(self._refused)
        self._refused = ""

    def _place_of(self, path: str) -> FieldRow | PartSection | None:
        """Where something about a path is said."""
        return self.row_at(path) or self.section_at(path)

    def show_field(self, path: str) -> None:
        """Open the part of a field or of a part, and go there."""
        outer, inner = self.section_at(path.partition(".")[0]), self.section_at(path)
        if outer is not None and inner is not None:
            row = inner.row(path)
            outer.reveal()
            inner.reveal(row)
            place: QWidget = row or inner.heading
            place.setFocus(Qt.FocusReason.TabFocusReason)
            self.bring_into_view(place)

    def show_plan(self, plan: Plan | None) -> None:
        """Say under each border what the plan makes of it, and offer its pieces; None: no plan."""
        if plan is not None:
            for fabric, part in zip(plan.project.fabrics, self.fabrics.sections, strict=False):
                part.offer_laid(laid_of(plan, fabric.name))
        notes = border_notes(plan) if plan else []
        for place, section in enumerate(self.borders.sections):
            said = notes[place] if place < len(notes) else {}
            for key in NOTED:
                section.note(key, typeset(said.get(key, "")))

    def show_photos(self, photos: Photos) -> None:
        """Say under each fabric's photo why it cannot be shown, if it cannot."""
        fabrics = zip(self.document.project.fabrics, self.fabrics.sections, strict=True)
        for fabric, section in fabrics:
            photo = fabric.real.photo if fabric.real else None
            section.note("photo", photos.problem(photo) if photo else "")

    def untaken(self) -> list[str]:
        """The fields that hold text which the project refused."""
        form = self.document.form
        return [name for section in self.sections() for name in section.untaken(form)]

    def commit(self) -> None:
        """Hand over what is being typed, before the project is saved or left."""
        place: QWidget | None = self.window().focusWidget()
        while place is not None and not isinstance(place, FieldRow):
            place = place.parentWidget()
        if place is not None:
            place.editor.commit()

    def _mark(self, path: str) -> None:
        """Let the headings on the way to `path` tell whether something is to be mended."""
        for section in (self.section_at(path), self.section_at(path.partition(".")[0])):
            if section is not None:
                section.mark()


def _leads_to(prefix: str, path: str) -> bool:
    """Whether the part at `prefix` is the one at `path`, or holds it."""
    return path == prefix or path.startswith(f"{prefix}.")
