"""Zones with heated water and tanks, joined by one-way gates, to the pressure at which each settles and what is short.

All pressures are absolute and stand at datum. Source of the method: own derivation. The settled state is the one
of least stored energy with flow through every gate in its direction only; for such problems on a graph the level
sets of the solution are minimum cuts (Hochbaum 2001 and others treat the general case; from memory), so that the
state is found by cutting, from the top down.
"""

import math
from collections.abc import Collection, Hashable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Generic, TypeVar

import networkx as nx
from networkx.algorithms.flow import edmonds_karp

from plumbnet.physics.tank import Tank, settled_abs_pa

Zone = TypeVar("Zone", bound=Hashable)

_GRAIN_M3 = 1e-18
"""Flows are counted in whole grains, so that a cut is exact."""
_SLACK = 2.0**-44
"""Share of all expansion that is forgiven at a cut: what rounding leaves in sums."""
_ROUNDING = 1e-9
"""Share of all expansion by which the room at a common level may miss it: what rounding leaves of that level."""
_JUST_BELOW = 1.0 - 1e-9
"""A zone that is overfull just below a level, and not at it, settles at that level."""


@dataclass(frozen=True, slots=True)
class ZoneLoad:
    """What expands in a zone, by heater, and what takes it up.

    `outlet_abs_pa` is the lowest pressure at which an outlet of the zone lets any amount out (main, vent, relief
    valve); infinite where there is none.
    """

    expansions_m3: Mapping[str, float]
    static_abs_pa: float
    tanks: tuple[Tank, ...] = ()
    outlet_abs_pa: float = math.inf

    @property
    def expansion_m3(self) -> float:
        """Growth of all heated water in the zone."""
        return math.fsum(self.expansions_m3.values())

    @property
    def opens_abs_pa(self) -> float:
        """Pressure at which water leaves by the outlet; never below the static pressure."""
        return max(self.outlet_abs_pa, self.static_abs_pa)

    def room_m3(self, pressure_abs_pa: float, *, through_outlet: bool) -> float:
        """Water the zone can take up once it stands at a pressure; infinite where its outlet is open."""
        if through_outlet and self.opens_abs_pa <= pressure_abs_pa and self.outlet_abs_pa < math.inf:
            return math.inf
        return math.fsum(tank.uptake_m3(pressure_abs_pa) for tank in self.tanks)


@dataclass(frozen=True, slots=True)
class OneWayGate(Generic[Zone]):
    """Water passes from zone `near` to zone `far`, never back, and only while `far` stands below `below_abs_pa`."""

    near: Zone
    far: Zone
    below_abs_pa: float = math.inf


@dataclass(frozen=True, slots=True)
class Pool(Generic[Zone]):
    """Zones that settle at one pressure, joined by open gates.

    `pressure_abs_pa` is infinite where nothing holds them. `discharged_m3` leaves by an outlet that has opened.
    """

    zones: frozenset[Zone]
    pressure_abs_pa: float
    discharged_m3: float


@dataclass(frozen=True, slots=True)
class Shortage(Generic[Zone]):
    """Zones that together grow by more than the tanks in their reach can take at a level, and their heaters."""

    zones: frozenset[Zone]
    heaters: frozenset[str]
    short_m3: float


def settle(loads: Mapping[Zone, ZoneLoad], gates: Sequence[OneWayGate[Zone]]) -> list[Pool[Zone]]:
    """The pools in which zones settle once all heated water is hot, highest pressure first.

    A reducer's gate counts while what lies beyond it settles below its set; where that is not so it is taken as
    shut from the start, which errs to the safe side. What a check needs to open is left out.

    >>> tank = Tank(0.1, charge_abs_pa=200_000, start_abs_pa=200_000)
    >>> loads = {"heater": ZoneLoad({"h": 0.05}, 200_000), "tank": ZoneLoad({}, 200_000, (tank,))}
    >>> [pool.pressure_abs_pa for pool in settle(loads, [OneWayGate("heater", "tank")])]
    [400000.0]
    """
    return settle_open(loads, gates)[0]


