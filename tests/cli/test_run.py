"""The program as it starts: what it was called with, and nothing more."""

from pathlib import Path

from every_command import app as every
from running import in_turn, real
from typer.main import get_command

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


def test_command_that_is_asked_for_is_imported_and_no_other() -> None:
    """And goes by its name, though it is then the only one that there is."""
    (plain, named), modules = in_turn(["schema"], ["schema", "schema"])
    assert plain.returncode == 0
    assert (named.returncode, named.stdout) == (2, b"")
    assert "plumbnet.cli.commands.schema" in modules
    assert not modules & {
        "plumbnet.cli.commands.check",
        "plumbnet.cli.commands.sweep",
        "plumbnet.study.contingency.event_sweep",
        "plumbnet.study.remedies.remedy_search",
    }


def test_help_and_what_is_no_command_import_no_command() -> None:
    words = ("bake", "options", "../check", "a.b", "\x1b[2J")
    done, modules = in_turn([], ["--help"], *([word] for word in words))
    ours = {name for name in modules if name.split(".")[0] == "plumbnet"}
    assert ours - {"plumbnet.cli.options"} == FOR_HELP | {"plumbnet.layout", "plumbnet.layout.presentation"}
    for told in done[-len(words) :]:
        assert told.returncode == 2
        assert b"No such command" in told.stderr
        assert b"Traceback" not in told.stderr


def test_check_of_a_house_imports_nothing_heavy() -> None:
    """Nor do two dashes before it change anything."""
    houses = [str(SYSTEMS / f"{name}.yaml") for name in ("bakery-tank-right", "house-with-check", "open-house")]
    british = str(SYSTEMS / "cottage-supply-pipe-uk.yaml")
    (*_, plain, dashed), modules = in_turn(["check", british], ["check", *houses], ["--", "check", *houses])
    assert (dashed.returncode, dashed.stdout) == (plain.returncode, plain.stdout)
    assert b"TRAPPED" in plain.stdout
    assert "plumbnet.cli.commands.check" in modules
    assert not modules & (HEAVY | STUDIES)


def test_help_lists_every_command() -> None:
    done = real("--help")
    told = [line.split()[0] for line in done.stdout.decode().partition("Commands:")[2].splitlines() if line.strip()]
    assert told == list(get_command(every).commands)  # type: ignore[attr-defined]  # typer makes a group
