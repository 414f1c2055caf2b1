"""The command `kinds`."""

from typing import Annotated

import typer

from plumbnet.cli.app import app
from plumbnet.cli.reading import fail
from plumbnet.cli.writing import write
from plumbnet.layout.fault import quoted
from plumbnet.layout.part import KINDS
from plumbnet.report import catalogue


@app.command()
def kinds(
    kind: Annotated[str | None, typer.Argument(metavar="[KIND]", help="One kind; all when left out.")] = None,
) -> None:
    """The kinds of part: fields, units, defaults, ports, and what is taken for granted."""
    if kind is None:
        write(catalogue.kinds_text())
    elif kind in KINDS:
        write(catalogue.kind_text(kind))
    else:
        fail(f"unknown kind {quoted(kind)}", kind, KINDS, "the command plumbnet kinds lists them all")
