"""What stands against the water on its way out: every smallest set of devices."""

from bisect import bisect_right
from collections import deque
from dataclasses import dataclass, field
from functools import cached_property

from plumbnet.network.outlets.ladder import Opening, floor_pa
from plumbnet.network.piping import Crossing, Zone, Zoning
from plumbnet.network.pressure import StaticPressures

MOST_SETS = 16
"""Sets of devices listed; the rest are counted, up to `MOST_COUNTED`."""
MOST_COUNTED = 1000
_MOST_STEPS = 20_000
"""Steps of search that the sets of one zone may cost; what is found by then is listed."""


@dataclass(frozen=True, slots=True)
class Stops:
    """Every smallest set of devices against the water: the first sixteen, and how many more there are.

    `most` says that the count ended early, so that there may be still more. No sets: no pipe leads to a way out at all.
    """

    sets: tuple[tuple[str, ...], ...]
    more: int = 0
    most: bool = False


@dataclass
class CutSets:
    """Answers what stops the water of a zone; searches once for all zones whose limits pass the same gates."""

    zoning: Zoning
    standing: StaticPressures
    openings: dict[Zone, list[Opening]]
    _distances: dict[int, dict[Zone, int]] = field(default_factory=dict)

    def stops(self, zone: Zone, bound_pa: float) -> Stops:
        """The fewest devices on any way to the street or to open air that opens at or below `bound_pa` (datum).

        A device counts where water would pass it against its direction, where it is shut, and where it
        opens only above the bound. A supply above the bound is a way out like any other, since the zone
        would stand at its pressure if nothing stood between; an open end above the bound is none. A device
        that water would have to pass twice in a row counts twice. Near-linear for all zones together.
        """
        away = self._away(bound_pa)
        if away.get(zone, 0) == 0:
            return Stops(())
        found, complete = self._sets(zone, bound_pa, away)
        fewest = min(map(len, found))
        smallest = [devices for devices in found if len(devices) == fewest]
        listed = tuple(sorted(smallest[:MOST_SETS]))
        return Stops(listed, len(smallest) - len(listed), most=not complete)

    def _away(self, bound_pa: float) -> dict[Zone, int]:
        """Devices between each zone and the nearest way out, the same for all bounds between two thresholds."""
        key = bisect_right(self._thresholds, bound_pa)
        if key not in self._distances:
            self._distances[key] = self._measured(bound_pa)
        return self._distances[key]

    def _measured(self, bound_pa: float) -> dict[Zone, int]:
        """Shortest distances in devices from the ways out, searched backwards."""
        away = {
            zone: 0 for zone, outlets in self.openings.items() if any(self._is_way_out(o, bound_pa) for o in outlets)
        }
        queue = deque(away)
        while queue:
            zone = queue.popleft()
            for crossing in self.zoning.into.get(zone, ()):
                cost = 0 if self._passes(crossing, bound_pa) else 1
                if away[zone] + cost < away.get(crossing.near, _FAR):
                    away[crossing.near] = away[zone] + cost
                    (queue.append if cost else queue.appendleft)(crossing.near)
        return away

    def _is_way_out(self, opening: Opening, bound_pa: float) -> bool:
        if not opening.site.outlet.role.is_way_out:
            return False
        return opening.opens_pa <= bound_pa or self.zoning.piping.system.parts[opening.site.part].source() is not None

    def _passes(self, crossing: Crossing, bound_pa: float) -> bool:
        floor = floor_pa(crossing, self.standing)
        return floor is not None and floor <= bound_pa

    def _sets(self, zone: Zone, bound_pa: float, away: dict[Zone, int]) -> tuple[list[tuple[str, ...]], bool]:
        """Sets of devices, each once, and whether these are all.

        At every step all zones that the devices so far lead to are taken together.
        """
        found: dict[tuple[str, ...], None] = {}
        stack: list[_State] = [(frozenset({zone}), None)]
        steps = 0
        while stack:
            if found and (len(found) == MOST_COUNTED or steps > _MOST_STEPS):
                return list(found), False
            steps += 1
            zones, passed = stack.pop()
            if any(away[zone] == 0 for zone in zones):
                found[_names(passed)] = None
                continue
            reach = self._freely_reached(zones, bound_pa, away)
            beyond: dict[str, set[Zone]] = {}
            for reached in sorted(reach):
                for crossing in self.zoning.out.get(reached, ()):
                    is_nearer = away.get(crossing.far) == away[reached] - 1
                    if is_nearer and not self._passes(crossing, bound_pa):
                        beyond.setdefault(crossing.part, set()).add(crossing.far)
            stack += [(frozenset(beyond[part]), _Passed(part, passed)) for part in sorted(beyond, reverse=True)]
        return list(found), True

    def _freely_reached(self, zones: frozenset[Zone], bound_pa: float, away: dict[Zone, int]) -> set[Zone]:
        """Zones as near to a way out as these are, that water reaches from them past no device."""
        reach, queue = set(zones), deque(sorted(zones))
        while queue:
            zone = queue.popleft()
            for crossing in self.zoning.out.get(zone, ()):
                is_level = away.get(crossing.far) == away[zone]
                if is_level and crossing.far not in reach and self._passes(crossing, bound_pa):
                    reach.add(crossing.far)
                    queue.append(crossing.far)
        return reach

    @cached_property
    def _thresholds(self) -> list[float]:
        floors = (floor_pa(crossing, self.standing) for crossing in self.zoning.crossings())
        ways_out = (o.opens_pa for outlets in self.openings.values() for o in outlets if o.site.outlet.role.is_way_out)
        return sorted({*(floor for floor in floors if floor is not None), *ways_out})


@dataclass(frozen=True, slots=True)
class _Passed:
    """The device passed last, and those before it."""

    part: str
    before: "_Passed | None"


_State = tuple[frozenset[Zone], _Passed | None]
"""Zones reached together, and the devices that stood against the water on the way to them."""
_FAR = 1 << 60


def _names(passed: _Passed | None) -> tuple[str, ...]:
    names: set[str] = set()
    while passed is not None:
        names.add(passed.part)
        passed = passed.before
    return tuple(sorted(names))
