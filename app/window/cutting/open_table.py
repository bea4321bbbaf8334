"""Opening the cutting table from the window."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, QTimer

from app.window.export import planned
from core.language import marked, told

if TYPE_CHECKING:
    from app.window.main_window import MainWindow
    from app.window.planner import Planner

TITLE = marked("Cut at the table")


def open_table(window: MainWindow, mender: Callable[[], Planner]) -> None:
    """Show the table, over the whole screen; where there is nothing to cut, say so."""
    plan = planned(window.document, window.plan, window.asker, told(TITLE))
    if plan is None:
        return
    if not any(fabric.lay.placements for fabric in plan.fabrics):
        window.asker.tell(
            told(TITLE), told("There is nothing to cut yet: add a border, a backing or a binding.")
        )
        return
    # Imported only now: the window opens sooner without it.
    from app.window.cutting.clearing import clear_away
    from app.window.cutting.cuttings import Cuttings
    from app.window.cutting.table import CuttingTable

    cuttings = Cuttings(window.document.path, plan)
    table = CuttingTable(plan, cuttings, mender(), window.appearance.theme(), window)
    table.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
    table.showFullScreen()
    QTimer.singleShot(0, table, lambda: clear_away(cuttings.file.parent, cuttings.file))
