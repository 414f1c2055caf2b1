"""A zone to all that settle with it, and the highest pressures to which any history of heating brings each of them."""

import math
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property
from itertools import combinations

from plumbnet.analysis.equilibrium.zone_loads import ZoneLoads
from plumbnet.budgets import Budget
from plumbnet.layout.model import Role
from plumbnet.network.piping import Zone
from plumbnet.physics.equilibrium import ZoneLoad
from plumbnet.physics.fluids import ATMOSPHERE_PA
from plumbnet.physics.histories import History, Neighbours, Peaks, Pushes, Ratchet, lifted_abs_pa, needed_abs_pa
from plumbnet.physics.vessels import Tank

MOST_OTHERS = 5
"""Heaters beside one of which every choice is tried to see what it adds to."""
RAISED_PA = 0.5
"""By how much growth must raise a zone to count as raising it: less than pressures are compared to."""

_NOTHING = 1e-9
"""Share of a growth that sums of the same few volumes may differ by."""


@dataclass(frozen=True, slots=True)
class Highest:
    """What a zone comes to, gauge at datum: `reached_pa` by `history`, and `pressure_pa`, which no history passes.

    Where every order comes to the same, that is told as one stage.
    """

    pressure_pa: float
    reached_pa: float
    history: History[Zone]


