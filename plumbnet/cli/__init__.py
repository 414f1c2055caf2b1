"""The command line: one module a command, each of which registers itself when it is imported."""

import sys

from plumbnet.cli.app import app
from plumbnet.discover import discover

__all__ = ["app"]

discover(sys.modules[__name__])