def settle_open(
    loads: Mapping[Zone, ZoneLoad], gates: Sequence[OneWayGate[Zone]]
) -> tuple[list[Pool[Zone]], Sequence[OneWayGate[Zone]]]:
    """The pools, as `settle` finds them, and the gates that were not taken as shut for it."""
    while True:
        pools = list(_pools(loads, gates))
        level = {zone: pool.pressure_abs_pa for pool in pools for zone in pool.zones}
        kept = [gate for gate in gates if level[gate.far] < gate.below_abs_pa or gate.below_abs_pa == math.inf]
        if len(kept) == len(gates):
            return sorted(pools, key=lambda pool: -pool.pressure_abs_pa), kept
        gates = kept


def _pools(loads: Mapping[Zone, ZoneLoad], gates: Sequence[OneWayGate[Zone]]) -> Iterator[Pool[Zone]]:
    """Split the zones at the level where all of them together would settle, until no part stands out."""
    waiting: list[list[Zone]] = [list(loads)]
    while waiting:
        zones = waiting.pop()
        if not zones:
            continue
        level = _common_level(loads, zones)
        above = _overfull(loads, gates, zones, level, through_outlet=True)
        rest = [zone for zone in zones if zone not in above]
        if level == math.inf:
            at_level = above or set(zones)
            above = set()
        else:
            at_level = _overfull(loads, gates, rest, level * _JUST_BELOW, through_outlet=False)
            if not at_level and len(rest) in {0, len(zones)}:
                at_level, above = set(zones), set()
        for joined in _joined(zones, at_level, gates):
            yield Pool(joined, level, _discharged(loads, joined, level))
        waiting += [
            [zone for zone in zones if zone in above],
            [zone for zone in zones if zone not in above and zone not in at_level],
        ]


def _joined(
    zones: Sequence[Zone], members: Collection[Zone], gates: Sequence[OneWayGate[Zone]]
) -> Iterator[frozenset[Zone]]:
    """The members in groups that gates join, in the order of the zones."""
    graph: nx.Graph[Zone] = nx.Graph()
    graph.add_nodes_from(zone for zone in zones if zone in members)
    graph.add_edges_from((gate.near, gate.far) for gate in gates if gate.near in members and gate.far in members)
    for group in nx.connected_components(graph):
        yield frozenset(group)


def _common_level(loads: Mapping[Zone, ZoneLoad], zones: Sequence[Zone]) -> float:
    """Lowest pressure at which the zones together could take up all they grow by, if all gates stood open."""
    expansion = math.fsum(loads[zone].expansion_m3 for zone in zones)
    if expansion <= 0.0:
        return min(loads[zone].static_abs_pa for zone in zones)
    outlet = min(loads[zone].opens_abs_pa for zone in zones)
    by_tanks = settled_abs_pa(expansion, [tank for zone in zones for tank in loads[zone].tanks])
    return outlet if by_tanks is None else min(outlet, by_tanks)


def _overfull(
    loads: Mapping[Zone, ZoneLoad],
    gates: Sequence[OneWayGate[Zone]],
    zones: Sequence[Zone],
    level: float,
    *,
    through_outlet: bool,
) -> set[Zone]:
    """Zones that cannot stay at or below a level: those at rest above it, and those a maximum flow leaves full."""
    growth = math.fsum(loads[zone].expansion_m3 for zone in zones)
    resting = {zone for zone in zones if loads[zone].static_abs_pa > level}
    lower = {zone for zone in zones if zone not in resting}
    rooms = {zone: loads[zone].room_m3(level, through_outlet=through_outlet) for zone in lower}
    slack = _SLACK * growth
    if through_outlet:
        missing = growth - math.fsum(rooms.values())
        slack += missing if 0.0 < missing < _ROUNDING * growth else 0.0
    joined = [gate for gate in gates if gate.near in lower and gate.far in lower]
    if not joined:
        return resting | {zone for zone in lower if loads[zone].expansion_m3 > rooms[zone] + slack}
    flow = _FlowGraph()
    for zone in zones:
        if zone in lower:
            flow.supply(zone, loads[zone].expansion_m3)
            flow.drain(zone, rooms[zone] + slack)
    for gate in joined:
        flow.join(gate.near, gate.far)
    surplus = flow.surplus()
    return resting | {zone for zone in lower if zone in surplus}


