"""The house's own rules: who may import whom, how long a module may be, what nothing is called."""

from __future__ import annotations

import ast
import importlib
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]
CORE = sorted((ROOT / "core").rglob("*.py"))
MODULES = CORE + sorted((ROOT / "app").rglob("*.py"))
FORBIDDEN = {"PySide6", "shiboken6", "qtpy", "reportlab", "app"}
LONGEST = 300


def named(path: Path) -> str:
    """Return a module's dotted name."""
    parts = path.relative_to(ROOT).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


def place(path: Path) -> str:
    """Return a test's id for a file."""
    return path.relative_to(ROOT).as_posix()


def leaks(source: str) -> list[str]:
    """Return the forbidden packages that a module's text imports, wherever in it."""
    names: list[str] = []
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Import):
            names += [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom) and not node.level:
            names.append(node.module or "")
        elif isinstance(node, ast.Call) and "import" in ast.unparse(node.func):
            names += [str(a.value) for a in node.args if isinstance(a, ast.Constant)]
    return [name for name in names if name.partition(".")[0] in FORBIDDEN]


def dragged_in(root: Path) -> str:
    """Import all of `core` in a Python of its own; return what forbidden came with it."""
    script = (
        "import pkgutil, sys, core, importlib\n"
        "for found in pkgutil.walk_packages(core.__path__, 'core.'):\n"
        "    importlib.import_module(found.name)\n"
        f"print(*sorted({FORBIDDEN!r} & {{name.partition('.')[0] for name in sys.modules}}))"
    )
    command = [sys.executable, "-c", script]
    return subprocess.run(command, cwd=root, check=True, capture_output=True, text=True).stdout


@pytest.mark.parametrize("path", CORE, ids=place)
def test_core_imports_no_qt_no_paper_and_no_app(path: Path) -> None:
    assert leaks(path.read_text(encoding="utf-8")) == []


@pytest.mark.parametrize(
    "planted",
    [
        "import PySide6.QtGui",
        "import math, reportlab.lib as lib",
        "from app import paint_qt",
        "def late():\n    from PySide6.QtCore import QRectF",
        "if TYPE_CHECKING:\n    import shiboken6",
        "import importlib\nimportlib.import_module('reportlab.pdfgen')",
        "__import__('qtpy')",
    ],
)
def test_a_planted_import_is_seen(planted: str) -> None:
    assert len(leaks(planted)) == 1


def test_an_import_of_the_house_is_no_leak() -> None:
    assert leaks("import applause, ast\nfrom core.lay import check\nfrom . import app") == []


def test_importing_all_of_core_drags_in_nothing_forbidden() -> None:
    assert dragged_in(ROOT).split() == []


def test_a_planted_drag_is_seen(tmp_path: Path) -> None:
    shutil.copytree(ROOT / "core", tmp_path / "core")
    (tmp_path / "core" / "planted.py").write_text("exec('im' + 'port reportlab')")
    assert dragged_in(tmp_path).split() == ["reportlab"]


def test_the_linter_sees_a_planted_import_too() -> None:
    command = [sys.executable, "-m", "ruff", "check", "--stdin-filename", "core/planted.py", "-"]
    planted = "def late() -> None:\n    import PySide6.QtGui  # noqa: F401\n"
    found = subprocess.run(
        command, cwd=ROOT, check=False, capture_output=True, text=True, input=planted
    )
    assert found.returncode == 1
    assert "TID251" in found.stdout


@pytest.mark.parametrize("path", MODULES, ids=place)
def test_every_module_imports(path: Path) -> None:
    if path.name == "__main__.py":
        compile(path.read_bytes(), path, "exec")
    else:
        importlib.import_module(named(path))


@pytest.mark.parametrize("path", MODULES, ids=place)
def test_a_module_fits_in_a_head(path: Path) -> None:
    lines = len(path.read_text(encoding="utf-8").splitlines())
    assert lines <= LONGEST, f"{lines} lines ask to be two modules"


@pytest.mark.parametrize("path", MODULES, ids=place)
def test_a_module_is_named_after_its_subject(path: Path) -> None:
    assert not {"utils", "util", "helpers", "misc", "common"} & set(named(path).split("."))


@pytest.mark.parametrize("path", MODULES, ids=place)
def test_no_class_is_a_manager(path: Path) -> None:
    classes = re.findall(r"^\s*class (\w+)", path.read_text(encoding="utf-8"), re.MULTILINE)
    assert [name for name in classes if name.endswith("Manager")] == []
