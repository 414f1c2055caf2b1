"""What the program prints as it is kept in files, so that they change only where something is said in other words."""

import re
import shlex
from pathlib import Path

from every_command import app
from typer.testing import CliRunner

from plumbnet.rules.rule_profile import profile, profile_names

IN_PLACE_OF_A_HASH = "(hash of the profile)"
"""Every clause changes the hash of its profile; tests/report/output/test_imprint.py holds reports to the real ones."""

PROMPT = "$ plumbnet "
"""What the lines of a record begin with that are commands; what follows up to the next is what they print."""

MANY_DIGITS = re.compile(r"\b\d+\.\d{6,}(?:e[+-]\d+)?\b")
"""Numbers as programs are handed them: the last digits are those of the machine and of the libraries."""


def as_kept(printed: str) -> str:
    """A fixed word in place of the hash of each profile that comes with the program."""
    for name in profile_names():
        printed = printed.replace(profile(name).sha256, IN_PLACE_OF_A_HASH)
    return printed


def as_run(record: str) -> str:
    """A record of commands as it comes out now: each with what it prints, and the exit status where that is not 0."""
    return "\n".join(_run(line) for line in record.splitlines() if line.startswith(PROMPT))


def _run(line: str) -> str:
    """A command with its output; `< file` behind it gives it something to read."""
    command, _, given = line.removeprefix(PROMPT).partition(" < ")
    read = Path(given).read_text(encoding="utf-8") if given else None
    result = CliRunner().invoke(app, shlex.split(command), input=read)
    status = f"(exit status {result.exit_code})\n" if result.exit_code else ""
    return f"{line}\n{_shortened(as_kept(result.output))}{status}"


def _shortened(printed: str) -> str:
    return MANY_DIGITS.sub(lambda found: f"{float(found[0]):.6g}", printed)