@dataclass(frozen=True)
class Neighbourhood:
    """Zones that settle together. Pressures are gauge at datum; `lift_pa` keeps them above nothing inside."""

    peaks: Peaks[Zone]
    lift_pa: float
    loading: ZoneLoads
    _only: dict[tuple[str, ...], "Neighbourhood"] = field(default_factory=dict)
    _heaters: dict[Zone, dict[str, None]] = field(default_factory=dict)
    _relieved: dict[Zone, bool] = field(default_factory=dict)
    _highest: dict[Zone, Highest] = field(default_factory=dict)

    @property
    def zones(self) -> Collection[Zone]:
        """All of them."""
        return self._neighbours.loads.keys()

    @property
    def growths_m3(self) -> Mapping[Zone, float]:
        """What each heated zone grows by that can rise at all."""
        return self._neighbours.growth_m3

    def highest(self, zone: Zone) -> Highest:
        """What a zone comes to in the worst history."""
        if zone not in self._highest:
            self._highest[zone] = self._of_peak(zone)
        return self._highest[zone]

    def _of_peak(self, zone: Zone) -> Highest:
        peak = self.peaks.of(zone)
        history = peak.history
        if history and peak.in_any_order:
            history = (tuple(each for stage in history for each in stage),)
        return Highest(self.gauge_pa(peak.highest_abs_pa), self.gauge_pa(peak.reached_abs_pa), history)

    def reached_pa(self, zone: Zone) -> float:
        """What a zone is known to come to, never above its highest; quicker to tell."""
        return self.gauge_pa(self.peaks.reached_abs_pa(zone))

    def passes(self, zone: Zone, level_pa: float) -> bool:
        """Whether any history may bring a zone above a level; quicker than to ask how high it comes."""
        return self.peaks.passes(zone, self.absolute_pa(level_pa))

    def reach(self, zone: Zone) -> Mapping[Zone, Pushes]:
        """All zones into which water of a zone can push, itself first."""
        return self._neighbours.reach(zone)

    @property
    def budget(self) -> Budget:
        """What may be spent on tanks that are thought in it."""
        return self._neighbours.budget

    def companions(self, zone: Zone) -> int:
        """How many heated zones push into each other's water among those that push into a zone, at most."""
        return len(self._company(zone))

    def is_narrowed(self, zone: Zone) -> bool:
        """Whether how high those come is narrowed as far as is known; of more than the budgets have, less is sought."""
        return self._neighbours.is_narrowed(self._company(zone))

    def _company(self, zone: Zone) -> tuple[Zone, ...]:
        pushers = self.pushers(zone)  # those that push into one zone are of one company
        return self._neighbours.company(pushers[0]) if pushers else ()

    def has_tanks(self, zone: Zone) -> bool:
        """Whether a sound tank stands in a zone."""
        return bool(self._neighbours.loads[zone].tanks)

    def pushers(self, zone: Zone) -> tuple[Zone, ...]:
        """Heated zones whose growth can push into a zone of the neighbourhood; none into one that is not of it."""
        return self._neighbours.pushers.get(zone, ())

    def lifted_pa(self, start: Zone, goal: Zone, level_pa: float) -> float:
        """What a zone in reach must at least stand at when the first stands at a level."""
        return self.gauge_pa(lifted_abs_pa(self.reach(start)[goal], self.absolute_pa(level_pa)))

    def opened(self, zone: Zone, level_pa: float) -> Iterator[Zone]:
        """Zones in reach whose first outlet is open once the zone stands at a level."""
        for far, rows in self.reach(zone).items():
            opens_pa = self.opens_pa(far)
            if opens_pa < math.inf and needed_abs_pa(rows, self.absolute_pa(opens_pa)) <= self.absolute_pa(level_pa):
                yield far

    def is_relieved(self, zone: Zone) -> bool:
        """Whether a zone comes so high that water leaves it, and by safety relief valves alone."""
        if zone not in self._relieved:
            self._relieved[zone] = self._is_let_off(zone)
        return self._relieved[zone]

    def _is_let_off(self, zone: Zone) -> bool:
        lets_go_pa = self.lets_go_pa(zone)
        if lets_go_pa == math.inf or not self.passes(zone, lets_go_pa - RAISED_PA):
            return False
        opened = list(self.opened(zone, lets_go_pa + RAISED_PA))
        roles = {role for each in opened for role in self.loading.opened(each, self.opens_pa(each) + RAISED_PA)}
        return Role.SAFETY_RELIEF in roles and not any(role.is_way_out for role in roles)

    def lets_go_pa(self, zone: Zone) -> float:
        """Pressure of a zone at which an outlet in its reach lets out all that comes; infinite where none does."""
        return self.gauge_pa(self._neighbours.lets_go_abs_pa(zone))

    def static_pa(self, zone: Zone) -> float:
        """Pressure of a zone while nothing is warm."""
        return self.gauge_pa(self._neighbours.cold[zone])

    def opens_pa(self, zone: Zone) -> float:
        """Pressure at which the first outlet of a zone lets out all that comes; infinite where it has none."""
        load = self._neighbours.loads[zone]
        return self.gauge_pa(load.opens_abs_pa) if load.outlet_abs_pa < math.inf else math.inf

    def is_brought_by(self, zone: Zone, heater: str, limit_pa: float) -> bool:
        """Whether a zone comes above a limit through a heater: beside some of the others, and less high without it.

        Beside all others alone it would not do: where a relief valve ends the climb, two of three may be too much, and
        none of them alone. Of many others only none and all are tried, and then whether it raises the zone at all;
        where there are none, all that it comes to is through it.
        """
        company = self._heaters_of(zone)
        count = len(company) - (heater in company)
        if not count:
            return self.passes(zone, max(limit_pa, self.static_pa(zone)) + RAISED_PA)
        if count > MOST_OTHERS and self.only((heater,)).passes(zone, self.static_pa(zone) + RAISED_PA):
            return True
        others = [name for name in company if name != heater]
        return any(self._is_raised(zone, heater, some, limit_pa) for some in _choices(others))

    def _is_raised(self, zone: Zone, heater: str, others: tuple[str, ...], limit_pa: float) -> bool:
        """Whether some heaters bring a zone above a limit with another, and less high without it.

        How high it comes without is sought only where neither the limit nor what is known to be reached tells.
        """
        raised, less = self.only((*others, heater)), self.only(others)
        if not raised.passes(zone, limit_pa + RAISED_PA):
            return False
        if not less.passes(zone, limit_pa):
            return True
        if not raised.passes(zone, less.reached_pa(zone) + RAISED_PA):
            return False
        if not less.passes(zone, raised.reached_pa(zone) - RAISED_PA):
            return True
        return raised.passes(zone, less.highest(zone).pressure_pa + RAISED_PA)

    def _heaters_of(self, zone: Zone) -> dict[str, None]:
        """Names of the heaters that have to do with what pushes into a zone, sorted."""
        if zone not in self._heaters:
            names = {name for each in self._company(zone) for name in self.loading.heaters_in(each)}
            self._heaters[zone] = dict.fromkeys(sorted(names))
        return self._heaters[zone]

    def only(self, heaters: tuple[str, ...]) -> "Neighbourhood":
        """The same with all water cold but what some heaters warm."""
        names = tuple(sorted(heaters))
        if names not in self._only:
            grown = {zone: each for zone, each in self.loading.growth_by(names).items() if zone in self._resting}
            own = self._neighbours.loads
            loads = self._resting | {zone: _growing(own[zone], each) for zone, each in grown.items()}
            neighbours = self._neighbours.warmed(loads, self._neighbours.in_order(grown))
            self._only[names] = Neighbourhood(Peaks(neighbours), self.lift_pa, self.loading)
        return self._only[names]

    @cached_property
    def _resting(self) -> dict[Zone, ZoneLoad]:
        """The loads while all water stays cold."""
        return {zone: replace(load, expansions_m3={}) for zone, load in self._neighbours.loads.items()}

    @cached_property
    def ratchet(self) -> Ratchet[Zone]:
        """What many heat-ups do to its zones."""
        return Ratchet(self._neighbours, self.loading.network.fed)

    def is_held(self, zone: Zone) -> bool:
        """Whether something other than a safety relief valve holds a zone."""
        has_end = self.lets_go_pa(zone) < math.inf or self.highest(zone).pressure_pa < math.inf
        return has_end and not self.is_relieved(zone)

    def with_tank(self, zone: Zone, tank: Tank) -> "Neighbourhood":
        """The same with one tank more, absolute and at datum as if nothing were lifted."""
        load = self._neighbours.loads[zone]
        lifted = replace(tank, start_abs_pa=tank.start_abs_pa + self.lift_pa, head_pa=tank.head_pa + self.lift_pa)
        return self._with({**self._neighbours.loads, zone: replace(load, tanks=(*load.tanks, lifted))})

    def charged(self, charges_pa: Mapping[str, float]) -> "Neighbourhood":
        """The same with some tanks charged otherwise, gauge at each tank."""
        loads = dict(self._neighbours.loads)
        for zone, load in loads.items():
            named = zip(self.loading.takers_in(zone), load.tanks, strict=False)
            tanks = (
                replace(tank, charge_abs_pa=charges_pa[name] + ATMOSPHERE_PA) if name in charges_pa else tank
                for name, tank in named
            )
            loads[zone] = replace(load, tanks=tuple(tanks))
        return self._with(loads)

    def _with(self, loads: Mapping[Zone, ZoneLoad]) -> "Neighbourhood":
        return Neighbourhood(Peaks(self._neighbours.with_tanks(loads)), self.lift_pa, self.loading)

    @property
    def _neighbours(self) -> Neighbours[Zone]:
        return self.peaks.neighbours

    def absolute_pa(self, gauge_pa: float) -> float:
        """A pressure as the physics have it: absolute, and lifted."""
        return gauge_pa + ATMOSPHERE_PA + self.lift_pa

    def gauge_pa(self, abs_pa: float) -> float:
        """The other way round."""
        return abs_pa - ATMOSPHERE_PA - self.lift_pa


def _choices(others: Sequence[str]) -> Iterator[tuple[str, ...]]:
    """None of the others, all, and where they are few every choice between: what is tried fast comes first."""
    yield ()
    yield tuple(others)
    if len(others) <= MOST_OTHERS:
        for count in range(1, len(others)):
            yield from combinations(others, count)


def _growing(load: ZoneLoad, growth_m3: float) -> ZoneLoad:
    """A load that grows by so much; what summing leaves of nothing is nothing."""
    return replace(load, expansions_m3={"some": growth_m3} if growth_m3 > _NOTHING * load.expansion_m3 else {})
