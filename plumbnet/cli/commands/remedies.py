"""The command `remedies`."""

from pathlib import Path
from typing import Annotated

import typer

import plumbnet
from plumbnet.analysis import Report
from plumbnet.budgets import Spent
from plumbnet.cli.app import command
from plumbnet.cli.arguments import fail, report_with
from plumbnet.cli.console import console_paint, status, write
from plumbnet.cli.options import AnyHeater, File, Rules, UnitsOption
from plumbnet.cli.output_file import save_new
from plumbnet.cli.progress_bar import at_work
from plumbnet.layout.rewriting import NotWritten, file_bytes, rewritten
from plumbnet.report.text import applied_text, remedies_text
from plumbnet.study.dossier import cured_whole
from plumbnet.study.remedies import Remedy, TankPlan, UnknownRemedy, plans, remedies_of, remedy_numbered

_Apply = Annotated[
    int | None, typer.Option("--apply", min=1, metavar="N", help="Write the layout with remedy N made in it, to -o.")
]
_New = Annotated[Path | None, typer.Option("-o", "--output", metavar="NEW", help="The file that --apply writes.")]
_Force = Annotated[bool, typer.Option("--force", help="Write over a file that is there; never over FILE itself.")]


@command()
def remedies(  # noqa: PLR0913, PLR0917  each is an option of the command
    file: File,
    heater: AnyHeater = None,
    apply: _Apply = None,
    output: _New = None,
    force: _Force = False,  # noqa: FBT002  a flag of the command line
    rules: Rules = None,
    units: UnitsOption = None,
) -> None:
    """What would cure each heater in trouble, tried on a copy: least work first, each as a scenario to paste.

    With --apply N -o NEW the layout is written with remedy N made in it; comments, order, quoting and spacing of the
    file are kept. Where several heaters have remedies, name the one that is meant. Exit status: 0 every heater is fine
    (with --apply: in the layout that was written), 1 a finding of severity error stands, 2 something could not be
    understood or written.
    """
    if (apply is None) != (output is None):
        fail("--apply N and -o NEW go together", advice="say which remedy and where to write the layout with it")
    report = report_with(file, heater, rules, units)
    with at_work("looking for remedies"):
        found = plumbnet.remedies(report) if heater is None else remedies_of(report, heater)
    if apply is not None and output is not None:
        try:
            chosen = remedy_numbered(found, apply)
        except UnknownRemedy as error:
            fail(str(error))
        after = _applied(report, chosen, output, file, force=force)
        write(applied_text(report, after, chosen, str(output)))
        raise typer.Exit(status([after]))
    with at_work("trying remedies together"):
        tanks = () if heater is not None else _plans(report)
        whole = None if heater is not None else cured_whole(report, found)
    write(remedies_text(report, found, tanks, whole=whole, paint=console_paint()))
    raise typer.Exit(status([report]))


def _plans(report: Report) -> tuple[TankPlan, ...] | None:
    """The tanks that would serve several; None where that takes too long."""
    try:
        return plans(report)
    except Spent:
        return None


def _applied(report: Report, chosen: Remedy, output: Path, file: str, *, force: bool) -> Report:
    """The report on the layout with a remedy made, once it is written; says why and exits where it cannot be."""
    try:
        text = rewritten(report.system, chosen.changes)
    except NotWritten as error:
        fail(str(error))
    save_new(output, file_bytes(report.system, text), read=[file], force=force)
    return plumbnet.check(plumbnet.read(output), rules=report.rules, units=report.facts.units)
