"""Runs the program as it was called; of all commands only the one that was asked for is imported."""

import importlib
import pkgutil
import sys

from plumbnet import cli
from plumbnet.cli.app import app


def main() -> None:
    """Run the program with the arguments of this process, and exit."""
    asked = sys.argv[1] if len(sys.argv) > 1 else ""
    if asked in {module.name for module in pkgutil.iter_modules(cli.__path__)}:
        importlib.import_module(f"plumbnet.cli.{asked}")
    if not app.registered_commands:  # for help, and to say what there is where nothing of that name is
        importlib.import_module("plumbnet.cli.every")
    app()
