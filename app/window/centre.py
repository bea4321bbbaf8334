"""The middle of the window: yardage and quilt, with zoom, and a line when no plan is to be had."""

from __future__ import annotations

from collections.abc import Iterator

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QTabWidget,
    QVBoxLayout,
    QWidget,
)

from app.photos_qt import Photos
from app.style import Theme
from app.window.banner import Banner
from app.window.canvas import Canvas
from app.window.comparing.in_hand_view import InHandView
from app.window.comparing.side_by_side import SideBySideView
from app.window.comparing.staircase_view import StaircaseView
from app.window.edge.edge_page import EdgePage
from app.window.edge.edge_view import EdgeView
from app.window.frame import TABS
from app.window.furniture import add_tab
from app.window.planner import Planner
from app.window.stops import enter
from app.window.yardage import BindingView, QuiltView, YardageView
from core.language import told
from core.plan import Plan
from core.quilt import Project


class Centre(QWidget):
    """Emits `picked(key)` for a piece that is clicked, `taken(project, phrase)` for a choice.

    `comparer` answers the views that compare, so that plans never wait for them.
    """

    picked = Signal(str)
    taken = Signal(object, str)

    def __init__(self, comparer: Planner) -> None:
        super().__init__()
        self._plan: Plan | None = None
        self._due: set[QuiltView | BindingView | EdgeView] = set()
        self.banner = Banner()
        self.yardage = YardageView()
        self.quilt = QuiltView()
        self.binding = BindingView()
        self.tabs = QTabWidget(documentMode=True)
        self.side_by_side = SideBySideView(comparer)
        self.staircase = StaircaseView(comparer)
        self.in_hand = InHandView(comparer)
        self.edge_page = EdgePage()
        self.edge = self.edge_page.canvas
        for page, name in zip(self._pages(), TABS, strict=True):
            add_tab(self.tabs, page, name)
        self.pictures = (self.yardage, self.quilt, self.binding, self.edge)
        for part in (self.tabs, self.tabs.tabBar()):
            part.setAccessibleName(told("Pictures"))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.banner)
        column.addWidget(self.tabs)
        self.tabs.currentChanged.connect(self._draw_front)
        for canvas in self.pictures:
            canvas.picked.connect(self.picked)
        for view in (self.side_by_side, self.staircase):
            view.taken.connect(self.taken)

    def _pages(self) -> Iterator[QWidget]:
        """What the tabs show, in their order."""
        yield from (self.yardage, self.quilt, self.binding)
        yield from (self.side_by_side, self.staircase, self.in_hand, self.edge_page)

    @property
    def canvas(self) -> Canvas:
        """The picture in front; the yardage where a list is."""
        front = self.tabs.currentWidget()
        if isinstance(front, SideBySideView | StaircaseView | EdgePage):
            return front.canvas
        return next((picture for picture in self.pictures if picture is front), self.yardage)

    def show_page(self, place: int) -> None:
        """Bring the picture or list at a place to the front, ready for the keys."""
        self.tabs.setCurrentIndex(place)
        enter(self.tabs.currentWidget())

    def show_project(self, project: Project) -> None:
        """Compare from this project on."""
        for view in (self.side_by_side, self.staircase, self.in_hand):
            view.show_project(project)

    def show_plan(self, plan: Plan) -> None:
        """Draw a plan where it is looked at; the other pictures once they are.

        The cloths are always drawn: what is done by hand is done to them.
        """
        self._plan, self._due = plan, set(self.pictures[1:])
        self.yardage.show_plan(plan)
        self._draw_front()

    def _draw_front(self) -> None:
        """Draw the picture in front, if it still shows an older plan."""
        page = self.tabs.currentWidget()
        front = next((one for one in self._due if one is page or page.isAncestorOf(one)), None)
        if front is not None and self._plan is not None:
            self._due.remove(front)
            front.show_plan(self._plan)

    def set_theme(self, theme: Theme) -> None:
        """Draw in another theme; larger words need room of their own."""
        larger = theme.words != self.yardage.theme.words
        for view in (*self.pictures, self.side_by_side, self.staircase):
            view.set_theme(theme)
        if larger and self._plan is not None:
            self.show_plan(self._plan)

    def show_photos(self, photos: Photos) -> None:
        """Show the cloths as these photos have them."""
        for canvas in (*self.pictures, self.side_by_side.canvas):
            canvas.show_photos(photos)

    def choose(self, keys: frozenset[str]) -> None:
        """Ring these pieces, in every picture."""
        for canvas in self.pictures:
            canvas.choose(keys)

    def zoom_in(self) -> None:
        self.canvas.zoom_in()

    def zoom_out(self) -> None:
        self.canvas.zoom_out()

    def fit_width(self) -> None:
        self.canvas.fit_width()

    def fit_all(self) -> None:
        self.canvas.fit_all()
