"""A zone to all that settle together with it, the gates between them, and the lift that makes checks open at once."""

from collections import defaultdict, deque
from collections.abc import Collection, Iterable, Sequence
from math import inf

from plumbnet.network.ladder import floor_pa
from plumbnet.network.piping import Way
from plumbnet.network.whole import Network
from plumbnet.network.zones import Crossing, Zone
from plumbnet.physics.settle import OneWayGate
from plumbnet.physics.water import ATMOSPHERE_PA

_ROUNDING_PA = 1e-3
"""Sums of the same few pressures in another order differ by less."""


def together(network: Network, start: Zone) -> tuple[set[Zone], list[Crossing]]:
    """Zones joined by gates that can pass water, searched both ways; none beyond one whose pressure is held."""
    zoning, standing = network.zoning, network.standing
    zones, crossings, queue = {start}, {}, deque([start])
    while queue:
        zone = queue.popleft()
        if is_held(network, zone):
            continue
        for crossing in (*zoning.out.get(zone, ()), *zoning.into.get(zone, ())):
            if floor_pa(crossing, standing) is None or is_held(network, crossing.near):
                continue
            crossings[crossing.leaves, crossing.enters] = crossing
            for beyond in (crossing.near, crossing.far):
                if beyond not in zones:
                    zones.add(beyond)
                    queue.append(beyond)
    return zones, list(crossings.values())


def gate_of(crossing: Crossing, lift_pa: float = 0.0) -> OneWayGate[Zone]:
    """A crossing as water settles over it, with the lift of the zone beyond."""
    below_pa = inf if crossing.way is None else crossing.way.below_pa
    return OneWayGate(crossing.near, crossing.far, below_pa + ATMOSPHERE_PA + lift_pa)


def pushing(zone: Zone, zones: Collection[Zone], gates: Sequence[OneWayGate[Zone]]) -> frozenset[Zone]:
    """Of some zones those whose water can come to one of them through gates, that one included."""
    found, queue = {zone}, deque([zone])
    while queue:
        at = queue.popleft()
        for gate in gates:
            if gate.far == at and gate.near in zones and gate.near not in found:
                found.add(gate.near)
                queue.append(gate.near)
    return frozenset(found)


def is_held(network: Network, zone: Zone) -> bool:
    """Whether a way out that stands open keeps a zone at its static pressure, whatever comes."""
    static_pa = network.standing.static_pa[zone]
    ways_out = [o for o in network.openings.get(zone, ()) if o.site.outlet.role.is_way_out]
    return any(static_pa is None or opening.opens_pa <= static_pa + _ROUNDING_PA for opening in ways_out)


def lifts_pa(network: Network, zones: Collection[Zone], crossings: Iterable[Crossing]) -> dict[Zone, float]:
    """Head to add to each zone's pressures, as if checks that need a difference to open led uphill by that much.

    Water that passes a check loses what opens it; water that a pump holds above what it could flow back to stays
    above it by as much. With the zone beyond thought that much higher, water moves between equal pressures there too,
    and zones settle as if every check opened at once. Zero for all zones where two ways between the same zones lose
    different pressures: no heights fit both. Linear.
    """
    steps = _steps(network, crossings)
    lifts: dict[Zone, float] = {}
    if any(opens_pa for _, _, opens_pa in steps):
        beside: dict[Zone, list[tuple[Zone, float]]] = defaultdict(list)
        for near, far, opens_pa in steps:
            beside[near].append((far, opens_pa))
            beside[far].append((near, -opens_pa))
        for zone in sorted(zones):
            _spread(zone, beside, lifts)
    if any(abs(lifts[far] - lifts[near] - opens_pa) > _ROUNDING_PA for near, far, opens_pa in steps if lifts):
        lifts = {}
    return {zone: lifts.get(zone, 0.0) for zone in zones}


def _steps(network: Network, crossings: Iterable[Crossing]) -> list[tuple[Zone, Zone, float]]:
    """Each pair of zones once, with the least by which the first stands higher when water passes to the second."""
    least: dict[tuple[Zone, Zone], float] = {}
    for crossing in crossings:
        if crossing.way is not None:
            pair = (crossing.near, crossing.far)
            least[pair] = min(least.get(pair, inf), _higher_pa(network, crossing, crossing.way))
    return [(near, far, opens_pa) for (near, far), opens_pa in least.items()]


def _higher_pa(network: Network, crossing: Crossing, way: Way) -> float:
    """By how much the near zone stands higher when water passes; cold it may stand higher still, held by a pump."""
    near_pa, far_pa = (network.standing.static_pa[zone] for zone in (crossing.near, crossing.far))
    if near_pa is None or far_pa is None:
        return way.opens_pa
    held_pa = near_pa - far_pa
    return held_pa if crossing.is_joint or held_pa > way.opens_pa + _ROUNDING_PA else way.opens_pa


def _spread(start: Zone, beside: dict[Zone, list[tuple[Zone, float]]], lifts: dict[Zone, float]) -> None:
    queue = deque([start] if start not in lifts else [])
    lifts.setdefault(start, 0.0)
    while queue:
        zone = queue.popleft()
        for other, opens_pa in beside.get(zone, ()):
            if other not in lifts:
                lifts[other] = lifts[zone] + opens_pa
                queue.append(other)
