"""The command `new`."""

from pathlib import Path
from typing import Annotated

import typer

from plumbnet.cli.app import command
from plumbnet.cli.arguments import fail
from plumbnet.cli.console import write
from plumbnet.cli.output_file import save
from plumbnet.layout.authoring import starter, starter_names
from plumbnet.layout.yaml import quoted

Starter = Annotated[str, typer.Argument(metavar="|".join(starter_names()), help="What the building is like.")]
_Out = Annotated[Path | None, typer.Option("-o", "--output", metavar="FILE", help="The file; printed when left out.")]


@command()
def new(name: Starter, out: _Out = None) -> None:
    """A commented layout to begin from. Never writes over a file that is there."""
    if name not in starter_names():
        known = starter_names()
        fail(f"no starter is called {quoted(name)}", name, known, f"there is {', '.join(known)}")
    if out is None:
        write(starter(name).decode())
    else:
        _write_new(out, starter(name))


def _write_new(out: Path, content: bytes) -> None:
    if out.exists():
        fail(f"{out} is there already, and stays as it is; name another file")
    save(out, content)
