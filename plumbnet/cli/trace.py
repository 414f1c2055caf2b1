"""The command `trace`."""

import typer

from plumbnet.cli.app import app
from plumbnet.cli.options import AnyHeater, File, Rules, Units
from plumbnet.cli.reading import report_with
from plumbnet.cli.writing import status, write
from plumbnet.report.trace import trace as trace_text


@app.command()
def trace(
    file: File,
    heater: AnyHeater = None,
    rules: Rules = None,
    units: Units = None,
) -> None:
    """Follow the water from a heater, step by step: where it can go, what stops it, what opens."""
    report = report_with(file, heater, rules, units)
    chosen = [one for one in report.heaters if heater in {None, one.name}]
    write("\n\n".join(trace_text(report, one) for one in chosen))
    raise typer.Exit(status([report]))
