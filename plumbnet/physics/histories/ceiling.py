"""The pressure that no history passes: what zones would have to hold at a level, against what grows and can come there.

One module, for every step asks the same levels of the same zones.
Source: own derivation, in three steps that are each sound for every order and all portions.

1. A zone at a level has lifted all that it can push into; and no zone ends lower than any one heater alone lifts it,
   for more growth lowers nothing. So much the tanks must have taken.
2. Growth of a zone fills another only up to what the growing zone lifts it to at its own ceiling, and its own tanks to
   any level. Whether all can be filled so is a maximum flow from heated zones to tanks.
3. Where the growth within a zone's reach could not by itself lift it there, the last to push from outside must stand
   high enough to do so, and must then have lifted all else that it can push into.
"""

import math
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Generic

from plumbnet.budgets import MOST_LEVELLED
from plumbnet.physics.equilibrium import FlowGraph
from plumbnet.physics.histories.neighbours import Neighbours
from plumbnet.physics.histories.push import Zone, lifted_abs_pa, needed_abs_pa

CEILING_CLOSE_PA = 5e-3
"""To which a ceiling is sought; no share of it, for what stands at datum has the height of the datum in it."""
_ROUNDING = 1e-12
"""Share of a level that arithmetic leaves unsure, which is more than that only above fifty thousand bar."""
_STEP_PA = 1e3
"""First step upwards where nothing is known above a level; each is twice the last."""
_NOTHING_M3 = 1e-12
_ROUNDS = 3
"""Times that all ceilings are lowered, each by what the others have become; after that little is gained."""
_MOST_SETS = 256
"""Sets of heated zones whose growth is held against what only they can fill; of more, a flow is computed."""
_MOST_SOURCES = 24
"""Heated zones of which a flow is still computed; of more, all growth is held against all room."""

Levels = Mapping[Zone, float]


