"""The command `trace`."""

import typer

import plumbnet
from plumbnet.cli.app import command
from plumbnet.cli.console import status, write
from plumbnet.cli.options import AnyHeater, File, Rules, ScenarioOption, UnitsOption
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


@command(cls=Ordered)
def trace(  # noqa: PLR0913, PLR0917  each is an option of the command
    context: typer.Context,
    file: File,
    heater: AnyHeater = None,
    scenario: ScenarioOption = None,
    close: Close = None,  # noqa: ARG001  read in order
    open: Open = None,  # noqa: A002, ARG001  the word of the file format; read in order
    remove: Remove = None,  # noqa: ARG001  read in order
    draw: DrawOption = None,  # noqa: ARG001  read in order
    failing: FailOption = None,  # noqa: ARG001  read in order
    setting: SetOption = None,  # noqa: ARG001  read in order
    adding: AddOption = None,  # noqa: ARG001  read in order
    inserting: InsertOption = None,  # noqa: ARG001  read in order
    rules: Rules = None,
    units: UnitsOption = None,
) -> None:
    """Follow the water from a heater, step by step: where it can go, what stops it, what opens."""
    report = report_supposed(file, heater, rules, units, scenario, given=given_changes(context))
    with at_work("following the water"):
        words = plumbnet.trace(report, heater)
    write(words)
    raise typer.Exit(status([report]))
