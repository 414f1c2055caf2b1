"""Questions of a page to their answers, asked and told as a notebook passes them on."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TypedDict

from plumbnet.analysis import Report
from plumbnet.boards.one_board import OneBoard, refused_or
from plumbnet.study.touching import touches_of

_NO_QUESTION = "this is no question that a board is asked"


class PageQuestion(TypedDict):
    """A question of a page, in a state; `view` and `id` say whose it is.

    `ask` is "board", "answer", "picture", "walk" or "heat-up".
    """

    view: int
    id: int
    ask: str
    state: str
    heater: str


@dataclass
class AskedBoard:
    """A board that is asked; `state` is the code of the last state that was asked for, empty as drawn."""

    board: OneBoard
    state: str = ""

    @property
    def report(self) -> Report:
        """What stands now: the report on the layout as it is touched."""
        return self.board.states.report_in(touches_of(self.state))

    def reply(self, question: PageQuestion) -> dict[str, object]:
        """What is told a page that asks."""
        answer = refused_or(lambda: self._answer(question))
        return {"view": question["view"], "id": question["id"], "answer": answer}

    def _answer(self, question: PageQuestion) -> Mapping[str, object]:
        asked = self.board.questions.get(question["ask"])
        if asked is None:
            return {"refused": _NO_QUESTION}
        answer = asked(question)
        if question["ask"] == "answer":
            self.state = question["state"]
        return answer