@dataclass
class Ceilings(Generic[Zone]):
    """Ceilings of the heated zones of one company. Absolute, at datum."""

    neighbours: Neighbours[Zone]
    company: tuple[Zone, ...]
    _highest: dict[tuple[Zone, tuple[Zone, ...]], Levels[Zone]] = field(default_factory=dict)

    def found(self, reached: Levels[Zone]) -> Levels[Zone]:
        """The ceiling of each heated zone, never below what it was found to come to.

        Cost: some thirty flows for each zone whose ceiling is not what was reached, else one. Of many zones none is
        computed and the ceilings are higher, as the budgets say.
        """
        if not self._is_narrowed:
            return {zone: max(reached[zone], level) for zone, level in self._ceiling.items()}
        for _ in range(_ROUNDS):
            before = dict(self._ceiling)
            for zone in self.company:
                self._ceiling[zone], self._highest = self._lowered(zone, reached[zone]), {}
            if all(is_as_high(before[zone], self._ceiling[zone]) for zone in self.company):
                break
        return self._ceiling

    @cached_property
    def _is_narrowed(self) -> bool:
        return self.neighbours.is_narrowed(self.company)

    def may_pass(self, zone: Zone, level_abs_pa: float) -> bool:
        """Whether a heated zone may come above a level: one flow. False only where no history brings it there."""
        if self._ceiling[zone] <= level_abs_pa:
            return False
        return not self._is_narrowed or self._can_come_to(zone, level_abs_pa)

    @cached_property
    def _ceiling(self) -> dict[Zone, float]:
        """What is known of each so far; at first, what an outlet lets go at.

        Of many zones also what all growth of the company would bring each to: that is all that is asked of them.
        """
        if self._is_narrowed or len(self.company) > MOST_LEVELLED:
            return {zone: self.neighbours.lets_go_abs_pa(zone) for zone in self.company}
        return {zone: self._filled_by_all_abs_pa(zone) for zone in self.company}

    def _lowered(self, zone: Zone, low: float) -> float:
        high = self._ceiling[zone]
        if high <= low + _close_pa(low) or not self._can_come_to(zone, low + _close_pa(low)):
            return low
        if self._can_come_to(zone, high):
            return high
        return _least_beyond(lambda level: self._can_come_to(zone, level), low, high)

    def _can_come_to(self, zone: Zone, level_abs_pa: float) -> bool:
        """False only where no history can bring a heated zone so high."""
        reach = self.neighbours.reach(zone)
        lifted = {far: lifted_abs_pa(row, level_abs_pa) for far, row in reach.items()}
        if any(self._lets_go_below(far, pressure) for far, pressure in lifted.items()):
            return False
        return self._can_be_filled(zone, level_abs_pa, lifted)

    def _can_be_filled(self, zone: Zone, level_abs_pa: float, lifted: Levels[Zone]) -> bool:
        """The same, once no outlet lets go below: whether what grows and can come there fills what has to be filled."""
        neighbours, near = self.neighbours, self._near[zone]
        least = {far: max(self._least[far], lifted.get(far, -math.inf)) for far in near.filled}
        if not self._fills(near.sources, neighbours.cold, least):
            return False
        if not near.outside or self._lifts_itself(zone, neighbours.cold[zone], lifted):
            return True

        def is_pushed(level: float) -> bool:
            return any(self._pushes_last(zone, pusher, level, least) for pusher in near.outside)

        if is_pushed(level_abs_pa):  # the hardest first, then the easiest: what lies between takes a search
            return True
        if not is_pushed(neighbours.cold[zone]):
            return False
        weakest = _least_beyond(
            lambda level: not self._lifts_itself(zone, level, lifted), neighbours.cold[zone], level_abs_pa
        )
        return is_pushed(weakest)

    def _filled_by_all_abs_pa(self, zone: Zone) -> float:
        """Where the tanks within a zone's reach would have taken everything that grows."""
        neighbours = self.neighbours
        neighbours.budget.spend(len(neighbours.reach(zone)))
        return neighbours.after(neighbours.cold, zone, self._grown_m3)[zone]

    @cached_property
    def _grown_m3(self) -> float:
        """All growth of the company."""
        return math.fsum(self.neighbours.growth_m3[zone] for zone in self.company)

    def _lets_go_below(self, zone: Zone, pressure_abs_pa: float) -> bool:
        load = self.neighbours.loads[zone]
        return load.outlet_abs_pa < math.inf and pressure_abs_pa > load.opens_abs_pa + _close_pa(load.opens_abs_pa)

    def _lifts_itself(self, zone: Zone, start_abs_pa: float, lifted: Levels[Zone]) -> bool:
        """Whether growth within a zone's reach could alone lift it and all beyond, once it stands at a level."""
        cold, reach = self.neighbours.cold, self.neighbours.reach(zone)
        begun = {far: max(cold[far], lifted_abs_pa(row, start_abs_pa)) for far, row in reach.items()}
        return self._fills(self._near[zone].inside, begun, lifted)

    def _pushes_last(self, zone: Zone, pusher: Zone, level_abs_pa: float, least: Levels[Zone]) -> bool:
        """Whether a heated zone outside can push into the reach of one that stands at a level, all else filled."""
        reach, own = self.neighbours.reach(zone), self.neighbours.reach(pusher)
        level = min(
            needed_abs_pa(own[far], lifted_abs_pa(row, level_abs_pa) - _close_pa(level_abs_pa))
            for far, row in reach.items()
            if far in own
        )
        if level > self._ceiling[pusher] + _close_pa(self._ceiling[pusher]):
            return False
        lifted = {far: lifted_abs_pa(row, level) for far, row in own.items()}
        if any(self._lets_go_below(far, pressure) for far, pressure in lifted.items()):
            return False
        filled = {far: max(pressure, lifted.get(far, -math.inf)) for far, pressure in least.items()}
        return self._fills(self._near[zone].sources, self.neighbours.cold, filled)

    def _fills(self, sources: tuple[Zone, ...], start: Levels[Zone], end: Levels[Zone]) -> bool:
        """Whether some zones can fill the tanks of others from one level to another."""
        self.neighbours.budget.spend(len(end) + 2)
        bands: list[_Band[Zone]] = []
        for far, end_abs_pa in end.items():
            for band in self._bands(far, sources, start[far], end_abs_pa):
                if not band.sources:
                    return False
                bands.append(band)
        growth = {zone: self.neighbours.growth_m3[zone] for zone in sources}
        wanted, given = math.fsum(band.volume_m3 for band in bands), math.fsum(growth.values())
        if wanted > given + _NOTHING_M3:
            return False
        if all(len(band.sources) == len(sources) for band in bands):
            return True
        return len(sources) > _MOST_SOURCES or _flows(growth, bands)

    def _bands(
        self, far: Zone, sources: tuple[Zone, ...], start_abs_pa: float, end_abs_pa: float
    ) -> "Iterator[_Band[Zone]]":
        """What the tanks of a zone take, level by level, with those that can push so high."""
        highest, level = self._lifts_to(far, sources), start_abs_pa
        for top in sorted({*(each for each in highest.values() if level < each < end_abs_pa), end_abs_pa}):
            room_m3 = self.neighbours.room_m3(far, level, top)
            if room_m3 > _NOTHING_M3:
                yield _Band(room_m3, tuple(zone for zone, most in highest.items() if most >= top or zone == far))
            level = top

    def _lifts_to(self, far: Zone, sources: tuple[Zone, ...]) -> Levels[Zone]:
        """What each of some zones can lift a zone to at its ceiling; its own growth to any level."""
        if (far, sources) not in self._highest:
            rows = {zone: reach[far] for zone in sources if far in (reach := self.neighbours.reach(zone))}
            lifts = {zone: lifted_abs_pa(row, self._ceiling[zone]) for zone, row in rows.items()}
            self._highest[far, sources] = lifts | ({far: math.inf} if far in lifts else {})
        return self._highest[far, sources]

    @cached_property
    def _least(self) -> dict[Zone, float]:
        """What each zone comes to at the least in every history: what the strongest heated zone alone lifts it to."""
        least = dict(self.neighbours.cold)
        for zone in self.company:
            alone = self.neighbours.after(self.neighbours.cold, zone, self.neighbours.growth_m3[zone])
            for far in self.neighbours.reach(zone):
                least[far] = max(least[far], alone[far])
        return least

    @cached_property
    def _near(self) -> "dict[Zone, _Near[Zone]]":
        return {zone: self._nearness(zone) for zone in self.company}

    def _nearness(self, zone: Zone) -> "_Near[Zone]":
        neighbours, reach = self.neighbours, self.neighbours.reach(zone)
        pushing = dict.fromkeys(each for far in reach for each in neighbours.pushers[far])
        outside = tuple(each for each in pushing if each not in reach)
        beyond = dict.fromkeys(far for each in outside for far in neighbours.reach(each) if far not in reach)
        filled = (*reach, *(far for far in beyond if far in pushing or self._takes_from_others(far)))
        sources = dict.fromkeys(each for far in filled for each in neighbours.pushers[far])
        return _Near(filled, tuple(sources), tuple(each for each in self.company if each in reach), outside)

    def _takes_from_others(self, zone: Zone) -> bool:
        """Whether a zone takes more in every history than it grows by itself; others may be left out, which is safe."""
        wanted_m3 = self.neighbours.room_m3(zone, self.neighbours.cold[zone], self._least[zone])
        return wanted_m3 > self.neighbours.growth_m3.get(zone, 0.0)


