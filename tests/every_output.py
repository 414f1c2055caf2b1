"""Prints a digest of everything that the program shows, one line a command: the same whatever process made it.

    python tests/every_output.py FOLDER

FOLDER takes what commands write; it holds the layouts that they are asked about.
"""

import hashlib
import os
import sys
from collections.abc import Iterator
from pathlib import Path

from every_command import app
from typer.testing import CliRunner

SHOWN = (
    "check school.yaml",
    "check school.yaml --format json",
    "check school.yaml --format sarif",
    "check school.yaml --format csv",
    "check faulty.yaml",
    "trace school.yaml",
    "remedies school.yaml",
    "size bakery.yaml --format json",
    "sweep bakery.yaml",
    "review bakery.yaml",
    "exercise --seed 8 --level 4 --about trapped-heaters --variants 1 --key",
)
WRITTEN = (
    "draw bakery.yaml -o bakery.pdf",
    "draw bakery.yaml -o bakery.png",
    "draw tower.yaml -o tower.svg",
    "chart bakery.yaml --of ladder -o ladder.svg",
)


def digests() -> Iterator[str]:
    """A line for each command: its words, how it ended, the digest of what it said or wrote in this folder."""
    for words in (*SHOWN, *WRITTEN):
        result = CliRunner().invoke(app, words.split())
        told = Path(words.split()[-1]).read_bytes() if words in WRITTEN else result.output.encode()
        yield f"{words} {result.exit_code} {hashlib.sha256(told).hexdigest()} {len(told)}"


if __name__ == "__main__":
    os.chdir(sys.argv[1])
    print(*digests(), sep="\n")  # noqa: T201  what another process reads
