"""The language of the window: as the system's, or as the person chose it."""

from __future__ import annotations

from PySide6.QtCore import QLibraryInfo, QLocale, QTranslator
from PySide6.QtWidgets import QApplication

from app.languages import ENGLISH, LANGUAGES, language_spoken, speak_language, spoken
from app.window.memory import Memory

KEY = "language"
AS_SYSTEM = ""


def remembered(memory: Memory) -> str:
    """The language that was chosen; `AS_SYSTEM` if none was, or one that is not known now."""
    chosen = memory.text(KEY, AS_SYSTEM)
    return chosen if chosen in LANGUAGES else AS_SYSTEM


def language_of(memory: Memory) -> str:
    """The language to speak: the one chosen, or the system's if it is spoken here."""
    return remembered(memory) or spoken(QLocale.system().uiLanguages())


def dates_spoken() -> QLocale:
    """How dates are written: as the system does, unless another language is spoken here."""
    system = QLocale()
    language = language_spoken()
    return system if system.name().startswith(language) else QLocale(language)


def speak_in(application: QApplication, language: str) -> None:
    """Speak a language from now on, Qt's own words ("Cancel") included."""
    speak_language(language)
    if language == ENGLISH:
        return
    words = QTranslator(application)
    folder = QLibraryInfo.path(QLibraryInfo.LibraryPath.TranslationsPath)
    if words.load(f"qtbase_{language}", folder):
        application.installTranslator(words)
