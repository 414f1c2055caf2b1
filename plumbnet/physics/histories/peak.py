"""How high each zone comes in the worst history, with the history that is known to bring it there."""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from itertools import islice, permutations
from typing import Generic

from plumbnet.budgets import ORDERS
from plumbnet.physics.equilibrium import OneWayGate, settle
from plumbnet.physics.histories.ceiling import Ceilings, is_as_high
from plumbnet.physics.histories.neighbours import Neighbours
from plumbnet.physics.histories.push import Zone, lifted_abs_pa, needed_abs_pa

MOST_ORDERED = 5
"""Heated zones of which every order is played: 120 orders. Of more, the orders that are usually the worst."""

_SAME = 1e-12
"""Share of a pressure that rounding leaves: of histories that come equally high the first is told."""

_ALIKE = 1e-5
"""Share of a pressure, a pascal or some, by which orders may differ and still all come to the same."""

History = tuple[tuple[Zone, ...], ...]
"""Heated zones in the order in which they warm; those in one stage warm together."""


@dataclass(frozen=True, slots=True)
class Peak(Generic[Zone]):
    """What a zone comes to: `reached_abs_pa` by `history`, and `highest_abs_pa`, which no history passes.

    `in_any_order` says that every order that was played brings it there.
    """

    reached_abs_pa: float
    highest_abs_pa: float
    history: History[Zone] = ()
    in_any_order: bool = True


@dataclass
class Peaks(Generic[Zone]):
    """Answers zone by zone; what several rest on is worked out once.

    Exact where nobody outside a zone's reach pushes into that reach through plain checks that open at once, and of one
    heated zone always; elsewhere a pair. A zone in which nothing warms is lifted by others alone, as high as they come.
    """

    neighbours: Neighbours[Zone]
    _found: dict[Zone, Peak[Zone]] = field(default_factory=dict)
    _played_by: "dict[tuple[Zone, ...], _Plays[Zone]]" = field(default_factory=dict)
    _ceilings_of: dict[tuple[Zone, ...], Ceilings[Zone]] = field(default_factory=dict)

    def of(self, zone: Zone) -> Peak[Zone]:
        """The peak of a zone."""
        if zone not in self._found:
            heated = zone in self.neighbours.growth_m3
            self._found[zone] = self._of_heated(zone) if heated else self._of_cold(zone)
        return self._found[zone]

    def passes(self, zone: Zone, level_abs_pa: float) -> bool:
        """Whether `highest_abs_pa` of a zone lies above a level, without seeking it where less tells.

        What was played is above it, or no history can come to it; only between the two the ceilings have to be sought.
        """
        if zone in self._found:
            return self._found[zone].highest_abs_pa > level_abs_pa
        neighbours = self.neighbours
        if zone not in neighbours.growth_m3:
            if neighbours.cold[zone] > level_abs_pa:
                return True
            rows = ((pusher, neighbours.reach(pusher)[zone]) for pusher in neighbours.pushers[zone])
            return any(self.passes(pusher, needed_abs_pa(row, level_abs_pa)) for pusher, row in rows)
        company = neighbours.company(zone)
        if len(company) > 1 and not self._is_left_alone(zone):
            if self._plays(company)[zone][0] > level_abs_pa:
                return True
            if not self._ceilings(company).may_pass(zone, level_abs_pa):
                return False
        return self.of(zone).highest_abs_pa > level_abs_pa

    def _of_cold(self, zone: Zone) -> Peak[Zone]:
        """Pressures only climb, so what lifts it most lifts it at its own peak."""
        best: Peak[Zone] = Peak(self.neighbours.cold[zone], self.neighbours.cold[zone])
        for pusher in self.neighbours.pushers[zone]:
            row, peak = self.neighbours.reach(pusher)[zone], self.of(pusher)
            reached = lifted_abs_pa(row, peak.reached_abs_pa)
            if reached > best.reached_abs_pa:
                best = replace(best, reached_abs_pa=reached, history=peak.history, in_any_order=peak.in_any_order)
            highest = max(best.highest_abs_pa, lifted_abs_pa(row, peak.highest_abs_pa))
            best = replace(best, highest_abs_pa=highest)
        return best

    def _of_heated(self, zone: Zone) -> Peak[Zone]:
        company = self.neighbours.company(zone)
        if len(company) == 1:
            level = self.neighbours.after(self.neighbours.cold, zone, self.neighbours.growth_m3[zone])[zone]
            return Peak(level, level, (company,))
        if self._is_left_alone(zone):
            return self._together(zone)
        reached, history, in_any_order = self._plays(company)[zone]
        highest = max(reached, self._ceilings(company).found[zone])
        if is_as_high(reached, highest, 2.0):
            highest = reached
        return Peak(reached, highest, history, in_any_order)

    def _is_left_alone(self, zone: Zone) -> bool:
        """Whether nobody outside pushes into its reach, and all gates in it are checks that open at once."""
        reach, pushers = self.neighbours.reach(zone), self.neighbours.pushers
        plain = all(gate.opens_pa == 0.0 and gate.below_abs_pa == math.inf for gate in self._within(zone))
        return plain and all(each in reach for far in reach for each in pushers[far])

    def _within(self, zone: Zone) -> list[OneWayGate[Zone]]:
        """The gates between zones of its reach."""
        reach = self.neighbours.reach(zone)
        return [gate for gate in self.neighbours.gates if gate.near in reach and gate.far in reach]

    def _together(self, zone: Zone) -> Peak[Zone]:
        """All at once, which is then the worst: a zone at a level has all that it reaches at that level or above."""
        reach = self.neighbours.reach(zone)
        pools = settle({far: self.neighbours.loads[far] for far in reach}, self._within(zone))
        level = next(pool.pressure_abs_pa for pool in pools if zone in pool.zones)
        heated = tuple(far for far in reach if far in self.neighbours.growth_m3)
        return Peak(level, level, (heated,))

    def _plays(self, company: tuple[Zone, ...]) -> "_Plays[Zone]":
        if company not in self._played_by:
            self._played_by[company] = _played(self.neighbours, company)
        return self._played_by[company]

    def _ceilings(self, company: tuple[Zone, ...]) -> Ceilings[Zone]:
        if company not in self._ceilings_of:
            reached = {zone: level for zone, (level, *_) in self._plays(company).items()}
            self._ceilings_of[company] = Ceilings(self.neighbours, company, reached)
        return self._ceilings_of[company]


