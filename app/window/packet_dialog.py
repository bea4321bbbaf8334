"""The packet before it is printed: its true pages, and what of it is wanted, for whom, on what."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from PySide6.QtCore import QRectF, QSize, Qt, QTimer
from PySide6.QtGui import QPainter, QPaintEvent, QPalette
from PySide6.QtPrintSupport import QPrintDialog, QPrinter
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QDialog,
    QFormLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QPushButton,
    QSpinBox,
    QVBoxLayout,
    QWidget,
)

from app.packet.choice import (
    MOST_COPIES,
    Asked,
    PacketChoice,
    Pages,
    bar_of,
    correction_of,
    names_listed,
)
from app.packet.packet import packet_pages
from app.packet.page import Page
from app.packet.paper import Format, Paper
from app.pens_qt import pen
from app.window.furniture import Sentence, open_at
from app.window.packet_comparing import PacketComparing
from app.window.packet_paint import paint_page, print_all
from app.window.planner import Planner
from app.wording import upper_first
from core.language import marked, told
from core.numerals import told_to_edit
from core.plan import Plan
from core.refusal import Refusal

_SOON = 200  # milliseconds after a change, before the pages are made again
_FIRST = 1000  # stretch of what takes all the room that it can use, before what is left over
_PAPERS = {Paper.LETTER: marked("Letter"), Paper.A4: marked("A4")}
_CHECKED, _UNCHECKED = Qt.CheckState.Checked, Qt.CheckState.Unchecked


class PageView(QWidget):
    """One page as it will be printed, as large as there is room."""

    def __init__(self) -> None:
        super().__init__()
        self.page: Page | None = None
        self.form = Format()
        self.setAccessibleName(told("Page as it will be printed"))
        self.setMinimumSize(QSize(300, 390))

    def show_page(self, page: Page | None, form: Format) -> None:
        self.page, self.form = page, form
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        painter = QPainter(self)
        wide, high = self.form.paper.size
        scale = min(self.width() / wide, self.height() / high)
        painter.translate((self.width() - wide * scale) / 2, (self.height() - high * scale) / 2)
        painter.scale(scale, scale)
        paper = QRectF(0, 0, wide, high)
        if self.page is not None:
            painter.fillRect(paper, Qt.GlobalColor.white)
            paint_page(painter, self.page, self.form)
        painter.setPen(pen(self.palette().color(QPalette.ColorRole.PlaceholderText).name(), 1.0))
        painter.drawRect(paper.adjusted(0.5, 0.5, -0.5, -0.5))  # where the window is white too
        painter.end()


class PacketDialog(QDialog):
    """Shows the packet of `plan`, at first as it was chosen last.

    `save` is called with the choice, and what was worked out for it, when a PDF is wanted.
    """

    def __init__(
        self,
        plan: Plan,
        choice: PacketChoice,
        save: Callable[[PacketChoice, Asked], None],
        parent: QWidget | None = None,
        solver: Callable[[], Planner] = Planner,
    ) -> None:
        super().__init__(parent)
        self._plan, self._save = plan, save
        self.comparing = PacketComparing(plan.project, solver)
        self.setWindowTitle(told("Print the packet"))
        self.kinds = QListWidget()
        self.kinds.setAccessibleName(told("Pages to print"))
        for kind in Pages:
            item = QListWidgetItem(kind.said)
            item.setData(Qt.ItemDataRole.UserRole, kind.value)
            item.setFlags(Qt.ItemFlag.ItemIsUserCheckable | Qt.ItemFlag.ItemIsEnabled)
            item.setCheckState(_CHECKED if kind in choice.pages else _UNCHECKED)
            self.kinds.addItem(item)
        self.kinds.setSpacing(2)  # else the boxes touch each other
        self.paper = QComboBox()
        self.paper.setAccessibleName(told("Paper"))
        for known, words in _PAPERS.items():
            self.paper.addItem(told(words), known.value)
        self.paper.setCurrentIndex(list(_PAPERS).index(choice.form.paper))
        self.grey, self.large = (
            QCheckBox(told("Without &colour")),
            QCheckBox(told("&Large print, 18 pt and up")),
        )
        self.grey.setChecked(choice.form.grey)
        self.large.setChecked(choice.form.large)
        self.names = QLineEdit(placeholderText=told("Ada, Ben"))
        self.names.setToolTip(told("Names with commas between them: each gets a packet"))
        self.copies = QSpinBox(minimum=1, maximum=MOST_COPIES)
        bar = bar_of(choice.form.correction)
        self.bar = QLineEdit(told_to_edit(f"{bar} mm") if bar else "", placeholderText="100 mm")
        self.bar.setToolTip(told("How long the 100 mm bar of a page that you printed measures"))
        self.view, self.problem, self.where = PageView(), Sentence("problem"), Sentence("note")
        self.pages: tuple[Page, ...] = ()
        self.choice = choice
        self._place = 0
        self._soon = QTimer(self, singleShot=True, interval=_SOON)
        self._soon.timeout.connect(self.make)
        self._lay_out()
        self._listen()
        self.make()

    def _lay_out(self) -> None:
        form = self._form = QFormLayout()
        listed = QLabel(told("&Pages"))
        listed.setBuddy(self.kinds)
        form.addRow(told("Pap&er"), self.paper)
        form.addRow("", self.grey)
        form.addRow("", self.large)
        form.addRow(told("&For"), self.names)
        form.addRow(told("C&opies of each"), self.copies)
        form.addRow(told("Prin&ted bar"), self.bar)
        form.addRow(self.problem)
        self.back, self.forward = (
            QPushButton(told("◀ &Before")),
            QPushButton(told("&After ▶")),
        )
        self.save, self.print = QPushButton(told("&Save as PDF…")), QPushButton(told("P&rint…"))
        self.close_ = QPushButton(told("Close"))
        turning, doing = QHBoxLayout(), QHBoxLayout()
        self.where.setWordWrap(False)
        turning.addWidget(self.back)
        turning.addWidget(self.where, 1, Qt.AlignmentFlag.AlignCenter)
        turning.addWidget(self.forward)
        doing.addStretch(1)
        for button in (self.save, self.print, self.close_):
            button.setAutoDefault(False)
            doing.addWidget(button)
        left, right, both = QVBoxLayout(), QVBoxLayout(), QHBoxLayout()
        left.addWidget(listed)
        left.addWidget(self.kinds, _FIRST)
        left.addLayout(form)
        left.addStretch(1)
        right.addWidget(self.view, 1)
        right.addLayout(turning)
        both.addLayout(left, 2)
        both.addLayout(right, 3)
        whole = QVBoxLayout(self)
        whole.addLayout(both, 1)
        whole.addLayout(doing)
        self._list_whole()
        open_at(self, 160, 60)

    def _list_whole(self) -> None:
        """The list is as wide as its words, and no higher than they need."""
        self.kinds.ensurePolished()  # else its letters are not yet as large as they will be
        frame, room = 2 * self.kinds.frameWidth(), 2 * self.kinds.spacing()
        words, box = self.kinds.sizeHintForColumn(0), self.kinds.fontMetrics().height()
        self.kinds.setMinimumWidth(words + box + frame + room)
        row = self.kinds.sizeHintForRow(0) + room
        self.kinds.setMaximumHeight(self.kinds.count() * row + frame + room)

    def _listen(self) -> None:
        self.kinds.itemChanged.connect(lambda _: self._soon.start())
        self.paper.currentIndexChanged.connect(lambda _: self._soon.start())
        for box in (self.grey, self.large):
            box.toggled.connect(lambda _: self._soon.start())
        for line in (self.names, self.bar):
            line.textChanged.connect(lambda _: self._soon.start())
        self.copies.valueChanged.connect(lambda _: self._soon.start())
        self.back.clicked.connect(lambda: self.turn(-1))
        self.forward.clicked.connect(lambda: self.turn(1))
        self.save.clicked.connect(lambda: self._save(self.choice, self.comparing.asked))
        self.comparing.found.connect(self.make)
        self.print.clicked.connect(self.ask_printer)
        self.close_.clicked.connect(self.reject)

    def make(self) -> None:
        """Make the pages of what is chosen, or say why there are none."""
        self._soon.stop()
        self.pages = ()
        try:
            self.choice = self._chosen()
        except Refusal as refusal:
            self.problem.say(self._said(refusal))
        else:
            self._make_chosen()
        for button in (self.save, self.print):
            button.setEnabled(bool(self.pages) and not self.comparing.busy)
        self.turn(0)

    def _make_chosen(self) -> None:
        self.comparing.ask(self.choice.pages)
        said = self.comparing.said
        try:
            self.pages = packet_pages(self._plan, self.choice, self.comparing.asked)
        except Refusal as refusal:
            said = said or self._said(refusal)
        self.problem.say(said, "note" if self.comparing.busy else "")

    def _said(self, refusal: Refusal) -> str:
        """A refusal as a sentence, with its field."""
        fields = {"--for": self.names, "--copies": self.copies, "--bar": self.bar}
        field = fields.get(refusal.path)
        label = self._form.labelForField(field) if field is not None else None
        name = f"{label.text().replace('&', '')}: " if isinstance(label, QLabel) else ""
        return upper_first(f"{name}{refusal.sentence}.")

    def _chosen(self) -> PacketChoice:
        listed = [self.kinds.item(row) for row in range(self.kinds.count())]
        ticked = [item for item in listed if item.checkState() is _CHECKED]
        if not ticked:
            raise Refusal("pages", told("no page is chosen; tick at least one"))
        form = Format(
            Paper(self.paper.currentData()), self.grey.isChecked(), self.large.isChecked()
        )
        if self.bar.text().strip():
            correction = correction_of(self.bar.text(), self._plan.project.units)
            form = replace(form, correction=correction)
        return PacketChoice(
            pages=tuple(Pages(item.data(Qt.ItemDataRole.UserRole)) for item in ticked),
            names=names_listed(self.names.text()),
            copies=self.copies.value(),
            form=form,
        )

    def turn(self, by: int) -> None:
        """Show the page `by` pages further on."""
        count = len(self.pages)
        self._place = min(max(self._place + by, 0), max(count - 1, 0))
        self.view.show_page(self.pages[self._place] if count else None, self.choice.form)
        here = told("Page {number} of {count}", number=self._place + 1, count=count)
        self.where.say(here if count else told("No page"))
        self.back.setEnabled(self._place > 0)
        self.forward.setEnabled(self._place + 1 < count)

    def done(self, result: int) -> None:
        """Leave; nothing more is worked out."""
        self.comparing.close()
        super().done(result)

    def ask_printer(self) -> None:
        """The system's own dialogue, and then the printer."""
        printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        quilt = self._plan.project.quilt.name or told("A quilt")
        printer.setDocName(told("{quilt}: cutting packet", quilt=quilt))
        dialog = QPrintDialog(printer, self)
        if dialog.exec() == QDialog.DialogCode.Accepted:
            self.print_on(printer)
        dialog.deleteLater()

    def print_on(self, printer: QPrinter) -> None:
        """Print all pages; say so where the printer takes none."""
        if not print_all(printer, self.pages, self.choice.form):
            self.problem.say(
                told("The printer did not take the pages; see whether it is switched on.")
            )
