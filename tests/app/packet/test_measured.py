"""Pages turned into pixels by an independent renderer, and measured there at 300 to the inch."""

from __future__ import annotations

import subprocess
from pathlib import Path

import pytest

from app.packet.choice import PacketChoice, Pages
from app.packet.packet import packet_bytes
from app.packet.paper import Format, Paper
from tests.app.packet.plans import plan

DPI = 300


def _pixels(data: bytes, folder: Path) -> list[bytes]:
    """The rows of the first page, a byte a pixel."""
    (folder / "page.pdf").write_bytes(data)
    subprocess.run(
        ["pdftoppm", "-r", str(DPI), "-gray", "-singlefile", "page.pdf", "page"],
        cwd=folder,
        check=True,
    )
    raw = (folder / "page.pgm").read_bytes()
    _magic, size, _depth, pixels = raw.split(b"\n", 3)
    wide, high = map(int, size.split())
    return [pixels[row * wide : (row + 1) * wide] for row in range(high)]


def _runs(row: bytes) -> list[int]:
    dark = bytes(32 if value < 128 else 120 for value in row).decode("ascii")
    return [len(run) for run in dark.split("x") if len(run) > 100]


@pytest.mark.parametrize("paper", list(Paper))
@pytest.mark.parametrize("large", [False, True])
def test_the_true_size_page_measures_true(tmp_path: Path, paper: Paper, large: bool) -> None:
    """1 in is 300 pixels and 100 mm 1181.1, by the definition of the inch as 25.4 mm."""
    form = Format(paper, large=large)
    choice = PacketChoice(pages=(Pages.TRUE_SIZE,), form=form)
    rows = _pixels(packet_bytes(plan("harbour-lights"), choice), tmp_path)
    assert abs(len(rows[0]) - paper.size[0] / 72 * DPI) <= 1
    assert abs(len(rows) - paper.size[1] / 72 * DPI) <= 1
    runs = [run for row in rows for run in _runs(row)]
    assert any(abs(run - 300) <= 1 for run in runs), "the square's upper side"
    assert any(abs(run - 1181) <= 1 for run in runs), "the bar"
