"""The command `review`."""

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Literal, TypeVar

import typer

import plumbnet
from plumbnet.cli.acceptance_options import NoAccept, OwnOption, deciding, tell_entries, tell_idle
from plumbnet.cli.app import command
from plumbnet.cli.arguments import fail, ruled
from plumbnet.cli.board_pages import BoardInside, board_inside, refuse_board
from plumbnet.cli.check_file import NONE_IS_A_LAYOUT, layout_or_other, read_targets
from plumbnet.cli.console import status, write
from plumbnet.cli.ending import NOT_UNDERSTOOD
from plumbnet.cli.file_search import OtherFile
from plumbnet.cli.options import Files, Rules, Strict, UnitsOption
from plumbnet.cli.output_file import form_of_output, save
from plumbnet.cli.progress_bar import at_work, watched
from plumbnet.report.output import Noted, Unread, unread
from plumbnet.study.review import Review

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from plumbnet.report.page import PageFrame
    from plumbnet.report.review import ReviewedFiles

Written = TypeVar("Written", str, bytes)
_Out = Annotated[
    Path | None, typer.Option("-o", "--output", metavar="OUT", help="Write one file to hand over, .html or .pdf.")
]
_Format = Annotated[
    Literal["text", "json", "csv"], typer.Option("--format", help="How to print, where no file is written.")
]
_Reviewer = Annotated[str, typer.Option("--reviewer", metavar="NAME", help="Who reviews; printed as it is.")]
_Date = Annotated[str, typer.Option("--date", metavar="TEXT", help="A date to print; no clock is asked for one.")]


@command()
def review(  # noqa: PLR0913, PLR0917  each is an option of the command
    files: Files,
    output: _Out = None,
    form: _Format = "text",
    rules: Rules = None,
    units: UnitsOption = None,
    own_acceptances: OwnOption = None,
    no_accept: NoAccept = False,  # noqa: FBT002  a flag of the command line
    strict: Strict = False,  # noqa: FBT002  likewise
    reviewer: _Reviewer = "",
    date: _Date = "",
    board: BoardInside = False,  # noqa: FBT002  likewise
) -> None:
    """The inspector's sheet: every requirement met, broken, not applicable, or not to be told from the file.

    What is broken or cannot be told is numbered, to be answered by a resubmission. Several files come under one cover.
    Exit status: 0 no error stands, 1 one does, 2 a file could not be understood, 3 a file itself accepts what else
    would give 1.
    """
    from plumbnet.report.page import PAGE_FORMS  # noqa: PLC0415  drawing is slow to import
    from plumbnet.report.review import ReviewedFiles, review_file, review_printed  # noqa: PLC0415  so is a page

    profile, own = ruled(rules), deciding(own_acceptances, no_accept=no_accept)
    handed_over = None if output is None else form_of_output(output, PAGE_FORMS)
    if board:
        refuse_board(handed_over)
    reviews, refused, others = list[Review](), list[Unread](), list[Noted]()
    found = read_targets(files)
    for target in watched(found, len(found), "reviewing"):
        try:
            looked_at = layout_or_other(target, is_strict=strict)
            if isinstance(looked_at, OtherFile):
                others.append(Noted(target.file, looked_at.sort, (looked_at.fault,)))
                continue
            report = plumbnet.check(looked_at, rules=profile, units=units, acceptances=own)
            reviews.append(plumbnet.review(report, reviewer=reviewer, date=date))
        except Exception as error:  # noqa: BLE001  one file of many ends nothing; what nobody has foreseen is told
            refused.append(unread(target.file, error))
    if not reviews and not refused:
        fail(NONE_IS_A_LAYOUT)
    all_files = ReviewedFiles(tuple(reviews), tuple(refused), tuple(others))
    if output is None or handed_over is None:
        with at_work("writing the review"):
            all_files, text = _written(all_files, lambda files: review_printed(files, form))
        write(text)
    else:
        inside = {id(one): board_inside(one.report) for one in reviews} if board else {}
        with at_work("writing the review"):
            all_files, page = _written(all_files, lambda files: review_file(files, handed_over, _boards(files, inside)))
        save(output, page, read=[one.file for one in found])
        for at, framed in _boards(all_files, inside).items():
            write(f"The board of {all_files.reviews[at].report.system.record.file}: {framed.words}\n")
    for one in all_files.refused:
        typer.echo(one.words, err=True)
    for noted in others:
        tell_entries(noted)
    tell_idle(own, [one.report for one in all_files.reviews])
    raise typer.Exit(NOT_UNDERSTOOD if all_files.refused else status(one.report for one in all_files.reviews))


def _boards(files: "ReviewedFiles", inside: "Mapping[int, PageFrame]") -> "dict[int, PageFrame]":
    """The boards that are inside, by the place of their review."""
    return {at: inside[id(one)] for at, one in enumerate(files.reviews) if id(one) in inside}


def _written(
    files: "ReviewedFiles", write_all: "Callable[[ReviewedFiles], Written]"
) -> "tuple[ReviewedFiles, Written]":
    """The files in a form, less those of which alone it cannot be written: these are not understood."""
    try:
        return files, write_all(files)
    except Exception:  # whatever it is: one file of many ends nothing
        failed = {
            number: error for number in range(len(files.reviews)) if (error := _failure(files, number, write_all))
        }
        if not failed:
            raise
    sound = tuple(one for number, one in enumerate(files.reviews) if number not in failed)
    told = tuple(unread(files.reviews[number].report.system.record.file, error) for number, error in failed.items())
    left = replace(files, reviews=sound, refused=files.refused + told)
    return left, write_all(left)


def _failure(files: "ReviewedFiles", number: int, write_all: "Callable[[ReviewedFiles], object]") -> Exception | None:
    """Why one of the reviews cannot be written by itself."""
    try:
        write_all(replace(files, reviews=files.reviews[number : number + 1]))
    except Exception as error:  # noqa: BLE001  it is told
        return error
    return None
