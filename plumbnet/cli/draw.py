"""The command `draw`."""

from typing import Annotated, Literal

import typer

import plumbnet
from plumbnet.cli.app import app
from plumbnet.cli.options import File, Rules, Scenario, Units
from plumbnet.cli.saving import Out, form_of, save
from plumbnet.cli.supposing import report_supposed
from plumbnet.cli.writing import status

ThemeOption = Annotated[
    Literal["light", "dark", "bw"],
    typer.Option("--theme", help="For paper, a dark screen, or black ink."),
]
Date = Annotated[str | None, typer.Option("--date", metavar="TEXT", help="The date to print, as it is given.")]


@app.command()
def draw(  # noqa: PLR0913, PLR0917  each is an option of the command
    file: File,
    output: Out,
    theme: ThemeOption = "light",
    scenario: Scenario = None,
    date: Date = None,
    rules: Rules = None,
    units: Units = None,
) -> None:
    """Draw the schematic as SVG, PDF or PNG: piping, trapped zones, what stops the water, the way out.

    The symbols are generic trade practice and claim conformity with no standard.
    """
    from plumbnet.report.picture import FORMS  # noqa: PLC0415  drawing is slow to import

    form = form_of(output, FORMS)
    report = report_supposed(file, None, rules, units, scenario)
    save(output, plumbnet.draw(report, form=form, theme=theme, date=date).content)
    raise typer.Exit(status([report]))
