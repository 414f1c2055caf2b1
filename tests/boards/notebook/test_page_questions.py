"""Questions of a page, as a kernel answers them."""

from typing import Any

import pytest
from touched import HOUSE, touch

import plumbnet
from plumbnet.boards.notebook.page_questions import AskedBoard
from plumbnet.boards.one_board import OneBoard
from plumbnet.rules.facts import Verdict
from plumbnet.study.touching.touch_code import code_of


@pytest.fixture
def board() -> AskedBoard:
    return AskedBoard(OneBoard(plumbnet.check(plumbnet.read_bytes(HOUSE.encode()))))


def told(board: AskedBoard, ask: str, state: str = "", heater: str = "") -> dict[str, Any]:
    """The answer to a question, as what it is."""
    reply = board.reply({"view": 3, "id": 7, "ask": ask, "state": state, "heater": heater})
    assert (reply["view"], reply["id"]) == (3, 7)
    assert isinstance(reply["answer"], dict)
    return reply["answer"]


def test_questions_of_the_page_are_answered(board: AskedBoard) -> None:
    assert told(board, "board")["heaters"] == ["heater"]
    assert [one["verdict"] for one in told(board, "answer")["heaters"]] == ["controlled"]
    assert told(board, "picture")["svg"].startswith("<svg")
    assert told(board, "walk", heater="heater")["walk"].startswith("heater")


def test_next_cell_has_the_report_of_what_is_touched(board: AskedBoard) -> None:
    shut = touch(board.board.states, "tank-stop", "shut")
    told(board, "answer", code_of([shut]))
    assert [heater.verdict for heater in board.report.heaters] == [Verdict.TRAPPED]
    told(board, "answer")
    assert [heater.verdict for heater in board.report.heaters] == [Verdict.CONTROLLED]


@pytest.mark.parametrize(("ask", "state"), [("answer", "nonsense"), ("answer", "999-0"), ("tell", "")])
def test_what_cannot_be_answered_is_refused_and_the_state_stays(board: AskedBoard, ask: str, state: str) -> None:
    assert told(board, ask, state)["refused"]
    assert board.state == ""
