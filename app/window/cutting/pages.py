"""The pages of the cutting table: the cut to make, and a sentence with what may be done."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import (
    QComboBox,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from app.style import Theme
from app.window.cutting.cut_picture import CutPicture
from core.cutting.cuts import TableCut
from core.cutting.order import Order
from core.cutting.words import cut_words
from core.drawing.in_hand import draw_in_hand
from core.language import told
from core.lengths import Units, typeset
from core.table import Table

SHORT = 16  # letters of a text in a box at least
TALL = 2.1  # times its words: a button that is hit without aiming


class Words(QLabel):
    """Words of any length; `name` is their look. Without any it hides, unless it is to `stay`."""

    def __init__(self, name: str = "", *, stay: bool = False) -> None:
        super().__init__()
        self.setWordWrap(True)
        self.setMinimumWidth(1)  # else as wide as its longest word, which may be anybody's name
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setObjectName(name)
        self._stay = stay

    def say(self, text: str) -> None:
        self.setText(typeset(text))
        self.setVisible(self._stay or bool(text))


def shorten(box: QComboBox) -> None:
    """Let a box be as narrow as `SHORT` letters, however long its texts are."""
    box.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
    box.setMinimumContentsLength(SHORT)


class BigButton(QPushButton):
    """A button to hit with half an eye on it."""

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        words = self.fontMetrics()
        wide = words.horizontalAdvance(self.text()) + 2 * words.height()
        return QSize(wide, round(TALL * words.height()))

    def minimumSizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        return self.sizeHint()


@dataclass(frozen=True, slots=True)
class Choice:
    """One thing that may be done, and what its button says."""

    words: str
    act: Callable[[], None]


class CutPage(QWidget):
    """One cut: what to measure from where, the cloth in hand, what falls off.

    The buttons take no focus, so that Space means the same wherever it is pressed.
    """

    def __init__(self, theme: Theme, done: Choice, back: Choice, wrong: Choice) -> None:
        super().__init__()
        self.do, self.hold = Words("headline"), Words(stay=True)
        self.gives, self.mind = Words(stay=True), Words()
        self.picture = CutPicture(theme)
        self.done = self._button(done, Qt.Key.Key_Space, told("Space"))
        self.back = self._button(back, Qt.Key.Key_Backspace, told("Backspace"))
        self.wrong = self._button(wrong, Qt.Key.Key_W, "W")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        for words in (self.do, self.hold):
            column.addWidget(words)
        column.addWidget(self.picture, 1)
        for words in (self.gives, self.mind):
            column.addWidget(words)
        row = QHBoxLayout()
        row.addWidget(self.back)
        row.addWidget(self.wrong)
        row.addWidget(self.done, 1)
        column.addLayout(row)

    def _button(self, choice: Choice, key: Qt.Key, name: str) -> BigButton:
        button = BigButton(f"{choice.words} ({name})")
        button.setAccessibleName(choice.words)
        button.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        button.setAutoDefault(False)
        button.clicked.connect(lambda: choice.act())
        shortcut = QShortcut(QKeySequence(key), self, autoRepeat=False)
        shortcut.activated.connect(button.click)
        return button

    def show_cut(self, order: Order, cut: TableCut, units: Units, table: Table) -> None:
        """Show a cut, its lengths in `units`, as it is made on `table`."""
        words = cut_words(order, cut, units, table)
        self.do.say(words.do)
        self.hold.say(words.hold)
        self.gives.say(words.gives)
        self.mind.say(words.mind)
        self.picture.show_drawing(draw_in_hand(order, cut, units), f"{words.do} {words.gives}")


class SayPage(QWidget):
    """A headline, a few sentences, and what may be done, the usual first."""

    def __init__(self) -> None:
        super().__init__()
        self.title, self.text = Words("headline"), Words()
        self.buttons: list[BigButton] = []
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addStretch(1)
        column.addWidget(self.title)
        column.addWidget(self.text)
        self._choices = QVBoxLayout()
        column.addSpacing(self.fontMetrics().height())
        column.addLayout(self._choices)
        column.addStretch(2)

    def show_choices(self, title: str, text: str, choices: Sequence[Choice]) -> None:
        """Say this, and offer these."""
        self.title.say(title)
        self.text.say(text)
        for button in self.buttons:
            self._choices.removeWidget(button)
            button.hide()
            button.deleteLater()
        self.buttons = [self._button(choice) for choice in choices]
        for button in self.buttons:
            self._choices.addWidget(button)
            button.show()  # at once, since what is not seen yet takes no focus

    def _button(self, choice: Choice) -> BigButton:
        button = BigButton(choice.words)
        button.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        button.clicked.connect(lambda: choice.act())
        return button

    def take_focus(self) -> None:
        """The usual choice is made with Space or Enter."""
        self.buttons[0].setDefault(True)
        self.buttons[0].setFocus()
