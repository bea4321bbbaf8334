"""The middle of the window: yardage and quilt, with zoom, and a line when no plan is to be had."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QSizePolicy,
    QTabWidget,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from app.style import Theme
from app.window.canvas import Canvas
from app.window.furniture import Sentence, quiet_button
from app.window.yardage import QuiltView, YardageView
from core.plan import Plan


class Banner(QFrame):
    """One sentence above the pictures, and a button that leads to its field."""

    def __init__(self) -> None:
        super().__init__()
        self.hide()
        self.text = Sentence("banner")
        self.text.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        self.go = QToolButton()
        self.go.setText("Go to the field")
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 8, 0)
        row.addWidget(self.text, 1)
        row.addWidget(self.go)

    def tell(self, sentence: str, *, leads: bool = True) -> None:
        """Show a sentence, and the button if it `leads` to a field; "" hides the banner."""
        self.text.say(sentence)
        self.go.setVisible(leads)
        self.setVisible(bool(sentence))


class Centre(QWidget):
    """Emits `picked(key)` for a piece that is clicked."""

    picked = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.banner = Banner()
        self.yardage = YardageView()
        self.quilt = QuiltView()
        self.tabs = QTabWidget(documentMode=True)
        self.tabs.addTab(self.yardage, "Yardage")
        self.tabs.addTab(self.quilt, "Quilt")
        self.tabs.tabBar().setAccessibleName("Pictures")
        self.tabs.setCornerWidget(self._zoom_buttons())
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.banner)
        column.addWidget(self.tabs)
        for canvas in (self.yardage, self.quilt):
            canvas.picked.connect(self.picked)

    def _zoom_buttons(self) -> QWidget:
        buttons = QWidget()
        row = QHBoxLayout(buttons)
        row.setContentsMargins(0, 0, 4, 2)
        row.setSpacing(2)
        for text, name, act in (
            ("−", "Smaller", self.zoom_out),
            ("+", "Larger", self.zoom_in),
            ("Fill width", "Fill the width", self.fit_width),
            ("Show all", "Show everything", self.fit_all),
        ):
            button = quiet_button(text, name)
            button.clicked.connect(act)
            row.addWidget(button)
        return buttons

    @property
    def canvas(self) -> Canvas:
        """The picture in front."""
        return self.yardage if self.tabs.currentWidget() is self.yardage else self.quilt

    def show_plan(self, plan: Plan) -> None:
        """Draw a plan, in both pictures."""
        self.yardage.show_plan(plan)
        self.quilt.show_plan(plan)

    def set_theme(self, theme: Theme) -> None:
        """Draw in another theme."""
        for canvas in (self.yardage, self.quilt):
            canvas.set_theme(theme)

    def choose(self, keys: frozenset[str]) -> None:
        """Ring these pieces, in both pictures."""
        for canvas in (self.yardage, self.quilt):
            canvas.choose(keys)

    def zoom_in(self) -> None:
        self.canvas.zoom_in()

    def zoom_out(self) -> None:
        self.canvas.zoom_out()

    def fit_width(self) -> None:
        self.canvas.fit_width()

    def fit_all(self) -> None:
        self.canvas.fit_all()
