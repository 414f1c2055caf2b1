"""How far a long search is, shown on a terminal."""

import sys
from collections.abc import Iterable, Iterator
from typing import TypeVar

import typer

Item = TypeVar("Item")


def watched(tried: Iterable[Item], count: int) -> Iterator[Item]:
    """What is tried, of which there are at most `count`, with a bar on a terminal; nothing is shown elsewhere."""
    if not sys.stderr.isatty():
        yield from tried
        return
    with typer.progressbar(tried, length=count, label="tried", file=sys.stderr) as bar:
        yield from bar
