"""The command `sweep`."""

from enum import StrEnum
from typing import Annotated

import typer

from plumbnet.cli.acceptance_options import NoAccept, OwnOption, deciding
from plumbnet.cli.app import command
from plumbnet.cli.console import status, write
from plumbnet.cli.options import File, Rules, ScenarioOption, UnitsOption
from plumbnet.cli.progress_bar import watched
from plumbnet.cli.supposing import report_supposed
from plumbnet.report.studies import sweep_csv, sweep_json, sweep_text
from plumbnet.study.contingency import sweep as swept


class _Format(StrEnum):
    """How `sweep` writes what it finds."""

    TEXT = "text"
    JSON = "json"
    CSV = "csv"


@command()
def sweep(  # noqa: PLR0913, PLR0917  each is an option of the command
    file: File,
    pairs: Annotated[bool, typer.Option("--pairs", help="Pairs of events too.")] = False,  # noqa: FBT002  a flag
    top: Annotated[int | None, typer.Option(min=1, metavar="N", help="Show the N worst; all when left out.")] = None,
    output: Annotated[_Format, typer.Option("--format", help="How to write it.")] = _Format.TEXT,
    scenario: ScenarioOption = None,
    rules: Rules = None,
    units: UnitsOption = None,
    own_acceptances: OwnOption = None,
    no_accept: NoAccept = False,  # noqa: FBT002  a flag
) -> None:
    """Every single credible event, and what it would change: verdicts and new errors, the worst first.

    A valve turned, a tank waterlogged, a check stuck open, a meter changed for one with a check and so on; with --pairs
    what two of them change together that neither changes alone. Exit status is that of the layout as it is: 0 every
    heater is fine, 1 a finding of severity error stands, 2 the file could not be understood.
    """
    own = deciding(own_acceptances, no_accept=no_accept)
    report = report_supposed(file, None, rules, units, scenario, own)
    found = swept(report, pairs=pairs, watch=watched)
    words = {"text": sweep_text, "json": sweep_json, "csv": sweep_csv}[output](found, top=top)
    write(words)
    raise typer.Exit(status([report]))
