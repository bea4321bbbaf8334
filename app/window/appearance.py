"""How the window looks: light, dark or in high contrast, its colours, the size of its words.

On "as the system" the platform's own style and palette stay, and its wish for
high contrast is followed. A choice gets the Fusion style with a palette of ours,
since not every platform can be asked to change. The canvas takes its theme from
what the palette turns out to be.
"""

from __future__ import annotations

from dataclasses import replace
from enum import Enum
from typing import TypeVar

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QFont, QFontMetrics, QPalette
from PySide6.QtWidgets import QApplication

from app.colour import contrast
from app.screen_styles import screen_theme
from app.style import Theme
from app.window.memory import Memory
from app.window.palettes import CONTRAST_DARK, CONTRAST_LIGHT, DARK, LIGHT, Paint
from app.window.sheet import sheet

Choice = TypeVar("Choice", bound=Enum)
Roles = QPalette.ColorRole


class Look(Enum):
    """What the person chose; the value is how it is remembered."""

    SYSTEM = "system"
    LIGHT = "light"
    DARK = "dark"
    CONTRAST_DARK = "contrast"
    CONTRAST_LIGHT = "contrast on white"


class Colours(Enum):
    """The pictures' set of colours and hatches; the value is how it is remembered."""

    USUAL = "usual"
    SAFE = "safe"


_PAINTS = {
    Look.LIGHT: LIGHT,
    Look.DARK: DARK,
    Look.CONTRAST_DARK: CONTRAST_DARK,
    Look.CONTRAST_LIGHT: CONTRAST_LIGHT,
}
# Percent of the system's own size of letters.
TEXT_SIZES = (100, 125, 150, 175, 200)
PURE = 20.0  # to one: only black and white are further apart, and only high contrast has them


class Appearance(QObject):
    """The application's look. Emits `changed` when pictures are to be painted anew."""

    changed = Signal()

    def __init__(self, application: QApplication, *, closely: bool = True) -> None:
        """Not `closely`: until `look_closely`, the system is not asked for its settings."""
        super().__init__()
        self._closely = closely
        self._application = application
        self._own_style = application.style().objectName()  # before a sheet hides it
        self._own_font = QFont(application.font())
        self.look = Look.SYSTEM
        self.colours = Colours.USUAL
        self.text_percent = TEXT_SIZES[0]
        self._dress()

    def look_closely(self) -> None:
        """Ask the system for its settings too, from now on."""
        self._closely = True
        self.follow()

    def wear(self, look: Look) -> None:
        """Change the look of every window."""
        self.look = look
        hints = self._application.styleHints()
        if look is Look.SYSTEM:
            hints.unsetColorScheme()
            self._application.setStyle(self._own_style)
            self._application.setPalette(QPalette())
        else:
            from PySide6.QtCore import Qt  # only now: the window is seen sooner without it

            palette, scheme = _PAINTS[look].palette(), Qt.ColorScheme
            hints.setColorScheme(scheme.Dark if is_dark(palette) else scheme.Light)
            self._application.setStyle("Fusion")
            self._application.setPalette(palette)
        self.follow()

    def paint_in(self, colours: Colours) -> None:
        """Change the pictures' set of colours."""
        self.colours = colours
        self.changed.emit()

    def write_at(self, percent: int) -> None:
        """Write everything at so many percent of the system's size: one of `TEXT_SIZES`."""
        if percent != self.text_percent:
            self.text_percent = percent
            font = QFont(self._own_font)
            if self._own_font.pixelSize() > 0:
                font.setPixelSize(round(self._own_font.pixelSize() * percent / 100))
            else:
                font.setPointSizeF(self._own_font.pointSizeF() * percent / 100)
            self._application.setFont(font)
            self.follow()

    def write_larger(self) -> None:
        """One step larger, if there is one."""
        self.write_at(next((s for s in TEXT_SIZES if s > self.text_percent), TEXT_SIZES[-1]))

    def write_smaller(self) -> None:
        """One step smaller, down to the system's own size."""
        smaller = [size for size in TEXT_SIZES if size < self.text_percent]
        self.write_at(smaller[-1] if smaller else TEXT_SIZES[0])

    def write_usual(self) -> None:
        """As large as the system writes."""
        self.write_at(TEXT_SIZES[0])

    def recall(self, memory: Memory) -> None:
        """Look as last time, and remember every change; what cannot be read is as usual."""
        self.colours = _known(Colours, memory.text("colours", ""), Colours.USUAL)
        percent = memory.text("text size", "")
        if percent in map(str, TEXT_SIZES):
            self.write_at(int(percent))
        self.wear(_known(Look, memory.text("look", ""), Look.SYSTEM))
        self.changed.connect(lambda: self._keep(memory))

    def _keep(self, memory: Memory) -> None:
        memory.keep("look", self.look.value)
        memory.keep("colours", self.colours.value)
        memory.keep("text size", str(self.text_percent))

    def follow(self) -> None:
        """What the palette or the letters are has changed."""
        self._dress()
        self.changed.emit()

    @property
    def contrast(self) -> bool:
        """Whether high contrast was chosen, here or in the system."""
        if self.look is Look.SYSTEM:
            return system_wants_contrast(self._application, closely=self._closely)
        return self.look in (Look.CONTRAST_DARK, Look.CONTRAST_LIGHT)

    def theme(self) -> Theme:
        """What pictures are painted in."""
        theme = screen_theme(
            dark=is_dark(self._application.palette()),
            contrast=self.contrast,
            safe=self.colours is Colours.SAFE,
        )
        larger = self.text_percent / 100
        return theme if larger == theme.words else replace(theme, words=larger)

    def _dress(self) -> None:
        style = self.look is not Look.SYSTEM or self._own_style.lower() == "fusion"
        text = sheet(
            self._paint(),
            contrast=self.contrast,
            percent=self.text_percent,
            letters=QFontMetrics(self._application.font()).height(),
            fusion=style,
        )
        if self._application.styleSheet() != text:
            self._application.setStyleSheet(text)

    def _paint(self) -> Paint:
        dark = is_dark(self._application.palette())
        if self.contrast:
            return CONTRAST_DARK if dark else CONTRAST_LIGHT
        return DARK if dark else LIGHT


def _known(kind: type[Choice], text: str, usual: Choice) -> Choice:
    """The choice that was remembered as `text`."""
    return next((choice for choice in kind if choice.value == text), usual)


def is_dark(palette: QPalette) -> bool:
    """Whether a palette has light words on dark."""
    return palette.color(Roles.WindowText).lightness() > palette.color(Roles.Window).lightness()


def system_wants_contrast(application: QApplication, *, closely: bool = True) -> bool:
    """Whether the system asks for high contrast: by its setting, or by a black and white palette.

    Qt tells the setting since 6.10; before that, and unless one looks `closely`, the palette
    alone does.
    """
    accessibility = getattr(application.styleHints(), "accessibility", None)
    if accessibility is not None and closely:
        from PySide6.QtCore import Qt

        if accessibility().contrastPreference() == Qt.ContrastPreference.HighContrast:
            return True
    palette = application.palette()
    words, ground = palette.color(Roles.WindowText), palette.color(Roles.Window)
    return contrast(words.name(), ground.name()) >= PURE
