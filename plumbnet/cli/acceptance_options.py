"""Whose acceptances count: options, what they come to, and what of the inspector's list was about nothing."""

from collections.abc import Collection, Iterable
from typing import Annotated

import typer

from plumbnet.analysis import Report
from plumbnet.cli.arguments import fail, refuse
from plumbnet.layout.yaml import Fault, LayoutError
from plumbnet.report.output import LIST_OF_ACCEPTANCES, Noted
from plumbnet.rules import OwnAcceptances, own_acceptances_at

OwnOption = Annotated[
    str | None,
    typer.Option(
        "--own-acceptances", metavar="FILE", help="A list of what you accept; it decides in place of what files accept."
    ),
]
NoAccept = Annotated[bool, typer.Option("--no-accept", help="Nothing that a file accepts of itself counts.")]


def deciding(own: str | None, *, no_accept: bool) -> OwnAcceptances | None:
    """What decides in place of the acceptances in files; None where those do.

    Says what is wrong and exits where the list cannot be read.
    """
    if own is not None and no_accept:
        fail("--own-acceptances decides by a list and --no-accept accepts nothing at all; give one of them")
    if own is None:
        return OwnAcceptances() if no_accept else None
    try:
        return own_acceptances_at(own)
    except (LayoutError, OSError) as error:
        refuse(own, error)


def own_used(report: Report) -> tuple[int, ...]:
    """Lines of the inspector's list that were about something found."""
    accepted = {one.line for one in report.accepted if one.file}
    return tuple(sorted(accepted | {one.line for one in report.claimed if one.file}))


def idle_entries(own: OwnAcceptances | None, used: Collection[int]) -> Noted | None:
    """What of the inspector's list was about nothing found in any file; None where all was."""
    if own is None:
        return None
    faults = tuple(
        Fault(line, 1, f"{entry.in_words} in {entry.file} is accepted here and was not found")
        for entry, line in zip(own.accept, own.lines, strict=True)
        if line not in used
    )
    return Noted(own.file, LIST_OF_ACCEPTANCES, faults) if faults else None


def tell_idle(own: OwnAcceptances | None, reports: Iterable[Report]) -> None:
    """Say on standard error what of the inspector's list was about nothing in these reports."""
    tell_entries(idle_entries(own, {line for report in reports for line in own_used(report)}))


def tell_entries(noted: Noted | None) -> None:
    """Say on standard error what is noted."""
    for line in () if noted is None else noted.lines:
        typer.echo(line, err=True)
