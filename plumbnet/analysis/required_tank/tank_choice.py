"""A heater's case to the tank that it needs: the place, the heaters it is to hold, and the water it is sized for."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from functools import cached_property

from plumbnet.analysis.equilibrium import LimitBreach, Limits, Neighbourhood, Share, SharedTanks, broken_places
from plumbnet.analysis.required_tank.place import TankPlace
from plumbnet.analysis.required_tank.tank_location import TankPlaces
from plumbnet.analysis.required_tank.tank_task import ALWAYS, Task, WarmedWater, tank_task, waters
from plumbnet.analysis.required_tank.tank_trial import TankTrial
from plumbnet.budgets import MOST_LEVELLED
from plumbnet.network import Network
from plumbnet.network.loops import HeatedVolume
from plumbnet.network.piping import Zone
from plumbnet.physics.histories import History
from plumbnet.rules.facts import Need

_SAME = 5e-5
"""Share by which two reckonings of one volume may differ: the tank is sought to a pascal."""
_LIKE = 1e-6
"""Share by which the sizes at two places may differ that are alike."""


@dataclass(frozen=True)
class Gathered:
    """What was worked out for one heater of a network and counts for others: places, waters of zones, tanks tried.

    `told` are histories by the names of heaters, `blamed` the heaters of a zone that are too much somewhere in a
    neighbourhood; `shared` is the last trial of a place for all heaters whose water comes to it, by the zones of that
    water, the limit there and the method.
    """

    places: TankPlaces
    waters: dict[frozenset[Zone], tuple[WarmedWater, ...]] = field(default_factory=dict)
    trials: dict[tuple[Task, str, tuple[str, ...]], TankTrial] = field(default_factory=dict)
    blamed: dict[Zone, tuple[Neighbourhood, tuple[HeatedVolume, ...]]] = field(default_factory=dict)
    told: dict[History[Zone], tuple[tuple[str, ...], ...]] = field(default_factory=dict)
    shared: dict[tuple[TankPlace, frozenset[Zone], float, str], TankTrial] = field(default_factory=dict)


@dataclass(frozen=True)
class TankChoice:
    """Where a tank for a heater's water in one zone would hang.

    `limit_pa` is the lowest limit in reach as it counts in the zone, gauge at datum; `company` what settles together
    with it; `broken` are the places that it brings above their limits; `is_wanted` says that it needs a tank.
    `gathered` keeps for all heaters what was worked out for one.
    """

    network: Network
    limits: Limits
    neighbourhood: Neighbourhood
    settling: SharedTanks
    heated: HeatedVolume
    zone: Zone
    limit_pa: float
    company: Share
    broken: tuple[LimitBreach, ...]
    is_wanted: bool
    method: str
    gathered: Gathered

    @property
    def waters(self) -> tuple[WarmedWater, ...]:
        """All heated water that the tank would serve; of a heater that stays cold its own."""
        return self.task.waters

    @property
    def task(self) -> Task:
        """What the tank is sized for."""
        return self._chosen.task

    @cached_property
    def need(self) -> Need:
        """The tank that this water needs."""
        return self._chosen.need()

    @property
    def short_m3(self) -> float:
        """What finds no room all at once; or what the tank has to take in the worst order, where that is more."""
        at_once_m3, takes_m3 = self.company.short_m3, self._chosen.takes_m3
        return takes_m3 if takes_m3 > at_once_m3 * (1.0 + _SAME) else at_once_m3

    @property
    def asked_m3(self) -> float | None:
        """What the method of the rules asks for, as if no tank were there; None where plain physics is the method."""
        return None if self.method == ALWAYS else self._chosen.asked_m3

    def method_charge_pa(self, tank: str) -> float | None:
        """What the method of the rules charges a tank to, gauge at the tank; None where that is the line pressure."""
        return None if self.method == ALWAYS else self._chosen.method_charge_pa(tank)

    def comes_to_pa(self, size_m3: float) -> float:
        """What the zone of the tank comes to, gauge at the tank, with one of some size."""
        return self._chosen.comes_to_pa(size_m3)

    def waters_in(self, zones: frozenset[Zone]) -> tuple[WarmedWater, ...]:
        """All heated water in zones; gathered once for all heaters there."""
        known = self.gathered.waters
        if zones not in known:
            known[zones] = waters(self.network, self.settling.loading.waters(zones))
        return known[zones]

    @cached_property
    def _chosen(self) -> TankTrial:
        """The place where one tank does for most heaters, of those the smallest, of like ones the first by name.

        Looked for beside this heater and beside those whose water it brings too high. It holds all heaters whose water
        comes to it, if a tank there can; else this heater alone.
        """
        if not self.is_wanted:
            return self._trial(self._places[0], alone=self.heated.is_idle)
        if self.neighbourhood.companions(self.zone) > MOST_LEVELLED:  # no tank is tried at any place
            return self._trial(self._places[0], alone=False)
        trials = [self._trial(place, alone=False) for place in self._places]
        held = _held(trials) or _held([trial for trial in map(self._alone, trials) if trial is not None])
        if held:
            return _smallest(held)
        return trials[0]

    def _alone(self, trial: TankTrial) -> TankTrial | None:
        """The same for this heater alone, if it was for more."""
        return self._tried(trial.task, (self.heated,)) if len(trial.heaters) > 1 else None

    def _trial(self, place: TankPlace, *, alone: bool) -> TankTrial:
        """A tank at a place, for all heaters whose water comes to it."""
        if alone:
            warmed = ((self.heated, piece) for piece in self.heated.pieces)
            return self._tried(self._task_at(place, waters(self.network, warmed)), (self.heated,))
        zones = self._served(place)
        key = (place, zones, self._limit_at(place), self.method)
        known = self.gathered.shared.get(key)
        if known is not None and known.neighbourhood is self.neighbourhood and self.heated.name in known.names:
            return known
        served = {heated.name: heated for zone in sorted(zones) for heated in self.network.heated_in.get(zone, ())}
        served |= {heated.name: heated for heated in self._to_blame(place)}
        is_one_of_them = self.heated.name in served
        served[self.heated.name] = self.heated
        task = self._task_at(place, self.waters_in(zones))
        found = self._tried(task, tuple(served[name] for name in sorted(served)))
        if is_one_of_them:
            self.gathered.shared[key] = found
        return found

    def _tried(self, task: Task, heaters: tuple[HeatedVolume, ...]) -> TankTrial:
        """A task for some heaters of this neighbourhood, tried once for all of them."""
        known, key = self.gathered.trials, (task, self.method, tuple(heated.name for heated in heaters))
        found = known.get(key)
        if found is None or found.neighbourhood is not self.neighbourhood:
            loading = self.settling.loading
            found = TankTrial(self.network, self.limits, self.neighbourhood, task, self.method, heaters, loading)
            known[key] = found
        return found

    def _to_blame(self, place: TankPlace) -> Iterator[HeatedVolume]:
        """Heaters whose water can come to a place and is too much somewhere."""
        zone = self.network.zoning.zone_of[place.node]
        for pusher in self.neighbourhood.pushers(zone):
            yield from self._blamed_in(pusher)

    def _blamed_in(self, zone: Zone) -> tuple[HeatedVolume, ...]:
        """Heaters of a zone that are too much somewhere; looked for once in this neighbourhood."""
        near, found = self.gathered.blamed.get(zone, (None, ()))
        if near is not self.neighbourhood:
            heaters = self.network.heated_in.get(zone, ())
            found = tuple(one for one in heaters if self._is_to_blame(one))
            self.gathered.blamed[zone] = (self.neighbourhood, found)
        return found

    def _is_to_blame(self, heated: HeatedVolume) -> bool:
        return any(broken_places(self.limits, self.neighbourhood, heated.name, heated.inlet))

    def _task_at(self, place: TankPlace, warmed: tuple[WarmedWater, ...]) -> Task:
        return tank_task(self.network, place, self._limit_at(place), warmed)

    def _limit_at(self, place: TankPlace) -> float:
        """The tank's zone may come as high as this one lifts it at its limit."""
        zone = self.network.zoning.zone_of[place.node]
        if zone in self.neighbourhood.reach(self.zone):
            return self.neighbourhood.lifted_pa(self.zone, zone, self.limit_pa)
        return self.limit_pa

    def _served(self, place: TankPlace) -> frozenset[Zone]:
        """Zones whose water would come to a tank at a place."""
        zone, zones = self.network.zoning.zone_of[place.node], self.company.zones
        known = zone in zones or zone in self.neighbourhood.reach(self.zone)
        return self.settling.pushing(zone if known else self.zone, zones, self.limit_pa)

    @cached_property
    def _places(self) -> tuple[TankPlace, ...]:
        places = self.gathered.places
        others = (one for place in self.broken for one in places.in_zone(place.zone))
        return tuple(dict.fromkeys((places.of(self.heated), *others)))


def _held(trials: Sequence[TankTrial]) -> list[tuple[TankTrial, float]]:
    """Of the trials in which a tank holds those that serve most heaters; what serves fewer is not tried."""
    for count in sorted({len(trial.heaters) for trial in trials}, reverse=True):
        serving = (trial for trial in trials if len(trial.heaters) == count)
        held = [(trial, least_m3) for trial in serving if (least_m3 := trial.least_m3) is not None]
        if held:
            return held
    return []


def _smallest(held: Sequence[tuple[TankTrial, float]]) -> TankTrial:
    """Of trials that serve as many heaters the one of the smallest tank, of like ones the first by its place."""
    enough_m3 = min(least_m3 for _, least_m3 in held) * (1.0 + _LIKE)
    return min((trial for trial, least_m3 in held if least_m3 <= enough_m3), key=lambda trial: trial.task.place.name)
