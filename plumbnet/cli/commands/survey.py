"""The command `survey`."""

from collections.abc import Callable, Sequence
from concurrent.futures import BrokenExecutor, Executor
from contextlib import AbstractContextManager, nullcontext
from enum import StrEnum
from pathlib import Path
from typing import Annotated, TypeAlias

import typer

from plumbnet.cli.acceptance_options import NoAccept, OwnOption, deciding, idle_entries, tell_entries
from plumbnet.cli.app import command
from plumbnet.cli.arguments import fail, ruled
from plumbnet.cli.check_file import NONE_IS_A_LAYOUT, found_targets, jobs_for
from plumbnet.cli.console import write
from plumbnet.cli.ending import FINE, FOUND, INTERRUPTED, NOT_UNDERSTOOD, ON_TRUST, Interrupted
from plumbnet.cli.file_search import STANDARD_INPUT, Target
from plumbnet.cli.options import Jobs, Rules, Strict, UnitsOption
from plumbnet.cli.output_file import form_of_output, save
from plumbnet.cli.progress_bar import at_work, counted_on
from plumbnet.cli.surveying import (
    KEPT,
    BehindOption,
    EachOption,
    OtherVersion,
    SurveyJob,
    cluster,
    handed_out,
    supposed_of,
)
from plumbnet.report.output import Fate, program_version
from plumbnet.report.survey import Book, SurveyQuery, SurveySums, Unusable, sums, survey_json, survey_text
from plumbnet.report.text import counted
from plumbnet.study.long_runs import answers

Work: TypeAlias = AbstractContextManager[tuple[Executor | None, int]]
"""Who shares the work (None: processes of this machine), and how many files at a time."""


class _Format(StrEnum):
    """How `survey` writes its sums."""

    TEXT = "text"
    JSON = "json"


Folders = Annotated[list[str], typer.Argument(metavar="FOLDER...", help="Folders of layouts, files, patterns.")]
Into = Annotated[
    Path | None,
    typer.Option(
        "--into",
        readable=False,
        metavar="FILE",
        help="The SQLite file that keeps every answer, and from which it resumes.",
    ),
]
Scheduler = Annotated[
    str | None,
    typer.Option("--scheduler", metavar="ADDRESS", help="A Dask cluster's, to do the work there: host:port."),
]
_Scenario = Annotated[
    str | None, typer.Option("--scenario", metavar="NAME", help="Suppose this scenario, in each layout that has it.")
]
ChartFile = Annotated[Path | None, typer.Option("--chart", metavar="OUT", help="Draw the verdicts: .svg, .pdf, .png.")]
Anew = Annotated[bool, typer.Option("--anew", help="Throw away what a survey has left in the file, and start over.")]


@command()
def survey(  # noqa: PLR0913, PLR0917  each is an option of the command
    folders: Folders,
    into: Into = None,
    each: EachOption = None,
    behind: BehindOption = None,
    scenario: _Scenario = None,
    rules: Rules = None,
    units: UnitsOption = None,
    own_acceptances: OwnOption = None,
    no_accept: NoAccept = False,  # noqa: FBT002  a flag of the command line
    strict: Strict = False,  # noqa: FBT002  likewise
    jobs: Jobs = None,
    scheduler: Scheduler = None,
    chart: ChartFile = None,
    anew: Anew = False,  # noqa: FBT002  a flag of the command line
    output: Annotated[_Format, typer.Option("--format", help="How to write the sums.")] = _Format.TEXT,
) -> None:
    """The answers for all layouts of a folder, as they are and with a what-if made to each, kept in one SQLite file.

    The what-if is the scenario, then --each, then --behind. Run again, it goes on where it was ended and looks only at
    files that are new or have changed. Exit status: 0 every heater is fine, 1 a finding of severity error stands or a
    heater would be worse, 2 a file could not be understood or the what-if not be made in it, 3 nothing of the sort,
    but a file itself accepts what would give 1.
    """
    own = deciding(own_acceptances, no_accept=no_accept)
    asked = SurveyQuery(ruled(rules), units, supposed_of(scenario, each, behind), own)
    found = _found(folders)
    draw = None if chart is None else _drawing(chart, found)
    if scheduler is not None and jobs is not None:
        fail("--jobs counts processes of this machine, and --scheduler has the work done elsewhere; give one of them")
    work = nullcontext((None, jobs or jobs_for(found))) if scheduler is None else cluster(scheduler)
    try:
        with Book(None if into is None else str(into), asked, anew=anew) as book:
            _fill(book, SurveyJob(asked, program_version()), found, work)
            with at_work("summing up"):
                summed = sums(book.file, is_supposed=bool(asked.supposed))
    except Unusable as error:
        fail(f"{into or 'the file of the survey'}: {error}")
    if not summed.files[Fate.CHECKED] + summed.files[Fate.NOT_UNDERSTOOD]:
        fail(NONE_IS_A_LAYOUT)
    if draw is not None:
        draw(summed)
    write(survey_text(asked, summed) if output is _Format.TEXT else survey_json(asked, summed) + "\n")
    tell_entries(idle_entries(own, summed.used_lines))
    raise typer.Exit(_status(summed, is_strict=strict))


def _found(folders: Sequence[str]) -> tuple[Target, ...]:
    if STANDARD_INPUT in folders:
        fail("a survey reads folders and files; what comes by standard input is a matter for check")
    return found_targets(folders)


def _fill(book: Book, asking: SurveyJob, found: Sequence[Target], work: Work) -> None:
    """Put into the book what is not there yet; says why it has ended early, and exits."""
    done = 0

    def advance() -> None:
        nonlocal done
        done += 1
        one_more()

    try:
        with work as (executor, jobs), counted_on(len(found), "surveying") as one_more:
            for entries in answers(handed_out(found, book, advance), asking, jobs=jobs, executor=executor):
                book.add(entries)
                for _ in entries:
                    advance()
        book.finish()
    except (KeyboardInterrupt, Interrupted) as interrupt:
        typer.echo(f"interrupted; {done} of {counted(len(found), 'file')} were done; {KEPT}", err=True)
        raise typer.Exit(INTERRUPTED) from interrupt
    except BrokenExecutor:
        fail(f"a process ended without its answer, and with --jobs 1 its file can be found; {KEPT}")
    except OtherVersion as error:
        fail(f"a worker has plumbnet {error}, and every one must have {asking.version}; {KEPT}")


def _drawing(out: Path, found: Sequence[Target]) -> Callable[[SurveySums], None]:
    """What draws the chart into a file; says so and exits where its name does not say how."""
    from plumbnet.report.charts import verdicts_file  # noqa: PLC0415  drawing is slow to import
    from plumbnet.report.figures import FORMS  # noqa: PLC0415  likewise

    form = form_of_output(out, FORMS)
    return lambda summed: save(out, verdicts_file(summed, form), read=[one.file for one in found])


def _status(summed: SurveySums, *, is_strict: bool) -> int:
    if summed.misread.in_all or (is_strict and summed.unknown):
        return NOT_UNDERSTOOD
    if summed.errors or summed.worse_files:
        return FOUND
    return ON_TRUST if summed.on_trust else FINE
