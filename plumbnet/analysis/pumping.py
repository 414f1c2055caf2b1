"""A network to the places that heating without a draw pumps above their limits, and the tank that stops it."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from plumbnet.analysis.limits import Limits
from plumbnet.analysis.need import nominal_m3
from plumbnet.analysis.neighbourhood import RAISED_PA, Neighbourhood, Neighbourhoods
from plumbnet.analysis.place import Place, tank_place
from plumbnet.network.heated import Heated
from plumbnet.network.reach import devices_between
from plumbnet.network.whole import Network
from plumbnet.network.zones import Zone
from plumbnet.physics.bisection import least
from plumbnet.physics.histories.ratchet import Ratchet
from plumbnet.physics.tank import Tank
from plumbnet.physics.water import ATMOSPHERE_PA
from plumbnet.rules.facts import Limit, PumpedFacts

_LARGEST = 1e5
"""A tank so many times the growth does what any tank can."""


@dataclass(frozen=True)
class Pumping:
    """Finds what is pumped up, neighbourhood by neighbourhood."""

    network: Network
    limits: Limits
    neighbourhoods: Neighbourhoods

    def found(self) -> Iterator[PumpedFacts]:
        """Each place that one heat-up leaves below its limit and that many bring above it, by its part."""
        zones = (zone for zone, limit in self.limits.of_zone.items() if limit.part)
        places = (self._pumped(zone) for zone in sorted(zones, key=lambda zone: self.limits.of_zone[zone].part))
        yield from (place for place in places if place is not None)

    def _pumped(self, zone: Zone) -> PumpedFacts | None:
        limit, near = self.limits.of_zone[zone], self.neighbourhoods.around(zone)
        if near is None or len(near.pushers(zone)) == 0 or near.highest(zone).pressure_pa > limit.pressure_pa:
            return None
        ratchet = self._ratchet(near)
        pushers = ratchet.pushers(zone)
        top_pa = near.gauge_pa(ratchet.top_abs_pa(zone))
        if not pushers or top_pa <= max(limit.pressure_pa, near.highest(zone).pressure_pa) + RAISED_PA:
            return None
        return self._told(near, zone, limit, pushers, top_pa)

    def _told(
        self, near: Neighbourhood, zone: Zone, limit: Limit, pushers: tuple[Zone, ...], top_pa: float
    ) -> PumpedFacts:
        own_pa = limit.pressure_pa if limit.own_pa is None else limit.own_pa
        last, ratchet = self._heated(pushers[-1]), self._ratchet(near)
        place = tank_place(self.network, last)
        tank_m3 = self._stopping_m3(near, place, zone, limit)
        heaters = dict.fromkeys(one.name for each in pushers for one in self.network.heated_in[each])
        return PumpedFacts(
            heaters=tuple(sorted(heaters)),
            part=limit.part,
            limit_pa=own_pa,
            top_pa=top_pa - limit.pressure_pa + own_pa,
            heat_ups=ratchet.rounds_until(zone, near.absolute_pa(limit.pressure_pa)),
            through=devices_between(self.network.zoning, self.network.standing, pushers[-1], zone),
            at=place.name,
            tank_m3=tank_m3,
            nominal_m3=None if tank_m3 is None else nominal_m3(tank_m3, self.network.piping.system),
            precharge_pa=max(self.network.start_pa(self._zone(place)) - self.network.piping.heads_pa[place.node], 0.0),
        )

    def _stopping_m3(self, near: Neighbourhood, place: Place, zone: Zone, limit: Limit) -> float | None:
        """The least tank above the gate with which the place is pumped no higher than its limit; None if none does."""

        def holds(volume_m3: float) -> bool:
            tanked = near.with_tank(self._zone(place), self._tank(place, volume_m3))
            return tanked.gauge_pa(self._ratchet(tanked).top_abs_pa(zone)) <= limit.pressure_pa + RAISED_PA

        growth_m3 = math.fsum(near.growths_m3.values())
        return least(holds, growth_m3, floor=growth_m3 * 1e-3) if holds(_LARGEST * growth_m3) else None

    def _tank(self, place: Place, volume_m3: float) -> Tank:
        """A tank charged to the static pressure."""
        start_abs_pa, head_pa = self.network.start_pa(self._zone(place)) + ATMOSPHERE_PA, self._head_pa(place)
        return Tank(volume_m3, max(start_abs_pa - head_pa, ATMOSPHERE_PA), start_abs_pa, None, head_pa)

    def _zone(self, place: Place) -> Zone:
        return self.network.zoning.zone_of[place.node]

    def _head_pa(self, place: Place) -> float:
        return self.network.piping.heads_pa[place.node]

    def _heated(self, zone: Zone) -> Heated:
        return self.network.heated_in[zone][0]

    def _ratchet(self, near: Neighbourhood) -> Ratchet[Zone]:
        return Ratchet(near.peaks.neighbours, self.network.fed)
