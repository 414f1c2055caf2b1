"""A network to the places at which heating circuits are joined to drinking water, and what stands there."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from heapq import heappop, heappush
from itertools import chain, count

from plumbnet.layout.model import BackflowProtection, Circuit, End, Free, Part
from plumbnet.network import Network
from plumbnet.network.graphs import groups
from plumbnet.network.piping import Node
from plumbnet.rules.facts import FillFacts

_Devices = tuple[str, ...]
"""The backflow preventers on a way, as they are met."""


def fills(network: Network) -> Iterator[FillFacts]:
    """Every part that joins a heating circuit to drinking water, in the order of the file.

    Looked at is what is built, not what stands open: a shut valve joins, a check that is stuck open keeps nothing out.
    Linear for each joint; nothing is searched where no part carries heat.
    """
    if any(part.carries_heat_at() for part in network.piping.system.parts.values()):
        yield from _Joints(network).found()


@dataclass(frozen=True)
class _Joints:
    """The search for joints in a network; water at a node belongs to a heating circuit or is drinking water."""

    network: Network

    def found(self) -> Iterator[FillFacts]:
        """All joints."""
        for name, part in self._parts.items():
            lines = list(self._crossing(name))
            if lines:
                yield from self._joint(name, lines)
            elif self._supplies_freely(name, part):
                yield self._told(name, name, ((),), self.network.piping.node_of[End(name, _port(part))])
            elif self._is_drawn(name, part):
                yield FillFacts(name, name, name, ((),), antifreeze=True, is_drawn=True)

    def _joint(self, name: str, lines: list[tuple[Node, Node]]) -> Iterator[FillFacts]:
        drinking, heating = lines[0]
        if _is_parted(self._parts[name]):
            yield self._told(name, name, (), heating, is_parted=True)
            return
        own = (name,) if self._guards(name) else ()
        ways = tuple(self._ways([node for node, _ in lines], own))
        if ways:
            yield self._told(name, self._leading(name, drinking), ways, heating)

    def _told(
        self, name: str, leads: str, ways: tuple[_Devices, ...], heating: Node, *, is_parted: bool = False
    ) -> FillFacts:
        group = self._group_of[heating]
        heaters = [(each, heat) for each, heat, inlet in self._heaters if self._group_of[inlet] == group]
        circuit = min(heaters)[0] if heaters else min(self._members(group))
        antifreeze = any(has_glycol for _, has_glycol in heaters)
        return FillFacts(name, circuit, leads, ways, is_parted, antifreeze)

    def _members(self, group: int) -> Iterator[str]:
        """The parts with a connection in a circuit."""
        ports = zip(self.network.piping.ports, self._group_of, strict=True)
        return (port.part for port, own in ports if own == group)

    @property
    def _parts(self) -> Mapping[str, Part]:
        return self.network.piping.system.parts

    @cached_property
    def _is_heating(self) -> list[bool]:
        piping, circuits = self.network.piping, self.network.circuits
        return [circuits.at(node) is Circuit.HEATING for node in range(len(piping.ports))]

    @cached_property
    def _lines_of(self) -> dict[str, list[tuple[Node, Node]]]:
        """The pairs of nodes that lead through each part, shut or not, and through air where that is its purpose."""
        piping = self.network.piping
        within = chain(piping.inner, ((gate.start, gate.end) for gate in piping.gates))
        found: dict[str, list[tuple[Node, Node]]] = {}
        for start, end in chain(within, ((door.start, door.end) for door in piping.doors)):
            found.setdefault(piping.ports[start].part, []).append((start, end))
        for name, part in self._parts.items():
            if _is_parted(part):
                found[name] = [(piping.node_of[End(name, a)], piping.node_of[End(name, b)]) for a, b in part.through]
        return found

    def _crossing(self, name: str) -> Iterator[tuple[Node, Node]]:
        """The lines of a part that lead from one water to the other: the node in drinking water, and that beyond."""
        for start, end in self._lines_of.get(name, ()):
            if self._is_heating[start] != self._is_heating[end]:
                yield (end, start) if self._is_heating[start] else (start, end)

    def _supplies_freely(self, name: str, part: Part) -> bool:
        """Whether a part is a supply whose water is that of a heating circuit, with nothing between."""
        source = part.source()
        if source is None or source.is_filled_by_hand or part.protects is not None:
            return False
        return self._is_heating[self.network.piping.node_of[End(name, source.port)]]

    def _is_drawn(self, name: str, part: Part) -> bool:
        heat = part.heat()
        if heat is None or heat.mixture is None:
            return False
        return not self._is_heating[self.network.piping.node_of[End(name, heat.inlet)]]

    def _guards(self, name: str) -> bool:
        """Whether a part is a backflow preventer that works."""
        part = self._parts[name]
        return part.protects is not None and not any(isinstance(one, Free) for one in part.passages())

    def _leading(self, name: str, drinking: Node) -> str:
        """The joint, or where it belongs to the heating circuit the part before it, in drinking water."""
        circuits, piping = self.network.circuits, self.network.piping
        before = (end.part for end in self.network.piped.get(piping.ports[drinking], ()))
        return next((each for each in (name, *sorted(before)) if circuits.of(each) is Circuit.WATER), name)

    @cached_property
    def _heaters(self) -> list[tuple[str, bool, Node]]:
        """Heaters, whether there is glycol in what they warm, and where they are entered."""
        sources = ((name, part.heat()) for name, part in self._parts.items())
        node_of = self.network.piping.node_of
        return [
            (name, heat.mixture is not None, node_of[End(name, heat.inlet)])
            for name, heat in sources
            if heat is not None
        ]

    @cached_property
    def _group_of(self) -> list[int]:
        """The heating circuit to which each node belongs, by number; other water in groups of its own."""
        lines = chain(self.network.piping.pipes, *self._lines_of.values())
        alike = ((a, b) for a, b in lines if self._is_heating[a] and self._is_heating[b])
        return groups(len(self._is_heating), alike)[0]

    @cached_property
    def _beside(self) -> dict[Node, list[tuple[Node, _Devices]]]:
        """From each node to the next, with the preventer between them if there is one."""
        steps: list[tuple[Node, Node, _Devices]] = [(a, b, ()) for a, b in self.network.piping.pipes]
        for name, lines in self._lines_of.items():
            steps.extend((a, b, (name,) if self._guards(name) else ()) for a, b in lines)
        found: dict[Node, list[tuple[Node, _Devices]]] = {}
        for start, end, devices in steps:
            found.setdefault(start, []).append((end, devices))
            found.setdefault(end, []).append((start, devices))
        return found

    @cached_property
    def _drinking(self) -> frozenset[Node]:
        """Where there is drinking water to be kept clean: at taps, supplies and heaters, and above air gaps."""
        return frozenset(node for node in self._clean() if not self._is_heating[node])

    def _clean(self) -> Iterator[Node]:
        for name, part in self._parts.items():
            source, heat = part.source(), part.heat()
            ports = [*part.draws_at(), *(() if heat is None else (heat.inlet,))]
            if _is_parted(part):
                ports.extend(first for first, _ in part.through)
            elif source is not None:
                ports.append(source.port)
            yield from (self.network.piping.node_of[End(name, port)] for port in ports)

    def _ways(self, starts: Iterable[Node], own: _Devices) -> Iterator[_Devices]:
        """The ways from a joint on to drinking water that no other has fewer sorts of preventer than."""
        number, found = count(), list[frozenset[BackflowProtection | None]]()
        seen: dict[Node, list[frozenset[BackflowProtection | None]]] = {}
        queue = [(len(own), len(own), own, next(number), node) for node in starts]
        while queue:
            *_, devices, _, node = heappop(queue)
            sorts = frozenset(self._parts[name].protects for name in devices)
            if any(less <= sorts for less in (*found, *seen.get(node, ()))):
                continue
            seen.setdefault(node, []).append(sorts)
            if node in self._drinking:
                found.append(sorts)
                yield devices
                continue
            for other, met in self._beside.get(node, ()):
                if not self._is_heating[other]:
                    then = (*devices, *(name for name in met if name not in devices))
                    size = len({self._parts[name].protects for name in then})
                    heappush(queue, (size, len(then), then, next(number), other))


def _is_parted(part: Part) -> bool:
    """Whether a supply lets nothing through from what feeds it."""
    return part.source() is not None and bool(part.through) and not list(part.passages())


def _port(part: Part) -> str:
    source = part.source()
    return "" if source is None else source.port
