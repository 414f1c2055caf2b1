import subprocess
import sys

import pytest
from running import TRAPPED, Write, in_turn, on_a_terminal, run


def test_text_is_plain_where_no_terminal_listens(write: Write) -> None:
    assert "\x1b" not in run("check", write("trapped.yaml", TRAPPED)).stdout


def test_colour_is_for_a_terminal_that_does_not_decline_it(write: Write) -> None:
    write("trapped.yaml", TRAPPED)
    assert b"\x1b[31mTRAPPED\x1b[0m" in on_a_terminal("check", "trapped.yaml")
    assert b"\x1b" not in on_a_terminal("check", "trapped.yaml", NO_COLOR="1")


@pytest.mark.parametrize("encoding", ["ascii", "cp1252"])
def test_any_title_can_be_written_in_any_alphabet(write: Write, encoding: str) -> None:
    named = TRAPPED.replace("heater:", "heizung北:").replace("-> heater", "-> heizung北")
    write("f.yaml", f"title: Café 北 → 140 °F\n{named}")
    calls = [*([command, "f.yaml"] for command in ("check", "trace", "remedies")), ["check", "none北.yaml"]]
    (*shown, missing), _ = in_turn(*calls, PYTHONIOENCODING=encoding)
    assert [(one.returncode, one.stderr) for one in shown] == [(1, b"")] * 3
    assert all(b"heizung" in one.stdout for one in shown)
    assert (missing.returncode, b"Traceback" in missing.stderr) == (2, False)


def test_reader_that_goes_away_gets_no_traceback(write: Write) -> None:
    write("f.yaml", TRAPPED)
    command = [sys.executable, "-m", "plumbnet", "check", *["f.yaml"] * 40]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as process:  # noqa: S603  # ours
        assert process.stdout is not None
        assert process.stderr is not None
        assert process.stdout.readline() == b"f.yaml\n"
        process.stdout.close()
        assert process.stderr.read() == b""
        assert process.wait() != 0
