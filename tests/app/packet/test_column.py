"""A column never clips, never sets one thing on another, and repeats a table's head."""

from __future__ import annotations

from app.packet.column import BODY, Column
from app.packet.page import Words
from app.packet.paper import FRAME_WIDTH
from app.packet.table import ColumnHead, table
from app.typeface import typeface

HEADS = (ColumnHead("Fabric", 1), ColumnHead("Buy", 2))


def _texts(column: Column) -> list[list[str]]:
    return [[i.text for i in page.items if isinstance(i, Words)] for page in column.pages()]


def test_a_long_table_goes_on_under_its_head() -> None:
    column = Column("Cloth")
    rows = [(f"fabric {n}", "a little of it " * 10) for n in range(60)]
    table(column, HEADS, rows)
    pages = _texts(column)
    assert len(pages) > 1
    assert all(page[1:3] == ["Fabric", "Buy"] for page in pages[1:])
    assert all(page[0] == "Cloth, continued" for page in pages[1:])
    listed = [text for page in pages for text in page if text.startswith("fabric ")]
    assert listed == [row[0] for row in rows]


def test_nothing_is_set_below_the_bottom_or_past_the_side() -> None:
    column = Column("Words")
    for size in (3, 40, 400):
        column.heading("A heading")
        column.text("measure twice and cut once " * size)
        column.items(["press, do not iron, " * size] * 3)
    pages = column.pages()
    assert len(pages) > 3
    for page in pages:
        for item in page.items:
            assert isinstance(item, Words)
            assert item.at[1] <= column.bottom
            assert item.at[0] + typeface(bold=item.bold).width(item.text) * item.size <= (
                FRAME_WIDTH + 0.01
            )


def test_a_heading_is_never_the_last_thing_on_a_page() -> None:
    for lines in range(30, 60):
        column = Column("Words")
        for _ in range(lines):
            column.text("a line")
        column.heading("A heading")
        column.text("what it heads")
        heading_page = next(page for page in _texts(column) if "A heading" in page)
        assert "what it heads" in heading_page


def test_a_cell_with_far_too_many_words_is_cut_short_with_an_ellipsis() -> None:
    column = Column("Cloth")
    table(column, HEADS, [("W" * 2000, "1 yd")])
    [page] = _texts(column)
    cell = [text for text in page if text.startswith("W")]
    assert cell[-1].endswith("…")
    assert all(typeface().width(line) * BODY <= FRAME_WIDTH for line in cell)
