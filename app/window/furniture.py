"""Small widgets that several views use, so that they look and sound alike."""

from __future__ import annotations

import re
from collections.abc import Iterator

from PySide6.QtCore import QEvent, QSize, Qt
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent, QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QLabel, QTabWidget, QToolButton, QWidget

from app.window.tips import TABS
from core.language import told

_BEFORE_FRACTION = re.compile(r"(?<=\d) (?=\d+/\d)")
SCREEN_SHARE = 0.9  # of the screen, for a dialog at most


def unbroken(text: str) -> str:
    """The text, in which no line ends between a number and its fraction.

    >>> unbroken("write 50 1/2 or 12 more")
    'write 50\\xa01/2 or 12 more'
    """
    return _BEFORE_FRACTION.sub("\u00a0", text)


def group_title(text: str) -> QLabel:
    """The title of a group of parts or of a table."""
    title = QLabel(text)
    title.setObjectName("group")
    title.setWordWrap(True)
    return title


class Sentence(QLabel):
    """Room for a sentence; hidden while there is none. `name` is its look in the style sheet.

    It asks for the height of its words at the width it has. Left to its own, a form
    gives it the height that they would have on fewer, longer lines, and cuts them off.
    """

    def __init__(self, name: str) -> None:
        super().__init__()
        self.setWordWrap(True)
        self.setTextFormat(Qt.TextFormat.PlainText)  # a name like "<b>" is only a name
        self._usual, self._said = name, ""
        self.setObjectName(name)
        self.hide()

    def text(self) -> str:
        """The sentence as it was said."""
        return self._said

    def say(self, text: str, look: str = "") -> None:
        """Show a sentence; "" for none. `look` is its look, if not the usual one."""
        if self.objectName() != (name := look or self._usual):
            self.setObjectName(name)
            self.style().unpolish(self)
            self.style().polish(self)
        self._said = text
        self.setText(unbroken(text))
        self.setVisible(bool(text))
        self._take_room()

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        super().resizeEvent(event)
        self._take_room()

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 - Qt's name
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange:
            self._take_room()

    def _take_room(self) -> None:
        self.setMinimumHeight(0)  # else a label asks for no less than it has
        if self.text():
            self.setMinimumHeight(self.heightForWidth(self.width()))


class RowOrColumn(QWidget):
    """Widgets in a row; in a column where that has no room for them, or less than `letters`."""

    def __init__(self, letters: int) -> None:
        super().__init__()
        self._letters = letters
        self.box = QBoxLayout(QBoxLayout.Direction.LeftToRight, self)
        self.box.setContentsMargins(8, 4, 8, 4)

    def minimumSizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """As wide as the widest of them: it can always be a column."""
        return QSize(max(self._widths(), default=0), super().minimumSizeHint().height())

    def _widths(self) -> Iterator[int]:
        """What each needs at least, with its share of what is kept free."""
        margins, places = self.box.contentsMargins(), range(self.box.count())
        free = margins.left() + margins.right()
        for part in filter(None, map(self.box.itemAt, places)):
            yield part.minimumSize().width() + free

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        super().resizeEvent(event)
        needed = max(self._letters * self.fontMetrics().averageCharWidth(), sum(self._widths()))
        ways = QBoxLayout.Direction
        self.box.setDirection(ways.TopToBottom if self.width() < needed else ways.LeftToRight)


def quiet_button(text: str, name: str = "") -> QToolButton:
    """A flat button; `name` is what it is called where `text` says too little."""
    button = QToolButton()
    button.setText(text)
    button.setAutoRaise(True)
    if name:
        call(button, name)
    return button


def call(button: QToolButton, name: str) -> None:
    """Let a button be called that, to the eye and to a screen reader."""
    button.setAccessibleName(name)
    button.setToolTip(name)


def add_tab(tabs: QTabWidget, page: QWidget, name: str) -> None:
    """Add a page under one of the names in `TABS`, with a tool tip that says what it shows."""
    tabs.setTabToolTip(tabs.addTab(page, told(name)), told(TABS[name]))


def open_at(dialog: QWidget, letters: int, lines: int) -> None:
    """Make a dialog so many letters wide and lines high, but no larger than the screen."""
    metrics = dialog.fontMetrics()
    wanted = QSize(letters * metrics.averageCharWidth(), lines * metrics.lineSpacing())
    room = dialog.screen().availableGeometry().size() * SCREEN_SHARE
    dialog.resize(wanted.boundedTo(room))


def announce(near: QWidget, sentence: str) -> None:
    """Say something to a screen reader, whatever has the focus."""
    QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(near, sentence))


def leave(going: QWidget, near: QWidget) -> None:
    """Move the focus from what is about to go to something near it, not to wherever Qt would."""
    focused = going.window().focusWidget()
    if focused is not None and (focused is going or going.isAncestorOf(focused)):
        near.setFocus()
