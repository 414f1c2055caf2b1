"""The ladder of a zone: every outlet its water can reach, with the pressure at which the way opens (minimax path)."""

import heapq
import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import count, islice

from plumbnet.layout.model import Role
from plumbnet.network.piping import Crossing, Site, Zone, Zoning
from plumbnet.network.pressure import StaticPressures

MOST_RUNGS = 16
"""A ladder lists this many outlets at most; in a zone with thousands the far ones help nobody."""


@dataclass(frozen=True, slots=True)
class Rung:
    """An outlet, the pressure at datum at which the way to it opens, and the gates crossed on that way."""

    site: Site
    opens_pa: float
    crossings: tuple[Crossing, ...]

    @property
    def role(self) -> Role:
        """What becomes of the water."""
        return self.site.outlet.role


def outlet_opens_pa(site: Site, standing: StaticPressures, zone: Zone) -> float:
    """Pressure at datum at which an outlet of `zone` takes water.

    A tank under its static pressure is in balance with it, so that any rise above it drives water in.
    """
    if site.outlet.role is Role.TANK:
        return max(site.opens_pa, standing.at(zone))
    return site.opens_pa


def floor_pa(crossing: Crossing, standing: StaticPressures) -> float | None:
    """Pressure at datum the near zone must exceed to push water across; None where it never can."""
    static = standing.at(crossing.far)
    if crossing.way is None or static >= crossing.way.below_pa:
        return None
    return static + crossing.way.opens_pa


@dataclass(frozen=True, slots=True)
class Opening:
    """An outlet with the pressure at datum at which it takes water of its own zone."""

    opens_pa: float
    site: Site

    @property
    def height(self) -> tuple[float, bool, str]:
        """Sorts outlets as they open; of two at one pressure, the one that takes any amount comes first."""
        return self.opens_pa, not self.site.outlet.role.is_way_out, self.site.part


def openings(zoning: Zoning, standing: StaticPressures) -> dict[Zone, list[Opening]]:
    """The outlets of every zone, in the order in which they open."""
    return {
        zone: sorted(
            (Opening(outlet_opens_pa(site, standing, zone), site) for site in sites), key=lambda opening: opening.height
        )
        for zone, sites in zoning.sites.items()
    }


def first_opens_pa(openings: Mapping[Zone, Sequence[Opening]], is_meant: Callable[[Role], bool]) -> dict[Zone, float]:
    """Pressure at datum at which the first outlet of a sort opens, for each zone that has one."""
    found: dict[Zone, float] = {}
    for zone, lowest_first in openings.items():
        first = next((one for one in lowest_first if is_meant(one.site.outlet.role)), None)
        if first is not None:
            found[zone] = first.opens_pa
    return found


