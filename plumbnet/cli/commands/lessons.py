"""The command `lessons`."""

from typing import Annotated

import typer

from plumbnet.cli.app import command
from plumbnet.cli.arguments import fail
from plumbnet.cli.console import write
from plumbnet.layout.yaml import quoted
from plumbnet.report.reference import lessons_text
from plumbnet.study.training import known_lessons, lesson_bytes, lesson_names

_Name = Annotated[str | None, typer.Argument(metavar="[NAME]", help="One lesson; a list of all when left out.")]


@command()
def lessons(name: _Name = None) -> None:
    """Lessons that come with the program; with a name, its questions as a file, to be changed.

    The name of one stands for its file in exercise --from and in board.
    """
    if name is None:
        write(lessons_text(known_lessons()))
    elif name in lesson_names():
        write(lesson_bytes(name).decode())
    else:
        fail(f"no lesson is called {quoted(name)}", name, lesson_names(), "the command plumbnet lessons lists them all")
