"""A layout file to the board of what was last saved of it whole, and what is wrong with what was saved since."""

import threading
from collections.abc import Callable
from dataclasses import dataclass, field
from functools import lru_cache
from pathlib import Path

import watchfiles

from plumbnet.analysis import Report
from plumbnet.analysis.water_walk import water_walk
from plumbnet.boards.page_data import board_data
from plumbnet.boards.state_answer import StateAnswer, board_answer
from plumbnet.boards.state_picture import board_picture
from plumbnet.layout.yaml import LayoutError
from plumbnet.report.output import unread
from plumbnet.report.trace import trace_text
from plumbnet.study.touching import TouchStates, UnknownTouch, touches_of

_MOST_KEPT = 512
"""States whose answers are kept: some hundred kilobytes."""
Data = dict[str, object]


class OneBoard:
    """The answers for one version of a file, each worked out once."""

    def __init__(self, report: Report) -> None:
        self.states = TouchStates(report)
        self.data = board_data(self.states)
        self.answer = lru_cache(_MOST_KEPT)(self._answer)
        self.picture = lru_cache(_MOST_KEPT // 16)(self._picture)

    def _answer(self, code: str) -> StateAnswer:
        return board_answer(self.states, touches_of(code))

    def _picture(self, code: str) -> Data:
        return board_picture(self.states, touches_of(code))

    def walk(self, code: str, heater: str) -> str:
        """The way of a heater's water in a state, hop by hop, as `plumbnet trace` tells it."""
        report = self.states.report_in(touches_of(code))
        found = next((each for each in report.heaters if each.name == heater), None)
        if found is None:
            raise UnknownTouch("there is no such heater; choose one on the board")
        return trace_text(report.facts, water_walk(report, found))


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
