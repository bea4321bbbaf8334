"""The hand's commands in menus: one of the window, and one where the picture is clicked."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMenu

from app.window.by_hand.hand import Hand
from core.by_hand.edits import any_pins, is_pinned
from core.language import marked, told
from core.quilt import Project

# Verb, words, the letter on the picture, the shortcut everywhere.
PIECE_VERBS = (
    ("pick up", marked("&Move the Piece"), "M", None),
    ("turn", marked("&Turn the Piece"), "R", None),
    ("next cloth", marked("To the &Next Cloth"), "S", None),
    ("pin", marked("&Pin or Unpin the Piece"), "P", None),
)
CLOTH_VERBS = (
    ("flaw", marked("Mark a &Flaw"), "X", "Ctrl+Shift+X"),
    ("motif", marked("Mark a Mot&if"), "G", "Ctrl+Shift+G"),
    ("best lay", marked("&Back to the Best Lay"), None, "Ctrl+Shift+B"),
)
# What the same verbs do with one piece that is pointed at.
_WITH_PIECE = {
    "pick up": marked("Move {piece}"),
    "turn": marked("Turn {piece}"),
    "next cloth": marked("{piece} to the Next Cloth"),
    "pin": marked("Pin {piece}"),
}
HAND_KEYS = (
    (
        marked("Yardage: move the chosen piece"),
        marked("M, then arrow keys; Enter puts it down, Esc back"),
    ),
    (
        marked("Yardage: while moving, one mark; to the next edge"),
        marked("Shift or Ctrl with an arrow key"),
    ),
    (marked("Yardage: turn it; to the next cloth; pin or unpin"), marked("R; S; P")),
    (
        marked("Yardage: mark a flaw; mark a motif"),
        marked("X; G, then drag, or arrow keys and Enter"),
    ),
)


def fill(menu: QMenu, hand: Hand) -> Iterator[QAction]:
    """Put every command into a menu of the window; yields those with a shortcut."""
    for verb, words, letter, keys in (*PIECE_VERBS, *CLOTH_VERBS):
        if verb == "flaw":
            menu.addSeparator()
        action = _added(menu, told(words), letter if keys is None else None, hand.verbs[verb])
        if keys is not None:
            action.setShortcut(QKeySequence(keys))
            yield action


def _added(menu: QMenu, words: str, letter: str | None, act: Callable[[], None]) -> QAction:
    """A command; a letter that works on the picture alone is shown beside it, and not bound."""
    action = menu.addAction(f"{words}\t{letter}" if letter else words)
    action.triggered.connect(lambda: act())
    return action


class ClothMenu(QMenu):
    """What can be done with a piece, or with the flaw or motif at `path`."""

    def __init__(self, hand: Hand, project: Project, key: str, path: str) -> None:
        super().__init__(hand.canvas)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        if path:
            self._said(hand, path)
        if key:
            self._piece(hand, key)
        for verb, words, letter, _ in CLOTH_VERBS:
            action = _added(self, told(words).replace("&", ""), letter, hand.verbs[verb])
            action.setEnabled(verb != "best lay" or any_pins(project))

    def _piece(self, hand: Hand, key: str) -> None:
        plan = hand.canvas.plan
        pinned = plan is not None and is_pinned(plan, key)
        for verb, _, letter, _ in PIECE_VERBS:
            unpin = verb == "pin" and pinned
            words = marked("Unpin {piece}") if unpin else _WITH_PIECE[verb]
            _added(self, told(words, piece=key), letter, hand.verbs[verb])
        self.addSeparator()

    def _said(self, hand: Hand, path: str) -> None:
        flaw = ".flaws[" in path
        if not flaw:
            takers = self.addMenu(told("Give the Motif to"))
            for taker in hand.takers(path):
                takers.addAction(taker).triggered.connect(_giver(hand, path, taker))
        change = told("Change the Flaw…") if flaw else told("Change the Motif…")
        remove = told("Remove the Flaw") if flaw else told("Remove the Motif")
        _added(self, change, None, lambda: hand.show_field(path))
        _added(self, remove, None, lambda: hand.unmark(path))
        self.addSeparator()


def _giver(hand: Hand, path: str, taker: str) -> Callable[[], None]:
    return lambda: hand.give(path, taker)


def show_menu(hand: Hand, project: Project, key: str, path: str, at: QPoint) -> None:
    """Show the menu at a place of the screen."""
    ClothMenu(hand, project, key, path).popup(at)
