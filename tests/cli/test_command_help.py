"""The list of commands that help shows, against the program with every command imported."""

import inspect
import subprocess
import sys

from every_command import app
from typer.main import get_command

from plumbnet.cli.command_help import helps

LISTED = "import sys, plumbnet.cli.command_help as lines; list(lines.helps()); print(*sorted(sys.modules))"


def test_list_has_every_command_with_the_help_it_has_itself() -> None:
    commands = get_command(app).commands  # type: ignore[attr-defined]  # typer makes a group
    assert {name: inspect.cleandoc(words) for name, words in helps()} == {
        name: command.help for name, command in commands.items()
    }
    assert [name for name, _ in helps()] == list(commands)


def test_list_is_made_without_running_a_command() -> None:
    done = subprocess.run([sys.executable, "-c", LISTED], capture_output=True, text=True, check=True)  # noqa: S603  # ours
    ours = {name for name in done.stdout.split() if name.startswith("plumbnet.cli.commands.")}
    assert "plumbnet.cli.command_help" in done.stdout.split()
    assert ours == set()


def test_program_whose_docstrings_are_left_out_has_no_help_to_list() -> None:
    listed = "import plumbnet.cli.command_help as lines; print({words for _, words in lines.helps()})"
    done = subprocess.run([sys.executable, "-OO", "-c", listed], capture_output=True, text=True, check=True)  # noqa: S603  # ours
    assert done.stdout == "{''}\n"
