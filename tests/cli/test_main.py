"""The program as it starts: what it was called with, and nothing more."""

import subprocess
import sys

import pytest
from running import real

STARTED = """
import sys
from plumbnet.cli.main import main
sys.argv = ["plumbnet", *sys.argv[1:]]
try:
    main()
except SystemExit:
    pass
print(*sorted(name for name in sys.modules if name.startswith(("plumbnet.cli.", "plumbnet.study."))))
"""


def loaded(*arguments: str) -> set[str]:
    """Modules of commands and studies that the program has imported when it is done."""
    done = subprocess.run([sys.executable, "-c", STARTED, *arguments], capture_output=True, text=True, check=True)  # noqa: S603  # ours
    return set(done.stdout.splitlines()[-1].split())


def test_command_that_is_asked_for_is_imported_and_no_other() -> None:
    modules = loaded("schema")
    assert "plumbnet.cli.schema" in modules
    assert not modules & {"plumbnet.cli.check", "plumbnet.cli.sweep", "plumbnet.study.sweep", "plumbnet.study.remedies"}


@pytest.mark.parametrize("arguments", [(), ("--help",), ("bake",), ("options",)])
def test_help_and_what_is_no_command_know_every_command(arguments: tuple[str, ...]) -> None:
    assert {"plumbnet.cli.check", "plumbnet.cli.sweep", "plumbnet.cli.new"} <= loaded(*arguments)


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
