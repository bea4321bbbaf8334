"""The cutting table: full screen, one cut at a time, and what to do when one goes wrong."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtGui import (
    QCloseEvent,
    QFontInfo,
    QGuiApplication,
    QKeySequence,
    QPalette,
    QResizeEvent,
    QShortcut,
    QShowEvent,
)
from PySide6.QtWidgets import QApplication, QDialog, QStackedWidget, QVBoxLayout, QWidget

from app.os_words import said_of
from app.style import Theme
from app.window.cutting.cuttings import Cuttings
from app.window.cutting.miscut_form import MiscutForm
from app.window.cutting.opening import Opening, cut_and_uncut, listed
from app.window.cutting.pages import Choice, CutPage, SayPage, Words
from app.window.cutting.top import TableTop
from app.window.planner import Planner
from app.window.sheet import border_of_ticked, choices, ticked
from core.cutting.cutting import ClothCutting, Cutting, begin
from core.cutting.miscut import Miscut
from core.cutting.order import Order
from core.cutting.remaining import LaidAgain
from core.cutting.words import cloth_of_kit, sheet_words, to_buy
from core.language import marked, told, told_as, told_count
from core.plan import Plan

# Read from two metres: on a laptop's screen of 18 cm a capital of the headline is then a quarter
# of a degree high, a capital of the other words an eighth. Letters of 16 to 22 minutes of arc are
# what ISO 9241-303 wants of a screen (from memory); 5 are what the eye can just read.
TYPE = 1 / 27  # of the height
HEADLINE = 1.75  # times the size of the other words
STYLE = """
* {{ font-size: {pixels}px; }}
QProgressBar {{ max-height: 12px; }}
QLabel#headline {{ font-size: {headline}px; font-weight: bold; }}
QLabel#under {{ padding-left: {pixels}px; }}
"""
BOX = 0.8  # times the size of the words beside it
MOST_READ = 4  # cloths whose pieces are listed
SAFE = marked("Close the blade after every cut.")


class CuttingTable(QDialog):
    """Leads through the cuts of `plan`, keeps in `cuttings` how far they are, after every one.

    `mender` lays the rest again after a miscut; it is closed with the table.
    """

    def __init__(
        self,
        plan: Plan,
        cuttings: Cuttings,
        mender: Planner,
        theme: Theme,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(told("Cutting table"))
        self.plan, self.cuttings, self.mender = plan, cuttings, mender
        self.cutting: Cutting = begin(plan)
        self.place = 0
        self.top, self.where, self.trouble = TableTop(), Words(), Words("problem")
        self.cut_page = CutPage(
            theme,
            Choice(told("Done"), self.cut_once),
            Choice(told_as("go back", "Back"), self.go_back),
            Choice(told("It went wrong…"), self.ask_what_happened),
        )
        self.say_page = SayPage()
        self.form = MiscutForm(plan.project.units)
        self.pages = QStackedWidget()
        self._lay_out()
        self._listen()
        self.opening = Opening(self)
        self.opening.start()

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 16, 24, 20)
        for widget in (self.top, self.where, self.trouble):
            column.addWidget(widget)
        column.addWidget(self.pages, 1)
        for page in (self.cut_page, self.say_page, self.form):
            self.pages.addWidget(page)
        self.trouble.hide()
        self.resize(1280, 800)

    def _listen(self) -> None:
        self.top.leave.clicked.connect(self.close)
        self.top.cloths.activated.connect(self.take_cloth)
        self.form.said.connect(self._lay_again)
        self.form.given_up.connect(self.show_cut)
        self.mender.planned.connect(self._found)
        self.mender.refused.connect(lambda refusal: self._not_laid(refusal.sentence))
        self.mender.failed.connect(self._not_laid)
        self.mender.slow.connect(lambda slow: self.form.wait() if slow else None)
        for key, by in ((Qt.Key.Key_PageDown, 1), (Qt.Key.Key_PageUp, -1)):
            shortcut = QShortcut(QKeySequence(key), self)
            shortcut.activated.connect(lambda by=by: self._next_cloth(by))

    @property
    def cloth(self) -> ClothCutting:
        """The cloth that is being cut."""
        return self.cutting.cloths[self.place]

    def leave_table(self) -> None:
        """Close it; how far the cloth is cut is kept already."""
        self.close()

    def begin_again(self) -> None:
        """Cut the plan as it is now, from the first cut on."""
        self.take(begin(self.plan))

    def take(self, cutting: Cutting) -> None:
        """Cut this from now on, and keep it in place of what was kept."""
        self.go_on(cutting)
        self._keep()

    def go_on(self, cutting: Cutting) -> None:
        """Cut this, where it was left."""
        self.cutting = cutting
        self.place = cutting.unfinished()
        self.top.list_cloths(cutting)
        self.show_cut()

    def show_cut(self) -> None:
        """Show the cut to make now, or that the cloth is all cut."""
        cloth, units = self.cloth, self.plan.project.units
        self.top.show_progress(self.cutting, self.place)
        if (cut := cloth.next_cut) is None:
            self._all_cut()
            return
        self.where.say(f"{sheet_words(cloth.order, cut.step.sheet, units)}. {told(SAFE)}")
        self.cut_page.back.setEnabled(cloth.back() != cloth)
        self.cut_page.show_cut(cloth.order, cut, units, self.plan.project.cutting_table)
        self.pages.setCurrentWidget(self.cut_page)
        self.setFocus()

    def _all_cut(self) -> None:
        """Count what lies there; then the next cloth, or the end."""
        cloth = self.cloth
        rest = [n for n, one in enumerate(self.cutting.cloths) if one.next_cut is not None]
        choices = [
            Choice(told("A mistake: one cut back"), self.go_back),
            Choice(told("A piece is spoilt or lost…"), self.ask_what_happened),
        ]
        if rest:
            name = self.cutting.cloths[rest[0]].order.name
            go_on = told("Go on with {fabric}", fabric=name)
            choices.insert(0, Choice(go_on, lambda: self.take_cloth(rest[0])))
        else:
            choices.insert(0, Choice(told("Leave the table"), self.leave_table))
        cut = told("{fabric} is all cut", fabric=cloth.order.name) if rest else told("All is cut")
        self.say(cut, self._had((cloth,) if rest else self.cutting.cloths), *choices)

    def _had(self, cloths: Sequence[ClothCutting]) -> str:
        """Which pieces lie there; of so many cloths that nobody would read it, nothing."""
        if len(cloths) > MOST_READ:
            return ""
        had = [(one, listed((*one.order.had, *one.order.pieces))) for one in cloths]
        if len(had) == 1:
            return told("You have {pieces}.", pieces=had[0][1])
        return " ".join(
            told(
                "Of {cloth} you have {pieces}.", cloth=cloth_of_kit(self.cutting, one), pieces=all_
            )
            for one, all_ in had
        )

    def say(self, title: str, text: str, *choices: Choice) -> None:
        """Say something, and what may be done."""
        self.where.say("")
        self.say_page.show_choices(title, text, choices)
        self.pages.setCurrentWidget(self.say_page)
        self.say_page.take_focus()

    def cut_once(self) -> None:
        """The cut is made."""
        self._step(self.cloth.cut_once())

    def go_back(self) -> None:
        """It was not."""
        self._step(self.cloth.back())

    def _step(self, cloth: ClothCutting) -> None:
        self.cutting = self.cutting.with_cloth(self.place, cloth)
        self._keep()
        self.show_cut()

    def take_cloth(self, place: int) -> None:
        """Cut another cloth."""
        self.place = place
        self.show_cut()

    def _next_cloth(self, by: int) -> None:
        if self.pages.currentWidget() is not self.form and self.top.cloths.count():
            self.take_cloth((self.place + by) % len(self.cutting.cloths))

    def _keep(self) -> None:
        try:
            self.cuttings.keep(self.cutting)
        except OSError as error:
            why = said_of(error)
            self.trouble.say(
                told(
                    "How far the cloth is cut cannot be kept ({why}): note it down, or make room.",
                    why=why,
                )
            )
        else:
            self.trouble.say("")

    def ask_what_happened(self) -> None:
        """Open the form."""
        self.where.say("")
        self.form.ask(self.cloth)
        self.pages.setCurrentWidget(self.form)

    def _lay_again(self, miscut: Miscut) -> None:
        cloth, units = self.cloth, self.plan.project.units
        self.mender.ask(LaidAgain(cloth.order, cloth.cuts_done, miscut, units))

    def _found(self, found: object) -> None:
        """The solver has laid a cloth again, or a changed plan."""
        if isinstance(found, Cutting):
            self.opening.offer(found)
        elif isinstance(found, Order) and self.pages.currentWidget() is self.form:
            self._offer(found)

    def _offer(self, order: Order) -> None:
        """Show what the new order is, before it takes the old one's place."""
        cuts = told_count(
            "{count} cut is to be made from here.",
            "{count} cuts are to be made from here.",
            len(order.cuts),
        )
        said = [to_buy(order), cuts if order.cuts else "", cut_and_uncut(order)]
        self.say(
            order.because,
            " ".join(filter(None, said)),
            Choice(
                told("Cut on by the new order"), lambda: self._step(self.cloth.laid_again(order))
            ),
            Choice(told("Change nothing"), self.show_cut),
        )

    def _not_laid(self, sentence: str) -> None:
        if self.pages.currentWidget() is self.form:
            self.form.tell(sentence)
        else:
            self.opening.ask(sentence)

    def reject(self) -> None:
        """Esc: out of the form; else off the table."""
        if self.pages.currentWidget() is self.form:
            self.show_cut()
        else:
            self.close()

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802 - Qt's name
        self.mender.close()
        event.accept()

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        super().resizeEvent(event)
        self._set_type()

    def showEvent(self, event: QShowEvent) -> None:  # noqa: N802 - Qt's name
        super().showEvent(event)
        self._set_type()

    def _set_type(self) -> None:
        """Letters grow with the screen, and are never smaller than everywhere else."""
        usual = QFontInfo(QGuiApplication.font()).pixelSize()
        pixels = max(round(self.height() * TYPE), usual)
        self.cut_page.picture.pixels = pixels
        type_ = STYLE.format(pixels=pixels, headline=round(pixels * HEADLINE))
        application = QApplication.instance()
        if isinstance(application, QApplication):
            box, ground = round(pixels * BOX), self.palette().color(QPalette.ColorRole.Window)
            type_ += ticked(box, border_of_ticked(application.styleSheet()))
            type_ += choices(box, ground.name())
        self.setStyleSheet(type_)
