"""The command `draw`."""

from typing import Annotated, Literal

import typer

import plumbnet
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
from plumbnet.layout.yaml import visible

ThemeOption = Annotated[
    Literal["light", "dark", "bw"], typer.Option("--theme", help="For paper, a dark screen, or black ink.")
]
_Riser = Annotated[
    bool | None,
    typer.Option("--riser/--no-riser", help="A riser diagram, or none; else tall buildings are drawn as one."),
]
_Sheet = Annotated[
    Literal["natural", "smallest", "a4", "a3", "a2", "a1", "a0", "letter", "11x17", "17x22", "22x34", "34x44"] | None,
    typer.Option("--sheet", help="Its paper: of its own size, the smallest it reads well on, or one by name."),
]
_Date = Annotated[str | None, typer.Option("--date", metavar="TEXT", help="The date to print, as it is given.")]

_NO_RISER = (
    "is drawn as a plain schematic: a riser diagram wants three levels, by the elevations that the file writes, and a "
    "riser that passes two of them."
)


@command(cls=Ordered)
def draw(  # noqa: PLR0913, PLR0917  each is an option of the command
    context: typer.Context,
    file: File,
    output: Out,
    theme: ThemeOption = "light",
    scenario: ScenarioOption = None,
    close: Close = None,  # noqa: ARG001  read in order
    open: Open = None,  # noqa: A002, ARG001  the word of the file format; read in order
    remove: Remove = None,  # noqa: ARG001  read in order
    draw: DrawOption = None,  # noqa: ARG001  read in order
    failing: FailOption = None,  # noqa: ARG001  read in order
    setting: SetOption = None,  # noqa: ARG001  read in order
    adding: AddOption = None,  # noqa: ARG001  read in order
    inserting: InsertOption = None,  # noqa: ARG001  read in order
    riser: _Riser = None,
    sheet: _Sheet = None,
    date: _Date = None,
    rules: Rules = None,
    units: UnitsOption = None,
) -> None:
    """Draw the schematic as SVG, PDF, PNG or DXF: piping, trapped zones, what stops the water, the way out.

    A tall building is drawn as a riser diagram: floors as levels, what is alike drawn once with its count. The symbols
    are generic trade practice and claim conformity with no standard.
    """
    from plumbnet.drawing import NoDxf, TooDense  # noqa: PLC0415  drawing is slow to import
    from plumbnet.report.schematic import DRAWN_FORMS, may_be_riser_diagram  # noqa: PLC0415  likewise

    form = form_of_output(output, DRAWN_FORMS)
    report = report_supposed(file, None, rules, units, scenario, given=given_changes(context))
    try:
        with at_work("drawing"):
            picture = plumbnet.draw(report, form=form, theme=theme, date=date, riser=riser, sheet=sheet)
    except TooDense as error:
        fail(f"{file}: {error}", advice="draw it with --riser" if error.as_riser else "")
    except NoDxf as error:
        fail(str(error))
    save(output, picture.content, read=[file])
    if riser and not may_be_riser_diagram(report):
        typer.echo(visible(f"{file} {_NO_RISER}"), err=True)
    raise typer.Exit(status([report]))
