"""Runs the program as it was called; of all commands only the one that was asked for is imported."""

import gc
import importlib
import sys

from plumbnet.cli.app import app
from plumbnet.cli.command_help import helps, names


def main() -> None:
    """Run the program with the arguments of this process, and exit."""
    gc.disable()  # what is imported stays, and to search it for garbage takes a sixth of the time of a check
    asked = next((word for word in sys.argv[1:] if word != "--"), "")
    if asked in names():
        importlib.import_module(f"plumbnet.cli.commands.{asked}")
    else:  # for help, and to say what there is where nothing of that name is
        for name, words in helps():
            app.command(name, help=words)(_told)
    gc.freeze()
    gc.enable()
    app()


def _told() -> None:
    """Stand in for a command of which only the help is wanted."""
