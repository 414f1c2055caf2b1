"""The command `margins`."""

from enum import StrEnum
from typing import Annotated

import typer

import plumbnet
from plumbnet.cli.app import command
from plumbnet.cli.console import status, write
from plumbnet.cli.options import AnyHeater, File, Rules, ScenarioOption, UnitsOption
from plumbnet.cli.progress_bar import at_work
from plumbnet.cli.supposing import report_supposed
from plumbnet.report.studies import margins_json, margins_text


class MarginsFormat(StrEnum):
    """How `margins` writes what it finds."""

    TEXT = "text"
    JSON = "json"


@command()
def margins(  # noqa: PLR0913, PLR0917  each is an option of the command
    file: File,
    heater: AnyHeater = None,
    output: Annotated[MarginsFormat, typer.Option("--format", help="How to write it.")] = MarginsFormat.TEXT,
    scenario: ScenarioOption = None,
    rules: Rules = None,
    units: UnitsOption = None,
) -> None:
    """How far each number may stray, the others as they are, before a verdict or an error turns.

    The pressure of the street, charges, sets, setpoints, volumes and heights: of each the nearest value on either side
    at which something turns, and what turns then. How far the first remedy of each heater in trouble holds, too. Exit
    status is that of the layout as it is.
    """
    report = report_supposed(file, heater, rules, units, scenario)
    with at_work("looking for margins"):
        found = plumbnet.margins(report, heater)
    write({"text": margins_text, "json": margins_json}[output](found))
    raise typer.Exit(status([report]))
