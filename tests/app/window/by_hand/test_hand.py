"""Pieces moved and pinned, flaws and motifs marked: done, undone and done again."""

from __future__ import annotations

from fractions import Fraction

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QContextMenuEvent, QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMenu
from pytestqt.qtbot import QtBot

from app.window.by_hand.carry import Carry
from app.window.by_hand.cloth_menu import ClothMenu
from app.window.by_hand.hand import CHOOSE, NO_PINS
from app.window.by_hand.overlay import Words
from app.window.editors import PieceEditor
from app.window.main_window import MainWindow
from app.window.yardage import YardageView
from core.edit import put, remove
from core.lay.lay import Placement, Rect, Sheet
from core.plan import Plan, make_plan
from core.project_file import to_document
from core.quilt import Project
from tests.app.window.conftest import PlannerHere, editor_at

F = Fraction
Key, Left = Qt.Key, Qt.MouseButton.LeftButton
NIGHT, LAMP, TIDE = 0, 1, 2


class Hands:
    """Drives the picture as a person would, and plans after each deed."""

    def __init__(self, window: MainWindow, planner: PlannerHere) -> None:
        self.window, self.planner = window, planner
        self.document, self.canvas = window.document, window.centre.yardage
        self.stack = window.document.undo_stack

    @property
    def plan(self) -> Plan:
        assert self.window.plan is not None
        return self.window.plan

    @property
    def project(self) -> Project:
        return self.document.project

    @property
    def said(self) -> str:
        return self.canvas.said.text.text()

    def placed(self, label: str) -> Placement:
        laid = (p for fabric in self.plan.fabrics for p in fabric.lay.placements)
        return next(one for one in laid if self.plan.label(one) == label)

    def middle(self, label: str) -> QPoint:
        return self.canvas.mapFromScene(self.canvas._places()[label].center())

    def choose(self, label: str) -> None:
        QTest.mouseClick(self.canvas.viewport(), Left, pos=self.middle(label))
        self.canvas.setFocus()

    def keys(self, *keys: Qt.Key, shift: bool = False, control: bool = False) -> None:
        modifier = Qt.KeyboardModifier.NoModifier
        if shift:
            modifier = Qt.KeyboardModifier.ShiftModifier
        if control:
            modifier = Qt.KeyboardModifier.ControlModifier
        for key in keys:
            QTest.keyClick(self.canvas, key, modifier)
        self.planner.finish()

    def drag(self, start: QPoint, end: QPoint, *, let_go: bool = True) -> None:
        view = self.canvas.viewport()
        QTest.mousePress(view, Left, pos=start)
        for share in (0.3, 0.7, 1.0):
            at = QPointF(start) + (QPointF(end) - QPointF(start)) * share
            QApplication.sendEvent(view, _moved(at, view.mapToGlobal(at)))
        if let_go:
            self.let_go(end)

    def let_go(self, at: QPoint) -> None:
        QTest.mouseRelease(self.canvas.viewport(), Left, pos=at)
        self.planner.finish()

    def on(self, fabric: int, x: float, y: float, sheet: Sheet | None = None) -> QPoint:
        """The pixel of a place of a cloth."""
        lanes = [lane for lane in self.canvas.lanes if lane.place == fabric]
        lane = next(one for one in lanes if one.sheet == (sheet or Sheet()))
        at = lane.frame.point(F(x), F(y))
        return self.canvas.mapFromScene(lane.item.mapToScene(QPointF(*at)))

    def undo(self) -> None:
        self.stack.undo()
        self.planner.finish()

    def redo(self) -> None:
        self.stack.redo()
        self.planner.finish()


def _moved(at: QPointF, on_screen: QPointF) -> QMouseEvent:
    none = Qt.KeyboardModifier.NoModifier
    return QMouseEvent(QEvent.Type.MouseMove, at, on_screen, Qt.MouseButton.NoButton, Left, none)


@pytest.fixture
def hands(window: MainWindow, planner: PlannerHere) -> Hands:
    window.resize(1280, 800)
    QApplication.processEvents()
    return Hands(window, planner)


