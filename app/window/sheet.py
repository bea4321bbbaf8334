"""The window's style sheet: sizes and gaps; colours come from the palette wherever it has one."""

from __future__ import annotations

import re

from app.assets import asset
from app.colour import BLACK, ink_on
from app.window.palettes import Paint, Roles

MARK = 13  # pixels of a box to tick, beside words of the usual size
ARROW = 9  # pixels of an arrow in a field
INDENT = 26  # pixels beside the words of a menu
TAB_AIR = 16  # pixels above and below the words of a tab

_USUAL = """
/* words at {percent} % */
QLabel#group {{ font-weight: bold; padding: 4px 0 2px 0; }}
QLabel#problem {{ color: {problem}; }}
QLabel#banner {{ color: {problem}; padding: 6px 10px; }}
QLabel#note {{ color: palette(placeholder-text); }}
QLabel#waiting {{ padding: 6px 10px; }}
QFrame#warned {{ border: {line}px solid {mind}; border-left: 5px solid {mind}; }}
QToolButton#add::menu-indicator, QToolButton#part-menu::menu-indicator {{ image: none; width: 0; }}
QToolButton#part-menu {{ padding: 3px 8px; }}
QGraphicsView {{ border: {focus}px solid transparent; }}
QGraphicsView:focus {{ border: {focus}px solid palette(highlight); }}
"""
# No icons beside words that say it all: they do not grow with them, and are black on black.
# What is to be ticked grows with the words beside it, and so do arrows. Of tabs behind the one
# in front the style cuts off the tails of letters.
_FUSION = """
QDialogButtonBox {{ dialogbuttonbox-buttons-have-icons: 0; }}
QMessageBox QLabel#qt_msgbox_label {{ font-weight: bold; }}
QToolTip {{ background: {tip}; color: {tip_words}; border: 1px solid {tip_words};
    padding: 2px 4px; }}
QMenu::indicator {{ left: 5px; }}
QMenu::item {{ padding: 3px {indent}px; }}
QMenu::item:selected {{ background: palette(highlight); color: palette(highlighted-text); }}
QMenu::right-arrow {{ image: url({right}); width: {mark}px; height: {mark}px; }}
QMenu::separator {{ height: 1px; background: palette(placeholder-text); }}
QTabBar::tab {{ min-height: {tab}px; }}
QTabBar::scroller {{ width: {scroller}px; }}
QAbstractButton::right-arrow {{ image: url({right}); }}
QAbstractButton::left-arrow {{ image: url({left}); }}
QAbstractButton::down-arrow {{ image: url({down}); }}
QToolButton#more::right-arrow, QToolButton#more::down-arrow {{ padding: 3px; }}
QAbstractButton::right-arrow:disabled, QAbstractButton::left-arrow:disabled {{ image: none; }}
"""
_TICKED = """
QCheckBox::indicator, QRadioButton::indicator, QListWidget::indicator, QMenu::indicator {{
    width: {mark}px; height: {mark}px; }}
QListWidget::item {{ min-height: {high}px; }}
"""
_BORDER = re.compile(r"::indicator \{\s*border: (\d)px")
_CHOICE = """
QComboBox::drop-down {{ width: {button}px; border: none; }}
QComboBox::down-arrow {{ image: url({down}); width: {arrow}px; height: {arrow}px; }}
"""
_ROUND = """
QRadioButton::indicator {{ border-radius: {radius}px; }}
"""
# Fusion's own frames are a darker shade of the ground: too little in the dark, nothing on black.
_FRAMED = """
QLineEdit, QListWidget, QTextBrowser, QPushButton, QComboBox, QAbstractSpinBox, QMenu, QToolTip {{
    border: {line}px solid {frame}; }}
QLineEdit {{ padding: 1px; }}
QComboBox {{ padding: 1px 3px; }}
QAbstractSpinBox QLineEdit {{ border: none; }}
QPushButton {{ padding: 4px 12px; }}
QPushButton:disabled {{ border-style: dotted; }}
QLineEdit:focus, QListWidget:focus, QTextBrowser:focus, QPushButton:focus, QPushButton:hover,
QComboBox:focus, QAbstractSpinBox:focus {{ border-color: {focused}; }}
QAbstractSpinBox::up-button, QAbstractSpinBox::down-button {{ width: {button}px; border: none; }}
QAbstractSpinBox::up-arrow {{ image: url({up}); width: {arrow}px; height: {arrow}px; }}
QAbstractSpinBox::down-arrow {{ image: url({down}); width: {arrow}px; height: {arrow}px; }}
QCheckBox::indicator, QRadioButton::indicator, QListWidget::indicator, QMenu::indicator {{
    border: {line}px solid {frame}; }}
QCheckBox::indicator:checked, QRadioButton::indicator:checked, QListWidget::indicator:checked,
QMenu::indicator:checked {{ background: palette(highlight); image: url({tick}); }}
QCheckBox::indicator:checked:disabled, QRadioButton::indicator:checked:disabled {{
    background: {frame}; }}
QCheckBox::indicator:focus, QRadioButton::indicator:focus {{ border-color: {focused}; }}
QProgressBar {{ border: {line}px solid {frame}; }}
QProgressBar::chunk {{ background: palette(highlight); }}
"""
_CONTRAST = """
QLabel#note { color: palette(text); }
QToolButton { border: 2px solid palette(text); padding: 2px 6px; }
QToolButton:disabled { border-style: dotted; }
QToolBar QToolButton { margin: 1px; }
QTableView { border: 2px solid transparent; }
QTableView:focus, QToolButton:focus, QToolButton:hover { border-color: palette(highlight); }
QTabBar QToolButton { padding: 0; }
QTabBar::tab { min-height: 0; border: 2px solid palette(text); padding: 4px 10px; margin: 2px; }
QTabBar::tab:selected { background: palette(highlight); color: palette(highlighted-text); }
QTabBar::tab:focus { border-style: dashed; }
QHeaderView::section {
    background: palette(window); border: none; border-bottom: 2px solid palette(text);
    padding: 2px 4px; }
QSplitter::handle { background: palette(text); }
QScrollBar { background: palette(base); border: 1px solid palette(text); }
QScrollBar:vertical { width: 16px; }
QScrollBar:horizontal { height: 16px; }
QScrollBar::handle { background: palette(text); margin: 2px; }
QScrollBar::handle:vertical { min-height: 24px; }
QScrollBar::handle:horizontal { min-width: 24px; }
QScrollBar::handle:hover { background: palette(highlight); }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
QScrollBar::add-page, QScrollBar::sub-page { background: none; }
QMenu::separator { height: 2px; background: palette(text); }
"""


