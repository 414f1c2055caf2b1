"""The command `remedies`."""

import typer

import plumbnet
from plumbnet.cli.app import app
from plumbnet.cli.arguments import report_with
from plumbnet.cli.console import console_paint, status, write
from plumbnet.cli.options import AnyHeater, File, Rules, UnitsOption
from plumbnet.report.text import remedies_text
from plumbnet.study.dossier import cured_whole
from plumbnet.study.remedies import plans


@app.command()
def remedies(file: File, heater: AnyHeater = None, rules: Rules = None, units: UnitsOption = None) -> None:
    """What would cure each heater in trouble, tried on a copy: least work first, each as a scenario to paste."""
    report = report_with(file, heater, rules, units)
    found = {name: own for name, own in plumbnet.remedies(report).items() if heater in {None, name}}
    tanks = () if heater is not None else plans(report)
    whole = None if heater is not None else cured_whole(report, found)
    write(remedies_text(report, found, tanks, whole=whole, paint=console_paint()))
    raise typer.Exit(status([report]))