def there_and_back(hands: Hands, phrase: str, before: Project, plan: Plan) -> None:
    """The deed is one step with the person's phrase; undone, the picture is as it was."""
    after, shown = hands.project, hands.plan
    assert after != before
    assert hands.stack.undoText() == phrase
    hands.undo()
    assert (hands.project, hands.plan) == (before, plan)
    hands.redo()
    assert (hands.project, hands.plan) == (after, shown)


def test_a_piece_is_dragged_pinned_undone_and_dragged_again(hands: Hands) -> None:
    before, plan = hands.project, hands.plan
    start = hands.middle("C1")
    end = start - QPoint(0, round(23.1 * hands.canvas.zoom))
    hands.drag(start, end, let_go=False)
    assert "lies well" in hands.said
    assert hands.project == before
    hands.let_go(end)
    [pin] = hands.project.fabrics[NIGHT].pins
    assert (pin.name, pin.copy) == ("border 2 top and bottom", 1)
    assert hands.placed("C1").rect.x == pin.x > 30
    assert not hands.canvas.said.isVisible()
    stayed = set(plan.fabrics[NIGHT].lay.placements) & set(hands.plan.fabrics[NIGHT].lay.placements)
    assert len(stayed) == len(plan.fabrics[NIGHT].lay.placements) - 1
    there_and_back(hands, "Move C1", before, plan)


def test_a_piece_dragged_off_the_cloth_goes_back(hands: Hands) -> None:
    before, start = hands.project, hands.middle("B1")
    hands.drag(start, start - QPoint(0, round(41 * hands.canvas.zoom)))
    assert hands.project == before
    assert hands.window.statusBar().currentMessage() == "B1 was not put down: off the cloth."
    assert hands.canvas.gesture is None


def test_over_another_fabric_it_is_said_what_the_piece_is_cut_from(hands: Hands) -> None:
    before, start = hands.project, hands.middle("J")
    hands.drag(start, hands.on(NIGHT, 20, 20), let_go=False)
    assert hands.said == "J: this is night sky, and it is cut from tide stripe."
    hands.let_go(hands.on(NIGHT, 20, 20))
    assert hands.project == before
    told = "J was not put down: this is night sky, and it is cut from tide stripe."
    assert hands.window.statusBar().currentMessage() == told


def test_what_is_held_is_named_where_it_is_in_sight(hands: Hands) -> None:
    for _ in range(12):
        hands.canvas.zoom_in()
    hands.canvas.centerOn(hands.canvas._places()["E"].bottomLeft())
    hands.window.hand.mark_flaw()
    hands.keys(Key.Key_Escape)
    hands.canvas.choose(frozenset({"E"}))
    hands.keys(Key.Key_M)
    [words] = (item for item in hands.canvas.scene().items() if isinstance(item, Words))
    assert hands.canvas.viewport().rect().contains(hands.canvas.mapFromScene(words.scenePos()))
    hands.keys(Key.Key_Escape)


def test_what_is_marked_at_the_edge_of_the_view_is_named_inside_it(hands: Hands) -> None:
    hands.window.hand.mark_flaw()
    [words] = (item for item in hands.canvas.scene().items() if isinstance(item, Words))
    at = hands.canvas.mapFromScene(words.scenePos())
    seen = words.boundingRect().translated(at.x(), at.y())
    assert seen.left() >= -1
    assert seen.top() >= -1
    hands.keys(Key.Key_Escape)


def test_the_mouse_rests_on_a_piece_or_a_mark_and_is_told_what_to_do(hands: Hands) -> None:
    tip = hands.canvas.tip_at(hands.middle("A2"))
    assert tip.startswith("A2, border 1 strip, ")
    assert "Drag it, or press M" in tip
    hands.window.hand.mark_flaw()
    assert hands.canvas.tip_at(hands.middle("A2")) == "", "the hand is full"
    hands.drag(hands.on(NIGHT, 36, 10), hands.on(NIGHT, 39, 16))
    tip = hands.canvas.tip_at(hands.on(NIGHT, 37, 12))
    assert tip.startswith("Flaw, ")
    assert "right button" in tip
    hands.document.put("fabrics[0].flaws", [], "Remove")
    motif = {"name": "label", "x": "30", "y": "100", "across": "3", "along": "3"}
    hands.document.put("fabrics[2].motifs", [motif], "Mark motif")
    hands.planner.finish()
    tip = hands.canvas.tip_at(hands.on(TIDE, 31, 101))
    assert "Motif for label, 3 × 3 in. Click it" in tip
    assert hands.canvas.tip_at(QPoint(2, 2)) == ""


