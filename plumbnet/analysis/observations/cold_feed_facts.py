"""A network to the cold feed of each heater: to what it comes before any check."""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import chain

from plumbnet.layout.model import End
from plumbnet.network import Network
from plumbnet.network.loops import HeatedVolume
from plumbnet.network.piping import Gate, Node
from plumbnet.rules.facts import FeedFacts

_Step = tuple[Node, Gate | None]
"""A node to go on to, and the check that stands before it against water from here; None where none does."""


def cold_feeds(network: Network, hot: frozenset[Node]) -> Iterator[FeedFacts]:
    """The feed of every heater, in the order of the file; `hot` is the hot side, which is left out.

    A shut valve, a reducer and a pump without a check are no checks: all that only a check parts is taken for parted.
    Each search ends at the first cold tap or supply.
    """
    feeds = _Feeds(network, hot)
    yield from map(feeds.of, network.heated)


@dataclass(frozen=True)
class _Feeds:
    """The search along cold feeds, which goes through no heater."""

    network: Network
    hot: frozenset[Node]

    def of(self, heated: HeatedVolume) -> FeedFacts:
        """What the feed of one heater comes to: step by step outwards, by name where several stand alike near."""
        checks, fed_by, seen = dict[str, None](), dict[str, None](), {heated.inlet}
        front = [heated.inlet]
        while front:
            ends = self._names(node for node in front if node in self._ends)
            if ends:
                return FeedFacts(heated.name, ends[0], tuple(checks), tuple(fed_by))
            others = (node for node in front if node in self._outlets and node != heated.outlet)
            fed_by.update(dict.fromkeys(self._names(others)))
            steps = [step for node in front for step in self._steps.get(node, ())]
            checks.update(dict.fromkeys(sorted({check.part for _, check in steps if check is not None})))
            beyond = dict.fromkeys(other for other, check in steps if check is None)
            front = [node for node in beyond if node not in seen and node not in self.hot]
            seen.update(front)
        return FeedFacts(heated.name, None, tuple(checks), tuple(fed_by))

    def _names(self, nodes: Iterable[Node]) -> list[str]:
        return sorted({self.network.piping.ports[node].part for node in nodes})

    @cached_property
    def _outlets(self) -> frozenset[Node]:
        return frozenset(heated.outlet for heated in self.network.heated)

    @cached_property
    def _ends(self) -> frozenset[Node]:
        """Cold taps, and supplies that go on feeding."""
        piping, found = self.network.piping, set[Node]()
        for name, part in piping.system.parts.items():
            source = part.source()
            ports = [*part.draws_at(), *([source.port] if source is not None and source.feeds_on else ())]
            found.update(piping.node_of[End(name, port)] for port in ports)
        return frozenset(found - self.hot)

    @cached_property
    def _steps(self) -> dict[Node, list[_Step]]:
        piping, found = self.network.piping, dict[Node, list[_Step]]()
        heaters = {heated.name for heated in self.network.heated}
        within = chain(piping.inner, ((door.start, door.end) for door in piping.doors))
        through = (pair for pair in within if piping.ports[pair[0]].part not in heaters)
        for start, end in chain(piping.pipes, through):
            found.setdefault(start, []).append((end, None))
            found.setdefault(end, []).append((start, None))
        for gate in piping.gates:
            found.setdefault(gate.start, []).append((gate.end, None))
            found.setdefault(gate.end, []).append((gate.start, gate if _is_check(gate) else None))
        return found


def _is_check(gate: Gate) -> bool:
    """Whether water passes one way alone, whatever stands on either side."""
    return gate.forward is not None and gate.backward is None and gate.forward.below_pa == math.inf
