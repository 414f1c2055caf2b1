"""The command `size`."""

from enum import StrEnum
from typing import Annotated

import typer

from plumbnet.analysis.sizing_sheet import sheets
from plumbnet.cli.app import command
from plumbnet.cli.arguments import fail
from plumbnet.cli.console import status, write
from plumbnet.cli.options import AnyHeater, File, Rules, ScenarioOption, UnitsOption
from plumbnet.cli.progress_bar import at_work
from plumbnet.cli.supposing import report_supposed
from plumbnet.library import UnknownMethod, demand_method
from plumbnet.report.sheets import sheets_json, sheets_markdown, sheets_text
from plumbnet.study.margins import margins_if_small


class SheetFormat(StrEnum):
    """How `size` writes a calculation sheet."""

    TEXT = "text"
    MARKDOWN = "markdown"
    JSON = "json"


@command()
def size(  # noqa: PLR0913, PLR0917  each is an option of the command
    file: File,
    heater: AnyHeater = None,
    method: Annotated[str | None, typer.Option(metavar="NAME", help="Sizing method, in place of the file's.")] = None,
    output: Annotated[SheetFormat, typer.Option("--format", help="How to write the sheet.")] = SheetFormat.TEXT,
    scenario: ScenarioOption = None,
    rules: Rules = None,
    units: UnitsOption = None,
) -> None:
    """The calculation sheet: the tank each heater needs, every step with its formula, numbers, units and source."""
    try:
        demand_method(method)
    except UnknownMethod as error:
        fail(str(error))
    report = report_supposed(file, heater, rules, units, scenario)
    found = sheets(report, [one for one in report.heaters if heater in {None, one.name}], method=method)
    form = {"text": sheets_text, "markdown": sheets_markdown, "json": sheets_json}[output]
    with at_work("sizing"):
        words = form(found, report.facts.units, margins_if_small(report, heater=heater))
    write(words)
    raise typer.Exit(status([report]))
