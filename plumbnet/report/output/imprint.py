"""By which program and rules, and from which file a report was made: what it takes to make it again."""

from collections.abc import Iterator
from functools import cache
from importlib.metadata import version

from plumbnet.analysis import Report
from plumbnet.layout.yaml import visible
from plumbnet.report.prose import Block, Heading, Table
from plumbnet.rules import OwnAcceptances, Profile


@cache
def program_version() -> str:
    """The version of this program, as its package says; looked up once."""
    return version("plumbnet")


def program_line() -> str:
    """The program and its version, as a record names them."""
    return f"plumbnet {program_version()}"


def rules_line(profile: Profile) -> str:
    """A rule profile, as a record names it."""
    return f"{profile.profile}, SHA-256 {profile.sha256}"


def accepts_line(own: OwnAcceptances) -> str:
    """What decides in place of the acceptances in a file, as a record names it."""
    return f"{visible(own.file)}, SHA-256 {own.sha256}" if own.file else "nothing that the file accepts of itself"


def imprint_lines(report: Report) -> Iterator[tuple[str, str]]:
    """Labels and what stands under them; the same input gives the same record, wherever the program runs."""
    source = report.system.record
    yield "program", program_line()
    yield "file", f"SHA-256 {source.sha256}" if source.sha256 else "none"
    yield "rules", rules_line(report.profile)
    if report.own_acceptances is not None:
        yield "accepts", accepts_line(report.own_acceptances)
    if report.scenario is not None:
        yield "scenario", visible(report.scenario)


def record_lines(report: Report) -> Iterator[str]:
    """The record as lines of a text report."""
    yield "Record:"
    for label, text in imprint_lines(report):
        yield f"  {label:<8}  {text}"


def record_blocks(report: Report) -> tuple[Block, Block]:
    """The record as a section of a document."""
    return Heading("Record"), Table(("what", "value"), tuple(imprint_lines(report)))