def sheet(paint: Paint, *, contrast: bool, percent: int, letters: int, fusion: bool) -> str:
    """The sheet for a palette; naming the size of words makes Qt read it anew for another.

    `letters` is how many pixels a line of words is high. Only `fusion` gets other frames and
    arrows: a system's own style has those that it means to have.
    """
    line = 2 if contrast else 1
    usual = _USUAL.format(
        percent=percent,
        problem=paint.problem,
        mind=paint.mind,
        line=line,
        focus=4 if contrast else 2,
    )
    if not fusion:
        return usual
    usual += _FUSION.format(
        tab=letters + TAB_AIR,
        tip=paint.colours[Roles.ToolTipBase],
        tip_words=paint.colours[Roles.ToolTipText],
        **_sizes(percent),
        **_marks(paint),
    )
    usual += ticked(_sizes(percent)["mark"], line if paint.frame else 0)
    usual += choices(_sizes(percent)["arrow"], paint.colours[Roles.Window])
    if not paint.frame:
        return usual
    return usual + _framed(paint, line, percent) + (_CONTRAST if contrast else "")


def ticked(mark: int, border: int) -> str:
    """The rules for what is to be ticked, so wide within a border; 0 where the style draws it."""
    return _TICKED.format(mark=mark, high=mark + 2 * border + 2) + (
        _ROUND.format(radius=mark // 2 + border) if border else ""
    )


def border_of_ticked(text: str) -> int:
    """How wide a sheet draws the border of what is to be ticked; 0 if it does not.

    >>> border_of_ticked("QMenu::indicator { border: 2px solid #000000; }")
    2
    """
    found = _BORDER.search(text)
    return int(found[1]) if found else 0


def choices(arrow: int, ground: str) -> str:
    """The rules for the arrow of a choice, so wide on a ground."""
    down = _mark("down-black" if ink_on(ground) == BLACK else "down-white")
    return _CHOICE.format(button=2 * arrow, arrow=arrow, down=down)


def _framed(paint: Paint, line: int, percent: int) -> str:
    return _FRAMED.format(
        line=line,
        frame=paint.frame,
        focused=paint.colours[Roles.Link],
        **_sizes(percent),
        **_marks(paint),
    )


def _sizes(percent: int) -> dict[str, int]:
    """Pixels of what grows with the words."""
    usual = {
        "mark": MARK, "arrow": ARROW, "button": 2 * ARROW, "scroller": 4 * ARROW, "indent": INDENT,
    }  # fmt: skip
    return {name: round(pixels * percent / 100) for name, pixels in usual.items()}


def _marks(paint: Paint) -> dict[str, str]:
    """Pictures of arrows on the ground, and of a tick on the accent."""
    on_ground, on_accent = (
        "black" if ink_on(paint.colours[role]) == BLACK else "white"
        for role in (Roles.Window, Roles.Highlight)
    )
    arrows = {name: _mark(f"{name}-{on_ground}") for name in ("up", "down", "left", "right")}
    return {**arrows, "tick": _mark(f"tick-{on_accent}")}


def _mark(name: str) -> str:
    return asset(f"marks/{name}.svg").as_posix()
