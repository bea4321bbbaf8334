"""The first run, on checkouts in small: real environments, a made-up package, no network."""

from __future__ import annotations

import ast
import os
import shutil
import subprocess
import sys
import time
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest

from app.commands import NAMES
from app.first_run import needs, system, too_old
from app.first_run.environment import Environment
from app.first_run.telling import Stop

ROOT = Path(__file__).resolve().parents[2]
PYPROJECT = """
[project]
dependencies = ["pebble>=1.0,<2"]
optional-dependencies.test = ["gravel>=1.0"]
"""
WHERE_AM_I = """
import sys

def main(argv):
    print(sys.prefix, *argv, sep="|")
    return 0
"""
# What a first run reads beside its own folder, and may: it needs nothing but Python.
FIRST = (
    "app/__init__.py", "app/__main__.py", "app/assets.py", "app/languages.py",
    "core/__init__.py", "core/language.py",
    "tests/__init__.py", "tests/__main__.py",
)  # fmt: skip
CLOSED_PORT = "http://127.0.0.1:9/simple"  # nothing listens on the discard port


class Checkout:
    """A checkout in small: the first run as it is, the rest of the program made up."""

    def __init__(self, folder: Path, wheels: Path) -> None:
        self.folder = folder
        self.environment = Environment(folder)
        self.wheels = wheels

    def start(self, module: str = "app", *argv: str, **environ: str) -> subprocess.Popen[str]:
        """Start `python3 -m module argv` with the wheels as the only source of packages."""
        pip = {"PIP_CONFIG_FILE": os.devnull, "PIP_FIND_LINKS": str(self.wheels)}
        return subprocess.Popen(
            [sys.executable, "-m", module, *argv],
            cwd=self.folder,
            env={**os.environ, **pip, "PIP_NO_INDEX": "1", **environ},
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
        )

    def run(self, module: str = "app", *argv: str, **environ: str) -> tuple[int, str, str]:
        """Return the exit status, standard output and standard error of a start."""
        with self.start(module, *argv, **environ) as process:
            printed, told = process.communicate(timeout=120)
        return process.returncode, printed.strip(), told

    def lose(self, package: str) -> None:
        """Damage the environment: a package is gone from it."""
        [left] = self.environment.folder.rglob(f"{package}-*.dist-info")
        shutil.rmtree(left)


def wheel(folder: Path, name: str, version: str) -> None:
    """Write an empty package that pip installs."""
    info = f"{name}-{version}.dist-info"
    with zipfile.ZipFile(folder / f"{name}-{version}-py3-none-any.whl", "w") as file:
        file.writestr(f"{name}.py", "")
        file.writestr(
            f"{info}/METADATA", f"Metadata-Version: 2.1\nName: {name}\nVersion: {version}"
        )
        file.writestr(
            f"{info}/WHEEL", "Wheel-Version: 1.0\nRoot-Is-Purelib: true\nTag: py3-none-any"
        )
        file.writestr(f"{info}/RECORD", "")


