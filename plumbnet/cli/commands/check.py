"""The command `check`."""

import sys
from collections.abc import Sequence
from dataclasses import dataclass, field
from enum import StrEnum
from typing import Annotated

import typer

from plumbnet.cli.acceptance_options import NoAccept, OwnOption, deciding, idle_entries
from plumbnet.cli.app import command
from plumbnet.cli.arguments import fail, ruled
from plumbnet.cli.check_file import NONE_IS_A_LAYOUT, CheckFile, jobs_for, read_targets
from plumbnet.cli.console import console_paint, worst, write
from plumbnet.cli.ending import FINE, FOUND, INTERRUPTED, NOT_UNDERSTOOD, ON_TRUST, Interrupted
from plumbnet.cli.file_search import Target
from plumbnet.cli.options import Files, Jobs, Rules, Strict, UnitsOption
from plumbnet.cli.progress_bar import at_work_on, watched
from plumbnet.report.formats import CsvWriter, JsonWriter, JunitWriter, SarifWriter
from plumbnet.report.output import Fate, FileOutcome, Writer
from plumbnet.report.text import LineWriter, TextWriter, counted
from plumbnet.rules import Acceptor, Severity
from plumbnet.study.long_runs import answers

_MANY = 8
"""From more files than this a bar shows how far the check has come."""
_MOST_TOGETHER = 16
"""So many files at the most are handed to a process at once."""
HANDFULS = 8
"""Files are handed to each process at least so many times, so that none is long idle at the end."""


class Format(StrEnum):
    """How `check` writes its reports."""

    TEXT = "text"
    SUMMARY = "summary"
    JSON = "json"
    SARIF = "sarif"
    JUNIT = "junit"
    CSV = "csv"


class Threshold(StrEnum):
    """The least severe finding that sets the exit status."""

    ERROR = "error"
    WARNING = "warning"
    NEVER = "never"

    @property
    def severities(self) -> frozenset[Severity]:
        """Severities that set it."""
        return {
            Threshold.ERROR: frozenset({Severity.ERROR}),
            Threshold.WARNING: frozenset({Severity.ERROR, Severity.WARNING}),
        }.get(self, frozenset())


FailOn = Annotated[Threshold, typer.Option("--fail-on", help="The least severe finding that gives exit status 1.")]


@command()
def check(  # noqa: PLR0913, PLR0917  each is an option of the command
    files: Files,
    rules: Rules = None,
    units: UnitsOption = None,
    output: Annotated[Format, typer.Option("--format", help="How to write the reports.")] = Format.TEXT,
    fail_on: FailOn = Threshold.ERROR,
    own_acceptances: OwnOption = None,
    no_accept: NoAccept = False,  # noqa: FBT002  a flag of the command line
    strict: Strict = False,  # noqa: FBT002  likewise
    jobs: Jobs = None,
) -> None:
    """Verdicts and findings for every heater of each file.

    Exit status: 0 every heater is fine, 1 a finding of severity error stands (or as --fail-on says), 2 a file or a
    scenario of one could not be understood, whatever else stands, 3 nothing of the sort, but a file itself accepts what
    would give 1.
    """
    given, own = ruled(rules), deciding(own_acceptances, no_accept=no_accept)
    found = read_targets(files)
    writer = writer_of(output, fail_on)
    has_bar = _has_bar(found, writer)
    course = _Course(fail_on, is_silent=has_bar or not writer.is_for_people)
    asking = CheckFile(writer, given, units, own, is_strict=strict)
    workers = jobs or jobs_for(found)
    handful = max(1, min(_MOST_TOGETHER, len(found) // (workers * HANDFULS)))
    document = writer.document()
    outcomes = answers(found, asking, jobs=workers, handful=handful, lost=asking.lost)
    try:
        write(document.opening())
        for outcome in watched(outcomes, len(found), "checking") if has_bar else at_work_on(outcomes, "judging"):
            course.follow(outcome)
            write(document.add(outcome))
        noted = idle_entries(own, course.own_used)
        if noted is not None:
            write(document.add(FileOutcome(noted.file, None, writer.noted(noted))))
        write(document.closing())
    except (KeyboardInterrupt, Interrupted) as interrupt:
        typer.echo(f"interrupted; {course.done} of {counted(len(found), 'file')} were done", err=True)
        raise typer.Exit(INTERRUPTED) from interrupt
    finally:
        if writer.is_for_people:
            course.tell_kept()
    if course.is_empty:
        fail(NONE_IS_A_LAYOUT)
    raise typer.Exit(course.status)


@dataclass(slots=True)
class _Course:
    """How the check of many files goes: what is done, and the exit status so far."""

    threshold: Threshold
    is_silent: bool
    """Whether why a file was not understood is kept, not told on standard error as it comes."""
    kept: list[str] = field(default_factory=list)
    done: int = 0
    status: int = FINE
    is_empty: bool = True
    own_used: set[int] = field(default_factory=set)
    """Lines of the inspector's list that were about something found."""

    def follow(self, outcome: FileOutcome) -> None:
        """Count the outcome of one more file, and tell what is wrong with it."""
        self.done += 1
        self.is_empty &= outcome.fate is Fate.NO_LAYOUT
        self.status = worst((self.status, self._status_of(outcome)))
        self.own_used.update(outcome.own_used)
        if outcome.words:
            self._tell(outcome.words)

    def tell_kept(self) -> None:
        """Tell what was kept."""
        for words in self.kept:
            typer.echo(words, err=True)

    def _tell(self, words: str) -> None:
        if self.is_silent:
            self.kept.append(words)
        else:
            typer.echo(words, err=True)

    def _status_of(self, outcome: FileOutcome) -> int:
        if outcome.words:
            return NOT_UNDERSTOOD
        severities = self.threshold.severities
        if any(one.severity in severities for one in outcome.findings):
            return FOUND
        silenced = (one.finding for one in outcome.accepted if one.by is Acceptor.APPLICANT)
        return ON_TRUST if any(one.severity in severities for one in silenced) else FINE


def writer_of(output: Format, fail_on: Threshold) -> Writer:
    """The writer of a form of output; where cases of it fail or pass, `fail_on` says what fails."""
    match output:
        case Format.TEXT:
            return TextWriter(console_paint())
        case Format.SUMMARY:
            return LineWriter(console_paint())
        case Format.JSON:
            return JsonWriter()
        case Format.SARIF:
            return SarifWriter()
        case Format.JUNIT:
            return JunitWriter(fail_on.severities)
        case Format.CSV:
            return CsvWriter()


def _has_bar(found: Sequence[Target], writer: Writer) -> bool:
    """Whether a bar shows how far it is: of many files, on a terminal that is not where the reports go."""
    is_free = not (writer.is_for_people and sys.stdout.isatty())
    return len(found) > _MANY and is_free and sys.stderr.isatty()
