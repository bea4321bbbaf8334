"""A part of the project as a section that folds: its heading, its menu, its fields.

A section makes its fields when they are first needed: a project has some eighty,
of which a person opens a few.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QMenu, QToolButton, QVBoxLayout, QWidget

from app.window.field import Called, Field, FileForm, PartKind, summary, value_at
from app.window.fields import part_name
from app.window.fields_cloth import FABRIC
from app.window.fold_heading import FoldHeading
from app.window.furniture import call, leave, quiet_button
from app.window.offers import Laid, offers_of
from app.window.part_body import PartBody
from app.window.part_form import FieldRow
from app.window.title_row import TitleRow
from core.language import marked, told
from core.lengths import Units, typeset

Verbs = Sequence[tuple[str, str]]  # (what is asked, the words in the menu)
REMOVE: Verbs = (("remove", marked("Remove")),)
FABRIC_VERBS: Verbs = (("up", marked("Move up")), ("down", marked("Move down")), *REMOVE)
BORDER_VERBS: Verbs = (
    ("up", marked("Move inwards")),
    ("down", marked("Move outwards")),
    *REMOVE,
)


class PartSection(QFrame):
    """One part. Emits `edited(prefix, field, value, stepped)` and `asked(verb, prefix)`."""

    edited = Signal(str, object, object, bool)
    asked = Signal(str, str)

    def __init__(self, kind: PartKind, prefix: str, verbs: Verbs = ()) -> None:
        super().__init__()
        self.kind = kind
        self.prefix = prefix
        self.inner: tuple[SectionList, ...] = ()
        self.menu = QMenu(self)
        self.heading = FoldHeading()
        self.heading.setToolTip(f"<p>{told(kind.help)}</p>")
        self.heading.toggled.connect(self._fold)
        self._body: PartBody | None = None
        self._shown: tuple[FileForm, Units] | None = None
        self._words = ("", "")
        self._called = Called()
        self._button: QToolButton | None = None
        self._notes: dict[str, str] = {}
        self._laid: tuple[Laid, ...] = ()
        top = QHBoxLayout()
        top.setSpacing(0)
        top.addWidget(self.heading, 1)
        if verbs:
            top.addWidget(self._menu_button(verbs), 0, Qt.AlignmentFlag.AlignTop)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)
        self._column.addLayout(top)

    def _menu_button(self, verbs: Verbs) -> QToolButton:
        for verb, words in verbs:
            self.menu.addAction(told(words)).triggered.connect(self._asker(verb))
        button = self._button = quiet_button("⋯")
        button.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        button.setMenu(self.menu)
        button.setObjectName("part-menu")
        return button

    def _asker(self, verb: str) -> Callable[[], None]:
        return lambda: self.asked.emit(verb, self.prefix)

    @property
    def body(self) -> PartBody:
        """The fields, made if they were not yet."""
        if self._body is None:
            self.inner = tuple(SectionList(kind, REMOVE) for kind in self.kind.inner)
            for inner in self.inner:
                inner.edited.connect(self.edited)
                inner.asked.connect(self.asked)
            self._body = PartBody(self.kind, self.inner)
            self._body.edited.connect(self._pass)
            self._body.setVisible(self.heading.isChecked())
            self._column.addWidget(self._body)
            for key, text in self._notes.items():
                self._body.rows[key].explain(text)
            self._body.call(self._called or self.kind.called)
            self.offer_laid(self._laid)
            if self._shown is not None:
                self.refresh(*self._shown, anew=True)
        return self._body

    def _pass(self, field: Field, value: object, stepped: bool) -> None:
        self.edited.emit(self.prefix, field, value, stepped)

    def _fold(self, opened: bool) -> None:
        self.body.setVisible(opened)

    def refresh(self, form: FileForm, units: Units, *, anew: bool) -> None:
        """Show the project's values for this part; `anew` also clears refused text."""
        self._shown = form, units
        values = value_at(form, self.prefix)
        if self._body is not None:
            self._body.refresh(values, units, offers_of(form, self.prefix), anew)
        for inner in self.inner:
            inner.refresh(f"{self.prefix}.{inner.kind.key}", form, units, anew=anew)
        called = part_name(form, self.prefix)
        self._call(called)
        title = values["name"] if self.kind is FABRIC else called
        self._words = title, typeset(summary(self.kind, values, units.value))
        self.mark()

    def _call(self, name: Called) -> None:
        """Let its fields and buttons be heard with its name, of which there may be several."""
        if name == self._called:
            return
        self._called = name
        if self._body is not None:
            self._body.call(name)
        if self._button is not None:
            call(self._button, told("{part}: move or remove", part=name))

    def mark(self) -> None:
        """Let the heading tell whether something in here is to be mended."""
        self.heading.say(*self._words, trouble=self._troubled())

    def _troubled(self) -> bool:
        if self._body is None:
            return False
        problems = [self._body.problem, *(row.problem for row in self._body.rows.values())]
        inner = (section for inner in self.inner for section in inner.sections)
        return any(p.text() for p in problems) or any(section._troubled() for section in inner)

    def note(self, key: str, text: str) -> None:
        """Say under a field what the plan makes of it; "" for nothing."""
        self._notes[key] = text
        if self._body is not None:
            self._body.rows[key].explain(text)

    def offer_laid(self, laid: tuple[Laid, ...]) -> None:
        """Put up for choice, here and within, what is cut from the part's fabric."""
        self._laid = laid
        if self._body is not None:
            self._body.offer_laid(laid)
        for inner in self.inner:
            inner.offer_laid(laid)

    def untaken(self, form: FileForm) -> Iterator[str]:
        """The fields, as a person calls them, that hold text which the project refused."""
        rows = self._body.rows.values() if self._body is not None else ()
        name = part_name(form, self.prefix)
        yield from (
            told("{part}, {field:small}", part=name, field=row.field.called)
            for row in rows
            if row.untaken
        )
        for section in (section for inner in self.inner for section in inner.sections):
            yield from (f"{name}, {inner}" for inner in section.untaken(form))

    def within(self) -> Iterator[PartSection]:
        """This section and those inside it, the innermost first."""
        if self.kind.inner:
            _ = self.body
        yield from (section for inner in self.inner for section in inner.sections)
        yield self

    def row(self, path: str) -> FieldRow | None:
        """The field at a path of the file, if it is one of this part's own."""
        key = path.removeprefix(f"{self.prefix}.")
        return self.body.rows.get(key) if key != path else None

    def reveal(self, row: FieldRow | None = None) -> None:
        """Unfold so far that `row` can be seen."""
        self.heading.setChecked(True)
        if row is not None:
            self.body.reveal(row)

    def tell(self, sentence: str) -> None:
        """Say what is wrong with the part as a whole; "" for nothing."""
        self.body.problem.say(sentence)
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
        self._laid: tuple[Laid, ...] = ()
        self.add = quiet_button(f"+ {kind.called}", told("Add a {part:small}", part=kind.called))
        self.add.setObjectName("add")
        self.add.clicked.connect(self._add)
        self.add.setVisible(kind.adds)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(2)
        self._column.addWidget(TitleRow(told(kind.plural), self.add))

    def _add(self) -> None:
        self.asked.emit("add", self._prefix)

    def refresh(self, prefix: str, form: FileForm, units: Units, *, anew: bool) -> None:
        """Show as many sections as the project has parts here."""
        self._prefix = prefix
        wanted = len(value_at(form, prefix) or ())  # a list that is empty may be absent
        self.setVisible(self.kind.adds or bool(wanted))
        while len(self.sections) > wanted:
            self._drop(self.sections[-1])
        while len(self.sections) < wanted:
            self._append(f"{prefix}[{len(self.sections)}]")
        for i, section in enumerate(self.sections):
            section.prefix = f"{prefix}[{i}]"
            section.refresh(form, units, anew=anew)

    def offer_laid(self, laid: tuple[Laid, ...]) -> None:
        """Put up for choice in each what is cut from their fabric."""
        self._laid = laid
        for section in self.sections:
            section.offer_laid(laid)

    def _append(self, prefix: str) -> None:
        section = PartSection(self.kind, prefix, self._verbs)
        section.edited.connect(self.edited)
        section.asked.connect(self.asked)
        section.offer_laid(self._laid)
        self.sections.append(section)
        self._column.addWidget(section)

    def _drop(self, section: PartSection) -> None:
        self.sections.remove(section)
        leave(section, self.add)
        section.hide()
        section.deleteLater()
