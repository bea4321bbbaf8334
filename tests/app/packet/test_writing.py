"""A packet is written whole or not at all."""

from __future__ import annotations

from pathlib import Path

import pytest

from app.packet import packet as packet_module
from app.packet.packet import write_packet
from app.packet.page import Page
from app.packet.paper import Format
from app.typeface import typeface
from core.plan import Plan
from core.refusal import Refusal
from tests.app.packet import plans

OLD = b"an older packet"


@pytest.fixture
def target(tmp_path: Path) -> Path:
    path = tmp_path / "packet.pdf"
    path.write_bytes(OLD)
    return path


def test_a_packet_replaces_the_older_one(target: Path) -> None:
    write_packet(plans.plan("bare"), target)
    assert target.read_bytes() == plans.packet("bare")
    assert list(target.parent.iterdir()) == [target]


def test_a_fault_while_drawing_leaves_the_older_packet(
    target: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fail(plan: Plan, form: Format) -> tuple[Page, ...]:
        raise ZeroDivisionError(f"{plan.project.quilt.name} {form}")

    monkeypatch.setattr(packet_module, "cloth_pages", fail)
    with pytest.raises(ZeroDivisionError):
        write_packet(plans.plan("harbour-lights"), target)
    assert target.read_bytes() == OLD
    assert list(target.parent.iterdir()) == [target]


def test_a_disk_that_fails_at_the_last_step_leaves_the_older_packet(
    target: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(part: Path, onto: Path) -> Path:
        raise OSError(28, "No space left on device", str(part), None, str(onto))

    monkeypatch.setattr(Path, "replace", full)
    with pytest.raises(OSError, match="No space left"):
        write_packet(plans.plan("bare"), target)
    assert target.read_bytes() == OLD
    assert list(target.parent.iterdir()) == [target]


def test_a_folder_that_is_not_there_is_an_os_error_and_stays_away(tmp_path: Path) -> None:
    with pytest.raises(FileNotFoundError):
        write_packet(plans.plan("bare"), tmp_path / "nowhere" / "packet.pdf")
    assert list(tmp_path.iterdir()) == []


def test_without_its_font_the_program_says_so(
    target: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def missing(name: str) -> Path:
        raise FileNotFoundError(name)

    monkeypatch.setattr("app.typeface.asset", missing)
    typeface.cache_clear()
    try:
        with pytest.raises(Refusal, match=r"font DejaVuSans.*cannot be read; install the program"):
            write_packet(plans.plan("bare"), target)
    finally:
        typeface.cache_clear()
    assert target.read_bytes() == OLD
