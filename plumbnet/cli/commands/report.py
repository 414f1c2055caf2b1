"""The command `report`."""

from typing import Annotated

import typer

from plumbnet.cli.acceptance_options import NoAccept, OwnOption, deciding, tell_idle
from plumbnet.cli.app import command
from plumbnet.cli.board_pages import BoardInside, board_inside, refuse_board
from plumbnet.cli.console import status, write
from plumbnet.cli.options import File, Rules, ScenarioOption, UnitsOption
from plumbnet.cli.output_file import Out, form_of_output, save
from plumbnet.cli.progress_bar import at_work
from plumbnet.cli.supposing import report_supposed
from plumbnet.study.dossier import dossier

_Date = Annotated[str, typer.Option("--date", metavar="TEXT", help="A date to print; no clock is asked for one.")]


@command()
def report(  # noqa: PLR0913, PLR0917  each is an option of the command
    file: File,
    output: Out,
    scenario: ScenarioOption = None,
    rules: Rules = None,
    units: UnitsOption = None,
    own_acceptances: OwnOption = None,
    no_accept: NoAccept = False,  # noqa: FBT002  a flag of the command line
    date: _Date = "",
    board: BoardInside = False,  # noqa: FBT002  a flag of the command line
) -> None:
    """Everything to hand over: one page with verdicts, pictures, findings and calculation, as .html or .pdf.

    The page needs no network; with --board its piping can be touched, and it says how many states it holds. A PDF is
    on A4 where units are metric, and else on Letter.
    """
    from plumbnet.report.page import PAGE_FORMS, page_file  # noqa: PLC0415  drawing is slow to import

    form = form_of_output(output, PAGE_FORMS)
    if board:
        refuse_board(form)
    own = deciding(own_acceptances, no_accept=no_accept)
    found = report_supposed(file, None, rules, units, scenario, own)
    inside = board_inside(found) if board else None
    with at_work("writing the report"):
        content = page_file(dossier(found, date=date), form, inside)
    save(output, content, read=[file])
    if inside is not None:
        write(f"The board in {output}: {inside.words}\n")
    tell_idle(own, [found])
    raise typer.Exit(status([found]))
