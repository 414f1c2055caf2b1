"""The command `exercise`."""

from collections.abc import Mapping, Sequence
from enum import StrEnum
from functools import partial
from pathlib import Path
from typing import Annotated, Literal
from urllib.parse import quote

import typer

from plumbnet.cli.app import command
from plumbnet.cli.arguments import fail
from plumbnet.cli.board_pages import LivePage
from plumbnet.cli.console import write
from plumbnet.cli.output_file import save
from plumbnet.cli.playing import (
    Keeper,
    Lesson,
    Wanted,
    day_of,
    lesson_again,
    lesson_of,
    play_by_tapping,
    play_lesson,
    read_lesson,
    tapped_page,
)
from plumbnet.cli.progress_bar import at_work
from plumbnet.layout.units import Customary
from plumbnet.layout.yaml import quoted, visible
from plumbnet.report.studies import exercises_json
from plumbnet.report.worksheets import Key, Worksheet, worksheet, worksheets_markdown
from plumbnet.report.worksheets import key as answers
from plumbnet.study.exercise import LEVELS, Exercise, answer_walks, questions_of

_MOST = 200
"""Exercises dealt at once."""


class SheetForm(StrEnum):
    """How `exercise` writes worksheets."""

    MARKDOWN = "markdown"
    HTML = "html"
    PDF = "pdf"
    BOARD = "board"
    JSON = "json"


_ENDINGS = {".html": SheetForm.HTML, ".htm": SheetForm.HTML, ".pdf": SheetForm.PDF, ".json": SheetForm.JSON}


@command()
def exercise(  # noqa: PLR0913  each is an option of the command
    *,
    seed: Annotated[int, typer.Option(help="The same seed gives the same exercises.")] = 1,
    level: Annotated[int, typer.Option(min=1, max=len(LEVELS), help="How hard: 1 to 5.")] = 1,
    variants: Annotated[
        int | None, typer.Option(min=1, max=_MOST, help="How many, no two alike; 1 when left out, none beside --from.")
    ] = None,
    about: Annotated[str | None, typer.Option(metavar="QUESTION", help="One sort; else all in turn.")] = None,
    units: Annotated[Customary, typer.Option(help="Units of the layouts, and sizes usual in them.")] = "us",
    form: Annotated[
        SheetForm | None,
        typer.Option("--format", help="Else by the ending of OUT; board: a page to tap on, opened with --play."),
    ] = None,
    paper: Annotated[
        Literal["letter", "a4"] | None,
        typer.Option("--paper", help="Of a PDF; else letter, a4 where units are metric."),
    ] = None,
    out: Annotated[Path | None, typer.Option("-o", "--output", metavar="OUT", help="The file to write.")] = None,
    key: Annotated[bool, typer.Option("--key", help="Add the keys, on pages of their own.")] = False,
    play: Annotated[bool, typer.Option("--play", help="Answer here, line by line; the reason follows.")] = False,
    results: Annotated[
        str | None, typer.Option(metavar="FILE", help="Keep the answers there, and go on there.")
    ] = None,
    name: Annotated[str | None, typer.Option(help="Who answers, for the file of answers.")] = None,
    own: Annotated[
        str | None, typer.Option("--from", metavar="FILE", help="Questions of your own, or a lesson by name.")
    ] = None,
    again: Annotated[str | None, typer.Option(metavar="RESULTS", help="What was missed there and is due.")] = None,
    day: Annotated[
        str | None, typer.Option(metavar="DATE", help="The day, as 2026-03-14; today when left out.")
    ] = None,
    picture: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Draw each there when played, and open it.")
    ] = None,
) -> None:
    """What-if tasks for apprentices, made from a seed, with their keys.

    Each has a layout of its own, a question, and an answer that this program finds when it checks the layout. Played,
    an answer is met with what stands behind it, and may be given once more; ? follows the water a hop.
    """
    _refuse_unknown(about, level)
    form = form or _form_of(out)
    _refuse_no_file(form, out)
    _refuse_together(form, play=play, results=results, again=again, own=own, picture=picture)
    asked = Wanted(seed, level, variants, about, units, own)
    today = day_of(day)
    lesson = lesson_again(again, seed, today) if again is not None else lesson_of(asked)
    if play and (lesson.posed or form is not SheetForm.BOARD):
        keeper = Keeper(again or results, name or "", today)
        if form is SheetForm.BOARD:
            play_by_tapping((lambda: lesson) if own is None else partial(read_lesson, asked), own, keeper, LivePage())
        else:
            play_lesson(lesson, keeper, None if picture is None else partial(_shown, picture, (own, again, results)))
        return
    if not lesson.posed:
        write(f"{lesson.nothing}\n")
        return
    _give(_written(lesson, form, out, paper or ("letter" if units == "us" else "a4"), with_key=key), out, (own, again))


def _give(content: bytes, out: Path | None, read: Sequence[str | None]) -> None:
    if out is None:
        write(content.decode())
    else:
        save(out, content, read=read)


