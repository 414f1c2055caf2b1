"""The key that interrupts, as a real signal: each command that works long ends with one sentence and its status."""

import os
import pty
import select
import signal
import subprocess
import sys
from pathlib import Path

import pytest
from hotel import hotel

from plumbnet.cli.ending.interruption import INTERRUPTED_WORDS

STATUS = 130
PATIENCE_S = 120
ROOMS, MORE_ROOMS = 400, 2000
"""So many that a search, or only to read the file, takes longer than a command may be silent."""
HEATER = "north-heater-1"
COMMANDS = [
    (b" .", "check large.yaml"),
    (b"drawing", "draw hotel.yaml -o out.svg"),
    (b"writing the report", "report hotel.yaml -o out.pdf"),
    (b"tried", "sweep hotel.yaml"),
    (b"looking for remedies", "remedies hotel.yaml"),
    (b"looking for margins", f"margins hotel.yaml {HEATER}"),
    (b" .", f"warmup large.yaml {HEATER}"),
    (b" .", "whatif large.yaml --close north-valve-1"),
    (b"reviewing", "review large.yaml large.yaml"),
    (b" .", "compare large.yaml large.yaml"),
    (b" .", f"trace large.yaml {HEATER}"),
    (b" .", f"size large.yaml {HEATER}"),
    (b"surveying", "survey large.yaml large.yaml --jobs 1"),
    (b"making exercises", "exercise --variants 200 --level 5"),
]


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("hotel")
    for name, rooms in (("hotel", ROOMS), ("large", MORE_ROOMS)):
        (made / f"{name}.yaml").write_text(hotel(rooms), encoding="utf-8")
    return made


@pytest.mark.usefixtures("interruptible")
@pytest.mark.parametrize(("seen", "line"), COMMANDS, ids=[line.split()[0] for _, line in COMMANDS])
def test_interrupted_command_ends_with_a_sentence_and_writes_nothing_by_halves(
    folder: Path, seen: bytes, line: str
) -> None:
    before = sorted(folder.iterdir())
    keeper, terminal = pty.openpty()
    command = [sys.executable, "-m", "plumbnet", *line.split()]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=terminal, cwd=folder) as process:  # noqa: S603  # ours
        os.close(terminal)
        told = _read_until(keeper, seen)
        process.send_signal(signal.SIGINT)
        told += _read_until(keeper, b"")
        assert process.stdout is not None
        written = process.stdout.read()
        assert process.wait(PATIENCE_S) == STATUS
    os.close(keeper)
    assert told.count(b"interrupted") == 1
    assert b"Traceback" not in told + written
    assert sorted(folder.iterdir()) == before


def test_words_say_that_it_ended_early() -> None:
    assert "interrupted" in INTERRUPTED_WORDS


def _read_until(keeper: int, seen: bytes) -> bytes:
    """What is written to a terminal until some words are, or, without words, until nobody writes to it any more."""
    read = b""
    while not (seen and seen in read):
        ready, _, _ = select.select([keeper], [], [], PATIENCE_S)
        assert ready, read
        try:
            piece = os.read(keeper, 65_536)
        except OSError:  # on Linux the end of a terminal is an error
            break
        if not piece:
            break
        read += piece
    assert seen in read, read
    return read
