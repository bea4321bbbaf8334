"""The demo projects' pictures, held against their golden text.

A picture that is meant to change is written anew by
`python3 -m tests.regold`; the change is then reviewed as a diff.
"""

from __future__ import annotations

import pytest

from tests.core.drawing.dump import GOLDEN, golden_drawings


@pytest.fixture(scope="module")
def drawings() -> dict[str, str]:
    return golden_drawings()


def test_there_is_a_golden_file_for_every_picture_and_no_other(drawings: dict[str, str]) -> None:
    assert sorted(drawings) == sorted(path.name for path in GOLDEN.glob("*.txt"))


def test_the_pictures_are_as_they_were(drawings: dict[str, str]) -> None:
    for name, text in drawings.items():
        assert text == (GOLDEN / name).read_text(encoding="utf-8"), name