def _form_of(out: Path | None) -> SheetForm:
    """The form by the ending of a file's name; Markdown without one."""
    return _ENDINGS.get("" if out is None else out.suffix.lower(), SheetForm.MARKDOWN)


def _refuse_no_file(form: SheetForm, out: Path | None) -> None:
    if form is SheetForm.PDF and out is None:
        fail("a PDF is written into a file", advice="name it with -o")


def _written(
    lesson: Lesson, form: SheetForm, out: Path | None, paper: Literal["letter", "a4"], *, with_key: bool
) -> bytes:
    if form is SheetForm.BOARD:
        return tapped_page(lesson).encode()
    dealt = [one.worded for one in lesson.posed]
    with at_work("writing"):
        match form:
            case SheetForm.PDF:
                return _print(dealt, paper, with_key=with_key)
            case SheetForm.JSON:
                return exercises_json([(one.worded, one.hints) for one in lesson.posed]).encode()
            case SheetForm.HTML:
                return _page(dealt, with_key=with_key).encode()
            case SheetForm.MARKDOWN:
                return _markdown(dealt, out, with_key=with_key).encode()


def _refuse_unknown(about: str | None, level: int) -> None:
    known = [question.name for question in questions_of(level)]
    if about is not None and about not in known:
        fail(f"level {level} has no question {quoted(about)}", about, known, f"it has {', '.join(known)}")


def _refuse_together(  # noqa: PLR0913  each is an option of the command
    form: SheetForm, *, play: bool, results: str | None, again: str | None, own: str | None, picture: Path | None
) -> None:
    """Say what is wrong and exit where options were given that say nothing together."""
    if not play and (results is not None or picture is not None):
        fail(f"{'--results' if results is not None else '--picture'} is about answering", advice="add --play")
    if picture is not None and form is SheetForm.BOARD:
        fail("--picture is about answering in the terminal", advice="leave it out: the page has each")
    if again is not None and (results is not None or own is not None):
        fail(f"--again and {'--results' if results is not None else '--from'} cannot stand together")


def _markdown(dealt: Sequence[Exercise], out: Path | None, *, with_key: bool) -> str:
    """The worksheets as Markdown, their pictures saved beside OUT; without an OUT there are none."""
    sheets, keys = _sheets(dealt, with_key=with_key)
    if out is None:
        return worksheets_markdown(sheets, keys)
    pictures, solved = _pictures(dealt, with_key=with_key)
    files = {number: out.with_name(f"{out.stem}-{number}.svg") for number in pictures}
    key_files = {number: out.with_name(f"{out.stem}-key-{number}.svg") for number in solved}
    for number, file in files.items():
        save(file, pictures[number].encode())
    for number, file in key_files.items():
        save(file, solved[number].encode())
    return worksheets_markdown(sheets, keys, _names(files), _names(key_files))


def _names(files: Mapping[int, Path]) -> dict[int, str]:
    """Names of files as a link is written."""
    return {number: quote(file.name) for number, file in files.items()}


def _page(dealt: Sequence[Exercise], *, with_key: bool) -> str:
    from plumbnet.report.worksheets.paper import worksheets_html  # noqa: PLC0415  brings the template library

    return worksheets_html(*_sheets(dealt, with_key=with_key), *_pictures(dealt, with_key=with_key))


def _print(dealt: Sequence[Exercise], paper: Literal["letter", "a4"], *, with_key: bool) -> bytes:
    from plumbnet.report.worksheets.paper import answer_figure, piping_figure, worksheets_pdf  # noqa: PLC0415  slow

    sheets, keys = _sheets(dealt, with_key=with_key)
    pictures = {
        sheet.number: partial(piping_figure, one.system, sheet.asked_about)
        for one, sheet in zip(dealt, sheets, strict=True)
    }
    solved = {one.origin.number: partial(answer_figure, one.report) for one in dealt}
    return worksheets_pdf(sheets, keys, paper, pictures, solved)


def _sheets(dealt: Sequence[Exercise], *, with_key: bool) -> tuple[list[Worksheet], list[Key]]:
    return [worksheet(one) for one in dealt], [answers(one, answer_walks(one)) for one in dealt] if with_key else []


def _pictures(dealt: Sequence[Exercise], *, with_key: bool) -> tuple[dict[int, str], dict[int, str]]:
    """The piping of each worksheet as SVG, by its number, and with the answer if wanted."""
    from plumbnet.report.worksheets.paper import answer_svg, piping_svg  # noqa: PLC0415  drawing is slow to import

    plain = {one.origin.number: piping_svg(one.system, worksheet(one).asked_about) for one in dealt}
    return plain, {one.origin.number: answer_svg(one.report) for one in dealt} if with_key else {}


def _shown(picture: Path, read: Sequence[str | None], one: Exercise) -> None:
    """Draw an exercise into a file and open it; where nothing opens it the file is there all the same."""
    from plumbnet.report.worksheets.paper import piping_svg  # noqa: PLC0415  drawing is slow to import

    save(picture, piping_svg(one.system, worksheet(one).asked_about).encode(), read=read)
    if typer.launch(str(picture)):
        typer.echo(visible(f"The picture is in {picture}."), err=True)
