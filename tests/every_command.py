"""The program with every command imported, for tests that call several."""

from plumbnet.cli import commands
from plumbnet.cli.app import app
from plumbnet.discover import discover

__all__ = ["app"]

discover(commands)
