"""What the definitions say of one heater: its verdict, where, and the numbers behind it; searched over all ways."""

from dataclasses import dataclass
from functools import cached_property

from oracles.held_water import HeldWater
from oracles.warm_water import AIR_PA, Warmed
from oracles.ways_out import closing_valves, fewest_devices, opening_pressures
from plumbnet.layout.part import Role
from plumbnet.layout.system import End

BEST_TO_WORST = ("open", "on-demand", "controlled", "trapped", "sealed")
CLOSE_PA = 1e-3
"""What is sought by halving misses by less."""
WHOLE_PA = 1.0
"""Pressures are compared to one pascal."""


@dataclass(frozen=True)
class Place:
    """Water of a heater in one zone, at a port of it; pressures gauge at datum."""

    water: HeldWater
    heater: str
    end: End

    @cached_property
    def zone(self) -> int:
        return self.water.zone_of[self.end]

    @cached_property
    def limit_pa(self) -> float:
        return self.water.limit_pa(self.end)

    @cached_property
    def static_pa(self) -> float:
        return self.water.static_pa[self.end]

    @cached_property
    def bound_pa(self) -> float:
        """Below this a way out is open: the limit, or the static pressure where that is higher."""
        return max(self.limit_pa, self.static_pa) + WHOLE_PA

    @cached_property
    def opens_pa(self) -> dict[End, float]:
        """Every outlet in reach, by its port, with the pressure at which the way to it opens."""
        return opening_pressures(self.water, self.end)

    @cached_property
    def role_at(self) -> dict[End, Role]:
        return {site.end: site.outlet.role for site in self.water.sites}

    @cached_property
    def way_out_pa(self) -> float:
        """Pressure at which the first way to the street or to open air opens; infinite where there is none."""
        ways_out = (pressure for end, pressure in self.opens_pa.items() if self.role_at[end].is_way_out)
        return min(ways_out, default=float("inf"))

    @cached_property
    def settled_pa(self) -> float | None:
        """Pressure once all is hot. Raises NoHeights, TooMany."""
        settled_pa = self.water.settled_pa(self.zone)
        if self.way_out_pa > self.bound_pa:
            return settled_pa
        passed_pa = max(self.way_out_pa, self.water.start_pa[self.zone])
        return passed_pa if settled_pa is None else min(settled_pa, passed_pa)

    @cached_property
    def verdict(self) -> str:
        if self.way_out_pa <= self.bound_pa:
            return "open"
        if self.water.is_idle(self.heater):
            return "on-demand"
        if self.settled_pa is not None and self.settled_pa <= self.limit_pa + WHOLE_PA:
            return "controlled"
        within = {end for end, pressure in self.opens_pa.items() if pressure <= self.way_out_pa}
        own = {site.end for site in self.water.sites_in(self.zone)}
        return "trapped" if any(self.role_at[end] is not Role.TANK for end in within | own) else "sealed"

    def stopped_by(self) -> set[frozenset[str]]:
        return set() if self.verdict == "open" else fewest_devices(self.water, self.end, self.bound_pa)

    def closings(self) -> list[tuple[str, ...]]:
        closes = self.verdict in {"open", "controlled"}
        return closing_valves(self.water, self.end, self.bound_pa) if closes else []

    @cached_property
    def pool(self) -> set[int]:
        """Zones that settle together with this one."""
        return self.water.rest.pool(self.zone)

    @cached_property
    def limit_level_pa(self) -> float:
        """The level of the pool at which this zone stands at its limit."""
        return self.water.rest.at(self.zone, self.limit_pa + AIR_PA)

    @property
    def short_m3(self) -> float:
        """What its tanks cannot take, of all that comes to them, at the limit or where a safety relief valve lifts."""
        lifts_first = self.water.is_relieved(self.zone) and self._level_pa < self.limit_level_pa
        if self.verdict not in {"trapped", "sealed"} or (self._level_pa <= self.limit_level_pa and not lifts_first):
            return 0.0
        taken = self.water.pool_takes_m3(self.pool, min(self.limit_level_pa, self._level_pa))
        return max(0.0, self.water.pool_growth_m3(self.pool) - taken)

    @property
    def _level_pa(self) -> float:
        return self.water.rest.at(self.zone, self.water.rest.levels[self.zone])

    @property
    def shared_m3(self) -> float:
        """Growth of all water that settles together with it."""
        return sum(self.water.growth_m3.get(zone, 0.0) for zone in self.pool)

    def served(self) -> set[int]:
        """Zones whose water would come to a tank beside the heater if that one stood at this limit.

        Looked for among those that settle with it or above the limit; where a reducer had let water through, among all.
        """
        inlet = self.water.zone_of[self.water.inlet(self.heater)]
        target = inlet if inlet in self.pool else self.zone
        rest = self.water.rest
        high = {zone for zone in rest.levels if rest.at(zone, rest.levels[zone]) > self.limit_level_pa + CLOSE_PA}
        found = self._coming(target, high | self.pool)
        passed = any(rest.basins[zone].growth_m3 > self.water.growth_m3.get(zone, 0.0) + 1e-15 for zone in found)
        return self._coming(target, set(rest.levels)) if passed else found

    def _coming(self, target: int, zones: set[int]) -> set[int]:
        found = {target}
        while more := {g.near for g in self.water.rest.all_gates if g.far in found and g.near in zones} - found:
            found |= more
        return found

    def waters(self) -> list[tuple[str, Warmed]]:
        """Water that a tank beside the heater would serve, piece by piece, with what warms it most."""
        served = self.served()
        return [
            (heater, piece) for heater, piece in self.water.warmest.values() if self.water.zone_of[piece.end] in served
        ]


def answer(water: HeldWater, heater: str) -> Place:
    """The worst place of a heater's water; of equal ones that of the lowest limit, then its own, then by name."""
    inlet = water.inlet(heater)
    ends = [inlet, *sorted(piece.end for piece in water.pieces(heater))]
    places: dict[int, Place] = {}
    for end in ends:
        places.setdefault(water.zone_of[end], Place(water, heater, end))
    return max(places.values(), key=lambda place: (BEST_TO_WORST.index(place.verdict), -place.limit_pa))


def loops(water: HeldWater, heater: str) -> set[frozenset[str]]:
    """Parts of each round that a heater warms."""
    return {one.parts for one in water.loops(heater)}
