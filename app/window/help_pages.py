"""Help: the job, the words of the trade, the keys, the cautions, and about the program."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from html import escape
from types import MappingProxyType
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QDialogButtonBox, QTextBrowser, QVBoxLayout, QWidget

from app.cautions import CAUTIONS
from app.version import version_text
from app.window.by_hand.cloth_menu import HAND_KEYS
from app.window.furniture import open_at
from app.window.help_guide import Look, add_pictures, steps_html
from app.window.words import ABOUT, WORDS

if TYPE_CHECKING:
    from app.window.main_window import MainWindow

CANVAS_KEYS = (
    ("Pictures: larger, smaller", "+ and −, or Ctrl with the wheel"),
    ("Pictures: fill the width", "F"),
    ("Pictures: show everything", "0"),
    ("Pictures: the nearest piece", "arrow keys; Home and End for the first and the last"),
    ("Pictures: move about", "page keys, or drag with Space or the middle button"),
    *HAND_KEYS,
    ("Edge: move the start of the binding", "drag it, or Shift with the arrow keys"),
    ("Edge: the start where joins land best", "B"),
    ("Cutting table: the cut is made", "Space"),
    ("Cutting table: a mistake, one cut back", "Backspace"),
    ("Cutting table: a cut went wrong", "W"),
    ("Cutting table: the next cloth, the one before", "page keys"),
    ("Cutting table: leave it", "Esc"),
    ("A length: a step up or down", "up and down arrow keys"),
    ("A length: back to what it was", "Esc"),
    ("A table: copy the chosen rows", "Ctrl+C"),
)


class HelpPage(QDialog):
    """Text to read beside the work: it does not block the window."""

    def __init__(self, title: str, html: str, parent: QWidget, *, lines: int = 32) -> None:
        super().__init__(parent)
        self.setWindowTitle(title)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.text = QTextBrowser()
        self.text.setAccessibleName(title)
        self.text.document().setDocumentMargin(12)
        self.text.setHtml(html)
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        buttons.rejected.connect(self.close)
        column = QVBoxLayout(self)
        column.addWidget(self.text)
        column.addWidget(buttons)
        open_at(self, 84, lines)


class Guide(HelpPage):
    """Everything on one page: the job, the words, the keys and the cautions."""

    def __init__(self, window: MainWindow) -> None:
        parts = (
            ("job", "The job, step by step", steps_html()),
            ("words", "Words", _words()),
            ("keys", "Keys", _keys(window.menus.shortcuts())),
            ("cautions", "Cautions", _cautions()),
        )
        links = " · ".join(f'<a href="#{name}">{title}</a>' for name, title, _ in parts)
        whole = "".join(
            f'<h2><a name="{name}"></a>{title}</h2>{html}' for name, title, html in parts
        )
        super().__init__("Help", "", window, lines=44)
        look = Look(window.appearance.theme(), window.photos, window.devicePixelRatioF())
        add_pictures(self.text.document(), window.plan, look)
        self.text.setHtml(f"<p>{links}</p>{whole}")

    def go_to(self, name: str) -> Guide:
        """Show a part: job, words, keys or cautions."""
        self.text.scrollToAnchor(name)
        return self


def guide(window: MainWindow) -> Guide:
    """The job in pictures, and all the other pages under it."""
    return Guide(window)


def cautions(parent: QWidget) -> HelpPage:
    """The usual cautions for blade, iron and pins."""
    return HelpPage("Cautions", _cautions(), parent)


def _cautions() -> str:
    return _list(escape(text) for text in CAUTIONS)


def words(parent: QWidget) -> HelpPage:
    """The words of the trade as this program uses them."""
    return HelpPage("Words", _words(), parent)


def _words() -> str:
    return "".join(f"<p><b>{escape(word)}</b><br>{escape(text)}</p>" for word, text in WORDS)


def keys(window: MainWindow) -> HelpPage:
    """The shortcuts of the menus, and the keys of the yardage and of the fields."""
    return HelpPage("Keys", _keys(window.menus.shortcuts()), window)


def _keys(shortcuts: Iterable[tuple[str, str]]) -> str:
    gap = "<td>&nbsp;&nbsp;&nbsp;</td>"
    rows = (
        f"<tr><td>{escape(what)}</td>{gap}<td>{escape(key)}</td></tr>"
        for what, key in (*shortcuts, *CANVAS_KEYS)
    )
    return f"<table cellspacing='4'>{''.join(rows)}</table>"


def about(parent: QWidget) -> HelpPage:
    """What the program is."""
    paragraphs = "".join(f"<p>{escape(text)}</p>" for text in ABOUT)
    return HelpPage(
        "About Crossgrain", f"<h2>Crossgrain {version_text()}</h2>{paragraphs}", parent, lines=18
    )


def _list(items: Iterable[str]) -> str:
    points = (f"<li style='margin-bottom:8px'>{item}</li>" for item in items)
    return f"<ul>{''.join(points)}</ul>"


# The pages by the names that the Help menu has for them.
PAGES: Mapping[str, Callable[[MainWindow], HelpPage]] = MappingProxyType(
    {"guide": guide, "cautions": cautions, "words": words, "keys": keys, "about": about}
)
