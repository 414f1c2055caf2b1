"""The program with every command, as its help shows it."""

from plumbnet import cli
from plumbnet.cli.app import app
from plumbnet.discover import discover

__all__ = ["app"]

discover(cli)
