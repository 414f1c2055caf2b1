"""How high each zone comes in the worst history, with the history that is known to bring it there."""

import math
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Generic

from plumbnet.physics.equilibrium import OneWayGate, settle
from plumbnet.physics.histories.ceiling import Ceilings, is_as_high
from plumbnet.physics.histories.neighbours import Neighbours
from plumbnet.physics.histories.plays import History, Plays
from plumbnet.physics.histories.push import Zone, lifted_abs_pa, needed_abs_pa


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
    _plays_of: dict[tuple[Zone, ...], Plays[Zone]] = field(default_factory=dict)
    _ceilings_of: dict[tuple[Zone, ...], Ceilings[Zone]] = field(default_factory=dict)
    _tops_of: dict[tuple[Zone, ...], Mapping[Zone, float]] = field(default_factory=dict)

    def of(self, zone: Zone) -> Peak[Zone]:
        """The peak of a zone."""
        if zone not in self._found:
            heated = zone in self.neighbours.growth_m3
            self._found[zone] = self._of_heated(zone) if heated else self._of_cold(zone)
        return self._found[zone]

    def passes(self, zone: Zone, level_abs_pa: float) -> bool:
        """Whether `highest_abs_pa` of a zone lies above a level, without seeking it where less tells.

        No history can come to it, or one that is played does; only between the two the ceilings have to be sought.
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
            if not self._ceilings(company).may_pass(zone, level_abs_pa):
                return False
            if self._plays(company).passes(zone, level_abs_pa):
                return True
        return self.of(zone).highest_abs_pa > level_abs_pa

    def reached_abs_pa(self, zone: Zone) -> float:
        """`reached_abs_pa` of a zone, without seeking what no history passes."""
        neighbours = self.neighbours
        if zone in self._found:
            return self._found[zone].reached_abs_pa
        if zone not in neighbours.growth_m3:
            rows = ((pusher, neighbours.reach(pusher)[zone]) for pusher in neighbours.pushers[zone])
            lifted = (lifted_abs_pa(row, self.reached_abs_pa(pusher)) for pusher, row in rows)
            return max(neighbours.cold[zone], *lifted, -math.inf)
        company = neighbours.company(zone)
        if len(company) == 1 or self._is_left_alone(zone):
            return self.of(zone).reached_abs_pa
        return self._plays(company).reached[zone][0]

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
        reached, history, in_any_order = self._plays(company).reached[zone]
        highest = max(reached, self._tops(company)[zone])
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

    def _plays(self, company: tuple[Zone, ...]) -> Plays[Zone]:
        if company not in self._plays_of:
            self._plays_of[company] = Plays(self.neighbours, company)
        return self._plays_of[company]

    def _ceilings(self, company: tuple[Zone, ...]) -> Ceilings[Zone]:
        if company not in self._ceilings_of:
            self._ceilings_of[company] = Ceilings(self.neighbours, company)
        return self._ceilings_of[company]

    def _tops(self, company: tuple[Zone, ...]) -> Mapping[Zone, float]:
        if company not in self._tops_of:
            reached = {zone: level for zone, (level, *_) in self._plays(company).reached.items()}
            self._tops_of[company] = self._ceilings(company).found(reached)
        return self._tops_of[company]
