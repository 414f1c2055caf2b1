"""The command `remedies`."""

import typer

import plumbnet
from plumbnet.cli.app import app
from plumbnet.cli.options import AnyHeater, File, Rules, Units
from plumbnet.cli.reading import report_with
from plumbnet.cli.writing import paint, status, write
from plumbnet.report.cures import to_text as remedies_text
from plumbnet.study.placement import plans


@app.command()
def remedies(
    file: File,
    heater: AnyHeater = None,
    rules: Rules = None,
    units: Units = None,
) -> None:
    """What would cure each heater in trouble, tried on a copy: least work first, each as a scenario to paste."""
    report = report_with(file, heater, rules, units)
    found = {name: own for name, own in plumbnet.remedies(report).items() if heater in {None, name}}
    tanks = () if heater is not None else plans(report)
    write(remedies_text(report, found, tanks, paint=paint()))
    raise typer.Exit(status([report]))
