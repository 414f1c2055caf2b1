"""The board of one version of a layout."""

import pytest
from touched import HOUSE

import plumbnet
from plumbnet.boards.one_board import OneBoard, refused_or
from plumbnet.study.touching.touch_code import UnknownTouch


@pytest.fixture
def board() -> OneBoard:
    return OneBoard(plumbnet.check(plumbnet.read_bytes(HOUSE.encode())))


def test_answer_of_a_state_is_worked_out_once(board: OneBoard) -> None:
    assert board.answer("") is board.answer("")
    assert board.picture("") is board.picture("")


def test_walk_is_that_of_trace_and_of_a_heater_that_is_there(board: OneBoard) -> None:
    assert board.walk("", "heater") == plumbnet.trace(board.states.drawn, "heater")
    with pytest.raises(UnknownTouch, match="no such heater"):
        board.walk("", "stop")


def test_what_cannot_be_told_is_refused_in_words(board: OneBoard) -> None:
    def fails() -> dict[str, object]:
        plumbnet.with_changes(board.states.drawn.system, [plumbnet.Change.model_validate({"remove": "nobody"})])
        return {}

    assert "nobody" in str(refused_or(fails)["refused"])
    assert refused_or(lambda: board.answer("x"))["refused"]
    assert refused_or(dict) == {}
