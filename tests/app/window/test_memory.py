"""What is remembered comes back, in another start of the program too."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import QByteArray, QSettings
from PySide6.QtWidgets import QApplication

from app.window.memory import MOST_RECENT, Memory


def fresh(tmp_path: Path) -> Memory:
    """As another start of the program finds it."""
    return Memory(QSettings(str(tmp_path / "settings.ini"), QSettings.Format.IniFormat))


@pytest.mark.parametrize("count", [0, 1, 3, MOST_RECENT + 4])
def test_recent_files_come_back_latest_first(
    qapp: QApplication, tmp_path: Path, count: int
) -> None:
    memory = fresh(tmp_path)
    paths = [tmp_path / f"{place}.crossgrain" for place in range(count)]
    for path in paths:
        memory.opened(path)
    del memory
    assert fresh(tmp_path).recent() == paths[::-1][:MOST_RECENT]


def test_a_file_opened_again_is_listed_once(qapp: QApplication, tmp_path: Path) -> None:
    memory = fresh(tmp_path)
    for name in ("a", "b", "a"):
        memory.opened(tmp_path / name)
    assert memory.recent() == [tmp_path / "a", tmp_path / "b"]
    memory.forget(tmp_path / "a")
    assert memory.recent() == [tmp_path / "b"]


def test_shapes_come_back(qapp: QApplication, tmp_path: Path) -> None:
    memory = fresh(tmp_path)
    memory.keep_shape("window", QByteArray(b"\x00\x01shape"))
    del memory
    assert fresh(tmp_path).shape("window") == QByteArray(b"\x00\x01shape")
    assert fresh(tmp_path).shape("splitter").isEmpty()


@pytest.mark.parametrize("text", ["[", "null", '{"a": 1}', "[1, 2]", "x"])
def test_settings_that_were_harmed_count_as_never_set(
    qapp: QApplication, tmp_path: Path, text: str
) -> None:
    memory = fresh(tmp_path)
    memory.keep("recent", text)
    assert memory.recent() == []


@pytest.mark.parametrize("text", ["[" * 100_000, '["a\\u0000b", 3]'])
def test_recent_files_that_make_no_sense_count_as_none(
    qapp: QApplication, tmp_path: Path, text: str
) -> None:
    memory = fresh(tmp_path)
    memory.keep("recent", text)
    assert memory.recent() == []
