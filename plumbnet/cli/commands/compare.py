"""The command `compare`."""

import sys
from enum import StrEnum
from pathlib import Path
from typing import Annotated, Literal

import typer

from plumbnet.analysis import Report
from plumbnet.cli.acceptance_options import NoAccept, OwnOption, deciding, tell_idle
from plumbnet.cli.app import command
from plumbnet.cli.arguments import fail, refuse, report_on, ruled
from plumbnet.cli.console import write
from plumbnet.cli.ending import FINE, FOUND
from plumbnet.cli.file_search import STANDARD_INPUT, STANDARD_INPUT_NAME
from plumbnet.cli.options import Rules, UnitsOption
from plumbnet.cli.output_file import form_of_output, save
from plumbnet.cli.progress_bar import at_work
from plumbnet.layout.yaml import LayoutError, bytes_from, bytes_of
from plumbnet.study.compare import LastReview, comparison, last_review


class _Format(StrEnum):
    """How `compare` writes what it finds."""

    TEXT = "text"
    JSON = "json"


_PAGES: tuple[Literal["html", "pdf"], ...] = ("html", "pdf")
Old = Annotated[str, typer.Argument(metavar="OLD", help="The layout before; - reads standard input.")]
New = Annotated[str, typer.Argument(metavar="NEW", help="The layout after; - reads standard input.")]
ReviewOption = Annotated[
    str | None,
    typer.Option("--review", metavar="OLD.json", help="The last review of OLD: plumbnet review --format json."),
]
PageOut = Annotated[
    Path | None,
    typer.Option("-o", "--output", metavar="OUT", help="A page to write, .html or .pdf, in place of what is printed."),
]


@command()
def compare(  # noqa: PLR0913, PLR0917  each is an option of the command
    old: Old,
    new: New,
    review: ReviewOption = None,
    rules: Rules = None,
    units: UnitsOption = None,
    own_acceptances: OwnOption = None,
    no_accept: NoAccept = False,  # noqa: FBT002  a flag of the command line
    output: Annotated[_Format, typer.Option("--format", help="How to write what differs.")] = _Format.TEXT,
    out: PageOut = None,
) -> None:
    """What a revision changed: in the layout, in verdicts, findings and figures; what became worse first.

    What the applicant accepts by himself, other rules, and what became of a review's comments stand before all.

    Exit status: 0 nothing became worse, 1 a heater did or an error is new, be it one that NEW accepts by itself, 2 a
    file could not be understood.
    """
    given, own = ruled(rules), deciding(own_acceptances, no_accept=no_accept)
    if [old, new, review].count(STANDARD_INPUT) > 1:
        which = "two files, not for both" if review != STANDARD_INPUT else "files only"
        fail(f"standard input can stand for one of the {which}")
    form = None if out is None else form_of_output(out, _PAGES)
    after = report_on(new, given, units, own)
    before = report_on(old, given, after.facts.units, own)
    last = None if review is None else _review(review, before)
    with at_work("comparing"):
        compared = comparison(before, after, last)
    with at_work("comparing"):
        from plumbnet.report.comparison import comparison_file, comparison_json, comparison_text  # noqa: PLC0415  slow

        content = None if form is None else comparison_file(compared, form)
    if out is not None and content is not None:
        save(out, content, read=[old, new, review])
    elif output is _Format.JSON:
        write(comparison_json(compared) + "\n")
    else:
        write(comparison_text(compared))
    tell_idle(own, (before, after))
    raise typer.Exit(FOUND if compared.is_worse else FINE)


def _review(file: str, before: Report) -> LastReview:
    """The last review; says what is wrong and exits where it cannot be read, or is none of that layout."""
    try:
        if file == STANDARD_INPUT:
            return last_review(bytes_from(sys.stdin.buffer), before, file=STANDARD_INPUT_NAME)
        return last_review(bytes_of(file), before, file=file)
    except (LayoutError, OSError) as error:
        refuse(file, error)
