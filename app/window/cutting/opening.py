"""What to go on with when the table is opened; asked where the plan is not the one being cut."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from app.os_words import said_of
from app.window.cutting.pages import Choice
from app.wording import upper_first
from core.cutting.changed import ChangedPlan
from core.cutting.cutting import ClothCutting, Cutting, Sameness, sameness
from core.cutting.order import Marked, Order
from core.cutting.words import cloth_of_kit, to_buy
from core.language import marked, told, told_as
from core.refusal import Refusal
from core.steps import ranges

if TYPE_CHECKING:
    from app.window.cutting.table import CuttingTable

CHANGED = {
    Sameness.LAID_OTHERWISE: (
        marked("The plan lies otherwise now"),
        marked(
            "You began to cut when the same pieces lay in other places. Cloth that is cut fits "
            "only the cut order that you began."
        ),
    ),
    Sameness.OTHER_PIECES: (
        marked("The plan asks for other pieces now"),
        marked(
            "It was changed after you began to cut. Cloth that is cut fits only the cut order "
            "that you began; or the changed plan can be laid on what is left."
        ),
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
            Choice(told("Cut on as it was begun"), lambda: table.go_on(kept)),
            Choice(told("Cut the plan as it is now from what is left"), self._lay_changed),
            Choice(told("Begin with the plan as it is now, on uncut cloth"), table.begin_again),
        ]
        if same is Sameness.LAID_OTHERWISE or problem:
            del choices[1]
        said = [told(text), _so_far(kept)]
        if problem:
            said.append(told("That cannot be: {why}.", why=problem))
        table.say(told(title), " ".join(said), *choices)

    def _lay_changed(self) -> None:
        if self._kept is not None:
            self._table.say_page.text.say(told("Laying the changed plan on what is left…"))
            self._table.mender.ask(ChangedPlan(self._kept, self._table.plan))

    def offer(self, cutting: Cutting) -> None:
        """Show how the changed plan is cut from what is left, before it is."""
        table = self._table
        laid = [cloth.order for cloth in cutting.cloths if cloth.first]
        said = " ".join(f"{to_buy(order)} {cut_and_uncut(order)}" for order in laid)
        table.say(
            told("The changed plan on what is left"),
            said,
            Choice(told("Cut on by it"), lambda: table.take(cutting)),
            Choice(told_as("go back", "Back"), self.ask),
        )

    def _ask_about_unreadable(self, error: Refusal | OSError) -> None:
        spoilt = told("What was kept is spoilt, or was kept by another version of Crossgrain.")
        self._table.say(
            told("How far the cloth was cut cannot be read"),
            spoilt if isinstance(error, Refusal) else upper_first(f"{said_of(error)}."),
            Choice(told("Begin with the first cut"), self._table.begin_again),
            Choice(told("Leave"), self._table.leave_table),
        )


def listed(marks: Sequence[Marked]) -> str:
    """Labels, neighbours drawn together."""
    return ", ".join(ranges([mark.label for mark in marks]))


def cut_and_uncut(order: Order) -> str:
    """What is cut well before an order that was laid again, and what it is to cut."""
    said = [told("Cut well: {pieces}.", pieces=listed(order.had))] if order.had else []
    if order.pieces:
        said.append(told("Still to cut: {pieces}.", pieces=listed(order.pieces)))
    else:
        said.append(told("Nothing is left to cut."))
    return " ".join(said)


def _so_far(cutting: Cutting) -> str:
    """How far each cloth that was begun is."""
    return " ".join(_far(cutting, cloth) for cloth in cutting.cloths if cloth.begun)


def _far(cutting: Cutting, cloth: ClothCutting) -> str:
    return told(
        "Of {cloth} {count} of {total} cuts are made.",
        cloth=cloth_of_kit(cutting, cloth),
        count=cloth.cuts_done,
        total=len(cloth.order.cuts),
    )
