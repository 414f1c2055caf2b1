"""Which zones water of a zone can push into, and past which devices."""

from collections import deque
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from plumbnet.network.graphs import nearest_first
from plumbnet.network.outlets.ladder import floor_pa
from plumbnet.network.piping import Crossing, Zone, Zoning
from plumbnet.network.pressure import StaticPressures


def reach(
    zoning: Zoning,
    standing: StaticPressures,
    zones: Iterable[Zone],
    bound_pa: float,
    *,
    without: Callable[[Crossing], bool] = lambda _crossing: False,
) -> tuple[Zone, ...]:
    """Zones that water of `zones` can push into through gates that open at or below `bound_pa` (datum).

    Crossings for which `without` holds are thought closed. The zones themselves come first. Linear in what is reached.
    """
    reached = dict.fromkeys(zones)
    queue = deque(reached)
    while queue:
        for crossing in zoning.out.get(queue.popleft(), ()):
            floor = floor_pa(crossing, standing)
            if crossing.far not in reached and floor is not None and floor <= bound_pa and not without(crossing):
                reached[crossing.far] = None
                queue.append(crossing.far)
    return tuple(reached)


def pushing_into(zoning: Zoning, standing: StaticPressures, zones: Iterable[Zone]) -> Iterator[Zone]:
    """Zones whose water can push into one of `zones` at whatever pressure, those first. Linear in what is met."""

    def before(zone: Zone) -> Iterator[Zone]:
        pushed = (crossing for crossing in zoning.into.get(zone, ()) if floor_pa(crossing, standing) is not None)
        return (crossing.near for crossing in pushed)

    return nearest_first(zones, before)


def devices_between(zoning: Zoning, standing: StaticPressures, start: Zone, goal: Zone) -> tuple[str, ...]:
    """Names of the one-way devices that water of a zone passes into another, the fewest, then the first by name.

    None where it cannot come there. Linear in what is reached.
    """
    return DevicesFrom(zoning, standing, start).to(goal)


@dataclass
class DevicesFrom:
    """What water of one zone passes on its way to others; searched once for all of them, as far as is asked."""

    zoning: Zoning
    standing: StaticPressures
    start: Zone

    def __post_init__(self) -> None:
        self._before: dict[Zone, Crossing | None] = {self.start: None}
        self._queue = deque([self.start])

    def to(self, goal: Zone) -> tuple[str, ...]:
        """Names of the one-way devices on the way to a zone, as `devices_between` tells them."""
        while self._queue and goal not in self._before:
            zone = self._queue.popleft()
            for crossing in sorted(self.zoning.out.get(zone, ()), key=lambda one: one.part):
                if crossing.far not in self._before and floor_pa(crossing, self.standing) is not None:
                    self._before[crossing.far] = crossing
                    self._queue.append(crossing.far)
        names, last = [], self._before.get(goal)
        while last is not None:
            names.append(last.part)
            last = self._before[last.near]
        return tuple(reversed(names))
