"""The board in a notebook, as its kernel answers."""

from typing import Any

import pytest
from touched import HOUSE

import plumbnet
from plumbnet.boards.notebook.board_widget import BoardWidget
from plumbnet.boards.page_files import page_script


@pytest.fixture
def widget() -> BoardWidget:
    return plumbnet.board(plumbnet.read_bytes(HOUSE.encode()))


def test_reply_goes_to_whoever_asked(widget: BoardWidget, monkeypatch: pytest.MonkeyPatch) -> None:
    sent: list[dict[str, Any]] = []
    monkeypatch.setattr(widget, "send", sent.append)
    widget._handle_custom_msg({"view": 2, "id": 9, "ask": "board", "state": "", "heater": ""}, [])  # noqa: SLF001  as the kernel calls it
    assert [(one["view"], one["id"]) for one in sent] == [(2, 9)]


def test_report_is_that_of_what_is_touched(widget: BoardWidget) -> None:
    assert widget.report is widget.asked.report


def test_page_asks_nobody_but_the_page_around_it(widget: BoardWidget) -> None:
    assert '{"framed":true}' in widget.page
    assert "default-src &#x27;none&#x27;" in widget.page
    assert 'setAttribute("sandbox", "allow-scripts")' in page_script("notebook.mjs")
