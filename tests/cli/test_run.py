"""The program as it starts: what it was called with, and nothing more."""

import subprocess
import sys
from pathlib import Path

import pytest
from every_command import app as every
from running import real
from typer.main import get_command

STARTED = """
import sys
from plumbnet.cli.run import run_asked
sys.argv = ["plumbnet", *sys.argv[1:]]
try:
    run_asked()
except SystemExit:
    pass
sys.stdout.flush()
print("modules", *sorted(sys.modules))
"""
HEAVY = {"scipy", "iapws", "matplotlib", "numpy", "jinja2", "reportlab", "multiprocessing"}
FOR_HELP = {
    "plumbnet",
    *(f"plumbnet.cli{part}" for part in ("", ".app", ".command_help", ".commands", ".run")),
    *(f"plumbnet.cli.ending{part}" for part in ("", ".exit_status", ".interruption", ".streams")),
}
"""What of the package may be imported to show its help, beside what a notebook shows things with."""
STUDIES = {f"plumbnet.study.{room}" for room in ("compare", "contingency", "dossier", "margins", "renaming", "whatif")}
"""What no check asks: other worlds than those of remedies."""
SYSTEMS = Path(__file__).parents[2] / "systems"


def loaded(*arguments: str) -> set[str]:
    """Modules that the program has imported when it is done."""
    done = subprocess.run([sys.executable, "-c", STARTED, *arguments], capture_output=True, text=True, check=True)  # noqa: S603  # ours
    return set(done.stdout.splitlines()[-1].removeprefix("modules ").split())


def test_command_that_is_asked_for_is_imported_and_no_other() -> None:
    modules = loaded("schema")
    assert "plumbnet.cli.commands.schema" in modules
    assert not modules & {
        "plumbnet.cli.commands.check",
        "plumbnet.cli.commands.sweep",
        "plumbnet.study.contingency.event_sweep",
        "plumbnet.study.remedies.remedy_search",
    }


@pytest.mark.parametrize("arguments", [(), ("--help",), ("bake",), ("options",)])
def test_help_and_what_is_no_command_import_no_command(arguments: tuple[str, ...]) -> None:
    ours = {name for name in loaded(*arguments) if name.split(".")[0] == "plumbnet"}
    assert ours - {"plumbnet.cli.options"} == FOR_HELP | {"plumbnet.layout", "plumbnet.layout.presentation"}


@pytest.mark.parametrize("house", ["bakery-tank-right", "house-with-check", "cottage-supply-pipe-uk"])
def test_check_of_a_house_imports_nothing_heavy(house: str) -> None:
    modules = loaded("check", str(SYSTEMS / f"{house}.yaml"))
    assert "plumbnet.cli.commands.check" in modules
    assert not modules & (HEAVY | STUDIES)


def test_help_lists_every_command() -> None:
    done = real("--help")
    told = [line.split()[0] for line in done.stdout.decode().partition("Commands:")[2].splitlines() if line.strip()]
    assert told == list(get_command(every).commands)  # type: ignore[attr-defined]  # typer makes a group


def test_two_dashes_before_a_command_change_nothing() -> None:
    house = str(SYSTEMS / "open-house.yaml")
    plain, dashed = real("check", house), real("--", "check", house)
    assert (dashed.returncode, dashed.stdout) == (plain.returncode, plain.stdout) == (0, plain.stdout)


def test_single_command_still_goes_by_its_name() -> None:
    assert real("schema").returncode == 0
    done = real("schema", "schema")
    assert (done.returncode, done.stdout) == (2, b"")


def test_word_that_is_no_command_is_told_calmly() -> None:
    for word in ("bake", "options", "../check", "a.b", "\x1b[2J"):
        done = real(word)
        assert done.returncode == 2
        assert b"No such command" in done.stderr
        assert b"Traceback" not in done.stderr
