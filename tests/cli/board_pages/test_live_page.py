"""A page that is served on this machine."""

import webbrowser
from collections.abc import Callable

import pytest
from touched import HOUSE

import plumbnet
from plumbnet.boards.live.board_server import BoardServer
from plumbnet.boards.one_board import OneBoard
from plumbnet.cli.board_pages.live_page import LivePage, followed_page, serve


@pytest.mark.parametrize("ends", [False, True])
def test_address_is_told_and_opened_if_that_is_wanted(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], *, ends: bool
) -> None:
    opened: list[str] = []
    served: list[BoardServer] = []

    def run(server: BoardServer, started: Callable[[], None]) -> None:
        served.append(server)
        started()
        server._socket.close()  # noqa: SLF001  it never served
        raise KeyboardInterrupt

    monkeypatch.setattr(webbrowser, "open", opened.append)
    monkeypatch.setattr(BoardServer, "run", run)
    followed = followed_page(None, lambda: OneBoard(plumbnet.check(HOUSE.encode())))
    serve(followed, LivePage(opens=ends, ends_once_closed=ends))
    (server,) = served
    assert capsys.readouterr().out == f"{server.address}\nCtrl-C ends it.\n"
    assert opened == ([server.address] if ends else [])
    assert server.ends_after_s == (30.0 if ends else None)
