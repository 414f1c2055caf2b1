"""The command line: arguments, calls, exit status. What several commands share; `commands` has one module each."""

from plumbnet.cli.run import main

__all__ = ["main"]
