"""The program with every command imported, for tests that call several."""

from plumbnet import cli
from plumbnet.cli.app import app
from plumbnet.discover import discover

__all__ = ["app"]

discover(cli)
