"""Zones with heated water and tanks, joined by one-way gates, to the pressure at which each settles and what is short.

All pressures are absolute and stand at datum. Source of the method: own derivation. The settled state is the one
of least stored energy with flow through every gate in its direction only; for such problems on a graph the level
sets of the solution are minimum cuts (Hochbaum 2001 and others treat the general case; from memory), so that the
state is found by cutting, from the top down.
"""

import math
from collections.abc import Collection, Hashable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Generic, TypeVar

import networkx as nx
from networkx.utils import UnionFind

from plumbnet.physics.equilibrium.flow import FlowGraph, nodes_of
from plumbnet.physics.vessels import Tank, settled_abs_pa

Zone = TypeVar("Zone", bound=Hashable)

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
    valve); infinite where there is none. `pushed_m3` comes in from elsewhere and stays.
    """

    expansions_m3: Mapping[str, float]
    static_abs_pa: float
    tanks: tuple[Tank, ...] = ()
    outlet_abs_pa: float = math.inf
    pushed_m3: float = 0.0

    @property
    def expansion_m3(self) -> float:
        """Growth of all heated water in the zone."""
        return math.fsum(self.expansions_m3.values())

    @property
    def gain_m3(self) -> float:
        """All water there is to take up: the growth, and what is pushed in."""
        return math.fsum((*self.expansions_m3.values(), self.pushed_m3))

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
    """Water passes from zone `near` to zone `far`, never back, and only while `far` stands below `below_abs_pa`.

    It passes once `near` stands above `far` by `opens_pa`; what settles all at once leaves that out.
    """

    near: Zone
    far: Zone
    below_abs_pa: float = math.inf
    opens_pa: float = 0.0


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


@dataclass(frozen=True, slots=True)
class Settled(Generic[Zone]):
    """Pools, highest pressure first, loads with what reducers let through before they shut, and the other gates."""

    pools: list[Pool[Zone]]
    loads: Mapping[Zone, ZoneLoad]
    gates: Sequence[OneWayGate[Zone]]


def settle(loads: Mapping[Zone, ZoneLoad], gates: Sequence[OneWayGate[Zone]]) -> list[Pool[Zone]]:
    """The pools in which zones settle once all heated water is hot, highest pressure first.

    A reducer's gate counts while what lies beyond it settles below its set; where that is not so it is taken as
    shut from the start. What a check needs to open is left out.

    >>> tank = Tank(0.1, charge_abs_pa=200_000, start_abs_pa=200_000)
    >>> loads = {"heater": ZoneLoad({"h": 0.05}, 200_000), "tank": ZoneLoad({}, 200_000, (tank,))}
    >>> [pool.pressure_abs_pa for pool in settle(loads, [OneWayGate("heater", "tank")])]
    [400000.0]
    """
    return _settled(loads, gates, counts_passed=False).pools


def settle_safely(loads: Mapping[Zone, ZoneLoad], gates: Sequence[OneWayGate[Zone]]) -> Settled[Zone]:
    """The pools, at pressures that no order of heating surpasses.

    Where a reducer shuts on the way, the water before it may have warmed last, and found it shut; or first, and
    filled what lies beyond up to the reducer's set. Both are counted: the first before it, the second beyond.
    """
    return _settled(loads, gates, counts_passed=True)


def _settled(
    loads: Mapping[Zone, ZoneLoad], gates: Sequence[OneWayGate[Zone]], *, counts_passed: bool
) -> Settled[Zone]:
    while True:
        pools = sorted(_pools(loads, gates), key=lambda pool: -pool.pressure_abs_pa)
        level = {zone: pool.pressure_abs_pa for pool in pools for zone in pool.zones}
        shut = [gate for gate in gates if gate.below_abs_pa < math.inf and level[gate.far] >= gate.below_abs_pa]
        if not shut:
            return Settled(pools, loads, gates)
        if counts_passed:
            graph: nx.DiGraph[Zone] = nx.DiGraph((gate.near, gate.far) for gate in gates)
            passed = [(gate.far, _passed_m3(loads, graph, gate)) for gate in shut]
            loads = dict(loads)
            for zone, volume_m3 in passed:
                loads[zone] = replace(loads[zone], pushed_m3=loads[zone].pushed_m3 + volume_m3)
        gates = [gate for gate in gates if gate not in shut]


def _passed_m3(loads: Mapping[Zone, ZoneLoad], graph: "nx.DiGraph[Zone]", reducer: OneWayGate[Zone]) -> float:
    """The most that a reducer can let through before what lies beyond it has come to its set."""
    before = nx.ancestors(nx.restricted_view(graph, [reducer.far], []), reducer.near) | {reducer.near}
    beyond = nx.descendants(nx.restricted_view(graph, [reducer.near], []), reducer.far) | {reducer.far}
    growth = math.fsum(loads[zone].expansion_m3 for zone in before)
    return min(growth, math.fsum(loads[zone].room_m3(reducer.below_abs_pa, through_outlet=False) for zone in beyond))


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
        for pool in joined_zones([zone for zone in zones if zone in at_level], gates):
            yield Pool(pool, level, _discharged(loads, pool, level))
        waiting += [
            [zone for zone in zones if zone in above],
            [zone for zone in zones if zone not in above and zone not in at_level],
        ]


def joined_zones(zones: Iterable[Zone], gates: Iterable[OneWayGate[Zone]]) -> Iterator[frozenset[Zone]]:
    """Zones in groups that gates between them join, in their order."""
    groups = UnionFind(zones)
    for gate in gates:
        if gate.near in groups.parents and gate.far in groups.parents:
            groups.union(gate.near, gate.far)
    yield from map(frozenset, groups.to_sets())


def _common_level(loads: Mapping[Zone, ZoneLoad], zones: Sequence[Zone]) -> float:
    """Lowest pressure at which the zones together could take up all they grow by, if all gates stood open."""
    expansion = math.fsum(loads[zone].gain_m3 for zone in zones)
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
    growth = math.fsum(loads[zone].gain_m3 for zone in zones)
    resting = {zone for zone in zones if loads[zone].static_abs_pa > level}
    lower = {zone for zone in zones if zone not in resting}
    rooms = {zone: loads[zone].room_m3(level, through_outlet=through_outlet) for zone in lower}
    slack = _SLACK * growth
    if through_outlet:
        missing = growth - math.fsum(rooms.values())
        slack += missing if 0.0 < missing < _ROUNDING * growth else 0.0
    between = [gate for gate in gates if gate.near in lower and gate.far in lower]
    if not between:
        return resting | {zone for zone in lower if loads[zone].gain_m3 > rooms[zone] + slack}
    node_of = nodes_of(
        [zone for zone in zones if zone in lower],
        [(gate.near, gate.far) for gate in between],
        lambda zone: loads[zone].gain_m3 > 0.0,
    )
    flow = FlowGraph()
    for zone, node in node_of.items():
        flow.supply(node, loads[zone].gain_m3)
        flow.drain(node, rooms[zone] + slack)
    for near, far in dict.fromkeys((node_of[gate.near], node_of[gate.far]) for gate in between):
        if near != far:
            flow.join(near, far)
    surplus = flow.surplus()
    return resting | {zone for zone, node in node_of.items() if node in surplus}


def _discharged(loads: Mapping[Zone, ZoneLoad], zones: Collection[Zone], level: float) -> float:
    growth = math.fsum(loads[zone].gain_m3 for zone in zones)
    taken = math.fsum(loads[zone].room_m3(level, through_outlet=False) for zone in zones)
    opened = level < math.inf and any(loads[zone].opens_abs_pa <= level for zone in zones)
    return max(0.0, growth - taken) if opened else 0.0


def shortage(loads: Mapping[Zone, ZoneLoad], zones: frozenset[Zone], level_abs_pa: float) -> Shortage[Zone]:
    """By how much the zones of a pool miss room at a level; nothing where they settle below it.

    `zones` are those of a pool that `settle` found, or of them those that share water without a street between: what
    settles above a level is what a maximum flow from the heaters to the tanks' room at that level leaves full, the near
    side of its smallest cut; between pools no water passes.
    """
    growth = math.fsum(loads[zone].gain_m3 for zone in zones)
    taken = math.fsum(loads[zone].room_m3(level_abs_pa, through_outlet=False) for zone in zones)
    heaters = {heater for zone in zones for heater, grown in loads[zone].expansions_m3.items() if grown > 0.0}
    return Shortage(zones, frozenset(heaters), max(0.0, growth - taken))