def test_an_open_hand_shows_what_can_be_taken_hold_of(hands: Hands) -> None:
    view, over = hands.canvas.viewport(), hands.middle("C1")
    shapes = []
    for at in (over, QPoint(2, 2)):
        QTest.mouseMove(view, at)
        QApplication.processEvents()
        shapes.append(view.cursor().shape())
    assert shapes == [Qt.CursorShape.OpenHandCursor, Qt.CursorShape.ArrowCursor]


def test_a_click_alone_moves_nothing(hands: Hands) -> None:
    before = hands.project
    hands.choose("C1")
    hands.drag(hands.middle("C1"), hands.middle("C1") + QPoint(1, 1))
    assert hands.project == before


def test_a_piece_is_moved_with_keys(hands: Hands) -> None:
    before, plan = hands.project, hands.plan
    hands.choose("C1")
    hands.keys(Key.Key_M)
    assert "Enter puts it down" in hands.said
    hands.keys(Key.Key_Right)
    assert "1⁄2 in from the straight end" in hands.said.replace("¹⁄₂", "1⁄2")
    hands.keys(Key.Key_Right, shift=True)
    hands.keys(Key.Key_Left, Key.Key_Left)
    hands.keys(*[Key.Key_Up] * 45)
    hands.keys(Key.Key_Up, control=True)
    assert hands.project == before
    hands.keys(Key.Key_Return)
    assert hands.placed("C1").rect.x >= F(61, 2)
    there_and_back(hands, "Move C1", before, plan)


def test_esc_restores(hands: Hands) -> None:
    before, scene = hands.project, len(hands.canvas.scene().items())
    hands.choose("C1")
    hands.keys(Key.Key_M, Key.Key_Up, Key.Key_Escape)
    assert hands.canvas.gesture is None
    assert (hands.project, len(hands.canvas.scene().items())) == (before, scene)


def test_where_it_may_not_lie_enter_does_not_put_it_down(hands: Hands) -> None:
    hands.choose("B1")
    hands.keys(Key.Key_P)
    before = hands.project
    hands.choose("B2")
    hands.keys(Key.Key_M, Key.Key_Down, Key.Key_Return)
    assert isinstance(hands.canvas.gesture, Carry)
    assert "overlaps B1, pinned there" in hands.said
    hands.keys(Key.Key_Escape)
    assert hands.project == before


def test_a_piece_is_pinned_in_place_and_unpinned(hands: Hands) -> None:
    before, plan = hands.project, hands.plan
    hands.choose("B1")
    hands.keys(Key.Key_P)
    assert hands.placed("B1") == plan.fabrics[NIGHT].lay.placements[0]
    there_and_back(hands, "Pin B1", before, plan)
    pinned, shown = hands.project, hands.plan
    hands.keys(Key.Key_P)
    assert hands.project == before
    there_and_back(hands, "Unpin B1", pinned, shown)


def test_what_was_not_moved_is_let_go_of_or_pinned_there(hands: Hands) -> None:
    before, plan = hands.project, hands.plan
    hands.choose("B1")
    hands.keys(Key.Key_M, Key.Key_Return)
    assert hands.project == before
    hands.keys(Key.Key_M, Key.Key_P)
    there_and_back(hands, "Pin B1", before, plan)


def test_what_may_turn_is_turned(hands: Hands) -> None:
    hands.document.edit("Change grain", lambda p: put(p, "binding.grain", "either"))
    hands.planner.finish()
    before, plan = hands.project, hands.plan
    hands.choose("G5")
    was = hands.placed("G5")
    hands.keys(Key.Key_R)
    held = hands.canvas.gesture
    assert isinstance(held, Carry)
    assert held.held.turned != was.turned
    hands.keys(Key.Key_Escape)
    assert hands.project == before
    assert hands.plan == plan


