"""The program with every command imported, for tests that call several."""

from functools import cache

from typer import main, testing

from plumbnet.cli import commands
from plumbnet.cli.app import app
from plumbnet.discover import discover

__all__ = ["app"]

discover(commands)
# The runner makes every command anew for each call, which costs more than what most tests ask of it.
testing._get_command = cache(main.get_command)  # type: ignore[attr-defined]  # noqa: SLF001  it offers no other way
