"""The top of the cutting table: how far the cloth is cut, which cloth it is, the way out."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QComboBox,
    QHBoxLayout,
    QProgressBar,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from app.window.cutting.pages import Words, shorten
from app.wording import upper_first
from core.cutting.cutting import Cutting
from core.cutting.words import cloth_of_kit, progress_words
from core.language import told


class TableTop(QWidget):
    """Nothing in it takes the focus: keys mean what they mean on the page below."""

    def __init__(self) -> None:
        super().__init__()
        self.progress = Words()
        self.bar = QProgressBar()
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName(told("How far the cloth is cut"))
        self.cloths = QComboBox()
        self.cloths.setAccessibleName(told("Cloth"))
        shorten(self.cloths)
        self.cloths.hide()
        self.leave = QPushButton(told("Leave (Esc)"))
        self.leave.setAutoDefault(False)
        for widget in (self.cloths, self.leave):
            widget.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        row = QHBoxLayout()
        row.addWidget(self.progress, 1)
        row.addWidget(self.cloths)
        row.addWidget(self.leave)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addLayout(row)
        column.addWidget(self.bar)

    def list_cloths(self, cutting: Cutting) -> None:
        """Offer the cloths, where there are several."""
        self.cloths.clear()
        for cloth in cutting.cloths:
            self.cloths.addItem(cloth_of_kit(cutting, cloth))
        self.cloths.setVisible(len(cutting.cloths) > 1)

    def show_progress(self, cutting: Cutting, place: int) -> None:
        """Say how far the cloth at `place` is cut."""
        cloth = cutting.cloths[place]
        self.cloths.setCurrentIndex(place)
        self.progress.say(upper_first(progress_words(cutting, cloth)))
        self.bar.setMaximum(max(len(cloth.order.cuts), 1))
        self.bar.setValue(cloth.cuts_done if cloth.order.cuts else 1)
