"""Stores of hot water: what they serve, what all that is drawn from them passes, how air comes to them."""

import heapq
import math
from collections import deque
from collections.abc import Iterator, Mapping
from collections.abc import Set as AbstractSet
from dataclasses import dataclass, field
from functools import cached_property
from typing import TypeAlias

from plumbnet.layout.model import End, Part, Role
from plumbnet.network import Network
from plumbnet.network.loops import HeatedVolume
from plumbnet.network.piping import Cell, Node
from plumbnet.rules.facts import StoreFacts

_COLD_K = 0.0
"""What passing any part but a heated store counts."""
_Steps: TypeAlias = dict[Node, list[tuple[Node, float]]]
"""By each node those from which water comes to it, with the setpoint of the store that it passes."""


def stores(network: Network, hot: AbstractSet[Node]) -> Iterator[StoreFacts]:
    """Every store of hot water in the order of the file; `hot` are the nodes on the hot side of heaters."""
    parts = network.piping.system.parts
    if any(part.is_vessel for part in parts.values()):
        yield from _Stores(network, hot).facts()


@dataclass
class _Stores:
    network: Network
    hot: AbstractSet[Node]

    def facts(self) -> Iterator[StoreFacts]:
        for name, part in self.network.piping.system.parts.items():
            if self._is_store(name, part):
                yield self._facts(name, part)

    def _is_store(self, name: str, part: Part) -> bool:
        if part.heat() is not None:
            return part.keeps_hot
        return part.is_vessel and not self._warm.isdisjoint(self.network.piping.nodes_of(name))

    @cached_property
    def _warm(self) -> AbstractSet[Node]:
        """Nodes at which heated water stands."""
        return self.hot | {piece.node for heated in self.network.heated for piece in heated.pieces}

    def _facts(self, name: str, part: Part) -> StoreFacts:
        heat, nodes = part.heat(), self._nodes(name, part)
        outlet = self.network.piping.node_of[End(name, part.leaves_at() or "")]
        tap = self._lowest.get(outlet)
        return StoreFacts(
            name=name,
            setpoint_k=None if heat is None else heat.hot_k,
            is_electric=None if heat is None else heat.is_electric,
            passes_k=None if tap is None else max(self._passed[outlet], _COLD_K if heat is None else heat.hot_k),
            elevation_m=part.elevation_m,
            tap=tap,
            tap_m=0.0 if tap is None else self.network.piping.system.parts[tap].elevation_m,
            is_height_given=self._are_taps_placed or "elevation_m" in part.model_fields_set,
            is_fed_from_below=part.is_fed_from_below(),
            air_comes_by=tuple(sorted(self._air(nodes))),
        )

    def _nodes(self, name: str, part: Part) -> list[Node]:
        """The ports that open into a store."""
        node = self.network.piping.node_of[End(name, part.enters_at() or "")]
        return sorted({node} | set(self.network.piping.nodes_of(name)) & set(self.network.piping.free[node]))

    def _air(self, nodes: list[Node]) -> Iterator[str]:
        """By what air comes to any of some nodes."""
        parts, cell_of = self.network.piping.system.parts, self.network.zoning.cell_of
        beside = {name for node in nodes for name in self.network.neighbours(node)}
        yield from (name for name in beside if parts[name].admits_air)
        for cell in sorted({cell_of[node] for node in nodes}):
            yield from self._vents.get(cell, ())

    @cached_property
    def _vents(self) -> Mapping[Cell, list[str]]:
        """What stands open to the air, by cells; a tap that runs is shut again."""
        parts, found = self.network.piping.system.parts, dict[Cell, list[str]]()
        for site in self.network.sites:
            if site.outlet.role is Role.AIR and not parts[site.part].draws_at():
                found.setdefault(self.network.zoning.cell_of[site.node], []).append(site.part)
        return found

    @cached_property
    def _are_taps_placed(self) -> bool:
        parts = self.network.piping.system.parts.values()
        return any(part.draws_at() and "elevation_m" in part.model_fields_set for part in parts)

    @cached_property
    def _taps(self) -> list[tuple[float, str, Node]]:
        """Where hot water is drawn, the lowest first."""
        piping = self.network.piping
        ends = ((name, part, port) for name, part in piping.system.parts.items() for port in part.draws_at())
        found = ((part.elevation_m, name, piping.node_of[End(name, port)]) for name, part, port in ends)
        return sorted(tap for tap in found if tap[2] in self.hot)

    @cached_property
    def _lowest(self) -> Mapping[Node, str]:
        """The lowest tap to which water comes from each node. Linear."""
        found: dict[Node, str] = {}
        for _, name, start in self._taps:
            found.setdefault(start, name)
            queue = deque([start])
            while queue:
                for before, _ in self._steps.get(queue.popleft(), ()):
                    if before not in found:
                        found[before] = name
                        queue.append(before)
        return found

    @cached_property
    def _passed(self) -> Mapping[Node, float]:
        """From each node, of all ways to taps the least of the hottest store passed; searched from the taps."""
        found: dict[Node, float] = {}
        queue = [(_COLD_K, node) for _, _, node in self._taps]
        while queue:
            passed_k, node = heapq.heappop(queue)
            if passed_k < found.get(node, math.inf):
                found[node] = passed_k
                for before, hot_k in self._steps.get(node, ()):
                    heapq.heappush(queue, (max(passed_k, hot_k), before))
        return found

    @cached_property
    def _steps(self) -> _Steps:
        return _Backwards(self.network).steps


@dataclass
class _Backwards:
    """Ways of water to taps, searched against their direction: in pipes either way, through heaters to their outlet."""

    network: Network
    steps: _Steps = field(default_factory=dict)

    def __post_init__(self) -> None:
        piping = self.network.piping
        heated_at = {heated.inlet: heated for heated in self.network.heated}
        for start, end in piping.pipes:
            self._both_ways(start, end)
        for start, end in piping.inner:
            if start in heated_at:
                self._through_store(heated_at[start], {start, end})
            else:
                self._both_ways(start, end)
        for door in piping.doors:
            if door.is_valve:
                self._both_ways(door.start, door.end)
            elif not piping.system.parts[door.part].draws_at():
                self._add(door.start, door.end)
        for gate in piping.gates:
            if gate.forward is not None:
                self._add(gate.start, gate.end)

    def _through_store(self, heated: HeatedVolume, nodes: AbstractSet[Node]) -> None:
        keeps_hot = self.network.piping.system.parts[heated.name].keeps_hot
        for node in sorted(nodes - {heated.outlet}):
            self._add(node, heated.outlet, heated.source.hot_k if keeps_hot else _COLD_K)

    def _both_ways(self, start: Node, end: Node) -> None:
        self._add(start, end)
        self._add(end, start)

    def _add(self, start: Node, end: Node, passed_k: float = _COLD_K) -> None:
        self.steps.setdefault(end, []).append((start, passed_k))
