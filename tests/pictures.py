"""`python3 -m tests.pictures`: the README's pictures, made anew from the demo.

Needs poppler's `pdftoppm` for the page. Run it in the environment that the
tests made; without a screen Qt draws offscreen.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

from app.first_run import ready

PICTURES = Path(__file__).resolve().parents[1] / "assets" / "pictures"
WINDOW_SIZE = (1280, 800)
PAGE = 2  # the first cloth
DOTS_PER_INCH = 80


def main() -> int:
    """Make both pictures and return 0."""
    ready("tests", sys.argv[1:])
    PICTURES.mkdir(exist_ok=True)
    picture_of_window(PICTURES / "window.png")
    picture_of_page(PICTURES / "packet.png")
    return 0


def picture_of_window(target: Path) -> None:
    """The window on the demo, in the light look, as large as a small laptop's screen."""
    os.environ["QT_QPA_PLATFORM"] = "offscreen"
    from PySide6.QtCore import QSettings
    from PySide6.QtWidgets import QApplication

    from app.assets import asset
    from app.window.appearance import Appearance, Look
    from app.window.document import Document
    from app.window.main import DEMO
    from app.window.main_window import MainWindow
    from app.window.memory import Memory
    from app.window.planner import Planner
    from core.project_file import load

    application = QApplication([])
    with tempfile.TemporaryDirectory() as folder:
        settings = QSettings(str(Path(folder) / "none.ini"), QSettings.Format.IniFormat)
        appearance = Appearance(application)
        appearance.wear(Look.LIGHT)
        planner = Planner()
        window = MainWindow(Document(load(asset(DEMO))), planner, Memory(settings), appearance)
        window.resize(*WINDOW_SIZE)
        window.show()
        while window.plan is None or planner.busy:
            application.processEvents()
        application.processEvents()
        window.grab().save(str(target))
        window.document.undo_stack.setClean()
        window.close()
        planner.close()


def picture_of_page(target: Path) -> None:
    """One page of the demo's packet."""
    from app.assets import asset
    from app.packet.packet import packet_bytes
    from app.window.main import DEMO
    from core.plan import make_plan
    from core.project_file import load

    program = shutil.which("pdftoppm")
    if program is None:
        sys.exit("pdftoppm is missing: install poppler (poppler-utils on Debian)")
    page, files = str(PAGE), ("-", str(target.with_suffix("")))
    subprocess.run(
        [program, "-png", "-singlefile", "-r", str(DOTS_PER_INCH), "-f", page, "-l", page, *files],
        input=packet_bytes(make_plan(load(asset(DEMO)))),
        check=True,
    )


if __name__ == "__main__":
    sys.exit(main())
