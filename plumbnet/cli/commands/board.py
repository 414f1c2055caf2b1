"""The command `board`."""

import sys
import webbrowser
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

import plumbnet
from plumbnet.analysis import Report
from plumbnet.cli.app import app
from plumbnet.cli.arguments import fail, refuse, ruled, system_from
from plumbnet.cli.console import write
from plumbnet.cli.file_search import STANDARD_INPUT
from plumbnet.cli.options import Rules, UnitsOption
from plumbnet.layout.authoring import starter
from plumbnet.layout.yaml import LayoutError, reason_of

if TYPE_CHECKING:
    from plumbnet.boards.live import BoardServer

_STARTER = "house"
NO_BOARD = 'the live board needs the extra "board": pip install "plumbnet[board]"'

_File = Annotated[
    str | None, typer.Argument(metavar="[FILE]", help="A layout file; the house that `new` makes when left out.")
]
_Port = Annotated[
    int, typer.Option("--port", min=0, max=65535, metavar="N", help="Port on this machine; a free one when left out.")
]
_NoBrowser = Annotated[bool, typer.Option("--no-browser", help="Only print the address; open no browser.")]


@app.command()
def board(
    file: _File = None,
    port: _Port = 0,
    no_browser: _NoBrowser = False,  # noqa: FBT002  a flag of the command line
    rules: Rules = None,
    units: UnitsOption = None,
) -> None:
    """Open the board: the piping on a page, where a valve turns at a click and the answer stands at once.

    Touch a valve, a device, a pipe, a number. The page follows the file as it is saved. The program listens on this
    machine alone, for the page that it opens, until Ctrl-C.
    """
    given = ruled(rules)

    def report() -> Report:
        if file is None:
            return plumbnet.check(
                plumbnet.read_bytes(starter(_STARTER), file=f"{_STARTER}.yaml"), rules=given, units=units
            )
        return plumbnet.check(system_from(file), rules=given, units=units)

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
        server = BoardServer(followed, port)
    except OSError as error:
        fail(f"port {port} cannot be listened on: {reason_of(error)}", advice="leave --port out for a free one")
    _serve(server, opens=not no_browser)


def _serve(server: "BoardServer", *, opens: bool) -> None:
    """Say where the board is, open it, and serve it until Ctrl-C."""

    def started() -> None:
        write(f"{server.address}\nCtrl-C ends it.\n")
        sys.stdout.flush()
        if opens:
            webbrowser.open(server.address)

    try:
        server.run(started)
    except KeyboardInterrupt:
        raise typer.Exit(0) from None
