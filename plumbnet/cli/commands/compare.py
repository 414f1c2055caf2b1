"""The command `compare`."""

from enum import StrEnum
from typing import Annotated

import typer

import plumbnet
from plumbnet.cli.acceptance_options import NoAccept, OwnOption, deciding, tell_idle
from plumbnet.cli.app import app
from plumbnet.cli.arguments import fail, report_on, ruled
from plumbnet.cli.console import FINE, FOUND, write
from plumbnet.cli.file_search import STANDARD_INPUT
from plumbnet.cli.options import Rules, UnitsOption
from plumbnet.report.studies import Comparison, comparison_json, comparison_text


class _Format(StrEnum):
    """How `compare` writes what it finds."""

    TEXT = "text"
    JSON = "json"


Old = Annotated[str, typer.Argument(metavar="OLD", help="The layout before; - reads standard input.")]
New = Annotated[str, typer.Argument(metavar="NEW", help="The layout after; - reads standard input.")]


@app.command()
def compare(  # noqa: PLR0913, PLR0917  each is an option of the command
    old: Old,
    new: New,
    rules: Rules = None,
    units: UnitsOption = None,
    own_acceptances: OwnOption = None,
    no_accept: NoAccept = False,  # noqa: FBT002  a flag of the command line
    output: Annotated[_Format, typer.Option("--format", help="How to write what differs.")] = _Format.TEXT,
) -> None:
    """What a revision changed: in the layout, in verdicts, findings and figures; what became worse first.

    Exit status: 0 nothing became worse, 1 a heater did or an error is new, 2 a file could not be understood.
    """
    profile, own = ruled(rules), deciding(own_acceptances, no_accept=no_accept)
    if old == new == STANDARD_INPUT:
        fail("standard input can stand for one of the two files, not for both")
    after = report_on(new, profile, units, own)
    before = report_on(old, profile, after.facts.units, own)
    compared = plumbnet.compare(before, after)
    write({_Format.TEXT: comparison_text, _Format.JSON: _json}[output](compared))
    tell_idle(own, (before, after))
    raise typer.Exit(FOUND if compared.difference.is_worse else FINE)


def _json(compared: Comparison) -> str:
    return comparison_json(compared) + "\n"
