"""The command `trace`."""

import typer

import plumbnet
from plumbnet.cli.app import app
from plumbnet.cli.console import status, write
from plumbnet.cli.options import AnyHeater, File, Rules, ScenarioOption, UnitsOption
from plumbnet.cli.scenario_option import report_supposed


@app.command()
def trace(
    file: File,
    heater: AnyHeater = None,
    scenario: ScenarioOption = None,
    rules: Rules = None,
    units: UnitsOption = None,
) -> None:
    """Follow the water from a heater, step by step: where it can go, what stops it, what opens."""
    report = report_supposed(file, heater, rules, units, scenario)
    write(plumbnet.trace(report, heater))
    raise typer.Exit(status([report]))