def _discharged(loads: Mapping[Zone, ZoneLoad], zones: Collection[Zone], level: float) -> float:
    growth = math.fsum(loads[zone].expansion_m3 for zone in zones)
    taken = math.fsum(loads[zone].room_m3(level, through_outlet=False) for zone in zones)
    opened = level < math.inf and any(loads[zone].opens_abs_pa <= level for zone in zones)
    return max(0.0, growth - taken) if opened else 0.0


def shortages(loads: Mapping[Zone, ZoneLoad], pools: Sequence[Pool[Zone]], level_abs_pa: float) -> list[Shortage[Zone]]:
    """Zones that cannot stay at or below a level, and by how much, each settled pool by itself.

    `pools` are those of `settle`: what settles above a level is what a maximum flow from the heaters to the tanks'
    room at that level leaves full, the near side of its smallest cut; between pools no water passes.
    """
    return [_shortage(loads, pool.zones, level_abs_pa) for pool in pools if pool.pressure_abs_pa > level_abs_pa]


def _shortage(loads: Mapping[Zone, ZoneLoad], zones: frozenset[Zone], level_abs_pa: float) -> Shortage[Zone]:
    growth = math.fsum(loads[zone].expansion_m3 for zone in zones)
    taken = math.fsum(loads[zone].room_m3(level_abs_pa, through_outlet=False) for zone in zones)
    heaters = {heater for zone in zones for heater, grown in loads[zone].expansions_m3.items() if grown > 0.0}
    return Shortage(zones, frozenset(heaters), max(0.0, growth - taken))


class _FlowGraph:
    """A flow network in whole grains, from a common source to a common sink."""

    def __init__(self) -> None:
        self._graph: nx.DiGraph[object] = nx.DiGraph()
        self._graph.add_nodes_from((_SOURCE, _SINK))

    def supply(self, node: object, volume_m3: float) -> None:
        """Let a volume enter at a node, beside what enters there already."""
        grains = round(volume_m3 / _GRAIN_M3)
        before = self._graph.edges[_SOURCE, node]["capacity"] if self._graph.has_edge(_SOURCE, node) else 0
        self._graph.add_edge(_SOURCE, node, capacity=before + grains)

    def drain(self, node: object, volume_m3: float) -> None:
        """Let up to a volume leave at a node; any amount if it is infinite."""
        self.join(node, _SINK, volume_m3)

    def join(self, start: object, end: object, volume_m3: float = math.inf) -> None:
        """Let up to a volume pass from one node to another; any amount if it is infinite."""
        if math.isfinite(volume_m3):
            self._graph.add_edge(start, end, capacity=round(volume_m3 / _GRAIN_M3))
        else:
            self._graph.add_edge(start, end)

    def surplus(self) -> set[object]:
        """Nodes that still have water to give after a maximum flow: the source side of the smallest cut.

        Source: Edmonds and Karp 1972, by the library.
        """
        residual = edmonds_karp(self._graph, _SOURCE, _SINK)
        left: nx.DiGraph[object] = nx.DiGraph()
        left.add_node(_SOURCE)
        for start, end, edge in residual.edges(data=True):
            if edge["flow"] < edge["capacity"]:
                left.add_edge(start, end)
        return set(nx.descendants(left, _SOURCE))


_SOURCE, _SINK = "source", "sink"
