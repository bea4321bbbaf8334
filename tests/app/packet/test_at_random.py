"""Packets of random projects: no words over others, none outside the frame, all pieces named.

A usual run takes a few projects, since each is planned, printed and read again;
`settings(max_examples=100)` on these has been run by hand.
"""

from __future__ import annotations

from itertools import pairwise

from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from app.packet.choice import PacketChoice
from app.packet.packet import packet_bytes
from app.packet.paper import Format, Paper
from core.plan import Plan, make_plan
from core.quilt import Project
from core.refusal import Refusal
from tests.app.packet.pdf_reader import Seen, Text, pages
from tests.strategies import projects

HAIR = 0.3  # points: runs of one line may touch
few = settings(
    max_examples=6, deadline=None, suppress_health_check=[HealthCheck.too_slow], derandomize=True
)
formats = st.builds(Format, st.sampled_from(list(Paper)), st.booleans(), st.booleans())


def _plan(project: Project) -> Plan:
    try:
        return make_plan(project)
    except Refusal:
        assume(False)
        raise


def overlaps(page: Seen) -> list[tuple[Text, Text]]:
    """Pairs of words whose boxes share more than a hair; swept from left to right."""
    found = []
    waiting: list[Text] = []
    for text in sorted(page.texts, key=lambda text: text.box[0]):
        waiting = [other for other in waiting if other.box[2] - text.box[0] > HAIR]
        found += [(other, text) for other in waiting if _shared_height(other, text) > HAIR]
        waiting.append(text)
    return found


def _shared_height(one: Text, other: Text) -> float:
    return min(one.box[3], other.box[3]) - max(one.box[1], other.box[1])


def outside(page: Seen, form: Format) -> list[Text]:
    """Words that leave the frame."""
    (wide, high), (inner, tall) = form.paper.size, (form.width * form.zoom, form.height * form.zoom)
    left, bottom = (wide - inner) / 2 - HAIR, (high - tall) / 2 - HAIR
    return [
        text
        for text in page.texts
        if text.box[0] < left
        or text.box[1] < bottom
        or text.box[2] > wide - left
        or text.box[3] > high - bottom
    ]


@few
@given(projects(), formats)
def test_no_words_are_over_others_or_outside_the_frame(project: Project, form: Format) -> None:
    plan = _plan(project)
    for number, page in enumerate(pages(packet_bytes(plan, PacketChoice(form=form))), start=1):
        assert overlaps(page) == [], f"page {number}"
        assert outside(page, form) == [], f"page {number}"


def test_the_sweep_finds_words_that_lie_on_each_other() -> None:
    boxes = ((0.0, 0.0, 10.0, 5.0), (9.0, 4.0, 20.0, 9.0), (9.0, 5.5, 12.0, 9.0))
    texts = [Text(str(place), box, 10) for place, box in enumerate(boxes)]
    found = overlaps(Seen(texts))
    assert {(one.words, other.words) for one, other in found} == {("0", "1"), ("1", "2")}
    assert all(one.box[0] <= other.box[0] for pair in found for one, other in pairwise(pair))
