"""A stream that is closed, full, or read no further: no traceback, and a status that means what it says."""

import errno
import subprocess
import sys
from pathlib import Path

import pytest

from plumbnet.cli.ending.streams import silence

SYSTEMS = Path(__file__).parents[3] / "systems"
OPEN, TRAPPED = SYSTEMS / "open-house.yaml", SYSTEMS / "house-with-check.yaml"
FULL = "standard output cannot be written: no space left on device\n"

pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="has the devices and the shell that are meant")


def shell(line: str, *words: str | Path) -> tuple[int, str]:
    """The status of a line in which `$0` is the program, and what was said on standard error."""
    call = ["bash", "-o", "pipefail", "-c", line.replace("$0", f"{sys.executable} -m plumbnet"), "-", *map(str, words)]
    done = subprocess.run(call, capture_output=True, text=True, timeout=60, check=False)  # noqa: S603  own words
    return done.returncode, done.stderr


@pytest.mark.parametrize("words", ["--help", "kinds", "check {0}", "check --format json {0}", "size {0}"])
def test_full_device_is_said_in_a_sentence(words: str) -> None:
    assert shell(f"$0 {words.format(OPEN)} > /dev/full") == (2, FULL)


@pytest.mark.parametrize(("layout", "status"), [(OPEN, 0), (TRAPPED, 1)])
@pytest.mark.parametrize("ending", [">&-", "| head -0", ">&- <&- 2>&-", ""])
def test_status_is_by_what_was_found_though_nobody_reads_it(layout: Path, status: int, ending: str) -> None:
    assert shell(f"$0 check $1 {ending}", layout) == (status, "")


def test_reader_that_ends_early_ends_nothing() -> None:
    everything = " ".join(map(str, sorted(SYSTEMS.glob("*h*.yaml"))))
    assert shell(f"$0 check --format json {everything} | head -1 > /dev/null") == (1, "")
    assert shell("$0 kinds | head -1 > /dev/null") == (0, "")


def test_closed_standard_input_holds_no_layout() -> None:
    assert shell("$0 check - <&-") == (2, "standard input: there is nothing in this file\n")


def test_words_that_cannot_be_said_at_all_leave_the_status() -> None:
    assert shell("$0 check no-such-file.yaml 2> /dev/full") == (2, "")
    assert shell("$0 check $1 > /dev/full 2> /dev/full", OPEN) == (2, "")


def test_only_a_reader_that_has_gone_is_passed_over_in_silence() -> None:
    assert not silence(OSError(errno.ENOSPC, "No space left on device"))
