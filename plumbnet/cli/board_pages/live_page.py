"""A page that is served on this machine: it follows its file, is opened in the browser, and ends with Ctrl-C."""

import sys
import webbrowser
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from plumbnet.cli.arguments import fail
from plumbnet.cli.console import write
from plumbnet.cli.ending import Interrupted
from plumbnet.layout.yaml import reason_of

if TYPE_CHECKING:
    from plumbnet.boards.live import FollowedFile, ShownPage

_WHILE_S = 30.0
NO_BOARD = 'the live board needs the extra "board": pip install "plumbnet[board]"'


@dataclass(frozen=True, slots=True)
class LivePage:
    """How a page is served: on which port, 0 for a free one, and whether it is opened and ends once it is closed."""

    port: int = 0
    opens: bool = True
    ends_once_closed: bool = False


def followed_page(path: Path | None, read: Callable[[], "ShownPage"]) -> "FollowedFile[ShownPage]":
    """What is shown of a file, read anew at each save. Raises what reading raises; exits without the extra."""
    try:
        from plumbnet.boards.live import FollowedFile  # noqa: PLC0415  an extra, and slow to import
    except ImportError:
        fail(NO_BOARD)
    return FollowedFile(path, read)


def serve(followed: "FollowedFile[ShownPage]", live: LivePage) -> None:
    """Say where the page is, open it if that is wanted, and serve it until Ctrl-C."""
    from plumbnet.boards.live import BoardServer  # noqa: PLC0415  an extra, and slow to import

    try:
        server = BoardServer(followed, live.port, _WHILE_S if live.ends_once_closed else None)
    except OSError as error:
        fail(f"port {live.port} cannot be listened on: {reason_of(error)}", advice="leave --port out for a free one")

    def started() -> None:
        write(f"{server.address}\nCtrl-C ends it.\n")
        sys.stdout.flush()
        if live.opens:
            webbrowser.open(server.address)

    try:
        server.run(started)
    except (Interrupted, KeyboardInterrupt):
        return
