"""Crossgrain's core: exact lengths, finishing arithmetic, the lay, the drawings.

Nothing in here knows a window, a page or a file dialog; `tests/test_houses.py`
and the lint rules keep it so.
"""
