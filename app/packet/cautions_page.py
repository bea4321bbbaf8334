"""The cautions, on a page to hang up."""

from __future__ import annotations

from typing import Final

from app.cautions import CAUTIONS
from app.packet.column import Column
from app.packet.page import Page
from app.packet.paper import USUAL, Format
from core.language import marked, told

_TITLE: Final = marked("Cautions")


def cautions_pages(form: Format = USUAL) -> tuple[Page, ...]:
    title = told(_TITLE)
    column = Column(title, form)
    column.mark(title, 0)
    column.title(title)
    column.items([told(caution) for caution in CAUTIONS])
    return column.pages()
