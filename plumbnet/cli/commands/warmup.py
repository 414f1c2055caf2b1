"""The command `warmup`."""

from enum import StrEnum
from typing import Annotated

import typer

import plumbnet
from plumbnet.analysis.warmup import NoWarmUp
from plumbnet.cli.app import command
from plumbnet.cli.arguments import fail
from plumbnet.cli.console import status, write
from plumbnet.cli.options import File, ScenarioOption, UnitsOption
from plumbnet.cli.progress_bar import at_work
from plumbnet.cli.supposing import (
    AddOption,
    Close,
    DrawOption,
    FailOption,
    InsertOption,
    Open,
    Ordered,
    Remove,
    SetOption,
    given_changes,
    report_supposed,
)
from plumbnet.report.warmup import to_csv, warmup_json, warmup_text


class TableFormat(StrEnum):
    """How `warmup` writes what happens in time."""

    TEXT = "text"
    CSV = "csv"
    JSON = "json"


@command(cls=Ordered)
def warmup(  # noqa: PLR0913, PLR0917  each is an option of the command
    context: typer.Context,
    file: File,
    heater: Annotated[str, typer.Argument(metavar="HEATER", help="The heater that is lit from cold.")],
    minutes: Annotated[float | None, typer.Option(min=0.0, help="How long; until all is hot when left out.")] = None,
    output: Annotated[TableFormat, typer.Option("--format", help="How to write the course.")] = TableFormat.TEXT,
    scenario: ScenarioOption = None,
    close: Close = None,  # noqa: ARG001  read in order
    open: Open = None,  # noqa: A002, ARG001  the word of the file format; read in order
    remove: Remove = None,  # noqa: ARG001  read in order
    draw: DrawOption = None,  # noqa: ARG001  read in order
    failing: FailOption = None,  # noqa: ARG001  read in order
    setting: SetOption = None,  # noqa: ARG001  read in order
    adding: AddOption = None,  # noqa: ARG001  read in order
    inserting: InsertOption = None,  # noqa: ARG001  read in order
    units: UnitsOption = None,
) -> None:
    """Temperature, pressure and water lost against time, from a cold start with every fixture shut."""
    report = report_supposed(file, heater, None, units, scenario, given=given_changes(context))
    try:
        with at_work("warming up"):
            warming = plumbnet.warmup(report, heater, minutes=minutes)
    except NoWarmUp as error:
        fail(str(error))
    write({"text": warmup_text, "csv": to_csv, "json": warmup_json}[output](warming))
    raise typer.Exit(status([report]))
