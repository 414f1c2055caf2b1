"""How far a long search is, and that something is at work at all, shown on a terminal."""

import sys
import threading
import time
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import TypeVar

import typer

Item = TypeVar("Item")
_SILENT_S = 0.8
"""Seconds after which something is shown, and how often it is shown anew."""
_DOTS = 9
_WIDTH = 40


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


@contextmanager
def at_work(doing: str) -> Iterator[None]:
    """Show on a terminal what is done, and that it goes on, once it takes nearly a second; nothing elsewhere.

    The line is gone when the work ends, so that what is written then stands by itself. Nothing is read meanwhile.
    """
    if not sys.stderr.isatty():
        yield
        return
    done = threading.Event()
    teller = threading.Thread(target=_tell, args=(doing, done), daemon=True)
    teller.start()
    try:
        yield
    finally:
        done.set()
        teller.join()


def _tell(doing: str, done: threading.Event) -> None:
    """Tell what is done until it is, on one line; the sooner, the longer nothing has been told."""
    shown = ""
    while not done.wait(max(0.0, _TOLD.at_s + _SILENT_S - time.monotonic())):
        shown = f"{doing} {'.' * (len(shown.removeprefix(doing)) % _DOTS + 1)}"
        _over(shown)
        _TOLD.at_s = time.monotonic()
    if shown:
        _over("")
        _TOLD.at_s = time.monotonic()


@dataclass
class _Told:
    """When something was told last, or else the program began, by a clock that only this line heeds."""

    at_s: float


_TOLD = _Told(time.monotonic())


def _over(words: str) -> None:
    """Write over the line that stands there."""
    try:
        sys.stderr.write(f"\r{words.ljust(_WIDTH)}\r{words}")
        sys.stderr.flush()
    except OSError:  # a terminal that is gone is told nothing
        return


def at_work_on(made: Iterable[Item], doing: str) -> Iterator[Item]:
    """What is made, one by one; while each is made that is shown on a terminal."""
    left = iter(made)
    while True:
        with at_work(doing):
            try:
                item = next(left)
            except StopIteration:
                return
        yield item
