"""What stands in the way of a plan, in one sentence above the pictures."""

from __future__ import annotations

from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QScrollArea, QToolButton

from app.window.furniture import Sentence, announce
from core.language import told

MOST_LINES = 5  # in sight; what is longer is scrolled, to leave the pictures room


class Banner(QFrame):
    """One sentence above the pictures, and a button: to its field, or to plan `again`."""

    def __init__(self) -> None:
        super().__init__()
        self.hide()
        self.text = Sentence("banner")
        self.page = QScrollArea()
        self.page.setFrameShape(QFrame.Shape.NoFrame)
        self.page.setWidgetResizable(True)
        self.page.setWidget(self.text)
        self.page.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.go = QToolButton()
        self.go.setText(told("Go to the field"))
        self.again = QToolButton()
        self.again.setText(told("Plan again"))
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 8, 0)
        row.addWidget(self.page, 1)
        row.addWidget(self.go)
        row.addWidget(self.again)

    def tell(self, sentence: str, *, leads: bool = True) -> None:
        """Show a sentence that `leads` to a field, or asks to plan again; "" hides the banner."""
        if sentence and sentence != self.text.text():
            announce(self, sentence)
        self.text.say(sentence)
        self.go.setVisible(leads)
        self.again.setHidden(leads)
        self.setVisible(bool(sentence))
        self._take_room()

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        super().resizeEvent(event)
        self._take_room()

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 - Qt's name
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange and hasattr(self, "page"):
            self._take_room()

    def _take_room(self) -> None:
        if not self.text.text():
            return
        most = MOST_LINES * self.fontMetrics().lineSpacing()
        high = self.text.heightForWidth(self.page.viewport().width())
        self.page.setFixedHeight(min(high, most))
        policies = Qt.FocusPolicy
        self.page.setFocusPolicy(policies.StrongFocus if high > most else policies.NoFocus)
