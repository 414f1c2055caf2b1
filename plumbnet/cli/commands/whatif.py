"""The command `whatif`."""

from enum import StrEnum
from typing import Annotated

import typer

from plumbnet.analysis import Report
from plumbnet.cli.acceptance_options import NoAccept, OwnOption, deciding, tell_idle
from plumbnet.cli.app import command
from plumbnet.cli.arguments import fail, refuse, report_with
from plumbnet.cli.console import status, write
from plumbnet.cli.ending import FOUND
from plumbnet.cli.options import File, Rules, UnitsOption
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
    supposed,
)
from plumbnet.layout.yaml import quoted
from plumbnet.report.studies import whatifs_json, whatifs_text


class _Format(StrEnum):
    """How `whatif` writes what it finds."""

    TEXT = "text"
    JSON = "json"


Scenarios = Annotated[
    list[str] | None, typer.Option("--scenario", metavar="NAME", help="A scenario of the file; several may be named.")
]
All = Annotated[bool, typer.Option("--all", help="Every scenario of the file.")]


@command(cls=Ordered)
def whatif(  # noqa: PLR0913, PLR0917  each is an option of the command
    context: typer.Context,
    file: File,
    scenario: Scenarios = None,
    every: All = False,  # noqa: FBT002  a flag of the command line
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
    own_acceptances: OwnOption = None,
    no_accept: NoAccept = False,  # noqa: FBT002  a flag of the command line
    output: Annotated[_Format, typer.Option("--format", help="How to write it.")] = _Format.TEXT,
) -> None:
    """What would become of it: verdicts, ladder, pressures, findings and need, before and after.

    Changes are made in the order in which their options are given; with --scenario or --all, to each scenario after its
    own. The layout itself stays as it is. Exit status: 0 every heater would be fine, 1 a finding of severity error
    would stand or a heater be worse than before, 2 the file, a scenario or a change could not be understood; the other
    scenarios are shown all the same.
    """
    given = given_changes(context)
    own = deciding(own_acceptances, no_accept=no_accept)
    report = report_with(file, None, rules, units, own)
    known = (*report.system.scenarios, *report.system.faulty_scenarios)
    names = list(dict.fromkeys([*(scenario or ()), *(known if every else ())]))
    if not names and not given:
        _nothing_supposed(report, every=every)
    faulty = [name for name in names if name in report.system.faulty_scenarios]
    found = [supposed(report, name, given) for name in names or [None] if name not in faulty]
    if found:
        write(whatifs_text(found) if output is _Format.TEXT else whatifs_json(found) + "\n")
        tell_idle(own, [report, *(one.after for one in found)])
    if faulty:
        refuse(file, report.system.scenario_error(*faulty))
    raise typer.Exit(FOUND if any(one.difference.is_worse for one in found) else status(one.after for one in found))


def _nothing_supposed(report: Report, *, every: bool) -> None:
    known = ", ".join(map(quoted, report.system.scenarios))
    words = "the file has no scenario" if every else "nothing is supposed"
    advice = f"name one with --scenario: {known}" if known else "give a change, such as --close VALVE"
    fail(words, advice=advice)
