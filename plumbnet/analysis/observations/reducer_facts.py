"""Pressure reducers: what stands before them, whether heated water pushes at them, what takes it up behind them."""

import math
from collections.abc import Iterator

from plumbnet.layout.model import Role
from plumbnet.network import Network
from plumbnet.network.outlets import reach
from plumbnet.network.piping import Gate
from plumbnet.network.pressure import way_past
from plumbnet.rules.facts import ROUNDING_PA, ReducerFacts


def reducers(network: Network) -> Iterator[ReducerFacts]:
    """Every pressure reducer, in the order of the file. Cost: linear in the piping for each."""
    heated = set(network.reach(tuple(sorted(network.heated_in)), math.inf))
    for gate in network.piping.gates:
        if gate.forward is not None and gate.forward.below_pa < math.inf:
            yield _reducer(network, gate, gate.forward.below_pa, is_heated=network.zoning.zone_of[gate.end] in heated)


def _reducer(network: Network, gate: Gate, below_pa: float, *, is_heated: bool) -> ReducerFacts:
    zone_of, heads_pa = network.zoning.zone_of, network.piping.heads_pa
    outlet_pa = network.standing.static_pa[zone_of[gate.end]]
    upstream_pa = network.standing.static_pa[zone_of[gate.start]]
    behind = reach(
        network.zoning, network.standing, (zone_of[gate.end],), math.inf, without=lambda crossing: crossing.gate is gate
    )
    outlets = [opening for zone in behind for opening in network.openings.get(zone, ())]
    sets = [o.site.outlet.opens_pa for o in outlets if o.site.outlet.role is Role.EXPANSION_RELIEF]
    return ReducerFacts(
        name=gate.part,
        set_pa=below_pa - heads_pa[gate.end],
        upstream_pa=None if upstream_pa is None else upstream_pa - heads_pa[gate.start],
        is_heated=is_heated,
        has_tank=any(opening.site.outlet.role is Role.TANK for opening in outlets),
        relief_set_pa=min(sets, default=None),
        outlet_pa=None if outlet_pa is None else outlet_pa - heads_pa[gate.end],
        passed_by=way_past(network.piping, gate) if (outlet_pa or 0.0) > below_pa + ROUNDING_PA else (),
    )
