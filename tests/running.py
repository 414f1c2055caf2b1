"""The program called from tests, in this process or one of its own, and small layouts to give it."""

import json
import os
import pty
import subprocess
import sys
import time
from collections.abc import Callable
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
