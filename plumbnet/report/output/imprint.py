"""By which program and rules, and from which file a report was made: what it takes to make it again."""

from collections.abc import Iterator
from functools import cache
from hashlib import sha256
from importlib.metadata import version
from importlib.resources import files
from pathlib import Path

from plumbnet.analysis import Report
from plumbnet.layout.yaml import visible
from plumbnet.report.prose import Block, Heading, Table
from plumbnet.rules import GivenRules, OwnAcceptances, Rules, rules_in_words


@cache
def program_version() -> str:
    """The version of this program, as its package says; looked up once."""
    return version("plumbnet")


@cache
def program_build() -> str:
    """Which build of this version it is: a hash of everything that is installed of it, in the order of the names.

    The same for the same code and data, wherever they are installed.
    """
    folder = Path(str(files("plumbnet")))
    inside = (path for path in folder.rglob("*") if path.is_file() and "__pycache__" not in path.parts)
    digest = sha256()
    for path in sorted(inside, key=lambda each: each.relative_to(folder).as_posix()):
        digest.update(f"{path.relative_to(folder).as_posix()} {sha256(path.read_bytes()).hexdigest()}\n".encode())
    return digest.hexdigest()[:12]


def program_line() -> str:
    """The program and its version, as a record names them."""
    return f"plumbnet {program_version()}"


def rules_line(rules: Rules | GivenRules) -> str:
    """Rule profiles, as a record names them."""
    return rules_in_words(rules.told(lambda profile: f"{profile.profile}, SHA-256 {profile.sha256}"))


def accepts_line(own: OwnAcceptances) -> str:
    """What decides in place of the acceptances in a file, as a record names it."""
    return f"{visible(own.file)}, SHA-256 {own.sha256}" if own.file else "nothing that the file accepts of itself"


def imprint_lines(report: Report) -> Iterator[tuple[str, str]]:
    """Labels and what stands under them; the same input gives the same record, wherever the program runs."""
    source = report.system.record
    yield "program", program_line()
    yield "file", f"SHA-256 {source.sha256}" if source.sha256 else "none"
    yield "rules", rules_line(report.rules)
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
