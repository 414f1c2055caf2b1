"""The command `export`."""

from pathlib import Path
from typing import Annotated

import typer

from plumbnet.cli.app import command
from plumbnet.cli.arguments import fail, refuse, system_from
from plumbnet.cli.output_file import fail_unwritten, save
from plumbnet.layout.tables import left_out_of_tables, tables_of, template_tables
from plumbnet.layout.yaml import LayoutError, visible

_File = Annotated[str | None, typer.Argument(metavar="FILE", help="A layout file, or - for standard input.")]
_Out = Annotated[Path, typer.Option("-o", "--output", metavar="FOLDER", help="The folder to write the tables into.")]
_Template = Annotated[bool, typer.Option("--template", help="Write empty tables with every column, to fill in.")]
_Semicolons = Annotated[
    bool, typer.Option("--semicolons", help="For a spreadsheet with a decimal comma: 4,5 bar; cells parted by ;")
]
_Force = Annotated[bool, typer.Option("--force", help="Write over tables that are there.")]


@command()
def export(
    output: _Out,
    file: _File = None,
    template: _Template = False,  # noqa: FBT002  a flag of the command line
    semicolons: _Semicolons = False,  # noqa: FBT002  likewise
    force: _Force = False,  # noqa: FBT002  likewise
) -> None:
    """Tables in CSV of a layout: its parts, its pipes with what they hold, the layout itself, a schedule of its tanks.

    `plumbnet import` makes the same layout of them again; comments are not kept.
    """
    if template == (file is not None):
        fail("name a layout, or say --template for empty tables")
    made = template_tables(semicolons=semicolons) if file is None else _of_file(file, semicolons=semicolons)
    try:
        output.mkdir(exist_ok=True)
    except OSError as error:
        fail_unwritten(output, error)
    there = [name for name in made if (output / name).exists()]
    if there and not force:
        fail(f"{output / there[0]} is there already", advice="with --force it is written over")
    for name, content in made.items():
        save(output / name, content, read=[file])


def _of_file(file: str, *, semicolons: bool) -> dict[str, bytes]:
    """The tables of a layout file; says what is wrong and exits where it cannot be read."""
    try:
        system = system_from(file)
    except (LayoutError, OSError) as error:
        refuse(file, error)
    for words in left_out_of_tables(system):
        typer.echo(visible(words), err=True)
    return tables_of(system, semicolons=semicolons)
