"""The command `schema`."""

from typing import Annotated, Literal

import typer

from plumbnet.cli.app import command
from plumbnet.cli.console import write
from plumbnet.layout.authoring import layout_schema
from plumbnet.report.reference import schema_text


@command()
def schema(
    of: Annotated[
        Literal["layout", "questions"], typer.Argument(metavar="[questions]", help="Of a file of questions instead.")
    ] = "layout",
) -> None:
    """The JSON Schema of the file format, for editors that complete and check."""
    if of == "layout":
        write(schema_text(layout_schema()))
        return
    from plumbnet.study.training import questions_schema  # noqa: PLC0415  a layout needs no exercises

    write(schema_text(questions_schema()))
