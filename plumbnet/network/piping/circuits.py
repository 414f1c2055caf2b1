"""Piping to circuits: which water people draw, and which goes round to carry heat and is drawn by nobody."""

import math
from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from itertools import chain

from plumbnet.layout.model import Circuit, End
from plumbnet.network.graphs import all_reached, by_start, groups
from plumbnet.network.piping.piping import Gate, Node, Piping

_Body = int
"""Water that communicates through pipes and open valves, numbered by its first node; a check parts it, stuck or not."""


@dataclass(frozen=True)
class Circuits:
    """The circuits of a system, searched for when they are first asked for; linear in its parts and pipes.

    Water is that of a heating circuit where a boiler, a collector, an emitter or the heating side of an exchanger
    stands in it, or where such water can push into it, and no tap can be reached from it. To it belongs the piece of
    pipe by which it is filled, up to the last check or backflow preventer before it. All else is drinking water. A
    check that is stuck open parts two circuits as it did, a valve parts what it shuts off.
    """

    piping: Piping

    def at(self, node: Node) -> Circuit:
        """The circuit of the water at a node."""
        return Circuit.HEATING if self._body_of[node] in self._heating else Circuit.WATER

    def of(self, name: str) -> Circuit:
        """The circuit to which a part belongs, drinking water for a name that is none.

        A heater belongs to the water that it warms. What stands between the two belongs to the drinking water that it
        guards, save a reducer: that belongs to the circuit whose pressure it sets.
        """
        part = self.piping.system.parts.get(name)
        if part is None:
            return Circuit.WATER
        source = part.heat()
        if source is not None:
            return self.at(self.piping.node_of[End(name, source.inlet)])
        found = {self.at(node) for node in self.piping.nodes_of(name)}
        if len(found) == 1:
            return found.pop()
        return Circuit.HEATING if self._only_reduces(name) else Circuit.WATER

    @property
    def parts(self) -> Mapping[Circuit, tuple[str, ...]]:
        """The parts of each circuit that there is, in the order of the file."""
        found: dict[Circuit, list[str]] = {}
        for name in self.piping.system.parts:
            found.setdefault(self.of(name), []).append(name)
        return {circuit: tuple(found[circuit]) for circuit in Circuit if circuit in found}

    def _only_reduces(self, name: str) -> bool:
        """Whether all that leads through a part from drinking water to a heating circuit are reducers."""
        ways = [gate for gate in self.piping.gates if gate.part == name and self.at(gate.start) != self.at(gate.end)]
        return bool(ways) and all(_reduces(gate) for gate in ways)

    @cached_property
    def _body_of(self) -> list[_Body]:
        doors = ((door.start, door.end) for door in self.piping.doors)
        pairs = chain(self.piping.pipes, doors, (pair for pair in self.piping.inner if not self._is_stuck(pair)))
        return groups(len(self.piping.ports), pairs)[0]

    def _is_stuck(self, pair: tuple[Node, Node]) -> bool:
        """Whether water passes freely between two nodes only because a check has failed."""
        return self.piping.system.parts[self.piping.ports[pair[0]].part].is_check

    @cached_property
    def _heating(self) -> frozenset[_Body]:
        drawn = _reached(self._drawn(), ((end, start) for start, end in self._onward()))
        heating = _reached((body for body in self._carrying() if body not in drawn), self._onward())
        kept_out = drawn | {self._body_of[node] for node in self._sources_and_stores()}
        return frozenset(_reached(heating, self._filling(), without=kept_out - heating))

    def _onward(self) -> Iterator[tuple[_Body, _Body]]:
        """From body to body in the direction in which water passes, not back through a bypass."""
        for gate in self.piping.gates:
            start, end = self._body_of[gate.start], self._body_of[gate.end]
            if gate.forward is not None:
                yield start, end
            if gate.is_joint:
                yield end, start
        for start_node, end_node in filter(self._is_stuck, self.piping.inner):
            yield self._body_of[start_node], self._body_of[end_node]

    def _filling(self) -> Iterator[tuple[_Body, _Body]]:
        """Against that direction, through what is no check; through shut valves either way."""
        for gate in self.piping.gates:
            start, end = self._body_of[gate.start], self._body_of[gate.end]
            if gate.is_shut or gate.rise_pa > 0.0 or _reduces(gate):
                yield end, start
            if gate.is_shut:
                yield start, end

    def _drawn(self) -> Iterator[_Body]:
        for name, part in self.piping.system.parts.items():
            yield from (self._body_of[self.piping.node_of[End(name, port)]] for port in part.draws_at())

    def _carrying(self) -> Iterator[_Body]:
        for name, part in self.piping.system.parts.items():
            yield from (self._body_of[self.piping.node_of[End(name, port)]] for port in part.carries_heat_at())

    def _sources_and_stores(self) -> Iterator[Node]:
        """Where a supply or a heater stands: no mere piece of pipe."""
        for name, part in self.piping.system.parts.items():
            source, heat = part.source(), part.heat()
            if source is not None:
                yield self.piping.node_of[End(name, source.port)]
            if heat is not None:
                yield self.piping.node_of[End(name, heat.inlet)]


def _reduces(gate: Gate) -> bool:
    return gate.forward is not None and gate.forward.below_pa < math.inf


def _reached(
    starts: Iterable[_Body], steps: Iterable[tuple[_Body, _Body]], *, without: Collection[_Body] = ()
) -> set[_Body]:
    """All that steps lead to from some bodies, those among them, without setting foot in others."""
    return all_reached(starts, by_start(step for step in steps if step[1] not in without))
