"""The fields that say what a cloth looks like: its colour, and a photo with the width it shows."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from PySide6.QtCore import QUrl, Signal
from PySide6.QtGui import QColor, QIcon, QImageReader, QPixmap
from PySide6.QtWidgets import QColorDialog, QFileDialog, QHBoxLayout, QLabel, QVBoxLayout, QWidget

from app.window.document import folder_of
from app.window.field import Field, Kind
from app.window.furniture import quiet_button
from app.window.length_editor import LengthEditor
from app.window.line_edit import LineEdit
from core.language import marked, told
from core.lengths import Units
from core.project_file.real_cloth import seen_from

SWATCH = 16  # pixels
USUAL_WIDTHS = ("12 in", "30 cm")  # that a photo shows, until the person says


class ColourEditor(QWidget):
    """A colour as "#rrggbb" or by its name, and a button to choose one."""

    edited = Signal(object, bool)

    def __init__(self, field: Field) -> None:
        super().__init__()
        self.line = LineEdit()
        self.line.setPlaceholderText(told(field.none_words))
        self.line.editingFinished.connect(self.commit)
        self.button = quiet_button("…", told("Choose the {field:small}", field=field.called))
        self.button.clicked.connect(self._choose)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.line, 1)
        row.addWidget(self.button)
        self.setFocusProxy(self.line)

    def setAccessibleName(self, name: str) -> None:  # noqa: N802 - Qt's name
        super().setAccessibleName(name)
        self.line.setAccessibleName(name)

    def setAccessibleDescription(self, description: str) -> None:  # noqa: N802 - Qt's name
        super().setAccessibleDescription(description)
        self.line.setAccessibleDescription(description)

    def show_value(self, value: str | None, units: Units) -> None:
        self.line.setText(value or "")
        self.line.setModified(False)
        swatch = QPixmap(SWATCH, SWATCH)
        swatch.fill(QColor(value or "#00000000"))
        self.button.setIcon(QIcon(swatch) if value else QIcon())  # a button with one has no dots

    def commit(self) -> None:
        """Hand over what was typed, if anything was; a colour's name becomes its number."""
        if self.line.isModified():
            text = self.line.text().strip()
            known = QColor.isValidColorName(text)
            self.edited.emit((QColor(text).name() if known else text) or None, False)

    def _choose(self) -> None:
        picked = self.pick(QColor(self.line.text() or "#808080"))
        if picked.isValid():
            self.edited.emit(picked.name(), False)

    def pick(self, now: QColor) -> QColor:
        """Ask for a colour."""
        return QColorDialog.getColor(now, self, told("Colour of the cloth"))


class PhotoEditor(QWidget):
    """A photo's file, as seen from the project's, and how much cloth it shows from side to side."""

    edited = Signal(object, bool)

    def __init__(self, field: Field) -> None:
        super().__init__()
        self._units = Units.INCHES
        self.line = LineEdit()
        self.line.setPlaceholderText(told(field.none_words))
        self.line.editingFinished.connect(self.commit)
        self.button = quiet_button("…", told("Choose a photo of the cloth"))
        self.button.clicked.connect(self._choose)
        self.shows = LengthEditor(
            Field("shows", "", Kind.LENGTH, "", none_words=marked("how much cloth it shows"))
        )
        self.shows.edited.connect(self._measured)
        self.words = QLabel(told("&shows, from side to side"))
        self.words.setBuddy(self.shows)
        file, whole = QHBoxLayout(), QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        file.addWidget(self.line, 1)
        file.addWidget(self.button)
        whole.addLayout(file)
        whole.addWidget(self.words)
        whole.addWidget(self.shows)
        self.setFocusProxy(self.line)

    def setAccessibleName(self, name: str) -> None:  # noqa: N802 - Qt's name
        super().setAccessibleName(name)
        self.line.setAccessibleName(name)
        self.shows.setAccessibleName(told("{name}, the width of cloth it shows", name=name))

    def setAccessibleDescription(self, description: str) -> None:  # noqa: N802 - Qt's name
        super().setAccessibleDescription(description)
        self.line.setAccessibleDescription(description)

    def show_value(self, value: Mapping[str, str] | None, units: Units) -> None:
        self._units = units
        self.line.setText(value["file"] if value else "")
        self.line.setModified(False)
        self.shows.show_value(value["shows"] if value else None, units)
        self.words.setVisible(bool(value))
        self.shows.setVisible(bool(value))

    def commit(self) -> None:
        """Hand over what was typed, if anything was."""
        if self.line.isModified():
            self._hand_over(self._meant(self.line.text().strip()))
        self.shows.commit()

    def _meant(self, text: str) -> str:
        """A file as seen from the project, also where its whole path was typed or dropped."""
        path = Path(QUrl(text).toLocalFile() if text.startswith("file:") else text)
        return seen_from(self._folder(), path) if path.is_absolute() else text

    def _folder(self) -> Path:
        project = self.window().windowFilePath()
        return folder_of(Path(project) if project else None)

    def _measured(self, shows: str | None, stepped: bool) -> None:
        self.edited.emit({"file": self.line.text().strip(), "shows": shows or ""}, stepped)

    def _hand_over(self, file: str) -> None:
        usual = USUAL_WIDTHS[0 if self._units is Units.INCHES else 1]
        shows = self.shows.lineEdit().text().strip() or usual
        self.edited.emit({"file": file, "shows": shows} if file else None, False)

    def _choose(self) -> None:
        folder = self._folder()
        if picked := self.pick(folder):
            self._hand_over(seen_from(folder, Path(picked)))

    def pick(self, folder: Path) -> str:
        """Ask for a photo."""
        kinds = " ".join(
            f"*.{bytes(k.data()).decode()}" for k in QImageReader.supportedImageFormats()
        )
        photos = told("Photos ({kinds})", kinds=kinds)
        title = told("Photo of the cloth")
        return QFileDialog.getOpenFileName(self, title, str(folder), photos)[0]
