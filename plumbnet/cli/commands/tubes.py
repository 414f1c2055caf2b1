"""The command `tubes`."""

from typing import Annotated

import typer

from plumbnet.cli.app import command
from plumbnet.cli.arguments import fail
from plumbnet.cli.console import write
from plumbnet.layout.yaml import quoted
from plumbnet.report.reference import tube_names, tube_text, tubes_text


@command()
def tubes(
    name: Annotated[str | None, typer.Argument(metavar="[NAME]", help="One sort; all when left out.")] = None,
) -> None:
    """The tubes a pipe may be made of: sizes, dimensions, and the water they hold per metre and per foot."""
    if name is None:
        write(tubes_text())
        return
    try:
        write(tube_text(name))
    except KeyError:
        fail(f"no tubes are called {quoted(name)}", name, tube_names(), "the command plumbnet tubes lists them all")
