"""Pages as data -> a PDF file's bytes, the same bytes for the same pages."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from io import BytesIO
from typing import TYPE_CHECKING, assert_never

from app.languages import language_spoken
from app.packet.page import Box, Frame, Item, Page, Picture, Rule, Words
from app.packet.paper import Format
from app.paint_pdf import paint_pdf
from app.right_to_left import as_seen
from app.typeface import typeface
from core.drawing.marks import Point
from core.language import told

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas


def print_pages(
    pages: Sequence[Page], title: str, form: Format, keywords: Sequence[str] = ()
) -> bytes:
    """The pages as a PDF: fonts embedded, with outline, title and page numbers.

    What several pages share, as the packets of a class do, is in the file once.
    """
    out = BytesIO()
    canvas = _canvas(out, title, form)
    canvas.setKeywords(", ".join(keywords))
    uses = Counter(id(page.items) for page in pages)
    shared: dict[int, str] = {}
    for number, page in enumerate(pages, start=1):
        printer = _Printer(canvas, form)
        if uses[id(page.items)] == 1:
            printer.put_all(page.items)
        else:
            printer.put_shared(page.items, shared)
        printer.put_all(page.foot)
        for place, entry in enumerate(page.entries):
            key = f"p{number}-{place}"
            canvas.bookmarkHorizontalAbsolute(key, printer.height_of(entry.top))
            canvas.addOutlineEntry(entry.title, key, entry.level, closed=False)
        canvas.showPage()
    canvas.save()
    return out.getvalue()


def _canvas(out: BytesIO, title: str, form: Format) -> Canvas:
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
        pagesize=form.paper.size,
        invariant=1,
        lang=language_spoken(),
        pdfVersion=(1, 7),
        pageCompression=1,
        initialFontName=typeface().name,
    )
    canvas.setTitle(title)
    canvas.setSubject(told("Cutting plan"))
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
    """One page of the canvas: points of layout, y down, to points of layout, y up.

    The canvas is moved and enlarged so that the frame lies in the middle of the paper.
    """

    def __init__(self, canvas: Canvas, form: Format) -> None:
        self.canvas, self.form = canvas, form
        wide, high = form.paper.size
        self.left = (wide - form.width * form.zoom) / 2
        self.foot = (high - form.height * form.zoom) / 2

    def put_all(self, items: Sequence[Item]) -> None:
        self.canvas.saveState()
        self.canvas.translate(self.left, self.foot)
        if self.form.zoom != 1:
            self.canvas.scale(self.form.zoom, self.form.zoom)
        for item in items:
            self.put(item)
        self.canvas.restoreState()

    def put_shared(self, items: tuple[Item, ...], shared: dict[int, str]) -> None:
        """Items that other pages show too: painted into the file once, and named here."""
        if id(items) not in shared:
            name = shared[id(items)] = f"shared{len(shared)}"
            self.canvas.beginForm(name, 0, 0, *self.form.paper.size)
            self.put_all(items)
            self.canvas.endForm()
        self.canvas.doForm(shared[id(items)])

    def place(self, point: Point) -> Point:
        return point[0], self.form.height - point[1]

    def height_of(self, top: float) -> float:
        """Where a place of the frame lies above the paper's foot."""
        return self.foot + (self.form.height - top) * self.form.zoom

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
        self.canvas.setFillColor(self.form.theme.ink)
        self.canvas.setFont(typeface(bold=words.bold).name, words.size)
        self.canvas.drawString(*self.place(words.at), as_seen(words.text))

    def _box(self, box: Box) -> None:
        left, bottom = self.place((box.left, box.top + box.height))
        if box.solid:
            self.canvas.setFillColor(self.form.theme.ink)
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
            style=self.form.theme,
            least=picture.least or self.form.least,
        )
        self.canvas.restoreState()

    def _cut_off(self, frame: Frame) -> None:
        window = self.canvas.beginPath()
        window.rect(*self.place((frame.left, frame.top + frame.height)), frame.width, frame.height)
        self.canvas.clipPath(window, stroke=0, fill=0)

    def _pen(self, width: float, dash: Sequence[float] = ()) -> None:
        self.canvas.setStrokeColor(self.form.theme.ink)
        self.canvas.setLineWidth(width)
        self.canvas.setDash(list(dash))
