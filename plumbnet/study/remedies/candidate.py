"""What may cure a heater, before it is tried: changes, the work they ask for, and one sentence for the installer."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from enum import IntEnum

from plumbnet.layout.model import Change
from plumbnet.rules.facts import HeaterFacts
from plumbnet.study.remedies.remedy_context import RemedyContext


class Effort(IntEnum):
    """What a remedy asks of the installer, least first.

    Source: common practice; a turn of a handle before a tool, a tank before a device, and the pressure of the
    whole building last.
    """

    OPEN_VALVE = 1
    SHUT_FILLING_LOOP = 2
    RECHARGE = 3
    EXCHANGE_TANK = 4
    ENLARGE = 5
    MOVE = 6
    ADD = 7
    EXCHANGE_DEVICE = 8
    REMOVE_CHECK = 9
    LOWER_PRESSURE = 10


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
    keeps_check: bool = False
    """It may not leave the heater open, nor with no check of any sort between it and the street."""


RemedyType = Callable[[RemedyContext, HeaterFacts], Iterator[Candidate]]
"""A sort of remedy: called with a layout and a heater in trouble there, it yields what may cure it, best first."""
