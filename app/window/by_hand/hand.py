"""The hand's commands, joined to the document: what is done on the picture becomes an edit."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from app.window.by_hand.gesture import Deed
from app.window.by_hand.mark import Marking
from app.window.by_hand.plan_memory import PlanMemory
from core.by_hand.edits import (
    any_pins,
    best_lay,
    give_motif,
    is_pinned,
    mark_flaw,
    mark_motif,
    pin_or_unpin,
    unmark,
)
from core.by_hand.holding import pick_up
from core.by_hand.spot import Spot
from core.language import marked, told
from core.plan import Plan
from core.quilt import Project
from core.refusal import Refusal

if TYPE_CHECKING:
    from app.window.main_window import MainWindow

CHOOSE = marked("Choose a piece first: click it, or walk to it with the arrow keys.")
NO_PINS = marked("Nothing is pinned: this is the best lay that was found.")


class Hand(QObject):
    """What can be done by hand; the pictures and the document are the window's."""

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._window = window
        self.canvas = window.centre.yardage
        self._plans = PlanMemory()
        self._like: Plan | None = None
        self._afresh = False
        self.verbs: dict[str, Callable[[], None]] = {
            "pick up": self.pick_up,
            "turn": self.turn,
            "pin": self.pin,
            "next cloth": self.next_cloth,
            "flaw": self.mark_flaw,
            "motif": self.mark_motif,
            "best lay": self.best_lay,
        }
        self.canvas.done.connect(self._do)
        window.document.started.connect(self.canvas.cancel)
        self.canvas.told.connect(window.tell)
        self.canvas.asked.connect(lambda verb: self.verbs[verb]())

    def keep(self, plan: Plan, *, whole: bool) -> None:
        """A plan is shown, or a draft of it."""
        self._plans.keep(plan, whole=whole)

    def known(self, project: Project) -> Plan | None:
        """The plan of a project that one has come back to, by undoing or otherwise."""
        return self._plans.of(project, whole=True)

    def previous(self, project: Project) -> Plan | None:
        """The plan that the next one is to be like: what was shown of this project, else the last.

        None for the best lay, and for a project that was just begun: they keep nothing.
        """
        like, self._like = self._like, None
        afresh, self._afresh = self._afresh or self._window.document.beginning, False
        return self._plans.of(project) or like or (None if afresh else self._window.plan)

    def _do(self, deed: Deed) -> None:
        """Make an edit of a deed, as one step to undo."""
        self._like = deed.like
        try:
            self._window.document.edit(deed.phrase, deed.change)
        except Refusal as refusal:
            self._window.tell(refusal.in_units(self._window.document.project.units).sentence)
        self._like = None

    def _piece(self) -> tuple[Plan, str] | None:
        """The plan in sight and the chosen piece of it; says so if there is none."""
        self._window.centre.tabs.setCurrentWidget(self.canvas)
        plan, key = self.canvas.plan, self.canvas.here
        if plan is None or pick_up(plan, key) is None:
            self._window.tell(told(CHOOSE))
            return None
        self.canvas.setFocus()
        return plan, key

    def pick_up(self) -> None:
        """Take the chosen piece into the hand."""
        if (found := self._piece()) is not None:
            self.canvas.carry(found[1])

    def turn(self) -> None:
        """Take the chosen piece into the hand, turned."""
        if (found := self._piece()) is not None:
            self.canvas.turn(found[1])

    def next_cloth(self) -> None:
        """Take the chosen piece to the next cloth of its fabric."""
        if (found := self._piece()) is not None:
            self.canvas.carry_on(found[1])

    def pin(self) -> None:
        """Pin the chosen piece where it lies, or take its pin out."""
        if (found := self._piece()) is not None:
            plan, key = found
            words = marked("Unpin {piece}") if is_pinned(plan, key) else marked("Pin {piece}")
            phrase = told(words, piece=key)
            self._do(Deed(lambda p: pin_or_unpin(p, plan, key), phrase, plan))

    def best_lay(self) -> None:
        """Drop every pin: all lies again where it buys least."""
        project = self._window.document.project
        if not any_pins(project):
            self._window.tell(told(NO_PINS))
            return
        self._afresh = True
        self._window.document.edit(told("Back to the best lay"), best_lay)

    def mark_flaw(self) -> None:
        """Begin to mark a flaw."""
        self._mark(Marking("flaw", told("flaw"), mark_flaw, marked("Mark flaw on {fabric}")))

    def mark_motif(self) -> None:
        """Begin to mark a motif, for the chosen piece if it is one."""
        plan, key = self.canvas.plan, self.canvas.here
        held = pick_up(plan, key) if plan is not None else None
        if held is None or held.taken.run_copy is not None:
            self._mark(
                Marking("motif", told("motif"), mark_motif, marked("Mark motif on {fabric}"))
            )
            return
        name, home = held.taken.name, held.place

        def change(project: Project, plan: Plan, spot: Spot) -> Project:
            return mark_motif(project, plan, spot, name if spot.place == home else None)

        word = told("motif for {piece}", piece=key)
        phrase = marked("Mark motif for {piece} on {fabric}")
        self._mark(Marking("motif", word, change, phrase, {"piece": key}))

    def _mark(self, marking: Marking) -> None:
        self._window.centre.tabs.setCurrentWidget(self.canvas)
        self.canvas.setFocus()
        self.canvas.mark(marking)

    def unmark(self, path: str) -> None:
        """Take away the flaw or motif at a path of the file."""
        flaw = ".flaws[" in path
        plan = self.canvas.plan
        if plan is not None:
            fabric = plan.fabrics[int(path.split("]")[0].removeprefix("fabrics["))].fabric
            words = (
                marked("Remove flaw from {fabric}")
                if flaw
                else marked("Remove motif from {fabric}")
            )
            phrase = told(words, fabric=fabric.name)
            self._do(Deed(lambda project: unmark(project, plan, path), phrase, plan))

    def give(self, path: str, key: str) -> None:
        """Let the motif at a path be held by a piece."""
        plan = self.canvas.plan
        if plan is not None:
            phrase = told("Give motif to {piece}", piece=key)
            self._do(Deed(lambda project: give_motif(project, plan, path, key), phrase, plan))

    def show_field(self, path: str) -> None:
        """Go to the fields of a flaw or motif."""
        self._window.parts.show_field(path)

    def takers(self, path: str) -> list[str]:
        """The pieces, one of each kind, that the motif at a path may be given to."""
        plan = self.canvas.plan
        place = int(path.split("]")[0].removeprefix("fabrics["))
        laid = plan.fabrics[place].lay.placements if plan is not None else ()
        first = {p.name: p for p in reversed(laid) if p.run_copy is None}
        return sorted(plan.label(placed) for placed in first.values()) if plan is not None else []
