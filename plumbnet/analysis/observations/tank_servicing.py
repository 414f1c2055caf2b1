"""Expansion tanks: from where water would come to them if they were let down with every valve shut."""

import math
from collections import deque
from collections.abc import Callable, Iterable, Iterator
from collections.abc import Set as AbstractSet
from dataclasses import dataclass
from functools import cached_property
from itertools import permutations

from plumbnet.layout.model import End, Part
from plumbnet.network import Network
from plumbnet.network.piping import Node, Zone
from plumbnet.rules.facts import TankServiceFacts


def tank_service(network: Network) -> Iterator[TankServiceFacts]:
    """Every expansion tank, in the order of the file. Linear in the piping for each."""
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
        beyond = set(self.network.reach((zone,), math.inf))
        carries_heat = beyond.isdisjoint(self._drawn) and not beyond.isdisjoint(self._heating)
        met, held_to = self._upstream(node, self._givers if carries_heat else self._supplies)
        return TankServiceFacts(
            name=name,
            is_wet=self.network.standing.static_pa[zone] is not None,
            carries_heat=carries_heat,
            held_to=held_to,
            are_valves_drawn=not beyond.isdisjoint(self._valve_zones) if carries_heat else self._has_stop(met),
        )

    def _upstream(self, start: Node, givers: AbstractSet[Node]) -> tuple[AbstractSet[Node], tuple[str, ...]]:
        """From where water comes to a node while every valve is shut, up to the nearest that give it, by name."""
        met, queue, told = {start}, deque([start]), set[str]()
        while queue:
            node = queue.popleft()
            if node in givers:
                told.add(self.network.piping.ports[node].part)
                continue
            for before in self._before.get(node, ()):
                if before not in met:
                    met.add(before)
                    queue.append(before)
        return met, tuple(sorted(told))

    def _has_stop(self, upstream: AbstractSet[Node]) -> bool:
        """Whether a valve is drawn between a supply and a place, given all from where water comes to it."""
        ends = (tuple(self.network.piping.nodes_of(name)) for name in self._valves)
        return any(near in self._supplied and far in upstream for pair in ends for near, far in permutations(pair, 2))

    @cached_property
    def _supplied(self) -> AbstractSet[Node]:
        """Nodes to which water comes from a supply while every valve is shut."""
        after: dict[Node, list[Node]] = {}
        for node, ways in self._before.items():
            for before in ways:
                after.setdefault(before, []).append(node)
        found = set(self._supplies)
        queue = deque(sorted(found))
        while queue:
            for node in after.get(queue.popleft(), ()):
                if node not in found:
                    found.add(node)
                    queue.append(node)
        return found

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
    def _before(self) -> dict[Node, list[Node]]:
        """By each node those from which water comes to it through no valve."""
        found: dict[Node, list[Node]] = {}
        for start, end in self._ways():
            found.setdefault(end, []).append(start)
        return found

    def _ways(self) -> Iterator[tuple[Node, Node]]:
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
