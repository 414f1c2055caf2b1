"""The command `beliefs`."""

from typing import Annotated

import typer

from plumbnet.cli.app import command
from plumbnet.cli.arguments import fail
from plumbnet.cli.console import write
from plumbnet.layout.yaml import quoted
from plumbnet.report.reference import beliefs_text
from plumbnet.study.beliefs import belief_layout, known_beliefs

_Name = Annotated[str | None, typer.Argument(metavar="[NAME]", help="One belief; a list of all when left out.")]


@command()
def beliefs(name: _Name = None) -> None:
    """What people believe of heated water; with a name, the layout that refutes it, to be looked at and tried."""
    known = known_beliefs()
    if name is None:
        write(beliefs_text(known))
    elif name in known:
        write(belief_layout(name).decode())
    else:
        fail(f"no belief is called {quoted(name)}", name, known, "the command plumbnet beliefs lists them all")
