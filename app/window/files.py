"""New, open, save: the document and the files it comes from and goes to.

Nothing unsaved is left behind without asking, and a failure is told in one
sentence with the document and every file as they were.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from os.path import isdir, isfile  # which fail for nothing
from pathlib import Path

from PySide6.QtCore import QDateTime, QLocale, QObject, QStandardPaths, Signal

from app.os_words import said_of
from app.window.asker import Answer, Asker, KeptAnswer, projects
from app.window.autosave import Kept, left_behind
from app.window.document import Document
from app.window.hold import Hold, Stamp, stamp
from app.window.memory import Memory
from app.window.spoken import dates_spoken
from app.wording import upper_first
from core.language import told
from core.lengths import Units, exact_text
from core.new_parts import new_fabric
from core.project_file import FORMAT, SUFFIX, VERSION, from_document
from core.quilt import Project
from core.refusal import Refusal
from core.sizes import QuiltSize


def new_project(units: Units, size: QuiltSize | None = None) -> Project:
    """A project to start from: a quilt top of that or of a common size, and one cloth."""
    width, length, edge = (
        ("50", "60", "1/8") if units is Units.INCHES else ("130 cm", "150 cm", "3 mm")
    )
    if size is not None:
        width, length = exact_text(size.width, units), exact_text(size.length, units)
    quilt = {"name": told("New quilt"), "width": width, "length": length, "edge_thickness": edge}
    return from_document(
        {
            "format": FORMAT,
            "version": VERSION,
            "units": units.value,
            "quilt": quilt,
            "fabrics": [new_fabric(told("cloth"), units)],
        }
    )


class Files(QObject):
    """Emits `recent_changed` when the list of recent files has, and `told(str)` for good news.

    `recovered` says that the document is now unsaved work which a crash had left behind.
    """

    recent_changed = Signal()
    told = Signal(str)
    recovered = Signal()

    def __init__(
        self,
        document: Document,
        asker: Asker,
        memory: Memory,
        commit: Callable[[], None],
        untaken: Callable[[], Sequence[str]],
    ) -> None:
        super().__init__()
        self.document = document
        self.asker = asker
        self.memory = memory
        self._commit = commit
        self._untaken = untaken
        self._hold = Hold()
        self._stamp: Stamp | None = None

    def new(self, size: QuiltSize | None = None) -> bool:
        """Start a new quilt, in the units of this one; whether it was started."""
        if not self.may_leave():
            return False
        self.document.start(new_project(self.document.project.units, size))
        self._hold_own()
        return True

    def open(self) -> None:
        """Ask for a file and open it."""
        if self.may_leave() and (path := self.asker.file_to_open(self._folder())) is not None:
            self._open(path)

    def open_path(self, path: Path) -> None:
        """Open a file that was named: on the command line, by a drop, among the recent ones."""
        if self.may_leave():
            self._open(path)

    def _open(self, path: Path) -> None:
        if not self._may_take(path, told("Open it all the same")):
            return
        try:
            seen = stamp(path)
            self.document.open(path)
        except Refusal as refusal:
            self.asker.tell(_not_opened(path), str(refusal))
        except OSError as error:
            if isdir(path.parent):  # else it may be on a disk that is not connected
                self.memory.forget(path)
                self.recent_changed.emit()
            self.asker.tell(_not_opened(path), reason(error, path))
        else:
            self._stamp = seen
            self._remember(path)
        self._hold_own()

    def save(self) -> bool:
        """Save where the document is kept, or ask where; whether it is saved now."""
        self._commit()
        path = self.document.path
        return self.save_as() if path is None else self._save(path)

    def save_as(self) -> bool:
        """Ask where to save; whether it is saved now."""
        self._commit()
        proposed = self.document.path or self._folder() / file_name(self.document.name, SUFFIX)
        path = self.asker.file_to_save(told("Save the project"), proposed, projects())
        return path is not None and self._save(path)

    def _save(self, path: Path) -> bool:
        if not self._may_write(path):
            return False
        gone = path == self.document.path and self._stamp is not None and stamp(path) is None
        try:
            self.document.save(path)
            self._stamp = stamp(path)
        except OSError as error:
            said = f"{reason(error, path)} {_still_here(path)}"
            self.asker.tell(told("{file} was not saved", file=path.name), said)
            return False
        finally:
            self._hold_own()
        self._remember(path)
        if left_out := self.left_out():
            title = told("{file} was saved, but not all of it", file=path.name)
            self.asker.tell(title, left_out)
        saved = told("Saved {file}", file=path.name)
        anew = told("Saved {file} anew: it was no longer in its place", file=path.name)
        self.told.emit(anew if gone else saved)
        return True

    def _hold_own(self) -> None:
        """Hold the document's own file and no other."""
        path = self.document.path
        if path is None or self._hold.take(path):
            self._hold.let_go()

    def _may_take(self, path: Path, button: str) -> bool:
        """Hold a file, or hear from the person that it may be opened in two windows."""
        holder = self._hold.take(path)
        return not holder or self.asker.go_on(
            told("{file} is open in another window", file=path.name),
            told(
                "It is held by {holder}. Of changes made in both windows, only those that are "
                "saved last would stay.",
                holder=holder,
            ),
            button,
        )

    def _may_write(self, path: Path) -> bool:
        """Whether a save would undo nobody else's work, or the person says that it may."""
        if path != self.document.path:
            return self._may_take(path, told("Replace it all the same"))
        if self._stamp is None or stamp(path) in (None, self._stamp):
            return True
        return self.asker.go_on(
            told("{file} was changed by another window or program", file=path.name),
            told(
                "It is no longer the file that was opened here; saving replaces it. "
                "To keep both, cancel and save under another name."
            ),
            told("Replace it all the same"),
        )

    def offer_kept(self) -> None:
        """Offer what programs that ended in the middle of their work had kept."""
        waiting = left_behind()
        for kept in waiting:
            when = dates_spoken().toString(moment(kept), QLocale.FormatType.ShortFormat)
            answer = self.asker.about_kept(kept.name, when)
            if answer is KeptAnswer.OPEN and self.may_leave():
                self._recover(kept)
                break
            if answer is KeptAnswer.REMOVE:
                kept.remove()
        for kept in waiting:
            kept.leave()

    def _recover(self, kept: Kept) -> None:
        """Go on with what was kept; it is removed once this window has kept it anew."""
        self._stamp = stamp(kept.path) if kept.path else None
        self.document.recover(kept.project, kept.path)
        self._hold_own()
        self.recovered.emit()
        kept.remove()

    def let_go(self) -> None:
        """The window closes: other windows may have its file."""
        self._hold.let_go()

    def may_leave(self) -> bool:
        """Whether the document may be let go: all of it is saved, or the person says so."""
        self._commit()
        if self.document.undo_stack.isClean() and not self._untaken():
            return True
        answer = self.asker.about_changes(self.document.name, self.left_out())
        if answer is Answer.SAVE:
            return self.save() and not self._untaken()
        return answer is Answer.DISCARD

    def left_out(self) -> str:
        """A sentence on what is typed but was not taken, and so is in no file; or nothing."""
        names = "; ".join(self._untaken())
        return names and told(
            "{names}: what is typed there could not be used, and the last value that worked is "
            "kept.",
            names=names,
        )

    def _remember(self, path: Path) -> None:
        self.memory.opened(path)
        self.recent_changed.emit()

    def _folder(self) -> Path:
        """Where file dialogs start: beside the document, else among the person's documents."""
        if self.document.path is not None:
            return self.document.path.parent
        documents = QStandardPaths.StandardLocation.DocumentsLocation
        return Path(QStandardPaths.writableLocation(documents))


def _not_opened(path: Path) -> str:
    return told("{file} was not opened", file=path.name)


def file_name(name: str, suffix: str) -> str:
    """A file name made of a quilt's name, without what file systems refuse.

    >>> file_name("Stars: 3/4", ".pdf")
    'Stars 3 4.pdf'
    """
    kept = "".join(char if char.isalnum() or char in " -_" else " " for char in name)
    words = " ".join(kept.split()) or told("quilt")
    return f"{words}{suffix}"


def moment(kept: Kept) -> QDateTime:
    """When something was kept, for a locale to write."""
    return QDateTime.fromSecsSinceEpoch(int(kept.moment.timestamp()))


def reason(error: OSError, path: Path) -> str:
    """Why a file could not be read or written, as a sentence."""
    return told("{reason} ({path}).", reason=upper_first(said_of(error)), path=path)


def _still_here(path: Path) -> str:
    """What is not lost when a file could not be written."""
    if isfile(path):
        return told(
            "The file there is as it was, and your changes are still here: save them in another "
            "place."
        )
    return told("Your changes are still here: save them in another place.")
