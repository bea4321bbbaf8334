"""The packet before it is printed: the true pages, and what is chosen of them."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import Final, cast

import pytest
from pypdf import PdfReader
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QImage, QPainter
from PySide6.QtPrintSupport import QPrinter
from pytestqt.qtbot import QtBot

from app.packet.choice import NOTHING_ASKED, Asked, PacketChoice, Pages
from app.packet.packet import packet_pages
from app.packet.paper import Format, Paper
from app.window.memory import Memory
from app.window.packet_comparing import WORKING
from app.window.packet_dialog import PacketDialog
from app.window.packet_memory import remember, remembered
from app.window.packet_paint import paint_page
from tests.app.packet.plans import plan
from tests.app.window.conftest import PlannerHere

DPI = 300


Saved = list[tuple[PacketChoice, Asked]]
A4: Final = PacketChoice(form=Format(Paper.A4))


@pytest.fixture
def saved() -> Saved:
    return []


@pytest.fixture
def dialog(qtbot: QtBot, saved: Saved) -> PacketDialog:
    made = plan("tide-pool-runner")
    dialog = PacketDialog(made, A4, lambda *what: saved.append(what), None, PlannerHere)
    qtbot.addWidget(dialog)
    return dialog


def _tick(dialog: PacketDialog, row: int, state: Qt.CheckState) -> None:
    dialog.kinds.item(row).setCheckState(state)


def test_it_shows_the_very_pages_that_are_written(dialog: PacketDialog) -> None:
    assert dialog.choice == A4
    assert dialog.pages == packet_pages(plan("tide-pool-runner"), A4)
    assert dialog.view.page == dialog.pages[0]


def test_every_choice_reaches_the_pages(dialog: PacketDialog, saved: Saved) -> None:
    for row in range(1, dialog.kinds.count()):
        _tick(dialog, row, Qt.CheckState.Unchecked)
    dialog.names.setText("Ada, Ben")
    dialog.copies.setValue(2)
    dialog.large.setChecked(True)
    dialog.grey.setChecked(True)
    dialog.make()
    dialog.save.click()
    [(choice, asked)] = saved
    assert asked == NOTHING_ASKED
    assert choice.pages == (Pages.QUILT,)
    assert choice.names == ("Ada", "Ben")
    assert choice.copies == 2
    assert choice.form == Format(Paper.A4, grey=True, large=True)


def test_no_page_ticked_is_said_and_nothing_can_be_printed(dialog: PacketDialog) -> None:
    for row in range(dialog.kinds.count()):
        _tick(dialog, row, Qt.CheckState.Unchecked)
    dialog.make()
    assert "tick at least one" in dialog.problem.text()
    assert not dialog.save.isEnabled()
    assert not dialog.print.isEnabled()
    _tick(dialog, 0, Qt.CheckState.Checked)
    dialog.make()
    assert dialog.print.isEnabled()


def _row(kind: Pages) -> int:
    return list(Pages).index(kind)


def test_pages_that_compare_are_worked_out_when_they_are_ticked(
    dialog: PacketDialog, saved: Saved, qtbot: QtBot
) -> None:
    before = len(dialog.pages)
    _tick(dialog, _row(Pages.STAIRCASE), Qt.CheckState.Checked)
    dialog.make()
    assert dialog.problem.text() == WORKING
    assert dialog.problem.objectName() == "note", "waiting is no problem"
    assert len(dialog.pages) == before
    assert not dialog.save.isEnabled(), "what is saved has all that is ticked"
    dialog.bar.setText("abc")
    dialog.make()
    assert "clear length" in dialog.problem.text()
    assert dialog.problem.objectName() == "problem"
    dialog.bar.clear()
    dialog.make()
    qtbot.waitUntil(lambda: not dialog.comparing.busy, timeout=60_000)
    assert dialog.problem.text() == ""
    assert len(dialog.pages) > before
    dialog.save.click()
    [(choice, asked)] = saved
    assert asked.stairs is not None
    assert asked.comparison is None
    assert dialog.pages == packet_pages(plan("tide-pool-runner"), choice, asked)


def test_why_nothing_can_be_compared_is_said(qtbot: QtBot) -> None:
    choice = PacketChoice(pages=(Pages.QUILT, Pages.COMPARISON))
    dialog = PacketDialog(plan("small squares"), choice, lambda *_: None, None, PlannerHere)
    qtbot.addWidget(dialog)
    qtbot.waitUntil(lambda: not dialog.comparing.busy, timeout=60_000)
    assert "strip width cannot be varied" in dialog.problem.text()
    assert len(dialog.pages) == 1
    assert dialog.save.isEnabled()


def test_it_starts_as_it_was_chosen_last(qtbot: QtBot, memory: Memory) -> None:
    form = Format(Paper.LETTER, grey=True, large=True, correction=Fraction(50, 49))
    choice = PacketChoice((Pages.QUILT, Pages.CUTS), ("Ada",), 3, form)
    remember(memory, choice)
    again = remembered(memory, Paper.LETTER)
    assert again == replace(choice, names=(), copies=1)
    dialog = PacketDialog(plan("tide-pool-runner"), again, lambda *_: None, None, PlannerHere)
    qtbot.addWidget(dialog)
    assert dialog.choice == again
    assert dialog.bar.text() == "98 mm"


def test_settings_that_nobody_understands_count_as_none(memory: Memory) -> None:
    memory.keep("packet pages", "lining")
    memory.keep("packet bar", "a mile")
    assert remembered(memory, Paper.A4) == A4


def test_a_bar_that_no_printer_makes_is_said(dialog: PacketDialog) -> None:
    dialog.bar.setText("10 mm")
    dialog.make()
    assert "100 mm bar" in dialog.problem.text()


@pytest.mark.parametrize("text", ["abc", "-3", "½½", "1/0", "x" * 10_000, "a\0b", "🧵"])
def test_nonsense_for_the_bar_is_said_with_its_field(dialog: PacketDialog, text: str) -> None:
    dialog.bar.setText(text)
    dialog.make()
    said = dialog.problem.text()
    assert said.startswith("Printed bar: ")
    assert said.isprintable()
    assert len(said) < 150
    assert not dialog.save.isEnabled()


def test_names_and_copies_beyond_reason_are_said_with_their_fields(dialog: PacketDialog) -> None:
    dialog.names.setText("x" * 10_000)
    dialog.make()
    assert dialog.problem.text().startswith("For: write names of at most 80 letters")
    dialog.names.setText(",".join(map(str, range(200))))
    dialog.copies.setValue(50)
    dialog.make()
    assert dialog.problem.text().startswith("Copies of each: 50 for each name are 10000 packets")
    assert dialog.pages == ()
    assert not dialog.save.isEnabled()
    dialog.copies.setValue(1)
    dialog.names.clear()
    dialog.make()
    assert dialog.problem.text() == ""
    assert dialog.save.isEnabled()


def test_the_pages_turn_and_stop_at_both_ends(dialog: PacketDialog) -> None:
    count = len(dialog.pages)
    assert not dialog.back.isEnabled()
    for _ in range(count + 2):
        dialog.forward.click()
    assert dialog.view.page == dialog.pages[-1]
    assert dialog.where.text() == f"Page {count} of {count}"
    assert not dialog.forward.isEnabled()


def test_the_view_paints(dialog: PacketDialog) -> None:
    image = dialog.view.grab().toImage()
    colours = {image.pixelColor(x, y).name() for x in range(0, 300, 3) for y in range(0, 390, 3)}
    assert len(colours) > 3


def test_a_printer_gets_every_page_at_the_papers_size(dialog: PacketDialog, tmp_path: Path) -> None:
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(tmp_path / "printed.pdf"))
    dialog.print_on(printer)
    printed = PdfReader(tmp_path / "printed.pdf")
    assert len(printed.pages) == len(dialog.pages)
    box = printed.pages[0].mediabox
    # ISO 216:2007, A4, in points; Qt rounds to whole points.
    assert (float(box.width), float(box.height)) == pytest.approx((595.28, 841.89), abs=1)


def test_a_square_inch_is_300_pixels_at_300_to_the_inch(qapp: object) -> None:
    """And the 100 mm bar 1181, on the page that says so; 1 pixel either way."""
    form = Format()
    [page] = packet_pages(plan("bare"), PacketChoice(pages=(Pages.TRUE_SIZE,), form=form))
    image = QImage(int(8.5 * DPI), 11 * DPI, QImage.Format.Format_Grayscale8)
    image.fill(QColor("white"))
    painter = QPainter(image)
    painter.scale(DPI / 72, DPI / 72)
    paint_page(painter, page, form)
    painter.end()
    rows = [_runs(image, y) for y in range(image.height())]
    assert any(abs(run - 300) <= 1 for row in rows for run in row), "the square's upper side"
    assert any(abs(run - 1181) <= 1 for row in rows for run in row), "the bar"


def _runs(image: QImage, y: int) -> list[int]:
    """The lengths of the long dark stretches of a row of pixels."""
    line = bytes(cast("bytes", image.constScanLine(y)))[: image.width()]
    runs, length = [], 0
    for value in (*line, 255):
        if value < 128:
            length += 1
        else:
            if length > 200:
                runs.append(length)
            length = 0
    return runs
