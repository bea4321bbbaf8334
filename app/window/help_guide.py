"""Help: the job from the first measure to the packet, with pictures of the quilt in the window.

The pictures are the plan's own drawings, painted as the views paint them, so that a
person meets the same letters and hatches there and here.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum, auto
from html import escape

from PySide6.QtCore import QUrl
from PySide6.QtGui import QColor, QImage, QPainter, QTextDocument

from app.paint_qt import Picture
from app.photos_qt import NO_PHOTOS, Photos
from app.style import Theme
from app.window.yardage import SECTION_ENLARGED
from core.by_hand.sheets import sheets_of
from core.drawing.cloth import draw_sheet
from core.drawing.edge_map import draw_edge_map
from core.drawing.edge_section import draw_edge_section
from core.drawing.enlarging import enlarged
from core.drawing.frame import Heading
from core.drawing.marks import Drawing
from core.drawing.quilt import draw_quilt
from core.language import marked, told
from core.plan import Plan

WIDE, HIGH = 440, 280  # pixels that a picture takes at most, in letters of the usual size
AIR = 6.0  # pixels of table round a drawing


@dataclass(frozen=True, slots=True)
class Look:
    """How pictures are painted; `pixels` of the screen's own make one of Qt's."""

    theme: Theme
    photos: Photos = NO_PHOTOS
    pixels: float = 1.0


class Shown(Enum):
    """What of the plan a step is pictured with."""

    QUILT = auto()
    CLOTH = auto()
    SECTION = auto()
    EDGE = auto()


@dataclass(frozen=True, slots=True)
class Step:
    """One step of the job; `caption` says what the picture shows, to those who cannot see it."""

    title: str
    sentences: tuple[str, ...]
    shown: Shown | None = None
    caption: str = ""


STEPS = (
    Step(
        marked("Say what you have"),
        (
            marked(
                "At the left, give the top's width and length, measured raw edge to raw edge "
                "through the middle, and a fabric for each cloth. Measure the real cloth: it is "
                "often narrower than its label."
            ),
            marked(
                "Pieces on your shelf go under their fabric as pieces on hand. They are used first."
            ),
            marked(
                "A length may be written in inches or metric, whichever your ruler has: 50 1/2, "
                "128 cm, 1 1/4 yd. Edit ▸ Units changes what is shown; nothing is rounded."
            ),
        ),
    ),
    Step(
        marked("Say what you make"),
        (
            marked(
                "Add borders from the inside out, then backing, batting, binding, a sleeve, a "
                "label. Most fields hold what is usual; More shows the rest. Rest the mouse on a "
                "field to read what its word means."
            ),
            marked(
                "If something cannot be, it is said under its field and above the pictures, and "
                "the last plan that worked stays in sight."
            ),
        ),
        Shown.QUILT,
        marked("Your quilt from the front: each part has its letter and its own hatch."),
    ),
    Step(
        marked("Look at the cloth"),
        (
            marked(
                "Yardage shows every cloth to scale. A piece bears its letter and its size; what "
                "is dashed is left over. The ruler runs along the near edge, the arrow shows the "
                "lengthwise grain, with one head where the print has one way up."
            ),
            marked(
                "Click a piece, or walk with the arrow keys: it is ringed in every picture and "
                "chosen in the lists."
            ),
            marked(
                "Under More, a fabric may have its own colour or a photo of the cloth, shown to "
                "scale."
            ),
        ),
        Shown.CLOTH,
        marked("The first of your cloths, with its pieces."),
    ),
    Step(
        marked("Choose with open eyes"),
        (
            marked(
                "Side by side sets one choice, such as the strip's width, against others: what is "
                "bought, how many joins, how it lies. Staircase shows from which width to which "
                "the same is bought. In hand says what your own cloth is enough for, and how "
                "narrow or short it may turn out before the plan fails."
            ),
            marked("A cloth that is proved least cannot be bought in less for these pieces."),
        ),
        Shown.SECTION,
        marked(
            "The bound edge cut through: the strip goes round the edge, and its fold lands past "
            "the seam on the other face. That is its reach."
        ),
    ),
    Step(
        marked("Before you cut"),
        (
            marked(
                "Read what stands under Before you cut; Enter on a line goes to its field. Wash "
                "and press what is to be washed, then measure the usable width again and write it "
                "down here: the plan follows."
            ),
            marked("Read the cautions below. Cloth cannot be uncut."),
        ),
    ),
    Step(
        marked("Cut, in order"),
        (
            marked(
                "Cut order lists each cut with its measure, from edge to edge of the cloth in "
                "hand, as a rotary cutter and a ruler make them. Letter the pieces as they fall; "
                "the packet has tags for that."
            ),
        ),
    ),
    Step(
        marked("Sew"),
        (
            marked(
                "Sewing says how strips join, which borders go on first and how the backing is "
                "pieced. Edge shows where the binding starts and where each join lands. A join at "
                "a corner makes a lump that will not mitre; move the start if one does."
            ),
        ),
        Shown.EDGE,
        marked(
            "Your binding as it is sewn on: the start, the joins, and how far each is from its "
            "corner."
        ),
    ),
    Step(
        marked("Take it to the table"),
        (
            marked(
                "File ▸ Print… shows the packet's pages, to choose, print and save: for one quilt "
                "or for each name of a class, in large print or without colour."
            ),
            marked(
                "What you do is kept as you go and offered again after a crash; Save writes the "
                "file."
            ),
        ),
    ),
    Step(
        marked("Easier on the eyes and the hands"),
        (
            marked(
                "View ▸ Appearance has light, dark and high contrast. View ▸ Colours has a set "
                "that stays apart for colour-blind eyes, with hatches of its own. View ▸ Text "
                "Size makes every word larger, up to twice."
            ),
            marked(
                "Nothing needs a mouse: Tab goes from field to field, the keys below do the rest, "
                "and the lists say all that the pictures show."
            ),
        ),
    ),
)


def steps_html() -> str:
    """The steps, each with the place of its picture."""
    return "".join(_step(number, step) for number, step in enumerate(STEPS, start=1))


def _step(number: int, step: Step) -> str:
    words = "".join(f"<p>{escape(told(sentence))}</p>" for sentence in step.sentences)
    picture = ""
    if step.shown is not None:
        said = escape(told(step.caption))
        picture = f'<p><img src="{_name(step.shown)}" alt="{said}"></p><p><i>{said}</i></p>'
    title = escape(told(step.title))
    return f'<h3><a name="step{number}"></a>{number}. {title}</h3>{words}{picture}'


def _name(shown: Shown) -> str:
    return f"plan:{shown.name.lower()}"


def add_pictures(document: QTextDocument, plan: Plan | None, look: Look) -> None:
    """Give the document the pictures that its text names; blank ones while there is no plan."""
    drawings = dict(_drawings(plan)) if plan is not None else {}
    for shown in Shown:
        drawing = drawings.get(shown)
        image = QImage() if drawing is None else painted(drawing, look)
        kind = QTextDocument.ResourceType.ImageResource
        document.addResource(kind.value, QUrl(_name(shown)), image)


def _drawings(plan: Plan) -> Iterator[tuple[Shown, Drawing]]:
    """What there is to show of a plan."""
    yield Shown.QUILT, draw_quilt(plan)
    for place, fabric in enumerate(plan.fabrics):
        if sheets := sheets_of(fabric):
            yield Shown.CLOTH, draw_sheet(plan, place, sheets[-1], Heading.RIGHT)
            break
    if (section := draw_edge_section(plan)) is not None:
        yield Shown.SECTION, enlarged(section, SECTION_ENLARGED)
    if (edge := draw_edge_map(plan)) is not None:
        yield Shown.EDGE, edge


def painted(drawing: Drawing, look: Look) -> QImage:
    """A drawing as a picture for a page, as large as there is room."""
    theme = look.theme
    room = (WIDE * theme.words - 2 * AIR, HIGH * theme.words - 2 * AIR)
    scale = min(room[0] / drawing.width, room[1] / drawing.height)
    sides = (drawing.width, drawing.height)
    wide, high = (round((side * scale + 2 * AIR) * look.pixels) for side in sides)
    image = QImage(wide, high, QImage.Format.Format_RGB32)
    image.setDevicePixelRatio(look.pixels)
    image.fill(QColor(theme.table))
    painter = QPainter(image)
    painter.translate(AIR, AIR)
    painter.scale(scale, scale)
    Picture(drawing).paint(painter, scale, theme, photos=look.photos)
    painter.end()
    return image
