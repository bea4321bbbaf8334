"""The packet's pages on a screen or a printer: the same pages as in the PDF, painted by Qt.

Words are filled outlines, so that they are as wide as they were measured on any
device.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import cache
from typing import assert_never

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import (
    QColor,
    QFont,
    QFontDatabase,
    QPageLayout,
    QPageSize,
    QPainter,
    QPainterPath,
    QPen,
    QPolygonF,
)
from PySide6.QtPrintSupport import QPrinter

from app.assets import asset
from app.hatch import Segment
from app.packet.page import Box, Item, Page, Picture, Rule, Words
from app.packet.paper import POINTS_PER_INCH, Format, Paper
from app.paint import Painter, Pen
from app.right_to_left import as_seen
from app.type_fit import Setting
from app.typeface import typeface
from app.words_qt import canvas_font
from core.drawing.marks import Point

_AS_IT_STANDS = "\u202d{}\u202c"  # Unicode's override: letters from left to right, come what may
_SIZE = 100  # pixels of the letters that are scaled to what is wanted
_SIZES = {Paper.LETTER: QPageSize.PageSizeId.Letter, Paper.A4: QPageSize.PageSizeId.A4}


def paint_page(painter: QPainter, page: Page, form: Format) -> None:
    """Paint a page; the painter counts points of paper from the paper's top left corner."""
    wide, high = form.paper.size
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.translate((wide - form.width * form.zoom) / 2, (high - form.height * form.zoom) / 2)
    painter.scale(form.zoom, form.zoom)
    for item in (*page.items, *page.foot):
        _put(painter, item, form)
    painter.restore()


def print_all(printer: QPrinter, pages: Sequence[Page], form: Format) -> bool:
    """Print the pages at true size; whether the printer took them."""
    printer.setFullPage(True)
    printer.setPageSize(QPageSize(_SIZES[form.paper]))
    printer.setPageOrientation(QPageLayout.Orientation.Portrait)
    painter = QPainter()
    if not painter.begin(printer):
        return False
    scale = printer.resolution() / POINTS_PER_INCH
    painter.scale(scale, scale)
    for number, page in enumerate(pages):
        if number and not printer.newPage():
            painter.end()
            return False
        paint_page(painter, page, form)
    return painter.end()


def _put(painter: QPainter, item: Item, form: Format) -> None:
    ink = form.theme.ink
    match item:
        case Words():
            _write(painter, item.text, QPointF(*item.at), (item.size, item.bold, ink))
        case Rule():
            painter.setPen(_pen(Pen(ink, item.width, (4.0, 3.0) if item.dashed else ())))
            painter.drawLine(QLineF(*item.start, *item.end))
        case Box():
            _box(painter, item, ink)
        case Picture():
            painter.save()
            if item.frame is not None:
                frame = item.frame
                painter.setClipRect(QRectF(frame.left, frame.top, frame.width, frame.height))
            surface = _Surface(painter, item.at, item.scale)
            least = item.least or form.least
            Painter(surface, item.scale, form.theme, typeface(), least).paint(item.drawing)
            painter.restore()
        case _:
            assert_never(item)


def _box(painter: QPainter, box: Box, ink: str) -> None:
    rect = QRectF(box.left, box.top, box.width, box.height)
    if box.solid:
        painter.fillRect(rect, QColor(ink))
        return
    inset = box.line / 2
    painter.setPen(_pen(Pen(ink, box.line)))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRect(rect.adjusted(inset, inset, -inset, -inset))


class _Surface:
    """Inches of a drawing, y down, on a painter that counts points."""

    def __init__(self, painter: QPainter, at: Point, scale: float) -> None:
        self.painter, self.at, self.scale = painter, at, scale

    def layer(self, name: str) -> None:
        """Pages are not layered."""

    def place(self, point: Point) -> QPointF:
        return QPointF(self.at[0] + point[0] * self.scale, self.at[1] + point[1] * self.scale)

    def polygon(self, points: Sequence[Point], fill: str, key: str) -> None:
        self.painter.setPen(Qt.PenStyle.NoPen)
        self.painter.setBrush(QColor(fill))
        self.painter.drawPolygon(QPolygonF([self.place(point) for point in points]))

    def outline(self, points: Sequence[Point], pen: Pen, *, closed: bool) -> None:
        self.painter.setPen(_pen(pen))
        self.painter.setBrush(Qt.BrushStyle.NoBrush)
        shape = QPolygonF([self.place(point) for point in points])
        if closed:
            self.painter.drawPolygon(shape)
        else:
            self.painter.drawPolyline(shape)

    def segments(self, segments: Iterable[Segment], pen: Pen) -> None:
        self.painter.setPen(_pen(pen))
        self.painter.drawLines([QLineF(self.place(a), self.place(b)) for a, b in segments])

    def words(self, setting: Setting, centre: Point, ink: str) -> None:
        self.painter.save()
        self.painter.translate(self.place(centre))
        self.painter.rotate(-90 if setting.turned else 0)
        for line, below in setting.baselines():
            left = -typeface().width(line) * setting.size / 2
            _write(self.painter, line, QPointF(left, below), (setting.size, False, ink))
        self.painter.restore()


def _write(painter: QPainter, text: str, at: QPointF, look: tuple[float, bool, str]) -> None:
    size, bold, ink = look
    painter.save()
    painter.translate(at)
    painter.scale(size / _SIZE, size / _SIZE)
    path = QPainterPath()
    path.addText(QPointF(0, 0), _font(bold=bold), _AS_IT_STANDS.format(as_seen(text)))
    painter.fillPath(path, QColor(ink))
    painter.restore()


@cache
def _font(*, bold: bool) -> QFont:
    font = QFont(canvas_font())
    if bold:
        QFontDatabase.addApplicationFont(str(asset("fonts/DejaVuSans-Bold.ttf")))
        font.setBold(True)
    font.setPixelSize(_SIZE)
    font.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    return font


def _pen(pen: Pen) -> QPen:
    made = QPen(QColor(pen.colour), pen.width)
    made.setCapStyle(Qt.PenCapStyle.FlatCap)
    made.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    if pen.dash and pen.width:
        made.setDashPattern([part / pen.width for part in pen.dash])
    return made
