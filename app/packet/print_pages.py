"""Pages as data -> a PDF file's bytes, the same bytes for the same pages."""

from __future__ import annotations

from collections.abc import Sequence
from io import BytesIO
from typing import TYPE_CHECKING, assert_never

from app.packet.page import Box, Frame, Item, Page, Picture, Rule, Words
from app.packet.paper import FRAME_HEIGHT, FRAME_WIDTH, Paper
from app.paint_pdf import paint_pdf
from app.style import Theme
from app.typeface import typeface
from core.drawing.marks import Point

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas

LANGUAGE = "en"


def print_pages(pages: Sequence[Page], title: str, paper: Paper, theme: Theme) -> bytes:
    """The pages as a PDF on `paper`: fonts embedded, with outline, title and page numbers."""
    out = BytesIO()
    canvas = _canvas(out, title, paper)
    for number, page in enumerate(pages, start=1):
        printer = _Printer(canvas, paper, theme)
        for item in page.items:
            printer.put(item)
        for place, entry in enumerate(page.entries):
            key = f"p{number}-{place}"
            canvas.bookmarkHorizontalAbsolute(key, printer.place((0.0, entry.top))[1])
            canvas.addOutlineEntry(entry.title, key, entry.level, closed=False)
        canvas.showPage()
    canvas.save()
    return out.getvalue()


def _canvas(out: BytesIO, title: str, paper: Paper) -> Canvas:
    """An empty document: reproducible, and with no font but the embedded ones.

    The initial font is ours because the library would else name Helvetica,
    unembedded, on every page.
    """
    from reportlab import rl_config
    from reportlab.pdfgen.canvas import Canvas

    # Streams as they are, not as ASCII: a fifth smaller, and quicker.
    rl_config.useA85 = 0
    canvas = Canvas(
        out,
        pagesize=paper.size,
        invariant=1,
        lang=LANGUAGE,
        pdfVersion=(1, 7),
        pageCompression=1,
        initialFontName=typeface().name,
    )
    canvas.setTitle(title)
    canvas.setSubject("Cutting plan")
    canvas.setAuthor("")
    canvas.setCreator("Crossgrain")
    canvas.setProducer("Crossgrain, ReportLab")
    # A wish that viewers may ignore: every page to scale also carries its own check.
    canvas.setViewerPreference("PrintScaling", "None")
    canvas.setViewerPreference("DisplayDocTitle", "true")
    canvas.addPageLabel(0, style="ARABIC", start=1)
    canvas.showOutline()
    return canvas


class _Printer:
    """One page of the canvas: points of the frame, y down, to points of the page, y up."""

    def __init__(self, canvas: Canvas, paper: Paper, theme: Theme) -> None:
        self.canvas, self.theme = canvas, theme
        wide, high = paper.size
        self.left = (wide - FRAME_WIDTH) / 2
        self.top = high - (high - FRAME_HEIGHT) / 2

    def place(self, point: Point) -> Point:
        return self.left + point[0], self.top - point[1]

    def put(self, item: Item) -> None:
        match item:
            case Words():
                self._words(item)
            case Rule():
                self._pen(item.width, [4.0, 3.0] if item.dashed else [])
                self.canvas.line(*self.place(item.start), *self.place(item.end))
            case Box():
                self._box(item)
            case Picture():
                self._picture(item)
            case _:
                assert_never(item)

    def _words(self, words: Words) -> None:
        self.canvas.setFillColor(self.theme.ink)
        self.canvas.setFont(typeface(bold=words.bold).name, words.size)
        self.canvas.drawString(*self.place(words.at), words.text)

    def _box(self, box: Box) -> None:
        left, bottom = self.place((box.left, box.top + box.height))
        if box.solid:
            self.canvas.setFillColor(self.theme.ink)
            self.canvas.rect(left, bottom, box.width, box.height, stroke=0, fill=1)
            return
        self._pen(box.line)
        inset, less = box.line / 2, box.line
        self.canvas.rect(left + inset, bottom + inset, box.width - less, box.height - less)

    def _picture(self, picture: Picture) -> None:
        self.canvas.saveState()
        if picture.frame is not None:
            self._cut_off(picture.frame)
        paint_pdf(
            self.canvas,
            picture.drawing,
            at=self.place(picture.at),
            scale=picture.scale,
            style=self.theme,
        )
        self.canvas.restoreState()

    def _cut_off(self, frame: Frame) -> None:
        window = self.canvas.beginPath()
        window.rect(*self.place((frame.left, frame.top + frame.height)), frame.width, frame.height)
        self.canvas.clipPath(window, stroke=0, fill=0)

    def _pen(self, width: float, dash: Sequence[float] = ()) -> None:
        self.canvas.setStrokeColor(self.theme.ink)
        self.canvas.setLineWidth(width)
        self.canvas.setDash(list(dash))
