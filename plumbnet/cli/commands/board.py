"""The command `board`."""

import sys
import webbrowser
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

import plumbnet
from plumbnet.analysis import Report
from plumbnet.cli.app import command
from plumbnet.cli.arguments import fail, refuse, ruled, system_from
from plumbnet.cli.console import write
from plumbnet.cli.ending import Interrupted
from plumbnet.cli.file_search import STANDARD_INPUT
from plumbnet.cli.options import Rules, UnitsOption
from plumbnet.cli.output_file import form_of_output, save
from plumbnet.cli.progress_bar import counted_on
from plumbnet.layout.authoring import starter
from plumbnet.layout.yaml import LayoutError, reason_of
from plumbnet.study.touching import TouchStates, UnknownTouch, held_states
from plumbnet.study.training import holds_questions, questions_bytes

if TYPE_CHECKING:
    from plumbnet.boards.live import BoardServer

_STARTER = "house"
NO_BOARD = 'the live board needs the extra "board": pip install "plumbnet[board]"'

_File = Annotated[
    str | None,
    typer.Argument(
        metavar="[FILE]", help="A layout, or questions: a file, or a lesson by name; the house of `new` when left out."
    ),
]
_Port = Annotated[
    int, typer.Option("--port", min=0, max=65535, metavar="N", help="Port on this machine; a free one when left out.")
]
_WHILE_S = 30.0
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
) -> None:
    """Open the board: the piping on a page, where a valve turns at a click and the answer stands at once.

    Touch a valve, a device, a pipe, a number. The page follows the file as it is saved. The program listens on this
    machine alone, for the page that it opens, until Ctrl-C. With -o it writes a copy that any browser opens without
    the program: with a table of all states of what can be touched in it, and it says how many these are. Of questions
    it writes the page on which they are answered by tapping.
    """
    if output is None and (touch is not None or at_once is not None):
        fail("--touch and --at-once are about the copy", advice="name its file with -o")
    if file is not None and _holds_questions(file):
        _write_lesson(output, file)
        return
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
    try:
        from plumbnet.boards.live import BoardServer, FollowedFile  # noqa: PLC0415  an extra, and slow to import
    except ImportError:
        fail(NO_BOARD)
    path = None if file in {None, STANDARD_INPUT} else Path(str(file))
    try:
        followed = FollowedFile(path, report)
    except (LayoutError, OSError) as error:
        refuse(str(file), error)
    try:
        server = BoardServer(followed, port, _WHILE_S if until_closed else None)
    except OSError as error:
        fail(f"port {port} cannot be listened on: {reason_of(error)}", advice="leave --port out for a free one")
    _serve(server, opens=not no_browser)


def _holds_questions(file: str) -> bool:
    """Whether a file is one of questions; one that cannot be read is told as a layout is."""
    try:
        return file != STANDARD_INPUT and holds_questions(questions_bytes(file))
    except OSError:
        return False


def _write_lesson(output: Path | None, file: str) -> None:
    """Write the page on which the questions of a file are answered by tapping."""
    from plumbnet.cli.playing import Wanted, lesson_of, tapped_page  # noqa: PLC0415  a layout needs no exercises

    if output is None:
        fail("questions are answered on a page of their own", advice="name it, as -o lesson.html")
    form_of_output(output, ("html",))
    save(output, tapped_page(lesson_of(Wanted(own=file))).encode(), read=[file])


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


def _serve(server: "BoardServer", *, opens: bool) -> None:
    """Say where the board is, open it, and serve it until Ctrl-C."""

    def started() -> None:
        write(f"{server.address}\nCtrl-C ends it.\n")
        sys.stdout.flush()
        if opens:
            webbrowser.open(server.address)

    try:
        server.run(started)
    except (Interrupted, KeyboardInterrupt):
        raise typer.Exit(0) from None
