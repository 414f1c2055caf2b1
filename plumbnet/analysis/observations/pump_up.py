"""A network to the places that heating without a draw pumps above their limits, and the tank that stops it."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from plumbnet.analysis.equilibrium import RAISED_PA, Limits, Neighbourhood, Neighbourhoods
from plumbnet.analysis.required_tank import TankPlace, nominal_m3, tank_place
from plumbnet.network import Network
from plumbnet.network.loops import HeatedVolume
from plumbnet.network.outlets import DevicesFrom
from plumbnet.network.piping import Zone
from plumbnet.physics.fluids import ATMOSPHERE_PA
from plumbnet.physics.numerics import least
from plumbnet.physics.vessels import Tank
from plumbnet.rules.facts import Limit, PumpedFacts

_LARGEST = 1e5
"""A tank so many times the growth does what any tank can."""


@dataclass(frozen=True)
class PumpUp:
    """Finds what is pumped up, neighbourhood by neighbourhood."""

    network: Network
    limits: Limits
    neighbourhoods: Neighbourhoods

    def found(self) -> Iterator[PumpedFacts]:
        """What some heaters pump up: of the places that one heat-up leaves below their limits, the first to pass."""
        zones = sorted(
            (zone for zone, limit in self.limits.of_zone.items() if limit.part),
            key=lambda zone: self.limits.of_zone[zone].part,
        )
        first: dict[tuple[str, ...], PumpedFacts] = {}
        for place in map(self._pumped, zones):
            if place is not None:
                known = first.setdefault(place.heaters, place)
                if _heat_ups(place) < _heat_ups(known):
                    first[place.heaters] = place
        yield from first.values()

    def _pumped(self, zone: Zone) -> PumpedFacts | None:
        limit, near = self.limits.of_zone[zone], self.neighbourhoods.around(zone)
        if near is None or len(near.pushers(zone)) == 0 or near.highest(zone).pressure_pa > limit.pressure_pa:
            return None
        ratchet = near.ratchet
        pushers = ratchet.pushers(zone) or ((zone,) if ratchet.pumps_itself(zone) else ())
        top_pa = near.gauge_pa(ratchet.top_abs_pa(zone))
        if not pushers or top_pa <= max(limit.pressure_pa, near.highest(zone).pressure_pa) + RAISED_PA:
            return None
        if any(self._is_broken(near, far) for pusher in pushers for far in near.reach(pusher)):
            return None
        return self._told(near, zone, limit, pushers, top_pa)

    def _is_broken(self, near: Neighbourhood, zone: Zone) -> bool:
        """Whether one heat-up brings a zone above its limit, so that there is worse to tell."""
        limit = self.limits.of_zone.get(zone)
        return limit is not None and near.highest(zone).pressure_pa > limit.pressure_pa + RAISED_PA

    def _told(
        self, near: Neighbourhood, zone: Zone, limit: Limit, pushers: tuple[Zone, ...], top_pa: float
    ) -> PumpedFacts:
        own_pa = limit.pressure_pa if limit.own_pa is None else limit.own_pa
        last = self._heated(pushers[-1])
        place = tank_place(self.network, last, self.limits.rules)
        tank_m3 = self._stopping_m3(near, place, zone, limit) if self.network.is_whole else None
        heaters = dict.fromkeys(one.name for each in pushers for one in self.network.heated_in[each])
        return PumpedFacts(
            heaters=tuple(sorted(heaters)),
            part=limit.part,
            basis=limit.basis,
            limit_pa=own_pa,
            top_pa=top_pa - limit.pressure_pa + own_pa,
            heat_ups=near.ratchet.rounds_until(zone, near.absolute_pa(limit.pressure_pa)),
            through=self._through(near, pushers[-1], zone),
            at=place.name,
            tank_m3=tank_m3,
            nominal_m3=None if tank_m3 is None else nominal_m3(tank_m3, self.network.piping.system),
            precharge_pa=max(self.network.start_pa(self._zone(place)) - self.network.piping.heads_pa[place.node], 0.0),
        )

    def _through(self, near: Neighbourhood, pusher: Zone, zone: Zone) -> tuple[str, ...]:
        """One-way devices past which water goes that does not come back: to the place, or from it to what takes it."""
        goals = [zone] if pusher != zone else [far for far in near.reach(zone) if near.has_tanks(far) and far != zone]
        beyond = DevicesFrom(self.network.zoning, self.network.standing, pusher)
        ways = map(beyond.to, goals)
        return tuple(sorted({way[0] for way in ways})) if pusher == zone else next(ways)

    def _stopping_m3(self, near: Neighbourhood, place: TankPlace, zone: Zone, limit: Limit) -> float | None:
        """The least tank above the gate with which the place is pumped no higher than its limit; None if none does."""

        def holds(volume_m3: float) -> bool:
            tanked = near.with_tank(self._zone(place), self._tank(place, volume_m3))
            return tanked.gauge_pa(tanked.ratchet.top_abs_pa(zone)) <= limit.pressure_pa + RAISED_PA

        growth_m3 = math.fsum(near.growths_m3.values())
        return least(holds, growth_m3, floor=growth_m3 * 1e-3) if holds(_LARGEST * growth_m3) else None

    def _tank(self, place: TankPlace, volume_m3: float) -> Tank:
        """A tank charged to the static pressure."""
        start_abs_pa, head_pa = self.network.start_pa(self._zone(place)) + ATMOSPHERE_PA, self._head_pa(place)
        return Tank(volume_m3, max(start_abs_pa - head_pa, ATMOSPHERE_PA), start_abs_pa, None, head_pa)

    def _zone(self, place: TankPlace) -> Zone:
        return self.network.zoning.zone_of[place.node]

    def _head_pa(self, place: TankPlace) -> float:
        return self.network.piping.heads_pa[place.node]

    def _heated(self, zone: Zone) -> HeatedVolume:
        return self.network.heated_in[zone][0]


def _heat_ups(place: PumpedFacts) -> float:
    return math.inf if place.heat_ups is None else place.heat_ups
