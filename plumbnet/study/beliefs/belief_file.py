"""The beliefs and misreadings that come with the program, and the layout that refutes each belief."""

from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from typing import Final

from plumbnet.layout.file import read_declared
from plumbnet.layout.model import Declared
from plumbnet.layout.yaml import shipped_in

_FILE: Final = "beliefs.yaml"


class Belief(Declared):
    """What somebody holds, or how a layout was misread; words in braces are filled in from an analysis."""

    called = "a belief"

    holds: str
    """What is held, in a sentence of its own."""
    thought: str
    """What was thought by who answered so, addressed to him; the sentence goes on."""
    meets: str
    """What the water meets; ends that sentence."""
    look: str
    """One thing to look at for oneself, in a sentence."""


class _BeliefFile(Declared):
    """The whole file: entries by their names."""

    called = "a file of beliefs"

    beliefs: dict[str, Belief]
    """Beliefs that people hold of any layout; a layout of the same name refutes each."""
    misreadings: dict[str, Belief]
    """What was overlooked or mistaken in the layout at hand."""


def known_beliefs() -> Mapping[str, Belief]:
    """The beliefs by name, in their order."""
    return _read().beliefs


def known_misreadings() -> Mapping[str, Belief]:
    """The misreadings by name, in their order."""
    return _read().misreadings


def belief_layout(name: str) -> bytes:
    """The layout on which a belief is refuted, as a file. Raises KeyError where there is no such belief."""
    return shipped_in("beliefs").read(name)


@cache
def _read() -> _BeliefFile:
    """The file. Raises LayoutError where it is not as it should be, with the place."""
    return read_declared((files("plumbnet") / "data" / _FILE).read_bytes(), _BeliefFile, file=_FILE).form