@dataclass(frozen=True, slots=True)
class _Near(Generic[Zone]):
    """What counts for the ceiling of a zone: zones that are filled, those that fill them, those in its reach or not."""

    filled: tuple[Zone, ...]
    sources: tuple[Zone, ...]
    inside: tuple[Zone, ...]
    outside: tuple[Zone, ...]


@dataclass(frozen=True, slots=True)
class _Band(Generic[Zone]):
    """Room in the tanks of a zone between two levels, and the heated zones that can push so high."""

    volume_m3: float
    sources: tuple[Zone, ...]


def _flows(growth_m3: Mapping[Zone, float], bands: "list[_Band[Zone]]") -> bool:
    """Whether what grows can fill every band.

    So it is where the bands that only some zones can fill hold no more than those grow by, for all such sets of zones.
    Source: Gale 1957, the theorem of supply and demand (from memory); of many sets a maximum flow.
    """
    held: dict[frozenset[Zone], float] = {}
    for band in bands:
        held[frozenset(band.sources)] = held.get(frozenset(band.sources), 0.0) + band.volume_m3
    sets: set[frozenset[Zone]] = set()
    for own in held:
        sets |= {own} | {own | other for other in sets}
        if len(sets) > _MOST_SETS:
            return _is_met_by_flow(growth_m3, bands)
    return all(
        math.fsum(volume_m3 for own, volume_m3 in held.items() if own <= some)
        <= math.fsum(growth_m3[zone] for zone in some) + _NOTHING_M3
        for some in sets
    )


def _is_met_by_flow(growth_m3: Mapping[Zone, float], bands: "list[_Band[Zone]]") -> bool:
    flow = FlowGraph()
    for number, band in enumerate(bands):
        flow.supply(number, band.volume_m3)
        for zone in band.sources:
            flow.join(number, ("zone", zone))
    for zone, volume_m3 in growth_m3.items():
        flow.drain(("zone", zone), volume_m3 + _NOTHING_M3)
    return not any(isinstance(left, int) for left in flow.surplus())


def is_as_high(one_abs_pa: float, other_abs_pa: float, times: float = 1.0) -> bool:
    """Whether two ceilings are the same, to so many times what they are sought to."""
    lower, higher = sorted((one_abs_pa, other_abs_pa))
    return lower == higher or higher - lower <= times * _close_pa(lower)


def _close_pa(level_abs_pa: float) -> float:
    return max(CEILING_CLOSE_PA, _ROUNDING * abs(level_abs_pa))


def _least_beyond(holds: Callable[[float], bool], low: float, high: float) -> float:
    """The end of the levels, from `low` on, at which something holds; `high`, where it does not, may be infinite."""
    step = _STEP_PA
    while high == math.inf:
        if holds(low + step):
            low, step = low + step, 2.0 * step
        else:
            high = low + step
    while high - low > _close_pa(high):
        middle = (low + high) / 2.0
        low, high = (middle, high) if holds(middle) else (low, middle)
    return high
