"""A report to the widget of its board: what the page asks is answered in the kernel."""

from collections.abc import Mapping
from typing import TypedDict

import anywidget
import traitlets

from plumbnet.analysis import Report
from plumbnet.boards.one_board import OneBoard, refused_or
from plumbnet.boards.page_files import framed_page, page_script
from plumbnet.study.touching import touches_of

_NO_QUESTION = "this is no question that a board is asked"


class Asked(TypedDict):
    """A question of a page: `board`, `answer`, `picture` or `walk`, in a state; `view` and `id` say whose it is."""

    view: int
    id: int
    ask: str
    state: str
    heater: str


class BoardWidget(anywidget.AnyWidget):
    """The board of a report, in a notebook.

    `state` is the code of what is touched, empty as drawn, and changes as the page is touched; `height` is that of the
    frame, in pixels.
    """

    _esm = page_script("notebook.mjs")
    page = traitlets.Unicode().tag(sync=True)
    height = traitlets.Int().tag(sync=True)
    state = traitlets.Unicode("")

    def __init__(self, report: Report, *, height: int) -> None:
        self._board = OneBoard(report)
        super().__init__(page=framed_page(str(self._board.data["title"])), height=height)
        self.on_msg(lambda _widget, asked, _buffers: self.send(self.reply(asked)))

    @property
    def report(self) -> Report:
        """What stands now: the report on the layout as it is touched."""
        return self._board.states.report_in(touches_of(self.state))

    def reply(self, asked: Asked) -> dict[str, object]:
        """What is told a page that asks."""
        answer = refused_or(lambda: self._answer(asked))
        return {"view": asked["view"], "id": asked["id"], "answer": answer}

    def _answer(self, asked: Asked) -> Mapping[str, object]:
        state = asked["state"]
        match asked["ask"]:
            case "board":
                return self._board.data
            case "answer":
                answer = self._board.answer(state)
                self.state = state
                return answer
            case "picture":
                return self._board.picture(state)
            case "walk":
                return {"walk": self._board.walk(state, asked["heater"])}
            case _:
                return {"refused": _NO_QUESTION}
