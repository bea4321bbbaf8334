"""What to go on with when the table is opened; asked where the plan is not the one being cut."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from app.window.cutting.pages import Choice
from core.cutting.changed import ChangedPlan
from core.cutting.cutting import ClothCutting, Cutting, Sameness, sameness
from core.cutting.order import Marked, Order
from core.cutting.words import to_buy
from core.refusal import Refusal
from core.steps import ranges

if TYPE_CHECKING:
    from app.window.cutting.table import CuttingTable

CHANGED = {
    Sameness.LAID_OTHERWISE: (
        "The plan lies otherwise now",
        "You began to cut when the same pieces lay in other places. Cloth that is cut fits only "
        "the cut order that you began.",
    ),
    Sameness.OTHER_PIECES: (
        "The plan asks for other pieces now",
        "It was changed after you began to cut. Cloth that is cut fits only the cut order "
        "that you began; or the changed plan can be laid on what is left.",
    ),
}


class Opening:
    """Finds what was kept, and asks what to do with it."""

    def __init__(self, table: CuttingTable) -> None:
        self._table = table
        self._kept: Cutting | None = None

    def start(self) -> None:
        """Go on where it was left, if the plan still is what was being cut; else ask."""
        table = self._table
        try:
            self._kept = kept = table.cuttings.found()
        except (Refusal, OSError) as error:
            self._ask_about_unreadable(error)
            return
        if kept is None or not kept.begun:
            table.go_on(table.cutting)
        elif sameness(kept, table.plan) is Sameness.SAME:
            table.go_on(kept)
        else:
            self.ask()

    def ask(self, problem: str = "") -> None:
        """Say how the plan has changed, and what may be done; `problem` is what cannot be."""
        table, kept = self._table, self._kept
        if kept is None:
            return
        same = sameness(kept, table.plan)
        title, text = CHANGED[same]
        choices = [
            Choice("Cut on as it was begun", lambda: table.go_on(kept)),
            Choice("Cut the plan as it is now from what is left", self._lay_changed),
            Choice("Begin with the plan as it is now, on uncut cloth", table.begin_again),
        ]
        if same is Sameness.LAID_OTHERWISE or problem:
            del choices[1]
        cannot = f" That cannot be: {problem}." if problem else ""
        table.say(title, f"{text} {_so_far(kept)}{cannot}", *choices)

    def _lay_changed(self) -> None:
        if self._kept is not None:
            self._table.say_page.text.say("Laying the changed plan on what is left…")
            self._table.mender.ask(ChangedPlan(self._kept, self._table.plan))

    def offer(self, cutting: Cutting) -> None:
        """Show how the changed plan is cut from what is left, before it is."""
        table = self._table
        laid = [cloth.order for cloth in cutting.cloths if cloth.first]
        said = " ".join(f"{to_buy(order)} {cut_and_uncut(order)}" for order in laid)
        table.say(
            "The changed plan on what is left",
            said,
            Choice("Cut on by it", lambda: table.take(cutting)),
            Choice("Back", self.ask),
        )

    def _ask_about_unreadable(self, error: Exception) -> None:
        said = error.sentence if isinstance(error, Refusal) else str(error)
        self._table.say(
            "How far the cloth was cut cannot be read",
            f"{said[0].upper()}{said[1:]}.",
            Choice("Begin with the first cut", self._table.begin_again),
            Choice("Leave", self._table.leave_table),
        )


def listed(marks: Sequence[Marked]) -> str:
    """Labels, neighbours drawn together."""
    return ", ".join(ranges([mark.label for mark in marks]))


def cut_and_uncut(order: Order) -> str:
    """What is cut well before an order that was laid again, and what it is to cut."""
    kept = f"Cut well: {listed(order.had)}. " if order.had else ""
    if not order.pieces:
        return f"{kept}Nothing is left to cut."
    return f"{kept}Still to cut: {listed(order.pieces)}."


def _so_far(cutting: Cutting) -> str:
    """How far each cloth that was begun is."""
    return " ".join(_far(cutting, cloth) for cloth in cutting.cloths if cloth.begun)


def _far(cutting: Cutting, cloth: ClothCutting) -> str:
    kit = f", kit {cloth.kit}" if cutting.kits > 1 else ""
    total = len(cloth.order.cuts)
    return f"Of {cloth.order.name}{kit} {cloth.cuts_done} of {total} cuts are made."
