"""The command `sweep`."""

from enum import StrEnum
from typing import Annotated

import typer

from plumbnet.cli.app import app
from plumbnet.cli.options import File, Rules, Scenario, Units
from plumbnet.cli.progress import watched
from plumbnet.cli.supposing import report_supposed
from plumbnet.cli.writing import status, write
from plumbnet.report.sweep import sweep_text
from plumbnet.report.sweep_data import sweep_csv, sweep_json
from plumbnet.study.sweep import sweep as swept


class Format(StrEnum):
    """How `sweep` writes what it finds."""

    TEXT = "text"
    JSON = "json"
    CSV = "csv"


@app.command()
def sweep(  # noqa: PLR0913, PLR0917  each is an option of the command
    file: File,
    pairs: Annotated[bool, typer.Option("--pairs", help="Pairs of events too.")] = False,  # noqa: FBT002  a flag
    top: Annotated[int | None, typer.Option(min=1, metavar="N", help="Show the N worst; all when left out.")] = None,
    output: Annotated[Format, typer.Option("--format", help="How to write it.")] = Format.TEXT,
    scenario: Scenario = None,
    rules: Rules = None,
    units: Units = None,
) -> None:
    """Every single credible event, and what it would change: verdicts and new errors, the worst first.

    A valve turned, a tank waterlogged, a check stuck open, a meter changed for one with a check and so on; with --pairs
    what two of them change together that neither changes alone. Exit status is that of the layout as it is: 0 every
    heater is fine, 1 a finding of severity error stands, 2 the file could not be understood.
    """
    report = report_supposed(file, None, rules, units, scenario)
    found = swept(report, pairs=pairs, watch=watched)
    words = {"text": sweep_text, "json": sweep_json, "csv": sweep_csv}[output](found, top=top)
    write(words)
    raise typer.Exit(status([report]))
