"""The window's style sheet: sizes and gaps; colours come from the palette wherever it has one."""

from __future__ import annotations

from PySide6.QtGui import QPalette

from app.assets import asset
from app.colour import BLACK
from app.window.palettes import Paint

MARK = 13  # pixels of a box to tick, beside words of the usual size
ARROW = 9  # pixels of an arrow in a field

_USUAL = """
/* words at {percent} % */
QLabel#group {{ font-weight: bold; padding: 4px 0 2px 0; }}
QLabel#problem {{ color: {problem}; }}
QLabel#banner {{ color: {problem}; padding: 6px 10px; }}
QLabel#note {{ color: palette(placeholder-text); }}
QFrame#warned {{ border: {line}px solid {mind}; border-left: 5px solid {mind}; }}
QToolButton#add::menu-indicator, QToolButton#part-menu::menu-indicator {{ image: none; width: 0; }}
QToolButton#part-menu {{ padding: 3px 8px; }}
QGraphicsView {{ border: {focus}px solid transparent; }}
QGraphicsView:focus {{ border: {focus}px solid palette(highlight); }}
"""
# No icons beside words that say it all: they do not grow with them, and are black on black.
# What is to be ticked grows with the words beside it.
_FUSION = """
QDialogButtonBox {{ dialogbuttonbox-buttons-have-icons: 0; }}
QMessageBox QLabel#qt_msgbox_label {{ font-weight: bold; }}
QCheckBox::indicator, QRadioButton::indicator, QListWidget::indicator, QMenu::indicator {{
    width: {mark}px; height: {mark}px; }}
"""
# Fusion's own frames are a darker shade of the ground: too little in the dark, nothing on black.
_FRAMED = """
QLineEdit, QListWidget, QTextBrowser, QPushButton, QComboBox, QAbstractSpinBox, QMenu, QToolTip {{
    border: {line}px solid {frame}; }}
QAbstractSpinBox QLineEdit {{ border: none; }}
QLineEdit, QComboBox {{ padding-left: 3px; }}
QPushButton {{ padding: 4px 12px; }}
QPushButton:disabled {{ border-style: dotted; }}
QLineEdit:focus, QListWidget:focus, QTextBrowser:focus, QPushButton:focus, QPushButton:hover,
QComboBox:focus, QAbstractSpinBox:focus {{ border-color: {focused}; }}
QAbstractSpinBox::up-button, QAbstractSpinBox::down-button {{ width: {button}px; border: none; }}
QComboBox::drop-down {{ width: {button}px; border: none; }}
QAbstractSpinBox::up-arrow {{ image: url({up}); width: {arrow}px; height: {arrow}px; }}
QAbstractSpinBox::down-arrow, QComboBox::down-arrow {{
    image: url({down}); width: {arrow}px; height: {arrow}px; }}
QCheckBox::indicator, QRadioButton::indicator, QListWidget::indicator, QMenu::indicator {{
    border: {line}px solid {frame}; }}
QCheckBox::indicator:checked, QRadioButton::indicator:checked, QListWidget::indicator:checked,
QMenu::indicator:checked {{ background: palette(highlight); image: url({tick}); }}
QCheckBox::indicator:checked:disabled, QRadioButton::indicator:checked:disabled {{
    background: {frame}; }}
QCheckBox::indicator:focus, QRadioButton::indicator:focus {{ border-color: {focused}; }}
QRadioButton::indicator {{ border-radius: {round}px; }}
QProgressBar {{ border: {line}px solid {frame}; }}
QProgressBar::chunk {{ background: palette(highlight); }}
"""
_CONTRAST = """
QLabel#note { color: palette(text); }
QToolButton { border: 2px solid palette(text); padding: 2px 6px; }
QToolButton:disabled { border-style: dotted; }
QTableView { border: 2px solid transparent; }
QTableView:focus, QToolButton:focus, QToolButton:hover { border-color: palette(highlight); }
QTabBar QToolButton { padding: 0; }
QTabBar::tab { border: 2px solid palette(text); padding: 4px 10px; margin: 2px; }
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
QMenu::item { padding: 4px 24px; }
QMenu::item:selected { background: palette(highlight); color: palette(highlighted-text); }
"""


def sheet(paint: Paint, *, contrast: bool, percent: int, fusion: bool) -> str:
    """The sheet for a palette; naming the size of words makes Qt read it anew for another.

    Only `fusion` gets other frames: a system's own style has those that it means to have.
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
    usual += _FUSION.format(mark=_grown(MARK, percent))
    if not paint.frame:
        return usual
    return usual + _framed(paint, line, percent) + (_CONTRAST if contrast else "")


def _grown(pixels: int, percent: int) -> int:
    return round(pixels * percent / 100)


def _framed(paint: Paint, line: int, percent: int) -> str:
    roles = QPalette.ColorRole
    on_ground, on_accent = (
        "black" if paint.colours[role] == BLACK else "white"
        for role in (roles.Text, roles.HighlightedText)
    )
    return _FRAMED.format(
        line=line,
        frame=paint.frame,
        round=_grown(MARK, percent) // 2 + line,
        arrow=_grown(ARROW, percent),
        button=_grown(2 * ARROW, percent),
        focused=paint.colours[roles.Link],
        up=_mark(f"up-{on_ground}"),
        down=_mark(f"down-{on_ground}"),
        tick=_mark(f"tick-{on_accent}"),
    )


def _mark(name: str) -> str:
    return asset(f"marks/{name}.svg").as_posix()
