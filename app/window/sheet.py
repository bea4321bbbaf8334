"""The window's style sheet: sizes and gaps; colours come from the palette wherever it has one."""

from __future__ import annotations

from PySide6.QtGui import QPalette

from app.assets import asset
from app.colour import BLACK
from app.window.palettes import Paint

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
# Fusion's own frames are a darker shade of the ground, which black has none of. The arrows of
# a number's field would be as dark; the arrow keys do what they do.
_CONTRAST = """
QLineEdit, QListWidget, QTextBrowser, QPushButton, QComboBox, QAbstractSpinBox, QMenu, QToolTip {
    border: 2px solid palette(text); }
QPushButton { padding: 4px 12px; }
QToolButton { border: 2px solid palette(text); padding: 2px 6px; }
QToolButton:disabled, QPushButton:disabled { border-style: dotted; }
QAbstractSpinBox QLineEdit { border: none; }
QAbstractSpinBox::up-button, QAbstractSpinBox::down-button { width: 0; border: none; }
QCheckBox::indicator, QListWidget::indicator, QMenu::indicator {
    width: 14px; height: 14px; border: 2px solid palette(text); }
QCheckBox::indicator:checked, QListWidget::indicator:checked, QMenu::indicator:checked {
    background: palette(highlight); image: url(TICK); }
QCheckBox::indicator:focus { border-color: palette(highlight); }
QTabBar QToolButton { padding: 0; }
QTableView { border: 2px solid transparent; }
QLineEdit:focus, QListWidget:focus, QTextBrowser:focus, QTableView:focus, QPushButton:focus,
QToolButton:focus, QToolButton:hover, QPushButton:hover, QComboBox:focus, QAbstractSpinBox:focus {
    border-color: palette(highlight); }
QTabBar::tab { border: 2px solid palette(text); padding: 4px 10px; margin: 2px; }
QTabBar::tab:selected { background: palette(highlight); color: palette(highlighted-text); }
QTabBar::tab:focus { border-style: dashed; }
QHeaderView::section {
    background: palette(window); border: none; border-bottom: 2px solid palette(text);
    padding: 2px 4px; }
QSplitter::handle { background: palette(text); }
QMenu::separator { height: 2px; background: palette(text); }
QMenu::item { padding: 4px 24px; }
QMenu::item:selected { background: palette(highlight); color: palette(highlighted-text); }
"""


def sheet(paint: Paint, *, contrast: bool, percent: int) -> str:
    """The sheet for a palette; naming the size of words makes Qt read it anew for another."""
    usual = _USUAL.format(
        percent=percent,
        problem=paint.problem,
        mind=paint.mind,
        line=2 if contrast else 1,
        focus=4 if contrast else 2,
    )
    if not contrast:
        return usual
    on_accent = paint.colours[QPalette.ColorRole.HighlightedText]
    tick = asset("tick-black.svg" if on_accent == BLACK else "tick-white.svg")
    return usual + _CONTRAST.replace("TICK", tick.as_posix())
