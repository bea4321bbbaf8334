"""The edge picture with its words below: where the ends meet, what is near a corner."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QPushButton, QSizePolicy, QVBoxLayout, QWidget

from app.window.edge.edge_view import EdgeView
from app.window.furniture import RowOrColumn, Sentence
from core.language import marked, told
from core.lengths import typeset

HOW = marked("Draw the start along the edge, or move it with Shift and the arrow keys")


class EdgePage(QWidget):
    """The picture, and a line that follows it while the start is moved."""

    def __init__(self) -> None:
        super().__init__()
        self.canvas = EdgeView()
        self.canvas.setToolTip(told(HOW))
        self.words = Sentence("start")
        self.words.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        self.best = QPushButton(told("Best start (B)"))
        self.best.setToolTip(
            told("Start where every join and the closing stay farthest from a corner")
        )
        self.best.clicked.connect(self.canvas.put_best)
        row = RowOrColumn(60)
        row.box.addWidget(self.words, 1)
        row.box.addWidget(self.best, 0, Qt.AlignmentFlag.AlignRight)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.canvas, 1)
        column.addWidget(row)
        self.canvas.said.connect(self._say)
        self._say("")

    def _say(self, words: str) -> None:
        self.words.say(typeset(words))
        self.best.setEnabled(bool(words))