@pytest.fixture(scope="module")
def wheels(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("wheels")
    for name, version in (("pebble", "1.0"), ("pebble", "1.5"), ("gravel", "1.0")):
        wheel(folder, name, version)
    return folder


@pytest.fixture
def checkout(tmp_path: Path, wheels: Path) -> Checkout:
    return small_checkout(tmp_path / "checkout", wheels)


def small_checkout(folder: Path, wheels: Path) -> Checkout:
    shutil.copytree(ROOT / "app" / "first_run", folder / "app" / "first_run")
    for name in FIRST:
        (folder / name).parent.mkdir(exist_ok=True)
        shutil.copy(ROOT / name, folder / name)
    (folder / "app" / "command_line.py").write_text(WHERE_AM_I)
    (folder / "tests" / "checks.py").write_text(WHERE_AM_I.replace("main", "run_all"))
    (folder / "pyproject.toml").write_text(PYPROJECT)
    (folder / ".ci").mkdir()
    (folder / ".ci" / "constraints.txt").write_text("pebble==1.0\n")
    return Checkout(folder, wheels)


@pytest.fixture(scope="module")
def first(tmp_path_factory: pytest.TempPathFactory, wheels: Path) -> tuple[Checkout, str, str]:
    """A checkout after its first run, and what that run printed and told."""
    checkout = small_checkout(tmp_path_factory.mktemp("first") / "checkout", wheels)
    status, printed, told = checkout.run("app", "harbour.crossgrain")
    assert status == 0, told
    return checkout, printed, told


@pytest.fixture
def made(tmp_path: Path, first: tuple[Checkout, str, str]) -> Checkout:
    """A checkout of one's own after its first run."""
    shutil.copytree(first[0].folder, tmp_path / "made", symlinks=True)
    return Checkout(tmp_path / "made", first[0].wheels)


def test_the_first_run_makes_the_environment_and_goes_on_in_it(
    first: tuple[Checkout, str, str],
) -> None:
    checkout, printed, told = first
    assert printed == f"{checkout.environment.folder}|harbour.crossgrain"
    assert told.startswith(f"First run: making a private environment in {checkout.folder}")
    assert "installing pebble" in told


def test_the_second_run_is_silent(made: Checkout) -> None:
    assert made.run() == (0, str(made.environment.folder), "")


def test_the_constraints_decide_the_version(made: Checkout) -> None:
    assert [path.name for path in made.environment.folder.rglob("pebble-*.dist-info")] == [
        "pebble-1.0.dist-info"
    ]


def test_the_tests_fill_the_environment_up(made: Checkout) -> None:
    status, printed, told = made.run("tests", "-k", "lay")
    assert (status, printed) == (0, f"{made.environment.folder}|-k|lay")
    assert told.startswith("Filling up the private environment")
    assert made.run("tests")[2] == ""
    assert made.run("app")[2] == ""


def test_other_constraints_make_it_anew(made: Checkout) -> None:
    (made.folder / ".ci" / "constraints.txt").write_text("pebble==1.5\n")
    status, _, told = made.run()
    assert status == 0
    assert "anew: other packages are wanted now" in told
    assert list(made.environment.folder.rglob("pebble-1.5.dist-info"))


def test_a_package_that_has_gone_missing_is_told_and_mended(made: Checkout) -> None:
    made.lose("pebble")
    status, printed, told = made.run()
    assert (status, printed) == (2, "")
    assert "lacks pebble" in told
    assert "start once more" in told
    status, printed, _ = made.run()
    assert (status, printed) == (0, str(made.environment.folder))


@pytest.mark.skipif(sys.platform == "win32", reason="a link to Python stands in for a copy")
def test_an_environment_whose_python_is_gone_is_made_anew(made: Checkout) -> None:
    made.environment.python.unlink()
    made.environment.python.symlink_to(made.folder / "no-python-here")
    status, printed, told = made.run()
    assert (status, printed) == (0, str(made.environment.folder))
    assert "anew: its Python is gone" in told


def test_without_network_it_says_so_and_the_next_start_mends_it(made: Checkout) -> None:
    offline = {"PIP_NO_INDEX": "0", "PIP_FIND_LINKS": "", "PIP_INDEX_URL": CLOSED_PORT}
    status, printed, told = made.run("tests", **offline)
    assert (status, printed) == (2, "")
    assert told.splitlines()[-1].startswith("No network: connect this machine")
    status, printed, told = made.run("tests")
    assert (status, printed) == (0, str(made.environment.folder))
    assert "it was left unfinished" in told


def test_a_package_that_is_not_to_be_had_is_named(made: Checkout) -> None:
    status, printed, told = made.run("tests", PIP_FIND_LINKS="")
    assert (status, printed) == (2, "")
    assert told.splitlines()[-1].startswith("pip could not install gravel")
    assert "Traceback" not in told
    assert not made.environment.holds(["pebble>=1.0,<2"])  # who knows what pip left


def test_a_first_run_killed_in_the_middle_is_mended_by_the_next(checkout: Checkout) -> None:
    with checkout.start() as process:
        until((checkout.environment.folder / "pyvenv.cfg").exists)
        process.kill()
    status, printed, told = checkout.run()
    assert (status, printed) == (0, str(checkout.environment.folder))
    assert "it was left unfinished" in told


def until(condition: Callable[[], bool]) -> None:
    """Wait until a condition holds, a minute at most."""
    patience = time.monotonic() + 60
    while not condition():
        assert time.monotonic() < patience, "waited a minute in vain"
        time.sleep(0.01)


def test_two_first_runs_at_once_share_the_work(checkout: Checkout) -> None:
    with checkout.start() as one, checkout.start() as other:
        told = [process.communicate(timeout=120) for process in (one, other)]
    assert [printed.strip() for printed, _ in told] == [str(checkout.environment.folder)] * 2
    assert sum("First run" in words for _, words in told) == 1


def test_an_environment_of_somebody_elses_is_left_alone(checkout: Checkout) -> None:
    theirs = checkout.environment.folder / "theirs.txt"
    theirs.parent.mkdir()
    theirs.write_text("mine")
    status, _, told = checkout.run()
    assert status == 2
    [sentence] = told.splitlines()
    assert "Crossgrain did not make it" in sentence
    assert [path.name for path in theirs.parent.iterdir()] == ["theirs.txt"]


def test_where_everything_is_installed_no_environment_is_made(checkout: Checkout) -> None:
    (checkout.folder / "pyproject.toml").write_text('[project]\ndependencies = ["pytest>=9.0"]\n')
    assert checkout.run() == (0, sys.prefix, "")
    assert not checkout.environment.folder.exists()


def test_a_plan_without_paper_needs_no_environment(checkout: Checkout) -> None:
    assert checkout.run("app", "plan", "x.crossgrain", "--json", "-") == (
        0,
        f"{sys.prefix}|plan|x.crossgrain|--json|-",
        "",
    )
    assert not checkout.environment.folder.exists()


def test_a_checkout_that_cannot_be_written_gets_a_sentence(checkout: Checkout) -> None:
    checkout.environment.folder.write_text("a file where the folder should be")
    status, printed, told = checkout.run()
    assert (status, printed) == (2, "")
    assert "cannot be made" in told
    assert "Traceback" not in told


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="elsewhere there is a screen")
def test_without_a_screen_the_window_is_not_even_prepared(checkout: Checkout) -> None:
    nowhere = {"DISPLAY": "", "WAYLAND_DISPLAY": "", "QT_QPA_PLATFORM": ""}
    status, printed, told = checkout.run(**nowhere)
    assert (status, printed) == (2, "")
    [sentence] = told.splitlines()
    assert "no screen" in sentence
    assert "python3 -m app plan FILE" in sentence
    assert not checkout.environment.folder.exists()


