"""A network that answers what verdicts rest on and withholds the rest, which costs most."""

from dataclasses import dataclass
from typing import ClassVar, NoReturn, TypeVar

from plumbnet.layout.model import Role, System
from plumbnet.network import Network, network_of
from plumbnet.network.outlets import Closings, Rung
from plumbnet.network.piping import Node

Fact = TypeVar("Fact")


class NotTold(Exception):
    """What is asked was withheld: it can be told only from the whole, or was left out to save work."""


class Withheld(tuple[Fact, ...]):
    """Facts that were not looked for; whoever asks for them is told so, and nothing false.

    >>> list(Withheld())
    Traceback (most recent call last):
    plumbnet.study.contingency.verdict_only.NotTold
    """

    __slots__ = ()

    def _refuse(self, *_: object) -> NoReturn:
        raise NotTold

    __iter__ = __len__ = __contains__ = __getitem__ = __bool__ = _refuse


@dataclass
class VerdictOnly(Network):
    """A network without the ways to safety relief valves, and without the valves whose closing would close a heater.

    Nobody reads what a heater on it needs, or what comes of it left as it is: these are not worked out.
    """

    is_whole: ClassVar[bool] = False

    def way(self, start: Node, rung: Rung) -> tuple[str, ...]:
        """The way to an outlet; that to a safety relief valve is withheld."""
        return Withheld() if rung.role is Role.SAFETY_RELIEF else super().way(start, rung)

    def closings(self, node: Node, bound_pa: float) -> Closings:  # noqa: ARG002  as the network has it
        """Withheld."""
        return Closings(Withheld())


def hasty_network_of(system: System) -> VerdictOnly:
    """The network of a system, in haste."""
    whole = network_of(system)
    return VerdictOnly(whole.piping, whole.zoning, whole.standing, whole.openings, whole.circulation, whole.heated)
