"""The cautions, on a page to hang up."""

from __future__ import annotations

from typing import Final

from app.cautions import CAUTIONS
from app.packet.column import Column
from app.packet.page import Page
from app.packet.paper import USUAL, Format

_TITLE: Final = "Cautions"


def cautions_pages(form: Format = USUAL) -> tuple[Page, ...]:
    column = Column(_TITLE, form)
    column.mark(_TITLE, 0)
    column.title(_TITLE)
    column.items(CAUTIONS)
    return column.pages()
