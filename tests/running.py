"""The program called from tests, in this process or one of its own, and small layouts to give it."""

import json
import os
import pty
import subprocess
import sys
import time
from collections.abc import Callable, Sequence
from typing import Any

from conftest import layout
from every_command import app
from typer.testing import CliRunner, Result

OPEN = layout("street -> valve -> heater -> tap.hot", heater="relief: {pressure: 150 psi, temperature: 210 degF}")
TRAPPED = layout("street -> cv -> heater -> tap.hot", heater="relief: {pressure: 150 psi, temperature: 210 degF}")
FAULTY = "plumbnet: 1\nparts: {m: {kind: mian}, t: tee}\nruns: [m -> t]\n"
ONLY_PIPE = "plumbnet: 1\nparts: {m: {kind: main, pressure: 60}, t: tee}\nruns: [m -> t]\n"
HOSTILE = 'title: "\\e[2J\\u202eevil\\a"\n'
CONTROL = ("\x1b", "\x07", "\u202e", "\x9b")

Write = Callable[..., str]


def run(*arguments: str, given: str = "", **environment: str) -> Result:
    return CliRunner().invoke(app, arguments, input=given, env=environment)


def real(*arguments: str, given: bytes = b"", **environment: str) -> "subprocess.CompletedProcess[bytes]":
    """The program in a process of its own."""
    command = [sys.executable, "-m", "plumbnet", *arguments]
    environment = {**os.environ, **environment}
    return subprocess.run(command, input=given, capture_output=True, env=environment, check=False)  # noqa: S603  # ours


def document(result: Result) -> dict[str, Any]:
    read: dict[str, Any] = json.loads(result.stdout)
    return read


IN_TURN = """
import io, json, sys
from plumbnet.cli.run import run_asked

def called(arguments):
    begun = sys.stdout, sys.stderr
    sys.stdout, sys.stderr = (io.TextIOWrapper(io.BytesIO(), one.encoding, one.errors) for one in begun)
    sys.argv = ["plumbnet", *arguments]
    try:
        run_asked()
    except SystemExit as ended:
        status = ended.code
    finally:
        (sys.stdout, sys.stderr), made = begun, (sys.stdout, sys.stderr)
    for one in made:
        one.flush()
    return status, *(one.buffer.getvalue().decode("latin-1") for one in made)

done = [called(arguments) for arguments in json.loads(sys.argv[1])]
print(json.dumps([done, sorted(sys.modules)]))
"""


def in_turn(
    *calls: Sequence[str], **environment: str
) -> "tuple[list[subprocess.CompletedProcess[bytes]], frozenset[str]]":
    """What the program answers as it is called so and so, all in one process of its own, and the modules it imported.

    To start one takes longer than most commands do; `real` is for what a process is asked that no other call was.
    """
    command = [sys.executable, "-c", IN_TURN, json.dumps(calls)]
    environment = {**os.environ, **environment}
    told = subprocess.run(command, capture_output=True, env=environment, check=True)  # noqa: S603  # ours
    done, modules = json.loads(told.stdout)
    ended = [
        subprocess.CompletedProcess(call, status, *(words.encode("latin-1") for words in streams))
        for call, (status, *streams) in zip(calls, done, strict=True)
    ]
    return ended, frozenset(modules)


def on_a_terminal(*arguments: str, status: int = 1, errors: bool = False, **environment: str) -> bytes:
    """What the program writes to a terminal; or its errors alone, with its output going elsewhere."""
    keeper, terminal = pty.openpty()
    command = [sys.executable, "-m", "plumbnet", *arguments]
    plain = {key: value for key, value in os.environ.items() if key != "NO_COLOR"}
    out, told = (subprocess.DEVNULL, terminal) if errors else (terminal, None)
    with subprocess.Popen(command, stdout=out, stderr=told, env={**plain, **environment}) as process:  # noqa: S603  # ours
        os.close(terminal)
        written = _read_to_the_end(keeper)
        assert process.wait() == status
    os.close(keeper)
    return written


def _read_to_the_end(keeper: int) -> bytes:
    written = b""
    while True:
        try:
            piece = os.read(keeper, 65_536)
        except OSError:  # the other end is closed
            return written
        if not piece:
            return written
        written += piece


def ended(group: int) -> bool:
    """Whether every process of a group ends within ten seconds."""
    for _ in range(100):
        try:
            os.killpg(group, 0)
        except ProcessLookupError:
            return True
        time.sleep(0.1)
    return False
