"""The command `chart`."""

from typing import Annotated, Literal

import typer

import plumbnet
from plumbnet.analysis import Report
from plumbnet.analysis.warmup import NoWarmUp
from plumbnet.cli.app import command
from plumbnet.cli.arguments import fail
from plumbnet.cli.console import status
from plumbnet.cli.options import File, Rules, ScenarioOption, UnitsOption
from plumbnet.cli.output_file import Out, form_of_output, save
from plumbnet.cli.progress_bar import at_work
from plumbnet.cli.supposing import (
    AddOption,
    Close,
    DrawOption,
    FailOption,
    InsertOption,
    Open,
    Ordered,
    Remove,
    SetOption,
    given_changes,
    report_supposed,
)
from plumbnet.library import UnknownHeater, only_heater
from plumbnet.study.dossier import NoChart

Of = Annotated[
    Literal["ladder", "warmup", "tank"],
    typer.Option("--of", help="What opens as the pressure climbs, a warm-up in time, or the size of a tank."),
]
_Heater = Annotated[str | None, typer.Option("--heater", metavar="NAME", help="The heater, where there are several.")]


@command(cls=Ordered)
def chart(  # noqa: PLR0913, PLR0917  each is an option of the command
    context: typer.Context,
    file: File,
    of: Of,
    output: Out,
    heater: _Heater = None,
    scenario: ScenarioOption = None,
    close: Close = None,  # noqa: ARG001  read in order
    open: Open = None,  # noqa: A002, ARG001  the word of the file format; read in order
    remove: Remove = None,  # noqa: ARG001  read in order
    draw: DrawOption = None,  # noqa: ARG001  read in order
    failing: FailOption = None,  # noqa: ARG001  read in order
    setting: SetOption = None,  # noqa: ARG001  read in order
    adding: AddOption = None,  # noqa: ARG001  read in order
    inserting: InsertOption = None,  # noqa: ARG001  read in order
    rules: Rules = None,
    units: UnitsOption = None,
) -> None:
    """Draw a chart as SVG, PDF or PNG: the ladder of pressures, a warm-up in time, or the size of a tank."""
    from plumbnet.report.figures import FORMS  # noqa: PLC0415  drawing is slow to import

    form = form_of_output(output, FORMS)
    report = report_supposed(file, heater, rules, units, scenario, given=given_changes(context))
    try:
        chosen = heater or (None if of == "ladder" else _only(report))
        with at_work("drawing"):
            picture = plumbnet.chart(report, of, chosen, form=form)
    except (NoChart, NoWarmUp) as error:
        fail(str(error))
    save(output, picture.content, read=[file])
    raise typer.Exit(status([report]))


def _only(report: Report) -> str:
    """The one heater there is; says so and exits where there are none or several."""
    try:
        return only_heater(report, advice="name one with --heater").name
    except UnknownHeater as error:
        fail(str(error))
