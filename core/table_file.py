"""The cutting table as JSON: `{"ruler": "24", "folds": 1}`."""

from __future__ import annotations

from core.reading import Fields
from core.table import MOST_FOLDS, Table, default_table


def read_table(fields: Fields) -> Table:
    """The table of a file; what is left out is as by default in the file's units."""
    usual = default_table(fields.units)
    table = Table(
        fields.length("ruler", usual.ruler), fields.whole("folds", usual.folds, most=MOST_FOLDS)
    )
    fields.done()
    return table
