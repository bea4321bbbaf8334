"""The menus and the tool bar: every command of the window, with its words and its keys."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from enum import Enum
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

from PySide6.QtCore import Qt
from PySide6.QtGui import QAction, QActionGroup, QKeySequence
from PySide6.QtWidgets import QMenu, QToolBar

from app.languages import language_spoken, told_in
from app.packet.paper import Paper
from app.window.appearance import TEXT_SIZES
from app.window.by_hand import cloth_menu
from app.window.menu_words import COLOURS, FILES, LOOKS, PAPERS, PARTS, SPOKEN, UNITS
from app.window.sizes import KEY, SizesDialog, remembered_sizes
from app.window.spoken import KEY as LANGUAGE_KEY
from app.window.spoken import language_of, remembered
from app.window.step_action import redo_action, undo_action
from app.window.zoom_bar import ZoomBar
from core.language import marked, told
from core.lengths import Units
from core.sizes import QuiltSizes, dumps, told_usual

if TYPE_CHECKING:
    from app.window.main_window import MainWindow

Value = TypeVar("Value", bound=Enum | int | str)
Keys = QKeySequence.StandardKey


class Menus:
    """Builds the menu bar and the tool bar of one window."""

    def __init__(self, window: MainWindow) -> None:
        self._window = window
        self._bar = window.menuBar()
        self._listed: list[QAction] = []
        self._sized_for: Units | None = None
        self.units: dict[Units, QAction] = {}
        self.letters: dict[int, QAction] = {}
        self._file()
        self._edit()
        self._parts()
        self._cloth()
        self._view()
        self._help()
        self._tools()

    def _action(
        self,
        menu: QMenu,
        text: str,
        act: Callable[[], object],
        key: QKeySequence.StandardKey | str | None = None,
    ) -> QAction:
        """One command; its short name on the tool bar has no dots."""
        action = QAction(text, self._window)
        action.triggered.connect(lambda: act())
        if isinstance(key, str):
            action.setShortcut(QKeySequence(key))
        elif key is not None:
            action.setShortcuts(key)
        menu.addAction(action)
        self._listed.append(action)
        return action

    def _choices(
        self, menu: QMenu, words: dict[Value, str], chosen: Value, act: Callable[[Value], None]
    ) -> dict[Value, QAction]:
        """One of several, of which one is ticked."""
        group = QActionGroup(self._window)
        actions: dict[Value, QAction] = {}
        for value, text in words.items():
            action = self._action(menu, told(text), _bound(act, value))
            action.setCheckable(True)
            action.setChecked(value == chosen)
            group.addAction(action)
            actions[value] = action
        return actions

    def _file(self) -> None:
        window, files = self._window, self._window.files
        menu = self._bar.addMenu(told("&File"))
        self.new = self._action(menu, told("&New"), window.new, Keys.New)
        self.sizes = menu.addMenu(told("New of a Si&ze"))
        self.sizes.setToolTipsVisible(True)
        self.open = self._action(menu, told("&Open…"), files.open, Keys.Open)
        self._recent = menu.addMenu(told("Open &Recent"))
        files.recent_changed.connect(self._list_recent)
        self._list_recent()
        self.save = self._action(menu, told("&Save"), files.save, Keys.Save)
        self.save_as = self._action(menu, told("Save &As…"), files.save_as, Keys.SaveAs)
        menu.addSeparator()
        self.export = self._action(menu, told("E&xport PDF…"), window.export, "Ctrl+Shift+E")
        others = menu.addMenu(told("Export &Files"))
        self.export_files = {
            kind: self._action(others, told(words), _bound(window.export_files, kind))
            for kind, words in FILES.items()
        }
        self.print = self._action(menu, told("&Print…"), window.print_packet, Keys.Print)
        self._papers = self._choices(
            menu.addMenu(told("Pap&er")), PAPERS, window.paper(), window.set_paper
        )
        menu.addSeparator()
        leave = self._action(menu, told("&Quit"), window.close, Keys.Quit)
        leave.setMenuRole(QAction.MenuRole.QuitRole)

    def _list_sizes(self, units: Units) -> None:
        """The sizes to start from, in the units of the document."""
        window, self._sized_for = self._window, units
        self.sizes.clear()
        for size in remembered_sizes(window.memory).of(units):
            action = self.sizes.addAction(size.words(units).replace("&", "&&"))
            action.setToolTip(told_usual(size.source))
            action.triggered.connect(_bound(window.new, size))
        self.sizes.addSeparator()
        self.sizes.addAction(told("&Change these Sizes…")).triggered.connect(
            lambda: self._change_sizes(units).open()
        )

    def _change_sizes(self, units: Units) -> SizesDialog:
        memory = self._window.memory

        def keep(table: QuiltSizes) -> None:
            memory.keep(KEY, dumps(table))
            self._list_sizes(units)

        dialog = SizesDialog(remembered_sizes(memory), units, keep, self._window)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        return dialog

    def _list_recent(self) -> None:
        self._recent.clear()
        for path in self._window.memory.recent():
            words = told("{file} in {folder}", file=path.name, folder=path.parent.name)
            action = self._recent.addAction(words.replace("&", "&&"))
            action.triggered.connect(self._opener(path))
            action.setToolTip(str(path))
        self._recent.setToolTipsVisible(True)
        self._recent.setEnabled(not self._recent.isEmpty())

    def _opener(self, path: Path) -> Callable[[], None]:
        return lambda: self._window.files.open_path(path)

    def _edit(self) -> None:
        menu = self._bar.addMenu(told("&Edit"))
        stack = self._window.document.undo_stack
        self.undo = undo_action(stack, self._window)
        self.undo.setShortcuts(Keys.Undo)
        self.redo = redo_action(stack, self._window)
        self.redo.setShortcuts(Keys.Redo)
        menu.addActions([self.undo, self.redo])
        self._listed += [self.undo, self.redo]
        menu.addSeparator()
        units = menu.addMenu(told("&Units"))
        now = self._window.document.project.units
        self.units = self._choices(units, UNITS, now, self._window.set_units)

    def show_paper(self, paper: Paper) -> None:
        """Choose the paper, here as elsewhere."""
        self._papers[paper].trigger()

    def show_units(self, units: Units) -> None:
        """Tick the units of the document, and list sizes in them."""
        self.units[units].setChecked(True)
        if self._sized_for is not units:
            self._list_sizes(units)

    def _parts(self) -> None:
        menu = self._bar.addMenu(told("&Add"))
        parts = self._window.parts
        for key, words in PARTS.items():
            self._action(menu, told(words), _bound(parts.add, key))
        menu.addSeparator()
        menu.addActions(list(parts.part_actions.values()))

    def _cloth(self) -> None:
        hand = self._window.hand
        self._listed += cloth_menu.fill(self._bar.addMenu(told("&Cloth")), hand)
        hand.canvas.menu_asked.connect(
            lambda key, path, at: cloth_menu.show_menu(
                hand, self._window.document.project, key, path, at
            )
        )

    def _view(self) -> None:
        centre = self._window.centre
        menu = self._bar.addMenu(told("&View"))
        for place in range(centre.tabs.count()):
            words = f"&{place + 1} {centre.tabs.tabText(place)}"
            show = _bound(centre.show_page, place)
            self._action(menu, words, show, f"Ctrl+{place + 1}")
        columns = self._window.go_to_column
        self._action(menu, told("Ne&xt Column"), _bound(columns, 1), "F6")
        self._action(menu, told("&Previous Column"), _bound(columns, -1), "Shift+F6")
        menu.addSeparator()
        self.cut = self._action(menu, told("Cutting Ta&ble"), self._window.cut_at_table, "F11")
        menu.addSeparator()
        self._action(menu, told("&Larger"), centre.zoom_in, Keys.ZoomIn)
        self._action(menu, told("&Smaller"), centre.zoom_out, Keys.ZoomOut)
        self._action(menu, told("Fill the &Width"), centre.fit_width, "Ctrl+9")
        self._action(menu, told("Show &Everything"), centre.fit_all, "Ctrl+0")
        menu.addSeparator()
        self._ease(menu)

    def _ease(self, menu: QMenu) -> None:
        """What makes the window easier on the eyes."""
        appearance = self._window.appearance
        self.looks = self._choices(
            menu.addMenu(told("&Appearance")), LOOKS, appearance.look, appearance.wear
        )
        sets = menu.addMenu(told("&Colours"))
        self.colours = self._choices(sets, COLOURS, appearance.colours, appearance.paint_in)
        letters = menu.addMenu(told("&Text Size"))
        self._action(letters, told("&Larger Text"), appearance.write_larger, "Ctrl+Shift+L")
        self._action(letters, told("&Smaller Text"), appearance.write_smaller, "Ctrl+Shift+K")
        self._action(letters, told("&Usual Text"), appearance.write_usual, "Ctrl+Shift+U")
        letters.addSeparator()
        words = {percent: f"{percent} %" for percent in TEXT_SIZES}
        chosen = appearance.text_percent
        self.letters = self._choices(letters, words, chosen, appearance.write_at)
        appearance.changed.connect(self._show_text_size)
        self.languages = self._choices(
            menu.addMenu(told("Lan&guage")),
            SPOKEN,
            remembered(self._window.memory),
            self._speak,
        )

    def _speak(self, language: str) -> None:
        """Speak it from the next start on; who has chosen it can read it, so it is said in it."""
        if not self._window.memory.keep(LANGUAGE_KEY, language):
            self._window.tell(self._window.memory.unwritable())
            return
        sentence = marked("The language changes when Crossgrain is next opened.")
        wanted = language_of(self._window.memory)
        self._window.tell("" if wanted == language_spoken() else told_in(wanted, sentence))

    def _show_text_size(self) -> None:
        self.letters[self._window.appearance.text_percent].setChecked(True)

    def _help(self) -> None:
        menu = self._bar.addMenu(told("&Help"))
        self._action(menu, told("&Help"), lambda: self._page("guide"), Keys.HelpContents)
        menu.addSeparator()
        self._action(menu, told("&Cautions"), lambda: self._page("cautions"))
        self._action(menu, told("&Words"), lambda: self._page("words"))
        self._action(menu, told("&Keys"), lambda: self._page("keys"))
        menu.addSeparator()
        about = self._action(menu, told("&About Crossgrain"), lambda: self._page("about"))
        about.setMenuRole(QAction.MenuRole.AboutRole)

    def _page(self, name: str) -> None:
        """Show one of the pages of help."""
        # Imported only now: the window opens sooner without it.
        from app.window.help_pages import PAGES

        PAGES[name](self._window).show()

    def shortcuts(self) -> Iterator[tuple[str, str]]:
        """Every command that has a key, with its keys as this platform writes them."""
        for action in self._listed:
            keys = action.shortcut().toString(QKeySequence.SequenceFormat.NativeText)
            if keys:
                yield action.text().replace("&", "").rstrip("…").lstrip("123456789 "), keys

    def _tools(self) -> None:
        bar = QToolBar(told("Tools"), self._window)
        bar.setObjectName("tools")
        bar.setMovable(False)
        bar.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextOnly)
        bar.addActions([self.new, self.open, self.save])
        bar.addSeparator()
        bar.addActions([self.undo, self.redo])
        bar.addSeparator()
        bar.addAction(self.export)
        self._window.addToolBar(bar)
        self._window.addToolBar(ZoomBar(self._window.centre, bar, self._window))


def _bound(act: Callable[..., None], value: object) -> Callable[[], None]:
    return lambda: act(value)