_Reached = tuple[float, History[Zone], bool]
_Plays = Mapping[Zone, _Reached[Zone]]


def _played(neighbours: Neighbours[Zone], company: tuple[Zone, ...]) -> dict[Zone, _Reached[Zone]]:
    """The highest that each heated zone comes to in the orders played, and the order."""
    best: dict[Zone, _Reached[Zone]] = {zone: (neighbours.cold[zone], (), True) for zone in company}
    lowest = dict.fromkeys(company, math.inf)
    states: dict[tuple[Zone, ...], dict[Zone, float]] = {(): neighbours.cold}
    lifted = sum(len(neighbours.reach(zone)) for zone in company)
    most = None if len(company) <= MOST_ORDERED else max(1, ORDERS // lifted)
    for order in islice(_orders(neighbours, company), most):
        neighbours.budget.spend(lifted)
        state = _after(neighbours, order, states)
        for zone in company:
            lowest[zone] = min(lowest[zone], state[zone])
            if state[zone] > best[zone][0] * (1.0 + _SAME):
                best[zone] = (state[zone], tuple((each,) for each in order), False)
    return {
        zone: (level, history, lowest[zone] >= level * (1.0 - _ALIKE)) for zone, (level, history, _) in best.items()
    }


def _after(
    neighbours: Neighbours[Zone], order: tuple[Zone, ...], states: dict[tuple[Zone, ...], dict[Zone, float]]
) -> dict[Zone, float]:
    """The state after an order; how it begins is looked up where it has been played."""
    if order not in states:
        before = _after(neighbours, order[:-1], states)
        states[order] = neighbours.after(before, order[-1], neighbours.growth_m3[order[-1]])
    return states[order]


def _orders(neighbours: Neighbours[Zone], company: tuple[Zone, ...]) -> Iterator[tuple[Zone, ...]]:
    """Every order of few; of many, for each zone those that are usually its worst.

    First those that have nothing to do with it, then from the top those that push into it or into its reach, and what
    lies beyond it before them or after; itself last.  Source: own trials on random networks.
    """
    if len(company) <= MOST_ORDERED:
        yield from permutations(company)
        return
    depth = {zone: sum(zone in neighbours.reach(other) for other in company) for zone in company}
    downward = sorted(company, key=lambda zone: depth[zone])
    for zone in company:
        reach = neighbours.reach(zone)
        above = [each for each in downward if zone in neighbours.reach(each) and each not in reach]
        beside = [each for each in downward if each not in reach and each not in above]
        below = [each for each in reversed(downward) if each in reach and each != zone]
        yield (*beside, *above, *below, zone)
        yield (*beside, *below, *above, zone)
        yield (*beside, *reversed(above), *below, zone)
