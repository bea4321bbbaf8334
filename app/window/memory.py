"""What the program remembers between starts: recent files, looks, sizes.

Kept as text, since some stores give every value back as text, and an empty or
one-item list as something else.
"""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QByteArray, QObject, QSettings, Signal

from core.language import told

MOST_RECENT = 8


class Memory(QObject):
    """Reads and writes the person's settings; what cannot be read counts as never set.

    What cannot be written holds until the program ends; `failed(sentence)` says so once.
    """

    failed = Signal(str)

    def __init__(self, settings: QSettings) -> None:
        super().__init__()
        self._settings = settings
        self._well = True

    def text(self, key: str, default: str) -> str:
        value = self._settings.value(key, default)
        return value if isinstance(value, str) else default

    def keep(self, key: str, text: str) -> bool:
        """Remember `text`; whether it will be known at the next start."""
        self._settings.setValue(key, text)
        self._settings.sync()
        kept = self._settings.status() is QSettings.Status.NoError
        if self._well and not kept:
            self._well = False
            self.failed.emit(self.unwritable())
        return kept

    def unwritable(self) -> str:
        """What it means that the settings cannot be written, as a sentence."""
        return told(
            "The settings cannot be written ({file}): what you choose holds until Crossgrain ends.",
            file=self._settings.fileName(),
        )

    def recent(self) -> list[Path]:
        """Recent project files, the latest first."""
        import json  # only now: the window is seen sooner without it

        try:
            names = json.loads(self.text("recent", "[]"))
        except (json.JSONDecodeError, RecursionError):
            return []
        listed = names if isinstance(names, list) else []
        return [Path(name) for name in listed if isinstance(name, str) and "\0" not in name]

    def opened(self, path: Path) -> None:
        """Put `path` first among the recent files."""
        others = [old for old in self.recent() if old != path]
        names = [str(path.resolve()), *map(str, others)]
        self._keep_recent(list(dict.fromkeys(names))[:MOST_RECENT])

    def forget(self, path: Path) -> None:
        """Take `path` off the recent files."""
        self._keep_recent([str(old) for old in self.recent() if old != path])

    def _keep_recent(self, names: list[str]) -> None:
        import json

        self.keep("recent", json.dumps(names))

    def shape(self, key: str) -> QByteArray:
        """A window's geometry, or nothing."""
        return QByteArray.fromBase64(self.text(key, "").encode())

    def keep_shape(self, key: str, shape: QByteArray) -> None:
        """Remember a window's geometry."""
        self.keep(key, bytes(shape.toBase64().data()).decode())
