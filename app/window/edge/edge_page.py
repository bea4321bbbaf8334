"""The edge picture with its words below: where the ends meet, what is near a corner."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from app.window.edge.edge_view import EdgeView
from app.window.furniture import Sentence
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
        row = QHBoxLayout()
        row.setContentsMargins(8, 4, 8, 4)
        row.addWidget(self.words, 1)
        row.addWidget(self.best)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.canvas, 1)
        column.addLayout(row)
        self.canvas.said.connect(self._say)
        self._say("")

    def _say(self, words: str) -> None:
        self.words.say(typeset(words))
        self.best.setEnabled(bool(words))
