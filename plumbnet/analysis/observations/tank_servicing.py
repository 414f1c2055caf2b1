"""Expansion tanks: from where water would come to them if they were let down with every valve shut."""

import math
from collections.abc import Callable, Iterable, Iterator
from collections.abc import Set as AbstractSet
from dataclasses import dataclass
from functools import cached_property
from itertools import permutations
from typing import TypeAlias

from plumbnet.layout.model import End, Part
from plumbnet.network import Network
from plumbnet.network.graphs import by_start, nearest_first
from plumbnet.network.piping import Node, Zone
from plumbnet.rules.facts import TankServiceFacts

MOST_FOLLOWED = 8
"""Supplies of which each is followed down to all tanks; where there are more, the way is searched up from each tank."""
_Ways: TypeAlias = dict[Node, list[Node]]


def tank_service(network: Network) -> Iterator[TankServiceFacts]:
    """Every expansion tank, in the order of the file.

    Linear in the piping for each supply, or where these are many for each tank, and for each tank in the circuit that
    carries heat in which it stands.
    """
    search = _Service(network)
    for name, part in network.piping.system.parts.items():
        if part.cushion() is not None:
            yield search.facts(name)


@dataclass
class _Service:
    network: Network

    def facts(self, name: str) -> TankServiceFacts:
        """Of one tank."""
        node = next(self.network.piping.nodes_of(name))
        zone = self._zone(node)
        beyond = self._beyond(zone)
        held_to = self._let_down_with(node) if beyond else self._fed_by(node)
        return TankServiceFacts(
            name=name,
            is_wet=self.network.standing.static_pa[zone] is not None,
            carries_heat=bool(beyond),
            held_to=held_to,
            are_valves_drawn=not beyond.isdisjoint(self._valve_zones) if beyond else node in self._behind_stops,
        )

    def _beyond(self, zone: Zone) -> AbstractSet[Zone]:
        """The zones of a circuit that carries heat, seen from one of them; none where people draw its water."""
        if not self._heating:
            return frozenset()
        beyond = frozenset(self.network.reach((zone,), math.inf))
        return beyond if beyond.isdisjoint(self._drawn) and not beyond.isdisjoint(self._heating) else frozenset()

    def _fed_by(self, node: Node) -> tuple[str, ...]:
        """Supplies from which water comes to a node while every valve is shut, by name."""
        if len(self._supplies) > MOST_FOLLOWED:
            met = _reached([node], self._before) & self._supplies
            return tuple(sorted(self.network.piping.ports[each].part for each in met))
        return tuple(sorted(name for name, supplied in self._supplied.items() if node in supplied))

    def _let_down_with(self, start: Node) -> tuple[str, ...]:
        """The nearest supplies, heaters and emitters from which water comes to a node while every valve is shut."""
        met = _reached([start], self._before, up_to=self._givers)
        return tuple(sorted({self.network.piping.ports[node].part for node in met & self._givers}))

    @cached_property
    def _supplied(self) -> dict[str, AbstractSet[Node]]:
        """By each supply the nodes to which its water comes while every valve is shut."""
        ports = self.network.piping.ports
        return {ports[node].part: _reached([node], self._after) for node in sorted(self._supplies)}

    @cached_property
    def _behind_stops(self) -> AbstractSet[Node]:
        """Nodes to which water would come from a supply through one valve."""
        supplied = _reached(self._supplies, self._after)
        ends = (tuple(self.network.piping.nodes_of(name)) for name in self._valves)
        far = [end for pair in ends for near, end in permutations(pair, 2) if near in supplied]
        return _reached(far, self._after)

    @cached_property
    def _supplies(self) -> AbstractSet[Node]:
        """Where supplies that no switch stops give water."""
        piping = self.network.piping
        sources = ((name, part.source()) for name, part in piping.system.parts.items())
        return {
            piping.node_of[End(name, source.port)]
            for name, source in sources
            if source is not None and source.feeds_on and source.cut_in_pa >= source.pressure_pa
        }

    @cached_property
    def _givers(self) -> AbstractSet[Node]:
        """These, and where heaters and emitters hold the water of a circuit that carries heat."""
        piping = self.network.piping
        stores = {node for heated in self.network.heated for node in (heated.inlet, heated.outlet)}
        cooling = {node for name, part in piping.system.parts.items() if part.cools for node in piping.nodes_of(name)}
        return self._supplies | stores | cooling

    @cached_property
    def _after(self) -> _Ways:
        """By each node those to which water comes from it through no valve."""
        return by_start(self._steps())

    @cached_property
    def _before(self) -> _Ways:
        """By each node those from which water comes to it through no valve."""
        return by_start((end, start) for start, end in self._steps())

    def _steps(self) -> Iterator[tuple[Node, Node]]:
        piping = self.network.piping
        doors = ((door.start, door.end) for door in piping.doors)
        for start, end in (*piping.pipes, *self._valveless((*piping.inner, *doors))):
            yield from ((start, end), (end, start))
        for gate in piping.gates:
            if gate.forward is not None:
                yield gate.start, gate.end
            if gate.is_joint:
                yield gate.end, gate.start

    def _valveless(self, pairs: Iterable[tuple[Node, Node]]) -> Iterator[tuple[Node, Node]]:
        piping = self.network.piping
        return (pair for pair in pairs if not piping.system.parts[piping.ports[pair[0]].part].can_be_shut())

    @cached_property
    def _valves(self) -> tuple[str, ...]:
        return tuple(name for name, part in self.network.piping.system.parts.items() if part.can_be_shut())

    @cached_property
    def _valve_zones(self) -> AbstractSet[Zone]:
        return {self._zone(node) for name in self._valves for node in self.network.piping.nodes_of(name)}

    @cached_property
    def _drawn(self) -> AbstractSet[Zone]:
        """Zones in which people draw water."""
        return {self._zone(node) for node in self._nodes(lambda part: part.draws_at())}

    @cached_property
    def _heating(self) -> AbstractSet[Zone]:
        """Zones in which water stands that is there to carry heat."""
        return {self._zone(node) for node in self._nodes(lambda part: part.carries_heat_at())}

    def _zone(self, node: Node) -> Zone:
        return self.network.zoning.zone_of[node]

    def _nodes(self, ports: Callable[[Part], Iterable[str]]) -> Iterator[Node]:
        piping = self.network.piping
        for name, part in piping.system.parts.items():
            yield from (piping.node_of[End(name, port)] for port in ports(part))


def _reached(starts: Iterable[Node], ways: _Ways, *, up_to: AbstractSet[Node] = frozenset()) -> AbstractSet[Node]:
    """All nodes that can be come to from some, not past those of `up_to`."""
    return set(nearest_first(starts, lambda node: () if node in up_to else ways.get(node, ())))
