"""The limit of each zone, and the lowest over all that its water can push into: what a heater there is held to."""

import math
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from functools import cached_property

from plumbnet.analysis.equilibrium.coupled_zones import gate_of, is_held
from plumbnet.layout.model import End
from plumbnet.network import Network
from plumbnet.network.outlets import devices_between, floor_pa
from plumbnet.network.piping import Node, Zone
from plumbnet.physics.fluids import ATMOSPHERE_PA
from plumbnet.physics.histories import Gates, needed_abs_pa
from plumbnet.rules import Rules
from plumbnet.rules.facts import Basis, Limit

_BY: dict[Basis, str] = {"fixture": "fixture", "rating": "rating of", "relief": "margin below", "set": "set of"}


def limits(network: Network, rules: Rules) -> dict[Zone, Limit]:
    """The limit of every zone that holds a fixture, a rated part or a safety relief valve, at datum.

    A fixture outdoors sets none where the rules exempt it. Each bound counts at its own height; of equal ones the first
    part by name. A plugged relief valve sets one as a sound one does: what it guards is no stronger for it. Linear.
    """
    found: dict[Zone, Limit] = {}

    def bound(node: Node, pressure_pa: float, basis: Basis) -> None:
        part = network.piping.ports[node].part
        zone = network.zoning.zone_of[node]
        at_datum = pressure_pa + network.piping.heads_pa[node]
        if zone not in found or (at_datum, part) < (found[zone].pressure_pa, found[zone].part):
            found[zone] = Limit(at_datum, f"{_BY[basis]} {part}", pressure_pa, part, basis)

    for name, part in network.piping.system.parts.items():
        for port in part.draws_at():
            node = network.piping.node_of[End(name, port)]
            highest_pa = rules.at(network.circuits, node).highest_at_tap_pa(outdoors=part.draws_outdoors())
            if highest_pa is not None:
                bound(node, highest_pa, "fixture")
        if part.rating_pa is not None:
            for node in network.piping.nodes_of(name):
                bound(node, part.rating_pa, "rating")
        for port, set_pa in part.safety_sets():
            node = network.piping.node_of[End(name, port)]
            if part.opens_daily():
                bound(node, set_pa, "set")
            else:
                bound(node, rules.at(network.circuits, node).highest_below_relief_pa(set_pa), "relief")
    return found


@dataclass
class Limits:
    """The limits of a network under the rules for its circuits; pressures gauge at datum.

    Growth pushes forward through every one-way device, so what lies beyond one holds a heater too: at its own limit,
    and above that what the devices on the way need to open. A place behind a reducer that shuts below its limit holds
    nobody, for the heater never brings it there.
    """

    network: Network
    rules: Rules
    _lowest: dict[Zone, Limit | None] = field(default_factory=dict)

    @cached_property
    def of_zone(self) -> dict[Zone, Limit]:
        """The zone's own limit, where something in it sets one."""
        return limits(self.network, self.rules)

    def at(self, node: Node) -> Limit:
        """The lowest limit over all that water at a node can push into, as it counts there.

        Where nothing sets one, the highest pressure of the profile that judges the water there.
        """
        own = self.rules.at(self.network.circuits, node)
        fallback = own.distribution_limit.value_pa + self.network.piping.heads_pa[node]
        lowest = self._lowest_of(self.network.zoning.zone_of[node])
        return lowest or Limit(fallback, "nothing in its reach sets one: the profile's own")

    def _lowest_of(self, zone: Zone) -> Limit | None:
        if zone not in self._lowest:
            self._lowest[zone] = self._searched(zone)
        return self._lowest[zone]

    def _searched(self, start: Zone) -> Limit | None:
        """Of equal limits that of the zone itself, then the first by name."""
        found = self._found_from(start)
        best = min(found, key=lambda one: (one[0], one[1] != start, one[2].part), default=None)
        if best is None:
            return None
        counts_pa, zone, limit = best
        way = () if zone == start else devices_between(self.network.zoning, self.network.standing, start, zone)
        return replace(limit, pressure_pa=counts_pa, way=(*way, *limit.way))

    def _found_from(self, start: Zone) -> Iterator[tuple[float, Zone, Limit]]:
        """The limits that count for water of a zone: at what pressure of its own, in which zone, and which.

        Beyond a zone that a way out holds, all is taken together: it is searched once, for all whose water goes there.
        """
        is_street = is_held(self.network, start)
        gates = self._all_gates if is_street else self._gates_of_closed
        for zone, pushes in gates.pushes(start).items():
            is_other_street = zone != start and not is_street and is_held(self.network, zone)
            limit = self._lowest_of(zone) if is_other_street else self.of_zone.get(zone)
            if limit is not None:
                counts_pa = needed_abs_pa(pushes, limit.pressure_pa + ATMOSPHERE_PA) - ATMOSPHERE_PA
                if counts_pa < math.inf:
                    yield (limit.pressure_pa if zone == start else counts_pa), zone, limit

    @cached_property
    def _all_gates(self) -> Gates[Zone]:
        crossings = self.network.zoning.crossings()
        return Gates.of(
            gate_of(self.network, crossing)
            for crossing in crossings
            if crossing.way is not None and floor_pa(crossing, self.network.standing) is not None
        )

    @cached_property
    def _gates_of_closed(self) -> Gates[Zone]:
        """Those that lead out of zones which no way out holds."""
        return Gates({zone: own for zone, own in self._all_gates.out.items() if not is_held(self.network, zone)})
