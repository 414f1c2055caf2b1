"""What the definitions say of one heater: its verdict, where, and the numbers behind it; searched over all ways."""

from dataclasses import dataclass
from functools import cached_property
from itertools import combinations
from math import inf

from oracles.held_water import DISTRIBUTION_PA, HeldWater
from oracles.ways_out import closing_valves, fewest_devices, opening_pressures
from plumbnet.layout.model.part import Role
from plumbnet.layout.model.system import End

BEST_TO_WORST = ("open", "on-demand", "controlled", "trapped", "sealed")
RAISED_PA = 0.5
"""By how much a zone must come higher for a heater to have raised it."""
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
        """The lowest over all that its water can push into; where nothing sets one, the profile's own, here."""
        reached_pa = self.water.reach_limit_pa(self.zone)
        return DISTRIBUTION_PA + self.water.head_pa(self.end) if reached_pa == inf else reached_pa

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
    def level_pa(self) -> float:
        """The highest that any history played brings it to. Raises TooMany."""
        return self.water.level_pa(self.zone)

    def settled_at(self, level_pa: float) -> float | None:
        """What is told of water that comes to a level; None where nothing but a safety relief valve holds it."""
        held = level_pa < inf and not self.water.is_relieved(self.zone)
        if self.way_out_pa > self.bound_pa:
            return level_pa if held else None
        passed_pa = max(self.way_out_pa, self.water.start_pa[self.zone])
        return min(level_pa, passed_pa) if held else passed_pa

    @cached_property
    def settled_pa(self) -> float | None:
        """Pressure in the worst history. Raises TooMany."""
        return self.settled_at(self.level_pa)

    def place_limit_pa(self, zone: int) -> float:
        """What a zone in reach is judged by: its own limit; where nothing in reach has one, the profile's."""
        own_pa = self.water.own_limit_pa(zone)
        nothing_sets_one = zone == self.zone and self.water.reach_limit_pa(zone) == inf
        return self.limit_pa if nothing_sets_one else own_pa

    @cached_property
    def broken(self) -> set[int]:
        """Zones in reach that come above their own limits through this heater. Raises TooMany."""
        return {zone for zone in self.water.company.rows(self.zone) if self._breaks(zone)}

    def _breaks(self, zone: int) -> bool:
        """Whether a zone comes above its limit, and with this heater hot beside some of the others higher than without.

        Not beside all others alone: where an outlet ends the climb any one of them may be one too many.
        """
        limit_pa = self.place_limit_pa(zone) + WHOLE_PA
        if self.water.level_pa(zone) <= limit_pa:
            return False
        others = sorted(self.water.heaters_in(zone) - {self.heater})
        for count in range(len(others) + 1):
            for cold in map(frozenset, combinations(others, count)):
                level_pa = self.water.level_pa(zone, cold)
                if level_pa > limit_pa and level_pa > self.water.level_pa(zone, cold | {self.heater}) + RAISED_PA:
                    return True
        return False

    @cached_property
    def verdict(self) -> str:
        if self.way_out_pa <= self.bound_pa:
            return "open"
        if self.water.is_idle(self.heater):
            return "on-demand"
        if self.settled_pa is not None and not self.broken:
            return "controlled"
        within = {end for end, pressure in self.opens_pa.items() if pressure <= self.way_out_pa}
        own = {site.end for site in self.water.sites_in(self.zone)}
        return "trapped" if any(self.role_at[end] is not Role.TANK for end in within | own) else "sealed"

    def stopped_by(self) -> set[frozenset[str]]:
        return set() if self.verdict == "open" else fewest_devices(self.water, self.end, self.bound_pa)

    def closings(self) -> list[tuple[str, ...]]:
        closes = self.verdict in {"open", "controlled"}
        return closing_valves(self.water, self.end, self.bound_pa) if closes else []


def answer(water: HeldWater, heater: str) -> Place:
    """The worst place of a heater's water; of equal ones that of the lowest limit, then its own, then by name.

    Limits less than a pascal apart are one: they are the same sums in another order.
    """
    inlet = water.inlet(heater)
    ends = [inlet, *sorted(piece.end for piece in water.pieces(heater))]
    places: dict[int, Place] = {}
    for end in ends:
        places.setdefault(water.zone_of[end], Place(water, heater, end))
    worst = max(BEST_TO_WORST.index(place.verdict) for place in places.values())
    alike = [place for place in places.values() if BEST_TO_WORST.index(place.verdict) == worst]
    return next(one for one in alike if all(one.limit_pa <= other.limit_pa + WHOLE_PA for other in alike))


def loops(water: HeldWater, heater: str) -> set[frozenset[str]]:
    """Parts of each round that a heater warms."""
    return {one.parts for one in water.loops(heater)}
