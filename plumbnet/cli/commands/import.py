"""The command `import`."""

from pathlib import Path
from typing import Annotated, NoReturn

import typer

from plumbnet.cli.app import command
from plumbnet.cli.arguments import refuse
from plumbnet.cli.ending import NOT_UNDERSTOOD
from plumbnet.cli.options import UnitsOption
from plumbnet.cli.output_file import save_new
from plumbnet.layout.tables import TableError, layout_of, tables_in
from plumbnet.layout.yaml import visible

_Tables = Annotated[list[Path], typer.Argument(metavar="TABLES...", help="Tables in CSV, or a workbook (.xlsx).")]
_Out = Annotated[Path, typer.Option("-o", "--output", metavar="FILE", help="The layout to write.")]
_Force = Annotated[bool, typer.Option("--force", help="Write over a file that is there; never over a table.")]


@command("import")
def import_(tables: _Tables, output: _Out, units: UnitsOption = None, force: _Force = False) -> None:  # noqa: FBT002  a flag of the command line
    """A layout from tables: of parts (name, kind, a column to each field) and of pipes (from, to, pipe, length).

    `plumbnet export --template` writes tables to fill in. Commas, tabs or semicolons part the cells; with semicolons
    numbers have a decimal comma. Mistakes are told with table, row and column, and nothing is written then.
    """
    read = []
    for path in tables:
        try:
            read += list(tables_in(path))
        except OSError as error:
            refuse(str(path), error)
        except TableError as error:
            _refuse_tables(error)
    try:
        made = layout_of(read, units=units)
    except TableError as error:
        _refuse_tables(error)
    for words in made.left_out:
        typer.echo(visible(words), err=True)
    save_new(output, made.text.encode(), read=[str(path) for path in tables], force=force)


def _refuse_tables(error: TableError) -> NoReturn:
    """Say what is wrong with tables, a line to each mistake, and exit."""
    typer.echo(str(error), err=True)
    raise typer.Exit(NOT_UNDERSTOOD) from error
