"""`python3 -m tests` runs every check, whatever the earlier ones say."""

from __future__ import annotations

import pytest

from tests import checks


@pytest.fixture
def made_up(monkeypatch: pytest.MonkeyPatch) -> None:
    """Checks of which the first fails, one beside them; the last takes the place of pytest."""
    programs = {
        "first": ("timeit", "-n", "1", "-r", "1", "raise SystemExit(3)"),
        "second": ("timeit", "-n", "1", "-r", "1", "pass"),
        "pytest": ("compileall", "-q", "core/refusal.py"),
    }
    monkeypatch.setattr(checks, "CHECKS", programs)
    monkeypatch.setattr(checks, "BESIDE", {"beside": ("timeit", "-n", "1", "-r", "1", "pass")})


@pytest.mark.usefixtures("made_up")
def test_an_early_failure_hides_no_later_check(capfd: pytest.CaptureFixture[str]) -> None:
    assert checks.run_all([]) == 1
    printed = capfd.readouterr().out
    assert printed.index("--- first") < printed.index("--- second") < printed.index("--- pytest")
    assert printed.index("--- pytest") < printed.index("--- beside") < printed.rindex("1 loop")
    assert printed.splitlines()[-1] == "Failed: first"


@pytest.mark.usefixtures("made_up")
def test_what_is_written_after_the_command_goes_to_pytest(
    capfd: pytest.CaptureFixture[str],
) -> None:
    checks.run_all(["--no-such-option"])
    assert "Failed: first, pytest" in capfd.readouterr().out


def test_when_all_pass_the_status_is_nought(
    monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(checks, "CHECKS", {"one": ("json.tool", "--help")})
    monkeypatch.setattr(checks, "BESIDE", {"other": ("timeit", "-n", "1", "-r", "1", "pass")})
    assert checks.run_all([]) == 0
    assert capfd.readouterr().out.splitlines()[-1] == "All pass: one, other"


def test_a_check_that_fails_beside_the_others_fails_them_all(
    monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(checks, "CHECKS", {"one": ("json.tool", "--help")})
    monkeypatch.setattr(checks, "BESIDE", {"other": ("no_such_module",)})
    assert checks.run_all([]) == 1
    printed = capfd.readouterr().out
    assert "No module named no_such_module" in printed
    assert printed.splitlines()[-1] == "Failed: other"
