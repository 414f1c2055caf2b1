"""The command `trace`."""

import typer

import plumbnet
from plumbnet.cli.app import app
from plumbnet.cli.options import AnyHeater, File, Rules, Scenario, Units
from plumbnet.cli.supposing import report_supposed
from plumbnet.cli.writing import status, write


@app.command()
def trace(
    file: File,
    heater: AnyHeater = None,
    scenario: Scenario = None,
    rules: Rules = None,
    units: Units = None,
) -> None:
    """Follow the water from a heater, step by step: where it can go, what stops it, what opens."""
    report = report_supposed(file, heater, rules, units, scenario)
    write(plumbnet.trace(report, heater))
    raise typer.Exit(status([report]))
