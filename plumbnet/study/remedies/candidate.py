"""What may cure a heater, before it is tried: changes, the work they ask for, and one sentence for the installer."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from enum import IntEnum

from plumbnet.layout.model import Change
from plumbnet.rules.facts import HeaterFacts
from plumbnet.study.remedies.remedy_context import RemedyContext


class Effort(IntEnum):
    """What a remedy asks of the installer, least first.

    Source: common practice; what is turned or pumped up before what is bought, a tank before a device, and several
    jobs at once last.
    """

    RECHARGE = 1
    SET_REDUCER = 2
    OPEN_VALVE = 3
    SHUT_FILLING_LOOP = 4
    RENEW_REDUCER = 5
    EXCHANGE_TANK = 6
    ENLARGE = 7
    MOVE = 8
    ADD = 9
    EXCHANGE_DEVICE = 10
    REMOVE_CHECK = 11
    LOWER_PRESSURE = 12
    PAIR = 13


@dataclass(frozen=True, slots=True)
class Candidate:
    """Changes that may cure a heater.

    `title` is what is done, as a sentence without its full stop; it begins in lower case. Of candidates with one
    `key` the first that cures is enough: they are the same work in several sizes or places.
    """

    effort: Effort
    key: str
    title: str
    changes: tuple[Change, ...]
    why: str = ""
    """Why there, as what follows "it is"; of a change that has no place of its own nothing."""
    size_m3: float = 0.0
    """Size of the tanks that have to be bought, together."""
    keeps_check: bool = False
    """It may not leave the heater open, nor with no check of any sort between it and the street."""
    for_all: tuple[str, ...] = ()
    """Other heaters that it must cure as well."""

    def behind(self, title: str, changes: tuple[Change, ...]) -> "Candidate":
        """The same once something else is done, whose title and changes these are."""
        return replace(self, title=f"{title}; then {self.title}", changes=(*changes, *self.changes))

    def along_with(self, title: str, changes: tuple[Change, ...]) -> "Candidate":
        """The same with something else done by the way, whose title and changes these are."""
        return replace(self, title=f"{self.title}, and {title}", changes=(*self.changes, *changes))


RemedyType = Callable[[RemedyContext, HeaterFacts], Iterator[Candidate]]
"""A sort of remedy: called with a layout and a heater in trouble there, it yields what may cure it, best first."""
