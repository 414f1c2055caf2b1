"""The command `board`."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import Annotated

import typer

import plumbnet
from plumbnet.analysis import Report
from plumbnet.cli.app import command
from plumbnet.cli.arguments import fail, refuse, ruled, system_from
from plumbnet.cli.board_pages import LivePage, followed_page, serve
from plumbnet.cli.console import write
from plumbnet.cli.file_search import STANDARD_INPUT
from plumbnet.cli.options import Rules, UnitsOption
from plumbnet.cli.output_file import form_of_output, save
from plumbnet.cli.progress_bar import counted_on
from plumbnet.layout.authoring import starter
from plumbnet.layout.yaml import LayoutError
from plumbnet.study.touching import TouchStates, UnknownTouch, held_states
from plumbnet.study.training import holds_questions, questions_bytes

_STARTER = "house"

_File = Annotated[
    str | None,
    typer.Argument(
        metavar="[FILE]", help="A layout, or questions: a file, or a lesson by name; the house of `new` when left out."
    ),
]
_Port = Annotated[
    int, typer.Option("--port", min=0, max=65535, metavar="N", help="Port on this machine; a free one when left out.")
]
_UntilClosed = Annotated[
    bool, typer.Option("--until-closed", help="End by itself once the page has been closed for a while.")
]
_NoBrowser = Annotated[bool, typer.Option("--no-browser", help="Only print the address; open no browser.")]

_Out = Annotated[
    Path | None, typer.Option("-o", "--output", metavar="OUT.html", help="A copy with its answers, to be handed out.")
]
_Touch = Annotated[
    str | None, typer.Option("--touch", metavar="NAME,...", help="What can be touched in the copy; a pipe as 'a to b'.")
]
_AtOnce = Annotated[
    int | None, typer.Option("--at-once", min=1, metavar="N", help="How many things at a time the copy answers.")
]

_Results = Annotated[
    str | None, typer.Option("--results", metavar="FILE", help="Keep the answers to questions there, and go on there.")
]
_Name = Annotated[str | None, typer.Option("--name", help="Who answers, for the file of answers.")]
_Day = Annotated[
    str | None,
    typer.Option("--day", metavar="DATE", help="The day of the answers, as 2026-03-14; today when left out."),
]


@dataclass(frozen=True, slots=True)
class _Keeping:
    """Where answers are kept, whose they are, and on which day they were given."""

    results: str | None
    name: str | None
    day: str | None

    @property
    def is_asked(self) -> bool:
        """Whether anything is said of it."""
        return {self.results, self.name, self.day} != {None}


@command()
def board(  # noqa: PLR0913, PLR0917  each is an option of the command
    file: _File = None,
    port: _Port = 0,
    no_browser: _NoBrowser = False,  # noqa: FBT002  a flag of the command line
    until_closed: _UntilClosed = False,  # noqa: FBT002  likewise
    output: _Out = None,
    touch: _Touch = None,
    at_once: _AtOnce = None,
    rules: Rules = None,
    units: UnitsOption = None,
    results: _Results = None,
    name: _Name = None,
    day: _Day = None,
) -> None:
    """Open the board: the piping on a page, where a valve turns at a click and the answer stands at once.

    Touch a valve, a device, a pipe, a number. The page follows the file as it is saved. The program listens on this
    machine alone, for the page that it opens, until Ctrl-C. With -o it writes a copy that any browser opens without
    the program: with a table of all states of what can be touched in it, and it says how many these are. Questions are
    played on it: asked with their pictures, and answered by tapping.
    """
    if output is None and (touch is not None or at_once is not None):
        fail("--touch and --at-once are about the copy", advice="name its file with -o")
    keeping, live = _Keeping(results, name, day), LivePage(port, not no_browser, until_closed)
    if file is not None and _holds_questions(file):
        _play(output, file, keeping, live)
        return
    if keeping.is_asked:
        fail("--results, --name and --day are about questions", advice="name a file of them, or a lesson")
    given = ruled(rules)

    def report() -> Report:
        if file is None:
            return plumbnet.check(
                plumbnet.read_bytes(starter(_STARTER), file=f"{_STARTER}.yaml"), rules=given, units=units
            )
        return plumbnet.check(system_from(file), rules=given, units=units)

    if output is not None:
        _write_copy(output, file, _first(file, report), touch or "", at_once)
        return
    from plumbnet.boards import OneBoard  # noqa: PLC0415  drawing is slow to import

    path = None if file in {None, STANDARD_INPUT} else Path(str(file))
    try:
        followed = followed_page(path, lambda: OneBoard(report()))
    except (LayoutError, OSError) as error:
        refuse(str(file), error)
    serve(followed, live)


def _holds_questions(file: str) -> bool:
    """Whether a file is one of questions; one that cannot be read is told as a layout is."""
    try:
        return file != STANDARD_INPUT and holds_questions(questions_bytes(file))
    except OSError:
        return False


def _play(output: Path | None, file: str, keeping: _Keeping, live: LivePage) -> None:
    """Serve the questions of a file to be answered by tapping, or write them as a page."""
    from plumbnet.cli.playing import Keeper, Wanted, day_of, lesson_of, play_by_tapping, read_lesson, tapped_page  # noqa: PLC0415  a layout needs no exercises

    wanted = Wanted(own=file)
    if output is None:
        keeper = Keeper(keeping.results, keeping.name or "", day_of(keeping.day))
        play_by_tapping(partial(read_lesson, wanted), file, keeper, live)
        return
    if keeping.is_asked:
        fail("--results, --name and --day are about answers given here", advice="the copy hands in a file of its own")
    form_of_output(output, ("html",))
    save(output, tapped_page(lesson_of(wanted)).encode(), read=[file])


def _first(file: str | None, report: Callable[[], Report]) -> Report:
    """The report on a file; says what is wrong and exits."""
    try:
        return report()
    except (LayoutError, OSError) as error:
        refuse(str(file), error)


def _write_copy(output: Path, file: str | None, report: Report, names: str, at_once: int | None) -> None:
    """Write the copy and say what it holds."""
    from plumbnet.boards import board_copy, held_in_words, left_out_in_words  # noqa: PLC0415  drawing is slow to import

    form_of_output(output, ("html",))
    states = TouchStates(report)
    try:
        held = held_states(states, [name.strip() for name in names.split(",") if name.strip()], at_once)
    except UnknownTouch as error:
        fail(str(error))
    with counted_on(held.count, "states") as one_more:
        content = board_copy(states, held, one_more).encode()
    save(output, content, read=[file])
    write(f"{output} ({len(content) / 1000:.0f} kB) {held_in_words(states, held)}.\n")
    left = left_out_in_words(states, held)
    if left:
        write(f"{left}; --touch names what to hold.\n")