def test_what_may_not_turn_says_so(hands: Hands) -> None:
    hands.choose("B1")
    for keys in ((Key.Key_M, Key.Key_R), (Key.Key_R,)):
        hands.keys(*keys)
        assert hands.said == "B1 may not turn: its grain would run wrong."
        hands.keys(Key.Key_Escape)


def test_where_there_is_no_other_cloth_that_is_said(hands: Hands) -> None:
    hands.choose("B1")
    for keys in ((Key.Key_M, Key.Key_S), (Key.Key_S,)):
        hands.keys(*keys)
        assert hands.said == "There is no other cloth of night sky."
        hands.keys(Key.Key_Escape)


def test_a_piece_is_taken_to_the_bolt(hands: Hands) -> None:
    before, plan = hands.project, hands.plan
    hands.choose("D1")
    hands.keys(Key.Key_S, Key.Key_Return)
    assert hands.placed("D1").sheet == Sheet()
    there_and_back(hands, "Move D1", before, plan)


def test_back_to_the_best_lay_drops_the_pins(hands: Hands) -> None:
    first, best = hands.project, hands.plan
    hands.window.hand.best_lay()
    assert hands.window.statusBar().currentMessage() == NO_PINS
    hands.choose("C1")
    hands.keys(Key.Key_M, *[Key.Key_Up] * 45, Key.Key_Return)
    before, plan = hands.project, hands.plan
    hands.window.hand.best_lay()
    hands.planner.finish()
    assert (hands.project, hands.plan) == (first, best)
    there_and_back(hands, "Back to the best lay", before, plan)


def test_a_flaw_is_drawn_and_the_lay_keeps_clear_of_it(hands: Hands) -> None:
    before, plan = hands.project, hands.plan
    hands.window.hand.mark_flaw()
    hands.drag(hands.on(NIGHT, 2, 10), hands.on(NIGHT, 5, 16))
    [flaw] = hands.project.fabrics[NIGHT].flaws
    assert abs(flaw.rect.across - 3) < 1
    assert all(not p.rect.within(flaw.rect) for p in hands.plan.fabrics[NIGHT].lay.placements)
    assert hands.canvas.gesture is None
    there_and_back(hands, "Mark flaw on night sky", before, plan)


def test_a_flaw_is_marked_with_keys_on_another_cloth(hands: Hands) -> None:
    before, plan = hands.project, hands.plan
    hands.canvas.setFocus()
    hands.keys(Key.Key_X, Key.Key_S, Key.Key_Right, Key.Key_Up)
    hands.keys(Key.Key_Right, shift=True)
    hands.keys(Key.Key_Return)
    [flaw] = hands.project.fabrics[LAMP].flaws
    assert flaw.rect == Rect(F(1, 2), F(1, 2), F(1), F(3, 2))
    assert flaw.sheet == Sheet("on_hand[0]")
    there_and_back(hands, "Mark flaw on lamp gold", before, plan)


def test_a_flaw_is_not_marked_on_a_pinned_piece(hands: Hands) -> None:
    hands.choose("B1")
    hands.keys(Key.Key_P)
    before = hands.project
    hands.keys(Key.Key_X, Key.Key_Return)
    assert "B1 is pinned there" in hands.said
    hands.keys(Key.Key_Escape)
    assert hands.project == before


def test_a_click_in_marking_marks_nothing(hands: Hands) -> None:
    before = hands.project
    hands.window.hand.mark_flaw()
    QTest.mouseClick(hands.canvas.viewport(), Left, pos=hands.on(NIGHT, 2, 10))
    assert hands.project == before
    assert hands.canvas.gesture is not None
    hands.keys(Key.Key_Escape)


def test_a_motif_is_given_to_the_chosen_piece(hands: Hands) -> None:
    before, plan = hands.project, hands.plan
    hands.choose("J")
    hands.keys(Key.Key_G)
    hands.drag(hands.on(TIDE, 30, 100), hands.on(TIDE, 33, 103))
    [motif] = hands.project.fabrics[TIDE].motifs
    assert motif.name == "label"
    assert hands.placed("J").rect.holds(motif.rect)
    there_and_back(hands, "Mark motif for J on tide stripe", before, plan)


