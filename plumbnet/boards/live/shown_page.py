"""What a live board shows of one version of a file: a page, the questions that it asks, and what it hands in."""

from collections.abc import Collection, Mapping
from typing import Protocol

from plumbnet.boards.one_board import Question


class ShownPage(Protocol):
    """A page and what it may ask."""

    @property
    def html(self) -> str:
        """The page that asks."""

    @property
    def questions(self) -> Mapping[str, Question]:
        """Its questions by their names."""

    @property
    def takes(self) -> Mapping[str, Question]:
        """What it may hand in, by the names of that."""

    @property
    def files(self) -> Collection[str]:
        """The files that are shown besides the one that is followed, by their paths."""
