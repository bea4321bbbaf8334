"""The packet from the command line: chosen pages, a class, other ways out, and bad input."""

from __future__ import annotations

from pathlib import Path

import pytest

from app.command_line import main
from tests.app.packet.pdf_reader import pages, reader
from tests.core.demos import demo_path

RUNNER = str(demo_path("tide-pool-runner"))
OLD = b"an older file"


def _plan(*words: str) -> int:
    return main(["plan", RUNNER, *words])


def test_chosen_pages_for_a_class_in_large_print(tmp_path: Path) -> None:
    out = tmp_path / "class.pdf"
    words = ["--pages", "quilt", "--for", "Ada, Ben", "--copies", "2", "--large", "--grey"]
    assert _plan("--pdf", str(out), *words) == 0
    found = pages(out.read_bytes())
    assert sum("Ada" in page.texts[-2].words for page in found) == len(found) / 2
    assert all(text.size >= 18 - 0.01 for page in found for text in page.texts)


def test_pages_that_compare_are_there_when_asked_for(tmp_path: Path) -> None:
    out = tmp_path / "packet.pdf"
    assert _plan("--pdf", str(out), "--pages", "comparison,cuts") == 0
    titles = [str(e.title) for e in reader(out.read_bytes()).outline if not isinstance(e, list)]
    assert titles == ["The cut order", "Tide Pool table runner: strip width"]


def test_pictures_and_tables_have_a_file_each(tmp_path: Path) -> None:
    asked = [word for kind in ("svg", "png", "csv") for word in (f"--{kind}", str(tmp_path / kind))]
    assert _plan(*asked) == 0
    names = {path.stem for path in (tmp_path / "svg").iterdir()}
    assert names == {path.stem for path in (tmp_path / "png").iterdir()}
    assert "quilt" in names
    assert {path.name for path in (tmp_path / "csv").iterdir()} == {"pieces.csv", "purchases.csv"}


def test_names_with_slashes_stay_inside_the_folder(tmp_path: Path) -> None:
    text = Path(RUNNER).read_text("utf-8").replace("shelf linen", "../../a/b")
    project = tmp_path / "slashes.crossgrain"
    project.write_text(text, "utf-8")
    assert main(["plan", str(project), "--png", str(tmp_path / "png")]) == 0
    assert {path.name for path in tmp_path.iterdir()} == {"slashes.crossgrain", "png"}
    assert any("a-b" in path.name for path in (tmp_path / "png").iterdir())


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--pages", ""], "--pages: no page is chosen; write some of quilt, cloths"),
        (["--pages", "lining"], "--pages: there is no page called lining; write some of"),
        (["--copies", "0"], "--copies: write a whole number from 1 to 50"),
        (["--bar", "3 mm"], "--bar: write how long the printed 100 mm bar measures"),
        (["--for", ",".join(map(str, range(300)))], "--for: 300 names are too many"),
    ],
)
def test_a_bad_choice_is_one_sentence_and_the_older_file_is_whole(
    words: list[str], said: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "packet.pdf"
    out.write_bytes(OLD)
    assert _plan("--pdf", str(out), *words) == 2
    assert said in capsys.readouterr().err
    assert out.read_bytes() == OLD
    assert list(tmp_path.iterdir()) == [out]


@pytest.mark.parametrize("option", ["--svg", "--png", "--csv"])
def test_a_folder_that_is_a_file_is_one_sentence(
    option: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    taken = tmp_path / "taken"
    taken.write_bytes(OLD)
    assert _plan(option, str(taken)) == 2
    [line] = capsys.readouterr().err.splitlines()
    assert str(taken) in line
    assert taken.read_bytes() == OLD


def test_a_locked_file_is_one_sentence_and_stays(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """As Windows refuses to replace a file that another program has open."""
    out = tmp_path / "packet.pdf"
    out.write_bytes(OLD)

    def locked(part: Path, onto: Path) -> Path:
        raise PermissionError(13, "Permission denied", str(onto))

    monkeypatch.setattr(Path, "replace", locked)
    assert _plan("--pdf", str(out)) == 2
    [line] = capsys.readouterr().err.splitlines()
    assert "packet.pdf: Permission denied" in line
    assert out.read_bytes() == OLD
    assert list(tmp_path.iterdir()) == [out]
