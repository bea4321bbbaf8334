"""Writing a file whole or not at all."""

from __future__ import annotations

import os
import stat
import sys
from pathlib import Path

import pytest

from core.whole_file import write_whole

POSIX = pytest.mark.skipif(sys.platform == "win32", reason="POSIX permissions and links")


def names(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def test_a_new_file_holds_the_bytes_and_nothing_lies_beside_it(tmp_path: Path) -> None:
    write_whole(tmp_path / "plan.json", b"one")
    assert (tmp_path / "plan.json").read_bytes() == b"one"
    assert names(tmp_path) == ["plan.json"]


def test_an_older_file_is_replaced(tmp_path: Path) -> None:
    path = tmp_path / "plan.json"
    path.write_bytes(b"an older and longer one")
    write_whole(path, b"new")
    assert path.read_bytes() == b"new"


def test_a_failure_leaves_the_older_file_whole_and_nothing_beside(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "plan.json"
    path.write_bytes(b"old")

    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(OSError, match="No space"):
        write_whole(path, b"new")
    assert path.read_bytes() == b"old"
    assert names(tmp_path) == ["plan.json"]


def test_an_interruption_leaves_nothing_beside_either(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def interrupt(_: int) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(os, "fsync", interrupt)
    with pytest.raises(KeyboardInterrupt):
        write_whole(tmp_path / "plan.json", b"new")
    assert names(tmp_path) == []


def test_a_folder_that_is_not_there_is_said(tmp_path: Path) -> None:
    path = tmp_path / "none" / "plan.json"
    with pytest.raises(FileNotFoundError) as failed:
        write_whole(path, b"new")
    assert failed.value.filename == str(path)


def test_a_name_as_long_as_can_be_is_written(tmp_path: Path) -> None:
    path = tmp_path / f"{'縫' * 80}.crossgrain"  # 251 bytes, of 255
    write_whole(path, b"new")
    assert names(tmp_path) == [path.name]


@POSIX
def test_a_link_is_followed(tmp_path: Path) -> None:
    real, link = tmp_path / "real.json", tmp_path / "link.json"
    real.write_bytes(b"old")
    link.symlink_to(real)
    write_whole(link, b"new")
    assert link.is_symlink()
    assert real.read_bytes() == b"new"


@POSIX
def test_permissions_of_an_older_file_are_kept(tmp_path: Path) -> None:
    path = tmp_path / "plan.json"
    path.write_bytes(b"old")
    path.chmod(0o640)
    write_whole(path, b"new")
    assert stat.S_IMODE(path.stat().st_mode) == 0o640


@POSIX
def test_a_new_file_has_the_persons_usual_permissions(tmp_path: Path) -> None:
    write_whole(tmp_path / "plan.json", b"new")
    (tmp_path / "other").touch()
    usual = stat.S_IMODE((tmp_path / "other").stat().st_mode)
    assert stat.S_IMODE((tmp_path / "plan.json").stat().st_mode) == usual


def test_a_folder_is_told_by_its_own_name(tmp_path: Path) -> None:
    with pytest.raises(IsADirectoryError, match="name a file in it") as told:
        write_whole(tmp_path, b"new")
    assert told.value.filename == str(tmp_path)
    assert list(tmp_path.iterdir()) == []


@pytest.mark.skipif(not Path("/dev/full").is_char_device(), reason="the system has no such device")
def test_a_device_is_written_to_and_stays_a_device() -> None:
    full = Path("/dev/full")
    with pytest.raises(OSError, match="No space left") as told:
        write_whole(full, b"new")
    assert told.value.filename == str(full)
    assert full.is_char_device()
