"""The board in a notebook, as its kernel answers."""

from typing import Any

import pytest
from touched import HOUSE, touch

import plumbnet
from plumbnet.boards.notebook.board_widget import BoardWidget
from plumbnet.boards.page_files import page_script
from plumbnet.rules.facts import Verdict
from plumbnet.study.touching.touch_code import code_of
from plumbnet.study.touching.touch_states import TouchStates


@pytest.fixture
def widget() -> BoardWidget:
    return plumbnet.board(plumbnet.read_bytes(HOUSE.encode()))


def told(widget: BoardWidget, ask: str, state: str = "", heater: str = "") -> dict[str, Any]:
    """The answer to a question, as what it is."""
    reply = widget.reply({"view": 3, "id": 7, "ask": ask, "state": state, "heater": heater})
    assert (reply["view"], reply["id"]) == (3, 7)
    assert isinstance(reply["answer"], dict)
    return reply["answer"]


def test_questions_of_the_page_are_answered(widget: BoardWidget) -> None:
    assert told(widget, "board")["heaters"] == ["heater"]
    assert [one["verdict"] for one in told(widget, "answer")["heaters"]] == ["controlled"]
    assert told(widget, "picture")["svg"].startswith("<svg")
    assert told(widget, "walk", heater="heater")["walk"].startswith("heater")


def test_reply_goes_to_whoever_asked(widget: BoardWidget, monkeypatch: pytest.MonkeyPatch) -> None:
    sent: list[dict[str, Any]] = []
    monkeypatch.setattr(widget, "send", sent.append)
    widget._handle_custom_msg({"view": 2, "id": 9, "ask": "board", "state": "", "heater": ""}, [])  # noqa: SLF001  as the kernel calls it
    assert [(one["view"], one["id"]) for one in sent] == [(2, 9)]


def test_next_cell_has_the_report_of_what_is_touched(widget: BoardWidget) -> None:
    shut = touch(TouchStates(widget.report), "tank-stop", "shut")
    told(widget, "answer", code_of([shut]))
    assert [heater.verdict for heater in widget.report.heaters] == [Verdict.TRAPPED]
    told(widget, "answer")
    assert [heater.verdict for heater in widget.report.heaters] == [Verdict.CONTROLLED]


@pytest.mark.parametrize(("ask", "state"), [("answer", "nonsense"), ("answer", "999-0"), ("tell", "")])
def test_what_cannot_be_answered_is_refused_and_the_state_stays(widget: BoardWidget, ask: str, state: str) -> None:
    assert told(widget, ask, state)["refused"]
    assert widget.state == ""


def test_page_asks_nobody_but_the_page_around_it(widget: BoardWidget) -> None:
    assert '{"framed":true}' in widget.page
    assert "default-src &#x27;none&#x27;" in widget.page
    assert 'setAttribute("sandbox", "allow-scripts")' in page_script("notebook.mjs")