@dataclass(frozen=True, slots=True)
class Climber:
    """Finds ladders; made once for all zones of a system."""

    zoning: Zoning
    standing: StaticPressures
    openings: dict[Zone, list[Opening]]

    def ladder(self, zone: Zone) -> list[Rung]:
        """Outlets that water of `zone` can reach, lowest first.

        The search ends with the first outlet that takes water without limit: beyond it the pressure cannot
        rise. Outlets of the zone itself are listed above it too, for what would open if that way were closed,
        unless they are more than a ladder lists.
        """
        rungs: list[Rung] = []
        for rung in self._climb(zone):
            rungs.append(rung)
            if rung.role.is_way_out or len(rungs) == MOST_RUNGS:
                break
        outlets = self.openings.get(zone, ())
        if len(outlets) <= MOST_RUNGS:
            listed = {rung.site.node for rung in rungs}
            own = (Rung(o.site, o.opens_pa, ()) for o in outlets if o.site.node not in listed)
            rungs += islice(own, MOST_RUNGS - len(rungs))
        return sorted(rungs, key=lambda rung: Opening(rung.opens_pa, rung.site).height)

    def _climb(self, start: Zone) -> Iterator[Rung]:
        """Outlets in the order in which they open, by a best-first search over zones.

        Of equal height, what lies behind fewer gates comes first, and outlets before gates, so that a street
        full of gates is not searched once the main is found; of a zone's outlets only the next is ever in the
        queue. Names settle what is still equal, so that the order of the file settles nothing.
        """
        queue: list[tuple[float, int, int, tuple[bool, str, float], int, _Step]] = []
        order = count()

        def push(height_pa: float, rank: int, step: _Step) -> None:
            heapq.heappush(queue, (height_pa, step.depth, rank, step.precedence, next(order), step))

        widest: dict[Zone, list[_Step]] = {}
        found: set[int] = set()
        push(-math.inf, _BY_ZONE, _Step(start, -math.inf, math.inf, None))
        while queue:
            height_pa, _, rank, _, _, step = heapq.heappop(queue)
            if rank == _BY_GATES:
                for beyond in self._crossed(step, widest):
                    push(beyond.height_pa, _BY_ZONE, beyond)
                continue
            if step.opening is not None and step.opening.site.node not in found:
                found.add(step.opening.site.node)
                yield Rung(step.opening.site, height_pa, _crossings(step.track))
            following = self._next_outlet(step)
            if following.opening is not None:
                push(self._opens_pa(following, following.opening), _BY_OUTLET, following)
            if step.opening is None:
                push(max(step.height_pa, self.standing.at(step.zone) + step.lost_pa), _BY_GATES, step)

    def _next_outlet(self, step: "_Step") -> "_Step":
        """The step to the zone's next outlet, if there is one that opens below the reducers passed."""
        outlets = self.openings.get(step.zone, ())
        if step.outlet_index < len(outlets) and outlets[step.outlet_index].opens_pa < step.below_pa:
            return replace(step, outlet_index=step.outlet_index + 1, opening=outlets[step.outlet_index])
        return replace(step, opening=None)

    def _opens_pa(self, step: "_Step", opening: Opening) -> float:
        if step.track is None:
            return opening.opens_pa
        return max(opening.opens_pa + step.lost_pa, step.height_pa)

    def _crossed(self, step: "_Step", widest: "dict[Zone, list[_Step]]") -> "Iterator[_Step]":
        """Steps through the gates that lead out of a zone, where they are not known to be worse."""
        if _is_known(step, widest):
            return
        widest.setdefault(step.zone, []).append(step)
        for crossing in self.zoning.out.get(step.zone, ()):
            floor = floor_pa(crossing, self.standing)
            if floor is None or crossing.way is None or floor >= step.below_pa:
                continue
            beyond = _Step(
                crossing.far,
                max(step.height_pa, max(floor, self.standing.at(step.zone)) + step.lost_pa),
                min(step.below_pa - crossing.way.opens_pa, crossing.way.below_pa),
                _Track(crossing, step.track),
                step.depth + 1,
                lost_pa=step.lost_pa + crossing.way.opens_pa,
            )
            if not _is_known(beyond, widest) and (beyond.lost_pa >= step.lost_pa or not _comes_back(beyond)):
                yield beyond


_BY_ZONE, _BY_OUTLET, _BY_GATES = 0, 1, 2


@dataclass(frozen=True, slots=True)
class _Track:
    """The gate crossed last, and those before it."""

    crossing: Crossing
    before: "_Track | None"


def _crossings(track: _Track | None) -> tuple[Crossing, ...]:
    met: list[Crossing] = []
    while track is not None:
        met.append(track.crossing)
        track = track.before
    return tuple(reversed(met))


@dataclass(frozen=True, slots=True)
class _Step:
    """A state of the search: a zone reached at a height, below the lowest reducer set passed on the way.

    What was met before a reducer does not count against its set; only what lies behind it does. `height_pa` is that of
    the zone in which the search began; all else stands in this zone, which is lower by `lost_pa`: what the gates on the
    way need to open, less what a pump on it holds.
    """

    zone: Zone
    height_pa: float
    below_pa: float
    track: _Track | None
    depth: int = 0
    outlet_index: int = 0
    opening: Opening | None = None
    lost_pa: float = 0.0

    @property
    def precedence(self) -> tuple[bool, str, float]:
        """Sorts steps of one height, depth and rank: a way out first, then by name, the widest first."""
        if self.opening is not None:
            return not self.opening.site.outlet.role.is_way_out, self.opening.site.part, -self.below_pa
        return False, "" if self.track is None else self.track.crossing.part, -self.below_pa


def _is_known(step: _Step, widest: Mapping[Zone, Sequence[_Step]]) -> bool:
    """Whether a zone was reached before, no higher, below reducers set no lower, with no more lost on the way."""
    return any(known.below_pa >= step.below_pa and known.lost_pa <= step.lost_pa for known in widest.get(step.zone, ()))


def _comes_back(step: _Step) -> bool:
    """Whether a step leads into a zone that was left on the way to it."""
    return any(crossing.near == step.zone for crossing in _crossings(step.track))