def test_a_motif_is_marked_and_given_later(hands: Hands) -> None:
    hands.window.hand.mark_motif()
    hands.drag(hands.on(TIDE, 30, 100), hands.on(TIDE, 33, 103))
    assert hands.project.fabrics[TIDE].motifs[0].name is None
    before, plan = hands.project, hands.plan
    path = "fabrics[2].motifs[0]"
    assert hands.window.hand.takers(path) == ["E", "F", "J"]
    hands.window.hand.give(path, "J")
    hands.planner.finish()
    there_and_back(hands, "Give motif to J", before, plan)
    hands.window.hand.give(path, "H")
    assert "joined length" in hands.window.statusBar().currentMessage()


def test_a_motifs_piece_is_chosen_from_those_of_its_cloth(hands: Hands) -> None:
    hands.window.hand.mark_motif()
    hands.drag(hands.on(TIDE, 30, 100), hands.on(TIDE, 33, 103))
    before, plan = hands.project, hands.plan
    editor = editor_at(hands.window, "fabrics[2].motifs[0].name")
    assert isinstance(editor, PieceEditor)
    words = [editor.itemText(place) for place in range(editor.count())]
    assert words == ["none as yet", "E  backing panel", "F  narrow backing panel", "J  label"]
    editor.setFocus()
    QTest.keyClicks(editor, "J")
    hands.planner.finish()
    assert hands.project.fabrics[TIDE].motifs[0].name == "label"
    assert hands.placed("J").rect.holds(hands.project.fabrics[TIDE].motifs[0].rect)
    there_and_back(hands, "Change motif 1 for the piece", before, plan)


def test_a_piece_that_is_cut_no_more_stays_to_be_seen_in_its_field(hands: Hands) -> None:
    motif = {"name": "label", "x": "30", "y": "100", "across": "3", "along": "3"}
    hands.document.put("fabrics[2].motifs", [motif], "Mark motif")
    hands.planner.finish()
    hands.document.edit("Remove label", lambda project: remove(project, "label"))
    hands.planner.finish()
    editor = editor_at(hands.window, "fabrics[2].motifs[0].name")
    assert isinstance(editor, PieceEditor)
    assert editor.currentText() == "label"


def test_a_flaw_is_removed(hands: Hands) -> None:
    hands.window.hand.mark_flaw()
    hands.drag(hands.on(NIGHT, 36, 10), hands.on(NIGHT, 39, 16))
    before, plan = hands.project, hands.plan
    hands.window.hand.unmark("fabrics[0].flaws[0]")
    hands.planner.finish()
    there_and_back(hands, "Remove flaw from night sky", before, plan)


def test_without_a_chosen_piece_the_window_says_what_to_do(hands: Hands) -> None:
    for verb in ("pick up", "turn", "pin", "next cloth"):
        hands.window.statusBar().clearMessage()
        hands.window.hand.verbs[verb]()
        assert hands.window.statusBar().currentMessage() == CHOOSE


def test_a_plan_that_comes_while_something_is_held_waits(hands: Hands) -> None:
    hands.choose("C1")
    hands.keys(Key.Key_M)
    hands.document.put("quilt.width", "50", "Change quilt width")
    hands.planner.finish()
    assert isinstance(hands.canvas.gesture, Carry)
    assert hands.canvas.plan != hands.plan
    hands.keys(Key.Key_Escape)
    assert hands.canvas.plan == hands.plan


def test_a_piece_on_hand_that_is_not_used_is_in_sight_and_may_be_marked(hands: Hands) -> None:
    piece = {"across": "20", "along": "3"}
    on_hand = [*to_document(hands.project)["fabrics"][NIGHT]["on_hand"], piece]
    hands.document.put("fabrics[0].on_hand", on_hand, "Add piece on hand")
    hands.planner.finish()
    sheet = Sheet(f"on_hand[{len(on_hand) - 1}]")
    [lane] = [lane for lane in hands.canvas.lanes if lane.sheet == sheet and lane.place == NIGHT]
    assert lane.item.title.endswith(": not used")
    hands.window.hand.mark_flaw()
    hands.drag(hands.on(NIGHT, 2, 1, sheet), hands.on(NIGHT, 6, 2, sheet))
    assert hands.project.fabrics[NIGHT].flaws[0].sheet == sheet


