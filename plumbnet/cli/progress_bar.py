"""How far a long search is, shown on a terminal."""

import sys
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from typing import TypeVar

import typer

Item = TypeVar("Item")


def watched(tried: Iterable[Item], count: int, label: str = "tried") -> Iterator[Item]:
    """What is tried, of which there are at most `count`, with a bar on a terminal; nothing is shown elsewhere."""
    with counted_on(count, label) as one_more:
        for item in tried:
            yield item
            one_more()


@contextmanager
def counted_on(count: int, label: str) -> Iterator[Callable[[], None]]:
    """What is to be called for each of `count` that is done; it moves a bar on a terminal, and nothing elsewhere."""
    if not sys.stderr.isatty():
        yield lambda: None
        return
    with typer.progressbar(length=count, label=label, file=sys.stderr) as bar:
        yield lambda: bar.update(1)
