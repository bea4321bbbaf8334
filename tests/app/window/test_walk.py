"""A random walk of edits, undos, saves, reopens and cuts stays beside a model of plain lists."""

from __future__ import annotations

from contextlib import suppress
from pathlib import Path
from random import Random

import pytest
from PySide6.QtWidgets import QApplication

from app.window.asker import Answer
from app.window.cutting.cuttings import Cuttings
from app.window.document import Document
from app.window.files import Files, new_project
from app.window.memory import Memory
from core.cutting.cutting import ClothCutting, Cutting, begin
from core.cutting.miscut import Spoilt
from core.cutting.progress import on_table
from core.cutting.remaining import LaidAgain
from core.lengths import Units
from core.project_file import load
from core.quilt import Project
from core.refusal import Refusal
from tests.app.window.conftest import ScriptedAsker
from tests.app.window.edits import SHOWN, Change, random_change

STEPS = 2000
TRIES = 5  # of a lay after a miscut: it need not be short


class Model:
    """What the document must be: states one after the other, and what each file holds."""

    def __init__(self, project: Project) -> None:
        self.files: dict[Path, Project] = {}
        self.cuttings: dict[Path | None, Cutting] = {}
        self.start(project, None)

    def start(self, project: Project, path: Path | None) -> None:
        self.states, self.now, self.saved = [project], 0, 0
        self.path = path

    @property
    def project(self) -> Project:
        return self.states[self.now]

    def edit(self, change: Change) -> None:
        after = change(self.project)
        if after != self.project:
            if self.saved > self.now:
                self.saved = -1  # what was saved can no longer be reached
            self.states[self.now + 1 :] = [after]
            self.now += 1

    def undo(self) -> None:
        self.now = max(self.now - 1, 0)

    def redo(self) -> None:
        self.now = min(self.now + 1, len(self.states) - 1)

    def save(self, path: Path) -> None:
        self.files[path] = self.project
        self.path, self.saved = path, self.now

    @property
    def cutting(self) -> Cutting | None:
        """How far the cloth is cut: by its file, else as it was before it was ever saved."""
        return self.cuttings.get(self.path) or self.cuttings.get(None)


class Walk:
    """Does each step to the document and to the model."""

    def __init__(self, document: Document, memory: Memory, folder: Path, rng: Random) -> None:
        self.document, self.rng, self.folder = document, rng, folder
        self.asker = ScriptedAsker(answer=Answer.DISCARD)
        self.files = Files(document, self.asker, memory, lambda: None, lambda: ())
        self.model = Model(document.project)
        self.paths = [folder / f"{name}.crossgrain" for name in ("one", "two", "three é")]

    def step(self) -> None:
        weights = {
            self.edit: 60,
            self.undo: 15,
            self.redo: 12,
            self.save: 5,
            self.save_as: 3,
            self.reopen: 4,
            self.new: 1,
            self.cut: 8,
        }
        [act] = self.rng.choices(list(weights), weights=list(weights.values()))
        act()

    def cut(self) -> None:
        """At the table it is gone on with where it was left, whatever was edited since."""
        cuttings = Cuttings(self.document.path, SHOWN, self.folder)
        assert cuttings.found() == self.model.cutting
        cutting = self.model.cutting or begin(SHOWN)
        place = self.rng.randrange(len(cutting.cloths))
        further = cutting.with_cloth(place, self.cut_further(cutting.cloths[place]))
        cuttings.keep(further)
        self.model.cuttings[self.model.path] = further

    def cut_further(self, cloth: ClothCutting) -> ClothCutting:
        """A cut more, or one back; or a piece that is cut is spoilt, and the rest laid again."""
        cut = on_table(cloth.order, cloth.cuts_done).pieces
        if cut and self.rng.random() < 0.1:
            spoilt = Spoilt(self.rng.choice(cut).label)
            again = LaidAgain(cloth.order, cloth.cuts_done, spoilt, Units.INCHES, TRIES)
            return cloth.laid_again(again.answer())
        return self.rng.choice((cloth.cut_once, cloth.cut_once, cloth.back))()

    def edit(self) -> None:
        change = random_change(self.rng)
        with suppress(Refusal):
            self.document.edit("Edit", change)
        with suppress(Refusal):
            self.model.edit(change)

    def undo(self) -> None:
        self.document.undo_stack.undo()
        self.model.undo()

    def redo(self) -> None:
        self.document.undo_stack.redo()
        self.model.redo()

    def save(self) -> None:
        if self.model.path is not None:
            assert self.files.save()
            self.model.save(self.model.path)

    def save_as(self) -> None:
        self.asker.save_file = path = self.rng.choice(self.paths)
        assert self.files.save_as()
        self.model.save(path)

    def reopen(self) -> None:
        if self.model.files:
            path = self.rng.choice(list(self.model.files))
            self.files.open_path(path)
            self.model.start(self.model.files[path], path)

    def new(self) -> None:
        assert self.files.new()
        self.model.start(new_project(self.model.project.units), None)


@pytest.mark.parametrize("seed", [1, 2])
def test_a_long_random_walk_ends_where_its_model_does(
    demo: Project, memory: Memory, tmp_path: Path, seed: int, qapp: QApplication
) -> None:
    document = Document(demo)
    walk = Walk(document, memory, tmp_path, Random(seed))
    for _ in range(STEPS // 2):
        walk.step()
        assert document.project == walk.model.project
        assert document.path == walk.model.path
        assert document.undo_stack.isClean() == (walk.model.now == walk.model.saved)
    assert walk.asker.told == []
    assert {path: load(path) for path in walk.model.files} == walk.model.files
    assert len(walk.model.cuttings) > 1
    walk.files.let_go()


def test_what_the_walk_does_is_seen_when_it_goes_astray(
    demo: Project, memory: Memory, tmp_path: Path, qapp: QApplication
) -> None:
    document = Document(demo)
    walk = Walk(document, memory, tmp_path, Random(1))
    document.edit("Unknown to the model", random_change(Random(4)))
    assert document.project != walk.model.project
