"""The command `chart`."""

from typing import Annotated, Literal

import typer

from plumbnet.analysis.report import Report
from plumbnet.analysis.warming import NoWarmUp
from plumbnet.cli.app import app
from plumbnet.cli.options import File, Rules, Scenario, Units
from plumbnet.cli.reading import fail
from plumbnet.cli.saving import Out, form_of, save
from plumbnet.cli.supposing import report_supposed
from plumbnet.cli.writing import status
from plumbnet.rules.sentences import listed
from plumbnet.study.tank_size import NoChart, Sizes, sizes
from plumbnet.study.warm_ups import WarmUps, warm_ups_with_tank

Of = Annotated[
    Literal["ladder", "warmup", "tank"],
    typer.Option("--of", help="What opens as the pressure climbs, a warm-up in time, or the size of a tank."),
]
Heater = Annotated[str | None, typer.Option("--heater", metavar="NAME", help="The heater, where there are several.")]


@app.command()
def chart(  # noqa: PLR0913, PLR0917  each is an option of the command
    file: File,
    of: Of,
    output: Out,
    heater: Heater = None,
    scenario: Scenario = None,
    rules: Rules = None,
    units: Units = None,
) -> None:
    """Draw a chart as SVG, PDF or PNG: the ladder of pressures, a warm-up in time, or the size of a tank."""
    from plumbnet.report.charts.sheet import chart_file  # noqa: PLC0415  drawing is slow to import
    from plumbnet.report.picture import FORMS  # noqa: PLC0415  likewise

    form = form_of(output, FORMS)
    report = report_supposed(file, heater, rules, units, scenario)
    name = heater or ("" if of == "ladder" else _only(report))
    try:
        found = _shown(report, of, name)
    except (NoChart, NoWarmUp) as error:
        fail(str(error))
    save(output, chart_file(report, name, found, form))
    raise typer.Exit(status([report]))


def _shown(report: Report, of: Of, heater: str) -> Sizes | WarmUps | None:
    """What a chart shows, worked out; a ladder stands in the report. Raises NoChart, NoWarmUp."""
    if of == "tank":
        return sizes(report, heater)
    return warm_ups_with_tank(report, heater) if of == "warmup" else None


def _only(report: Report) -> str:
    """The one heater there is; says so and exits where there are none or several."""
    names = [heater.name for heater in report.heaters]
    if not names:
        fail("nothing in this layout heats water")
    if len(names) > 1:
        fail(f"the layout has {len(names)} heaters", advice=f"name one with --heater: {listed(names, 'or')}")
    return names[0]
