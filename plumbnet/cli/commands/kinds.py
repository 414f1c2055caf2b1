"""The command `kinds`."""

from typing import Annotated

import typer

from plumbnet.cli.app import command
from plumbnet.cli.arguments import fail
from plumbnet.cli.console import write
from plumbnet.layout.model import KINDS
from plumbnet.layout.yaml import quoted
from plumbnet.report.reference import kind_text, kinds_text


@command()
def kinds(
    kind: Annotated[str | None, typer.Argument(metavar="[KIND]", help="One kind; all when left out.")] = None,
) -> None:
    """The kinds of part: fields, units, defaults, ports, and what is taken for granted."""
    if kind is None:
        write(kinds_text())
    elif kind in KINDS:
        write(kind_text(kind))
    else:
        fail(f"unknown kind {quoted(kind)}", kind, KINDS, "the command plumbnet kinds lists them all")
