"""The command `exercise`."""

import sys
from collections.abc import Mapping, Sequence
from enum import StrEnum
from pathlib import Path
from typing import Annotated
from urllib.parse import quote

import typer

from plumbnet.cli.app import command
from plumbnet.cli.arguments import fail
from plumbnet.cli.console import write
from plumbnet.cli.output_file import save
from plumbnet.cli.progress_bar import at_work
from plumbnet.layout.units import Customary
from plumbnet.layout.yaml import quoted
from plumbnet.report.studies import exercises_json
from plumbnet.report.worksheets import Key, Worksheet, talk, worksheet, worksheets_markdown
from plumbnet.report.worksheets import key as answers
from plumbnet.study.exercise import LEVELS, Exercise, NoMore, answer_walks, exercises, questions_of

_MOST = 200
"""Exercises dealt at once."""
_LONGEST = 10_000
"""Bytes of a typed line that are read at once."""


class SheetForm(StrEnum):
    """How `exercise` writes worksheets."""

    MARKDOWN = "markdown"
    HTML = "html"
    JSON = "json"


_ENDINGS = {".html": SheetForm.HTML, ".htm": SheetForm.HTML, ".json": SheetForm.JSON}


@command()
def exercise(  # noqa: PLR0913  each is an option of the command
    *,
    seed: Annotated[int, typer.Option(help="The same seed gives the same exercises.")] = 1,
    level: Annotated[int, typer.Option(min=1, max=len(LEVELS), help="How hard: 1 to 5.")] = 1,
    variants: Annotated[int, typer.Option(min=1, max=_MOST, help="How many, no two alike.")] = 1,
    about: Annotated[str | None, typer.Option(metavar="QUESTION", help="One sort; else all in turn.")] = None,
    units: Annotated[Customary, typer.Option(help="Units of the layouts, and sizes usual in them.")] = "us",
    form: Annotated[SheetForm | None, typer.Option("--format", help="Else by the ending of OUT.")] = None,
    out: Annotated[Path | None, typer.Option("-o", "--output", metavar="OUT", help="The file to write.")] = None,
    key: Annotated[bool, typer.Option("--key", help="Add the keys, on pages of their own.")] = False,
    play: Annotated[bool, typer.Option("--play", help="Answer here, line by line; the reason follows.")] = False,
) -> None:
    """What-if tasks for apprentices, made from a seed, with their keys.

    Each has a layout of its own, a question, and an answer that this program finds when it checks the layout.
    """
    _refuse_unknown(about, level)
    try:
        with at_work("making exercises"):
            dealt = exercises(seed, level, variants, about=about, units=units)
    except NoMore as error:
        fail(f"{error}; ask for fewer, or take another seed")
    if play:
        _play(dealt)
        return
    with at_work("writing"):
        text = _written(dealt, form or _form_of(out), out, with_key=key)
    if out is None:
        write(text)
    else:
        save(out, text.encode())


def _form_of(out: Path | None) -> SheetForm:
    """The form that the ending of a file asks for."""
    return _ENDINGS.get("" if out is None else out.suffix.lower(), SheetForm.MARKDOWN)


def _written(dealt: Sequence[Exercise], form: SheetForm, out: Path | None, *, with_key: bool) -> str:
    """The exercises in a form; JSON has the keys in any case."""
    match form:
        case SheetForm.JSON:
            return exercises_json(dealt)
        case SheetForm.HTML:
            return _page(dealt, with_key=with_key)
        case SheetForm.MARKDOWN:
            return _markdown(dealt, out, with_key=with_key)


def _refuse_unknown(about: str | None, level: int) -> None:
    known = [question.name for question in questions_of(level)]
    if about is not None and about not in known:
        fail(f"level {level} has no question {quoted(about)}", about, known, f"it has {', '.join(known)}")


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


def _sheets(dealt: Sequence[Exercise], *, with_key: bool) -> tuple[list[Worksheet], list[Key]]:
    return [worksheet(one) for one in dealt], [answers(one, answer_walks(one)) for one in dealt] if with_key else []


def _pictures(dealt: Sequence[Exercise], *, with_key: bool) -> tuple[dict[int, str], dict[int, str]]:
    """The piping of each worksheet as SVG, by its number, and with the answer if wanted."""
    from plumbnet.report.worksheets.paper import answer_svg, piping_svg  # noqa: PLC0415  drawing is slow to import

    plain = {one.origin.number: piping_svg(one.system, number=one.origin.number) for one in dealt}
    return plain, {one.origin.number: answer_svg(one.report) for one in dealt} if with_key else {}


def _play(dealt: Sequence[Exercise]) -> None:
    """Ask one exercise after another; the end of what is typed ends it calmly."""
    right = answered = 0
    try:
        for one in dealt:
            is_right = _talked(one)
            right, answered = right + is_right, answered + 1
    except EOFError:
        write("\n")
    write(f"{right} of {answered} right.\n")


def _talked(one: Exercise) -> bool:
    """Whether all answers to an exercise were right. Raises EOFError where no more is typed."""
    talking = talk(one, answer_walks(one))
    said = next(talking)
    try:
        while True:
            write(said)
            said = talking.send(_typed())
    except StopIteration as end:
        return bool(end.value)


def _typed() -> str:
    """A line from standard input, whatever bytes stand in it. Raises EOFError where no more is typed."""
    sys.stdout.flush()
    line = sys.stdin.buffer.readline(_LONGEST)
    if not line:
        raise EOFError
    return line.decode(errors="replace").rstrip("\r\n")
