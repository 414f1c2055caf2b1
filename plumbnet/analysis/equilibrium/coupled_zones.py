"""A zone to all that settle together with it, the gates between them, and heights at which checks open at once."""

import math
from collections import deque
from collections.abc import Callable, Collection, Iterable, Mapping

from plumbnet.network import Network
from plumbnet.network.graphs import nearest_first
from plumbnet.network.outlets import floor_pa
from plumbnet.network.piping import POTENTIAL_ROUNDING_PA, Crossing, Potentials, PotentialStep, Way, Zone, fitted
from plumbnet.physics.equilibrium import OneWayGate
from plumbnet.physics.fluids import ATMOSPHERE_PA


def coupled_zones(network: Network, start: Zone) -> tuple[set[Zone], list[Crossing]]:
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


def gate_of(network: Network, crossing: Crossing, lift_pa: float = 0.0) -> OneWayGate[Zone]:
    """A crossing as water passes it, with the lift of the zone beyond."""
    way = Way() if crossing.way is None else crossing.way
    opens_pa = _higher_pa(network, crossing, way)
    return OneWayGate(crossing.near, crossing.far, way.below_pa + ATMOSPHERE_PA + lift_pa, opens_pa)


def pushing(zone: Zone, counts: Callable[[Zone], bool], into: Mapping[Zone, Iterable[Zone]]) -> frozenset[Zone]:
    """Of the zones that count those whose water can come to one of them, that one included. Linear in what is found.

    `into` has the zones from which gates lead into each.
    """
    return frozenset(nearest_first([zone], lambda at: filter(counts, into.get(at, ()))))


def is_held(network: Network, zone: Zone) -> bool:
    """Whether a way out that stands open keeps a zone at the pressure it starts from, whatever comes."""
    opens_pa = network.way_out_pa.get(zone)
    return opens_pa is not None and opens_pa <= network.start_pa(zone) + POTENTIAL_ROUNDING_PA


def coupled_heights(
    network: Network, zones: Collection[Zone], crossings: Iterable[Crossing], first: Collection[tuple[Zone, Zone]] = ()
) -> Potentials:
    """Heights that fit the steps between zones: those of the pairs `first`, then those that lose least. Near-linear.

    Water that passes a check loses what opens it; water that a pump holds above what it could flow back to stays
    above it by as much. With the zone beyond thought that much higher, zones settle as if every check opened at once.
    """
    steps = _steps(network, crossings)
    if not any(step.higher_pa for step in steps):
        return Potentials(dict.fromkeys(zones, 0.0))
    ranks = {pair: rank for rank, pair in enumerate(first)}
    steps.sort(key=lambda step: (ranks.get(step.pair, len(ranks)), step.higher_pa, step.pair))
    return fitted(zones, steps)


def _steps(network: Network, crossings: Iterable[Crossing]) -> list[PotentialStep]:
    """Each pair of zones once, with the least that lets water pass from the first to the second."""
    least: dict[tuple[Zone, Zone], float] = {}
    for crossing in crossings:
        if crossing.way is not None:
            pair = (crossing.near, crossing.far)
            least[pair] = min(least.get(pair, math.inf), _higher_pa(network, crossing, crossing.way))
    return [PotentialStep(near, far, higher_pa) for (near, far), higher_pa in least.items()]


def _higher_pa(network: Network, crossing: Crossing, way: Way) -> float:
    """By how much the near zone stands higher when water passes; cold it may stand higher still, held by a pump."""
    held_pa = network.start_pa(crossing.near) - network.start_pa(crossing.far)
    return held_pa if held_pa > way.opens_pa + POTENTIAL_ROUNDING_PA else way.opens_pa
