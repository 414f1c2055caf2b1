"""A layout file to the board of what was last saved of it whole, and what is wrong with what was saved since."""

import threading
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path

import watchfiles

from plumbnet.analysis import Report
from plumbnet.boards.one_board import OneBoard
from plumbnet.layout.yaml import LayoutError
from plumbnet.report.output import unread


@dataclass
class FollowedFile:
    """The board of a file; `look_again` reads it anew, and keeps the last good one where that fails.

    `seen` counts the versions looked at, from 1; `mistake` has what is wrong with the last of them, empty if nothing.
    """

    path: Path | None
    read: Callable[[], Report]
    seen: int = 1
    mistake: str = ""
    board: OneBoard = field(init=False)
    _stop: threading.Event = field(default_factory=threading.Event)

    def __post_init__(self) -> None:
        """Read it; raises what reading raises."""
        self.board = OneBoard(self.read())

    def look_again(self) -> None:
        """Read the file once more."""
        try:
            self.board, self.mistake = OneBoard(self.read()), ""
        except (LayoutError, OSError) as error:
            self.mistake = unread(str(self.path), error).words
        self.seen += 1

    def follow(self, told: Callable[[], None]) -> None:
        """Look again at each save, until `stop`, and tell of it; editors that write beside a file are followed too."""
        if self.path is None:
            return
        name = self.path.resolve()
        for changed in watchfiles.watch(name.parent, stop_event=self._stop, recursive=False, rust_timeout=500, step=20):
            if any(Path(path) == name for _, path in changed):
                self.look_again()
                told()

    def stop(self) -> None:
        """End `follow`."""
        self._stop.set()