def test_a_pin_without_room_is_told_at_its_fields_and_the_last_plan_stays(hands: Hands) -> None:
    plan = hands.plan
    pin = {"name": "border 2 side", "copy": 1, "x": "40", "y": "0"}
    hands.document.put("fabrics[0].pins", [pin], "Pin B1")
    hands.planner.finish()
    assert hands.plan == plan
    assert "reaches to 44 1/2 in across" in hands.window.centre.banner.text.text()
    hands.window.centre.banner.go.click()
    section = hands.window.parts.section_at("fabrics[0].pins[0]")
    assert section is not None
    row = section.body.rows["x"]
    assert "reaches to 44 1/2 in across" in row.problem.text()
    hands.window.hand.best_lay()
    hands.planner.finish()
    assert not hands.window.centre.banner.isVisible()


def test_another_project_takes_the_piece_out_of_the_hand(hands: Hands) -> None:
    hands.choose("C1")
    hands.keys(Key.Key_M)
    hands.document.start(hands.project)
    assert hands.canvas.gesture is None
    hands.planner.finish()
    assert hands.canvas.plan == hands.plan


def test_a_flaw_that_is_gone_already_is_not_removed_twice(hands: Hands) -> None:
    hands.window.hand.mark_flaw()
    hands.drag(hands.on(NIGHT, 36, 10), hands.on(NIGHT, 39, 16))
    hands.window.hand.unmark("fabrics[0].flaws[0]")
    before = hands.project
    hands.window.hand.unmark("fabrics[0].flaws[0]")
    assert hands.project == before
    assert "changed meanwhile" in hands.window.statusBar().currentMessage()


def test_typing_moves_no_piece_that_can_stay(hands: Hands) -> None:
    plan = hands.plan
    hands.document.put("quilt.length", "60", "Change quilt length")
    hands.planner.finish()
    fresh = make_plan(hands.project)
    now, was = (one.fabrics[NIGHT].lay.placements for one in (hands.plan, plan))
    assert len(set(now) & set(was)) >= len(set(fresh.fabrics[NIGHT].lay.placements) & set(was))
    hands.document.put("sleeve.depth", "4 1/4", "Change sleeve depth")
    hands.planner.finish()
    assert hands.plan.fabrics[NIGHT].lay.placements == now


def labels(menu: QMenu) -> list[str]:
    return [action.text().partition("\t")[0] for action in menu.actions() if action.text()]


def test_the_context_menu_names_the_piece_and_the_flaw(hands: Hands, qtbot: QtBot) -> None:
    hands.window.hand.mark_flaw()
    hands.drag(hands.on(NIGHT, 36, 10), hands.on(NIGHT, 39, 16))
    canvas: YardageView = hands.canvas
    asked: list[tuple[str, str]] = []
    canvas.menu_asked.disconnect()
    canvas.menu_asked.connect(lambda key, path, at: asked.append((key, path)))
    for at in (hands.middle("B1"), hands.on(NIGHT, 37, 13)):
        reason = QContextMenuEvent.Reason.Mouse
        event = QContextMenuEvent(reason, at, canvas.viewport().mapToGlobal(at))
        QApplication.sendEvent(canvas.viewport(), event)
    assert asked == [("B1", ""), ("", "fabrics[0].flaws[0]")]
    menu = ClothMenu(hands.window.hand, hands.project, "B1", "fabrics[0].flaws[0]")
    qtbot.addWidget(menu)
    assert labels(menu) == [
        "Change the Flaw…",
        "Remove the Flaw",
        "Move B1",
        "Turn B1",
        "B1 to the Next Cloth",
        "Pin B1",
        "Mark a Flaw",
        "Mark a Motif",
        "Back to the Best Lay",
    ]


def test_the_keys_are_listed_in_help(window: MainWindow) -> None:
    listed = dict(window.menus.shortcuts())
    assert {"Mark a Flaw", "Mark a Motif", "Back to the Best Lay"} <= listed.keys()
