"""The server of a live board."""

import json
import socket
import threading
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from serving import PATIENCE_S, asked, served
from touched import HOUSE, states_of, touch

import plumbnet
from plumbnet.boards.live.board_server import BoardServer
from plumbnet.boards.live.followed_file import FollowedFile
from plumbnet.boards.one_board import OneBoard
from plumbnet.boards.page_files import MODULES
from plumbnet.boards.state_answer import board_answer


@pytest.fixture(scope="module")
def path(tmp_path_factory: pytest.TempPathFactory) -> Path:
    file = tmp_path_factory.mktemp("board") / "house.yaml"
    file.write_text(HOUSE, encoding="utf-8")
    return file


@pytest.fixture(scope="module")
def server(path: Path) -> Iterator[BoardServer]:
    with served(FollowedFile(path, lambda: OneBoard(plumbnet.check(path)))) as running:
        yield running


def told(server: BoardServer, path: str) -> tuple[int, dict[str, Any]]:
    status, body = asked(server, path)
    read: dict[str, Any] = json.loads(body)
    return status, read


def test_page_and_each_of_its_files_is_given_out(server: BoardServer) -> None:
    for name in ("", "board.css", "colours.css", *MODULES):
        status, body = asked(server, f"/{name}")
        assert (status, bool(body)) == (200, True), name
    assert told(server, "/board.html")[0] == 404
    assert asked(server, "/..%2Fboard_data.py")[0] == 404


def test_answer_is_that_of_the_engine(server: BoardServer) -> None:
    states = states_of(HOUSE)
    shut = touch(states, "tank-stop", "shut")
    assert told(server, f"/answer.json?state={shut.at}-{shut.option}") == (
        200,
        json.loads(json.dumps(board_answer(states, [shut]))),
    )


@pytest.mark.parametrize(
    ("state", "words"),
    [
        ("nonsense", "begin with the layout as drawn"),
        ("999-0", "begin with this one as drawn"),
        ("0=0=-5", "at least 0 psi is wanted here"),
        ("1-0," * 70, "at most 64"),
    ],
)
def test_what_cannot_be_is_refused_with_the_words_of_the_engine(server: BoardServer, state: str, words: str) -> None:
    status, body = told(server, f"/answer.json?state={state}")
    assert (status, words in body["refused"]) == (422, True), body
    assert "Traceback" not in body["refused"]
    assert "pydantic" not in body["refused"]


def test_question_longer_than_a_board_asks_is_not_read(server: BoardServer) -> None:
    assert told(server, f"/answer.json?state={'1' * 5_000}")[0] == 414


@pytest.mark.parametrize(
    ("given", "headers", "status"),
    [
        ("{}", {}, 404),
        ("[]", {}, 422),
        ("x" * 5_000, {}, 413),
        ("{}", {"x-board": ""}, 403),
        ("{}", {"origin": "http://evil.example"}, 403),
    ],
)
def test_what_is_handed_in_is_guarded_and_bounded(
    server: BoardServer, given: str, headers: dict[str, str], status: int
) -> None:
    assert asked(server, "/answered.json", given, **headers)[0] == status


def test_other_pages_and_other_starts_are_refused(server: BoardServer) -> None:
    assert asked(server, "/board.json", host="evil.example")[0] == 403
    assert asked(server, "/board.json", origin="http://evil.example")[0] == 403
    assert asked(server, "/board.json", cookie="")[0] == 403
    assert asked(server, "/board.json")[0] == 200


def test_walk_is_told_hop_by_hop(server: BoardServer) -> None:
    status, body = told(server, "/walk.json?state=&heater=heater")
    assert (status, "What the growing water tries" in body["walk"]) == (200, True)


def test_page_hears_of_a_save_that_it_waits_for(server: BoardServer, path: Path) -> None:
    seen = told(server, "/changed.json?seen=0")[1]["seen"]
    heard: list[dict[str, Any]] = []
    waiting = threading.Thread(target=lambda: heard.append(told(server, f"/changed.json?seen={seen}")[1]))
    waiting.start()
    for number in range(100):  # until the watch has begun, a save may go by unseen
        path.write_text(f"{HOUSE}# {number}\n", encoding="utf-8")
        waiting.join(0.1)
        if not waiting.is_alive():
            break
    waiting.join(60.0)
    assert heard[0]["seen"] > seen
    assert heard[0]["mistake"] == ""


def test_server_listens_on_this_machine_alone(server: BoardServer) -> None:
    assert server._socket.getsockname()[0] == "127.0.0.1"  # noqa: SLF001  nothing else tells
    assert server.address.startswith(f"http://127.0.0.1:{server.port}/?k=")
    assert len(server.secret) >= 32


def test_server_ends_by_itself_once_no_page_waits_if_it_was_asked_to(path: Path) -> None:
    server = BoardServer(FollowedFile(path, lambda: OneBoard(plumbnet.check(path))), ends_after_s=0.01)
    begun = threading.Event()
    thread = threading.Thread(target=server.run, args=(begun.set,), daemon=True)
    thread.start()
    assert begun.wait(PATIENCE_S)
    assert asked(server, "/board.json")[0] == 200
    assert asked(server, "/changed.json?seen=0")[0] == 200
    thread.join(PATIENCE_S)
    assert not thread.is_alive()


def test_port_that_is_taken_raises(server: BoardServer) -> None:
    with pytest.raises(OSError, match="in use"):
        BoardServer(server.followed, server.port)


def test_answers_leave_at_once(server: BoardServer) -> None:
    assert server._socket.proto == socket.IPPROTO_TCP  # noqa: SLF001  without it each answer waits for 40 ms