@pytest.mark.parametrize(
    "name", ["app/__init__.py", "app/first_run/__init__.py", "app/__main__.py", "tests/__main__.py"]
)
def test_an_old_python_can_read_what_tells_it_that_it_is_old(name: str) -> None:
    source = (ROOT / name).read_text(encoding="utf-8")
    ast.parse(source, feature_version=(3, 6))
    assert "__future__" not in source  # Python 3.6 knows no annotations from there


def test_an_old_python_is_told_what_to_start_instead() -> None:
    sentence = too_old("tests", (3, 8, 18))
    assert "3.11 or newer, and this is Python 3.8.18" in sentence
    assert "python3.13 -m tests" in sentence


@pytest.mark.parametrize(
    ("version", "limits", "met"),
    [
        ("6.8.2", ">=6.8.3,<6.12", False),
        ("6.8.3", ">=6.8.3,<6.12", True),
        ("6.11.3", ">=6.8.3,<6.12", True),
        ("6.12.0", ">=6.8.3,<6.12", False),
        ("10.0", ">=9.0", True),
        ("1.0", "==1.0", True),
    ],
)
def test_versions_are_compared_as_numbers(version: str, limits: str, met: bool) -> None:
    assert needs.within(version, limits) is met


def test_every_requirement_of_the_project_is_of_a_kind_that_is_understood() -> None:
    wanted = needs.requirements("test")
    assert len(wanted) > 2
    assert needs.missing(wanted) == ()
    assert needs.missing(["surely-not-installed>=1"]) == ("surely-not-installed>=1",)


def test_every_requirement_has_its_version_in_the_constraints() -> None:
    lines = (ROOT / ".ci" / "constraints.txt").read_text(encoding="utf-8").splitlines()
    pinned = dict(line.split("==") for line in lines if "==" in line)
    for text in needs.requirements("test"):
        name = text.partition(">=")[0]
        assert needs.within(pinned[name], text[len(name) :])


def test_every_command_without_a_window_is_known() -> None:
    assert set(needs.HEADLESS) == set(NAMES)


