"""What gives a zone its least pressure: the reducer that holds it down, or the supply that it comes from."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from enum import StrEnum
from functools import cached_property
from math import inf

from plumbnet.layout.model import End, Source
from plumbnet.network.piping import Crossing, Zone, Zoning
from plumbnet.network.pressure.static_pressure import StaticPressures

_SAME_PA = 0.5
"""Pressures this close are the same but for the order of sums."""


class Giver(StrEnum):
    """What gives a zone its pressure."""

    REDUCER = "reducer"
    FILL = "fill"
    SUPPLY = "supply"


@dataclass(frozen=True, slots=True)
class Feed:
    """What gives a zone its least pressure.

    `own_pa` is what it is set to or gives now, gauge at its own height; `more_pa` by how much more it could give: of a
    reducer up to what stands before it, of a fill any amount, of another supply nothing. `room_pa` is how much more the
    reducers between it and the zone would let through.
    """

    name: str
    giver: Giver
    own_pa: float
    more_pa: float
    room_pa: float = inf

    @property
    def spare_pa(self) -> float:
        """By how much more could come to the zone from it."""
        return min(self.more_pa, self.room_pa)


@dataclass
class PressureSources:
    """Finds the feeds of a network, each way upstream as the widest path came down it."""

    zoning: Zoning
    standing: StaticPressures
    _feeds: dict[Zone, Feed | None] = field(default_factory=dict)

    def feed(self, zone: Zone) -> Feed | None:
        """What gives a zone its least pressure; None where that cannot be told. Searched once for each zone."""
        if zone not in self._feeds:
            self._feeds[zone] = self._searched(zone)
        return self._feeds[zone]

    def _searched(self, zone: Zone) -> Feed | None:
        """Linear in the gates on the way."""
        seen: set[Zone] = set()
        at: Zone | None = zone
        room_pa = inf
        while at is not None and at not in seen:
            seen.add(at)
            given = self._given_in(at)
            if given is not None:
                return replace(given, room_pa=room_pa)
            came_by = next((one for one in self.zoning.into.get(at, ()) if self._came_by(one)), None)
            if came_by is not None and self._is_held_down(came_by):
                return replace(self._reducer(came_by), room_pa=room_pa)
            room_pa = min(room_pa, inf if came_by is None else self._room_pa(came_by))
            at = None if came_by is None else came_by.near
        return None

    def _room_pa(self, crossing: Crossing) -> float:
        """By how much more would come through a gate if more stood before it."""
        return inf if crossing.way is None else max(0.0, crossing.way.below_pa - self._at(crossing.far))

    def _given_in(self, zone: Zone) -> Feed | None:
        """The supply in a zone whose pressure stands there."""
        for name, source, head_pa in self._supplies.get(zone, ()):
            own_pa = source.cut_in_pa if source.least_pa is None else source.least_pa
            if abs(own_pa + head_pa - self._at(zone)) < _SAME_PA:
                by_hand = source.is_filled_by_hand
                return Feed(name, Giver.FILL if by_hand else Giver.SUPPLY, own_pa, inf if by_hand else 0.0)
        return None

    def _came_by(self, crossing: Crossing) -> bool:
        """Whether the pressure of the far zone is that which comes by this gate."""
        if self.standing.least_pa[crossing.near] is None:
            return False
        if crossing.way is None:
            return crossing.gate.is_shut and abs(self._at(crossing.near) - self._at(crossing.far)) < _SAME_PA
        return any(
            abs(min(self._before(crossing) + lift_pa, crossing.way.below_pa) - self._at(crossing.far)) < _SAME_PA
            for lift_pa in (0.0, crossing.gate.rise_pa if crossing.is_forward else -crossing.gate.rise_pa)
        )

    def _is_held_down(self, crossing: Crossing) -> bool:
        """Whether more would come if the gate let it."""
        way = crossing.way
        return way is not None and way.below_pa < self._before(crossing) - _SAME_PA

    def _reducer(self, crossing: Crossing) -> Feed:
        below_pa = inf if crossing.way is None else crossing.way.below_pa
        own_pa = below_pa - self.zoning.piping.heads_pa[crossing.enters]
        return Feed(crossing.part, Giver.REDUCER, own_pa, self._before(crossing) - below_pa)

    def _before(self, crossing: Crossing) -> float:
        """What would come through a gate that let all through, without a pump."""
        opens_pa = 0.0 if crossing.way is None else crossing.way.opens_pa
        return self._at(crossing.near) - opens_pa

    def _at(self, zone: Zone) -> float:
        least_pa = self.standing.least_pa[zone]
        return -inf if least_pa is None else least_pa

    @cached_property
    def _supplies(self) -> Mapping[Zone, list[tuple[str, Source, float]]]:
        """Supplies by the zones they stand in, with their static heads."""
        piping, found = self.zoning.piping, dict[Zone, list[tuple[str, Source, float]]]()
        for name, part in piping.system.parts.items():
            source = part.source()
            if source is not None:
                node = piping.node_of[End(name, source.port)]
                found.setdefault(self.zoning.zone_of[node], []).append((name, source, piping.heads_pa[node]))
        return found
