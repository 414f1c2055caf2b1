"""The command `trace`."""

import typer

from plumbnet.cli.app import app
from plumbnet.cli.options import AnyHeater, File, Rules, Scenario, Units
from plumbnet.cli.supposing import report_supposed
from plumbnet.cli.writing import status, write
from plumbnet.layout.fault import visible
from plumbnet.report.trace import trace as trace_text


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
    chosen = [one for one in report.heaters if heater in {None, one.name}]
    supposed = [] if report.scenario is None else [f"Scenario: {visible(report.scenario)}\n"]
    write("\n".join([*supposed, "\n\n".join(trace_text(report, one) for one in chosen)]))
    raise typer.Exit(status([report]))