def test_each_start_needs_only_its_own() -> None:
    tests = needs.needs_of("tests", [], {})
    assert any(text.startswith("pytest>") for text in tests.requirements)
    assert "libGL.so.1" in tests.system
    assert "libxcb-cursor.so.0" not in tests.system
    assert needs.needs_of("app", ["plan", "x", "--json", "-"], {}) == needs.Needs()
    for drawn in (["--pdf=o.pdf"], ["--svg", "d"]):
        [reportlab] = needs.needs_of("app", ["plan", "x", *drawn], {}).requirements
        assert reportlab.startswith("reportlab")


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="Linux chooses among screens")
@pytest.mark.parametrize(
    ("environ", "library"),
    [
        ({"DISPLAY": ":0"}, "libxcb-cursor.so.0"),
        ({"DISPLAY": ":0", "WAYLAND_DISPLAY": "wayland-0"}, "libxcb-cursor.so.0"),
        ({"WAYLAND_DISPLAY": "wayland-0"}, "libwayland-cursor.so.0"),
        ({"QT_QPA_PLATFORM": "wayland-egl", "DISPLAY": ":0"}, "libwayland-cursor.so.0"),
        ({"QT_QPA_PLATFORM": "xcb"}, "libxcb-cursor.so.0"),
    ],
)
def test_each_screen_has_its_libraries(environ: dict[str, str], library: str) -> None:
    assert library in needs.needs_of("app", [], environ).system


LACKING = {"libGL.so.1": "libgl1", "libEGL.so.1": "libegl1", "ensurepip": "python3.11-venv"}


def nothing(part: str) -> bool:
    """A Linux that has no part of what is asked."""
    return False


def test_without_rights_there_is_one_line_to_run() -> None:
    with pytest.raises(Stop) as stop:
        system.provide(LACKING, present=nothing, root=False, apt=True)
    sentence, line = str(stop.value).splitlines()
    assert "libGL.so.1" in sentence
    assert line == (
        "sudo apt-get update && sudo apt-get install -y --no-install-recommends "
        "libegl1 libgl1 python3.11-venv"
    )


def test_only_what_is_absent_is_asked_for() -> None:
    with pytest.raises(Stop, match=r"lacks libEGL\.so\.1\."):
        system.provide(LACKING, present=lambda part: part != "libEGL.so.1", root=False, apt=True)


def test_without_apt_the_libraries_are_named() -> None:
    with pytest.raises(Stop, match=r"lacks libGL\.so\.1, libEGL\.so\.1, ensurepip: install"):
        system.provide(LACKING, present=nothing, root=True, apt=False)


def test_a_machine_that_has_all_is_left_alone() -> None:
    system.provide(LACKING, present=lambda part: True, root=True, apt=True)


def fake_apt(folder: Path, monkeypatch: pytest.MonkeyPatch, script: str) -> None:
    """Put an `apt-get` of our own on the path."""
    folder.joinpath("apt-get").write_text(f"#!/bin/sh\n{script}\n")
    folder.joinpath("apt-get").chmod(0o755)
    monkeypatch.setenv("PATH", f"{folder}{os.pathsep}{os.environ['PATH']}")


@pytest.mark.skipif(sys.platform == "win32", reason="apt-get is a shell script here")
@pytest.mark.parametrize(
    ("script", "sentence"),
    [
        ("echo Temporary failure resolving; exit 100", "reached no network"),
        ("echo E: Unable to locate package libgl1; exit 100", "said 'E: Unable to locate"),
        ("exit 0", "and yet libGL.so.1, libEGL.so.1, ensurepip is missing"),
    ],
)
def test_apt_that_fails_ends_in_a_sentence(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, script: str, sentence: str
) -> None:
    fake_apt(tmp_path, monkeypatch, script)
    with pytest.raises(Stop, match=sentence):
        system.provide(LACKING, present=nothing, root=True)


@pytest.mark.skipif(sys.platform == "win32", reason="apt-get is a shell script here")
def test_as_root_what_is_absent_gets_installed(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    fake_apt(tmp_path, monkeypatch, f'echo "$@" >> {tmp_path}/asked')
    asked = tmp_path / "asked"
    system.provide(LACKING, present=lambda part: asked.exists(), root=True)
    update, install = asked.read_text().splitlines()
    assert update == "update"
    assert install.endswith("libegl1 libgl1 python3.11-venv")


def test_a_library_and_a_program_that_are_nowhere_are_absent() -> None:
    assert not system.is_present("libNoSuchThing.so.1")
    assert not system.is_present("no-such-program-anywhere")
