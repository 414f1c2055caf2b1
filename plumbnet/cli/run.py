"""Runs the program as it was called; of all commands only the one that was asked for is imported."""

import gc
import importlib
import os
import sys
from collections.abc import Sequence
from typing import NoReturn

from plumbnet.cli.app import app
from plumbnet.cli.command_help import helps, names
from plumbnet.cli.ending import with_streams


def run_asked() -> NoReturn:
    """Run the program with the arguments of this process, and exit."""
    gc.disable()  # what is imported stays, and to search it for garbage takes a sixth of the time of a check
    sys.argv[1:] = with_files_told_apart(sys.argv[1:])
    asked = next((word for word in sys.argv[1:] if word != "--"), "")
    if asked in names():
        importlib.import_module(f"plumbnet.cli.commands.{asked}")
    else:  # for help, and to say what there is where nothing of that name is
        for name, words in helps():
            app.command(name, help=words)(_told)
    gc.freeze()
    gc.enable()
    with_streams(app)


def with_files_told_apart(words: Sequence[str]) -> list[str]:
    """The words of a command line; before one that is the name of a file here and looks like an option stands `./`.

    What a shell makes of `*.yaml` would else be taken for options: a submitted file could bring its own rules.
    """
    end = words.index("--") if "--" in words else len(words)
    return [f"./{word}" if _is_dashed_file(word) else word for word in words[:end]] + list(words[end:])


def _is_dashed_file(word: str) -> bool:
    return word.startswith("-") and word != "-" and os.path.lexists(word)


def _told() -> None:
    """Stand in for a command of which only the help is wanted."""
