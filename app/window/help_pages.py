"""Help: the job, the words of the trade, the keys, the cautions, and about the program."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from html import escape
from types import MappingProxyType
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QDialogButtonBox, QTextBrowser, QVBoxLayout, QWidget

from app.cautions import CAUTIONS
from app.version import version_text
from app.window.by_hand.cloth_menu import HAND_KEYS
from app.window.furniture import open_at, unbroken
from app.window.help_guide import Look, add_pictures, steps_html
from app.window.words import ABOUT, glossary
from core.language import marked, told

if TYPE_CHECKING:
    from app.window.main_window import MainWindow

CANVAS_KEYS = (
    (marked("Pictures: larger, smaller"), marked("+ and −, or Ctrl with the wheel")),
    (marked("Pictures: fill the width"), "F"),
    (marked("Pictures: show everything"), "0"),
    (
        marked("Pictures: the nearest piece"),
        marked("arrow keys; Home and End for the first and the last"),
    ),
    (marked("Pictures: move about"), marked("page keys, or drag with Space or the middle button")),
    *HAND_KEYS,
    (
        marked("Edge: move the start of the binding"),
        marked("drag it, or Shift with the arrow keys"),
    ),
    (marked("Edge: the start where joins land best"), "B"),
    (marked("Cutting table: the cut is made"), marked("Space")),
    (marked("Cutting table: a mistake, one cut back"), marked("Backspace")),
    (marked("Cutting table: a cut went wrong"), "W"),
    (marked("Cutting table: the next cloth, the one before"), marked("page keys")),
    (marked("Cutting table: leave it"), marked("Esc")),
    (marked("A length: a step up or down"), marked("up and down arrow keys")),
    (marked("A length: back to what it was"), marked("Esc")),
    (marked("A table: copy the chosen rows"), marked("Ctrl+C")),
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
        self.text.document().setIndentWidth(2 * self.fontMetrics().averageCharWidth())
        self.text.setHtml(unbroken(html))
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
            ("job", told("The job, step by step"), steps_html()),
            ("words", told("Words"), _words()),
            ("keys", told("Keys"), _keys(window.menus.shortcuts())),
            ("cautions", told("Cautions"), _cautions()),
        )
        links = " · ".join(f'<a href="#{name}">{title}</a>' for name, title, _ in parts)
        whole = "".join(
            f'<h2><a name="{name}"></a>{title}</h2>{html}' for name, title, html in parts
        )
        super().__init__(told("Help"), "", window, lines=44)
        look = Look(window.appearance.theme(), window.photos, window.devicePixelRatioF())
        add_pictures(self.text.document(), window.plan, look)
        self.text.setHtml(unbroken(f"<p>{links}</p>{whole}"))

    def go_to(self, name: str) -> Guide:
        """Show a part: job, words, keys or cautions."""
        self.text.scrollToAnchor(name)
        return self


def guide(window: MainWindow) -> Guide:
    """The job in pictures, and all the other pages under it."""
    return Guide(window)


def cautions(parent: QWidget) -> HelpPage:
    """The usual cautions for blade, iron and pins."""
    return HelpPage(told("Cautions"), _cautions(), parent)


def _cautions() -> str:
    return _list(escape(told(text)) for text in CAUTIONS)


def words(parent: QWidget) -> HelpPage:
    """The words of the trade as this program uses them."""
    return HelpPage(told("Words"), _words(), parent)


def _words() -> str:
    return "".join(f"<p><b>{escape(word)}</b><br>{escape(text)}</p>" for word, text in glossary())


def keys(window: MainWindow) -> HelpPage:
    """The shortcuts of the menus, and the keys of the yardage and of the fields."""
    return HelpPage(told("Keys"), _keys(window.menus.shortcuts()), window)


def _keys(shortcuts: Iterable[tuple[str, str]]) -> str:
    rows = (
        f"<tr><td width='50%'>{escape(what)}</td><td>{escape(key)}</td></tr>"
        for what, key in (*shortcuts, *_canvas_keys())
    )
    return f"<table width='100%' cellspacing='6'>{''.join(rows)}</table>"


def _canvas_keys() -> Iterator[tuple[str, str]]:
    return ((told(what), told(keys)) for what, keys in CANVAS_KEYS)


def about(parent: QWidget) -> HelpPage:
    """What the program is."""
    paragraphs = "".join(f"<p>{escape(told(text))}</p>" for text in ABOUT)
    return HelpPage(
        told("About Crossgrain"),
        f"<h2>Crossgrain {version_text()}</h2>{paragraphs}",
        parent,
        lines=18,
    )


def _list(items: Iterable[str]) -> str:
    points = (f"<li style='margin-bottom:8px'>{item}</li>" for item in items)
    return f"<ul>{''.join(points)}</ul>"


# The pages by the names that the Help menu has for them.
PAGES: Mapping[str, Callable[[MainWindow], HelpPage]] = MappingProxyType(
    {"guide": guide, "cautions": cautions, "words": words, "keys": keys, "about": about}
)
