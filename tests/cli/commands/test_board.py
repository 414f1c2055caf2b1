"""The command `board`."""

import builtins
import http.client
import re
import signal
import socket
import subprocess
import sys
from pathlib import Path

import pytest
from running import FAULTY, OPEN, Write, run

from plumbnet.boards.live.followed_file import FollowedFile
from plumbnet.boards.one_lesson import OneLesson
from plumbnet.cli.board_pages.live_page import LivePage
from plumbnet.cli.playing import tapping
from plumbnet.study.training.results_file import results_at

PATIENCE_S = 120.0


def begun(*words: str) -> tuple["subprocess.Popen[str]", int, str]:
    """The program at work, the port it serves, and its secret."""
    command = [sys.executable, "-m", "plumbnet", "board", "--no-browser", *words]
    process = subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)  # noqa: S603  ours
    assert process.stdout is not None
    found = re.fullmatch(r"http://127\.0\.0\.1:(\d+)/\?k=(\S+)\n", process.stdout.readline())
    assert found is not None
    return process, int(found[1]), found[2]


def title(port: int, secret: str) -> str:
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=PATIENCE_S)
    connection.request("GET", "/", headers={"cookie": f"board-{port}={secret}"})
    page = connection.getresponse().read().decode()
    connection.close()
    found = re.search("<h1>(.*)</h1>", page)
    assert found is not None
    return found[1]


def test_board_of_no_file_is_that_of_the_starter_house_and_ctrl_c_ends_it() -> None:
    process, port, secret = begun()
    try:
        assert title(port, secret) == "1 Starter Street, Lantern Falls"
        process.send_signal(signal.SIGINT)
        _, errors = process.communicate(timeout=PATIENCE_S)
    finally:
        process.kill()
        process.communicate()
    assert (process.returncode, errors) == (0, "")


def test_file_that_cannot_be_read_is_told_as_everywhere(write: Write) -> None:
    write("house.yaml", FAULTY)
    result = run("board", "house.yaml")
    assert result.exit_code == 2
    assert 'unknown kind "mian"' in result.output
    assert run("board", "nowhere.yaml").exit_code == 2


def test_port_that_is_taken_is_one_calm_sentence(write: Write) -> None:
    write("house.yaml", OPEN)
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = taken.getsockname()[1]
        result = run("board", "house.yaml", "--port", str(port))
    assert result.exit_code == 2
    assert result.output.startswith(f"port {port} cannot be listened on: ")
    assert result.output.count("\n") == 1


def test_without_the_extra_the_command_says_how_to_install_it(write: Write, monkeypatch: pytest.MonkeyPatch) -> None:
    write("house.yaml", OPEN)
    real = builtins.__import__

    def without(name: str, *more: object) -> object:
        if name == "plumbnet.boards.live":
            raise ImportError(name)
        return real(name, *more)  # type: ignore[arg-type]  # passed on as it came

    monkeypatch.setattr(builtins, "__import__", without)
    result = run("board", "house.yaml")
    assert (result.output, result.exit_code) == (
        'the live board needs the extra "board": pip install "plumbnet[board]"\n',
        2,
    )


IMPORTED = "[name for name in ('starlette', 'uvicorn', 'watchfiles') if name in sys.modules]"


def test_extras_are_not_imported_for_what_can_do_without() -> None:
    script = f"import sys, plumbnet.boards, plumbnet.cli.commands.board; print({IMPORTED})"
    told = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)  # noqa: S603  ours
    assert told.stdout == "[]\n"


def test_copy_is_written_and_says_what_it_holds(write: Write) -> None:
    write("house.yaml", OPEN)
    result = run("board", "house.yaml", "-o", "lesson.html", "--touch", "valve, tap")
    assert result.exit_code == 0
    first, second = result.output.splitlines()
    assert re.fullmatch(r"lesson\.html \(\d+ kB\) holds 9 states: all combinations of valve and tap\.", first)
    assert second == "Left out: heater and heater/relief; --touch names what to hold."
    assert Path("lesson.html").read_text(encoding="utf-8").startswith("<!doctype html>")


def test_copy_answers_as_many_at_once_as_is_asked_for(write: Write) -> None:
    write("house.yaml", OPEN)
    result = run("board", "house.yaml", "-o", "lesson.html", "--touch", "valve,tap", "--at-once", "1")
    assert "holds 5 states: up to 1 at a time of valve and tap." in result.output


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--touch", "valve"], "--touch and --at-once are about the copy; name its file with -o\n"),
        (["-o", "out.pdf"], '"out.pdf" does not say how to write it; let its name end in .html\n'),
        (
            ["--results", "ada.yaml"],
            "--results, --name and --day are about questions; name a file of them, or a lesson\n",
        ),
        (["-o", "out.html", "--touch", "vavle"], 'nothing of the name "vavle" can be touched: did you mean "valve"?\n'),
    ],
)
def test_what_makes_no_sense_is_one_calm_sentence(write: Write, words: list[str], said: str) -> None:
    write("house.yaml", OPEN)
    result = run("board", "house.yaml", *words)
    assert (result.output, result.exit_code) == (said, 2)
    assert not Path("out.html").exists()


def test_questions_are_played_where_no_copy_is_asked_for(write: Write, monkeypatch: pytest.MonkeyPatch) -> None:
    write("house.yaml", OPEN)
    write("mine.yaml", "plumbnet-questions: 1\nquestions: [{layout: house.yaml, about: verdict}]\n")

    def serve(followed: FollowedFile[OneLesson], live: LivePage) -> None:
        assert (followed.path, live.port, live.opens, live.ends_once_closed) == (Path("mine.yaml"), 5000, False, True)
        given = {"digest": followed.shown.digest, "exercise": 1, "blank": 1, "given": "open"}
        assert followed.shown.takes["answered"](given) == {"kept": "ada.yaml"}

    monkeypatch.setattr(tapping, "serve", serve)
    served = ("--no-browser", "--port", "5000", "--until-closed")
    kept = ("--results", "ada.yaml", "--name", "Ada", "--day", "2026-03-01")
    result = run("board", "mine.yaml", *served, *kept)
    assert (result.output, result.exit_code) == ("1 of 1 right at once. The answers are in ada.yaml.\n", 0)
    results = results_at("ada.yaml")
    assert (results.name, [sitting.day for sitting in results.sittings]) == ("Ada", ["2026-03-01"])
    told = "--results, --name and --day are about answers given here; the copy hands in a file of its own\n"
    assert run("board", "mine.yaml", "-o", "tap.html", *kept).output == told
    assert not Path("tap.html").exists()
