"""The widths of a table's columns."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtGui import QFontMetrics
from PySide6.QtWidgets import QApplication

from app.window.table_widths import shares, wanted_and_least

WIDTHS = st.lists(st.tuples(st.integers(0, 300), st.integers(0, 300)), min_size=1, max_size=6)


@given(WIDTHS, st.integers(0, 5), st.integers(0, 200), st.integers(0, 1500))
def test_no_column_is_narrower_than_its_least_and_no_room_is_wasted(
    columns: list[tuple[int, int]], at: int, more: int, room: int
) -> None:
    wanted = [max(pair) for pair in columns]
    least = [min(pair) for pair in columns]
    wide = at % len(columns)
    ease = least[wide] + more
    widths = shares(wanted, least, wide, ease, room)
    assert all(width >= narrow for width, narrow in zip(widths, least, strict=True))
    if room >= sum(least):
        assert room - len(columns) < sum(widths) <= room
    else:
        assert widths == [*least[:wide], ease, *least[wide + 1 :]]


def test_a_column_needs_room_for_its_widest_word(qapp: QApplication) -> None:
    metrics = QFontMetrics(qapp.font())
    wanted, least = wanted_and_least(["schmale Rückseitenbahn", "Rand 1"], metrics, 1000)
    assert least == metrics.horizontalAdvance("Rückseitenbahn")
    assert wanted == metrics.horizontalAdvance("schmale Rückseitenbahn")
    _, number = wanted_and_least(["4½ × 62⁹⁄₁₆ in"], metrics, 1000)
    assert number == metrics.horizontalAdvance("62⁹⁄₁₆ in")
    assert wanted_and_least(["W" * 80], metrics, 100) == (100, 100)
