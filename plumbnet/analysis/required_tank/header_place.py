"""The place of a tank on the cold header: upstream of branches, returns and service valves, or where a tank hangs."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from itertools import pairwise

from plumbnet.analysis.required_tank.place import TankPlace, in_pipe
from plumbnet.layout.model import End
from plumbnet.network import Network
from plumbnet.network.loops import ColdHeader, HeatedVolume
from plumbnet.network.piping import Node, Zone
from plumbnet.rules import Profile, Rules, listed

MOST_NAMED = 3
"""Heaters or valves that a reason names; of more it says how many there are."""


@dataclass(frozen=True)
class HeaderPlaces:
    """Places on the cold headers of a network; what heaters share is looked for once."""

    network: Network
    rules: Rules
    _groups: dict[Zone, dict[str, HeatedVolume]] = field(default_factory=dict)
    _shared: dict[tuple[Zone, bool], TankPlace | None] = field(default_factory=dict)

    def of(self, heated: HeatedVolume) -> TankPlace | None:
        """The best place on the cold pipe of a heater and of those that share its water; None where none comes in."""
        return self._of_all(heated) or self._place(heated, (heated,))

    def _of_all(self, heated: HeatedVolume) -> TankPlace | None:
        """The place for all heaters of a zone, the same for each; for one that warms nothing there, with itself."""
        zone = self.network.zoning.zone_of[heated.inlet]
        tree, group = self.network.cold_headers.of(zone).tree, self._group(zone)
        if heated.inlet in tree and heated.name not in group:
            return self._place(heated, tuple(sorted((*group.values(), heated), key=lambda one: one.name)))
        key = (zone, self.rules.at(self.network.circuits, heated.inlet) is self.rules.water)
        if key not in self._shared:
            self._shared[key] = self._place(heated, tuple(group.values()))
        return self._shared[key]

    def _group(self, zone: Zone) -> dict[str, HeatedVolume]:
        """The heaters on the cold header of a zone that warm water in it, by name."""
        if zone not in self._groups:
            tree = self.network.cold_headers.of(zone).tree
            inside = (one for one in self.network.heated_in.get(zone, ()) if one.inlet in tree)
            self._groups[zone] = {one.name: one for one in sorted(inside, key=lambda one: one.name)}
        return self._groups[zone]

    def _place(self, heated: HeatedVolume, heaters: tuple[HeatedVolume, ...]) -> TankPlace | None:
        """The place for some heaters in a heater's zone, by the rules for its circuit."""
        network, zone = self.network, self.network.zoning.zone_of[heated.inlet]
        profile = self.rules.at(network.circuits, heated.inlet)
        return _Header(network, zone, network.cold_headers.of(zone), heaters, profile).place()


@dataclass(frozen=True)
class _Header:
    """The cold header of heaters that share their water."""

    network: Network
    zone: Zone
    header: ColdHeader
    heaters: tuple[HeatedVolume, ...]
    profile: Profile

    def place(self) -> TankPlace | None:
        """Where a sound tank hangs with no valve more or less before it, else the last fitting, else the last pipe."""
        if len(self._way) == 0:
            return None
        own = next(self._fittings(), None) or next(self._pipes(), None)
        hanging = None if own is None else self._hanging(own.node)
        return hanging or own

    @cached_property
    def _way(self) -> tuple[Node, ...]:
        """What all cold water of the heaters passes."""
        return self.header.shared([one.inlet for one in self.heaters])

    def _fittings(self) -> Iterator[TankPlace]:
        """Fittings on the stretch where a tank belongs, the last first."""
        for node in reversed(self._stretch):
            part = self._part(node)
            if self.network.piping.system.parts[part].is_fitting and part not in self._looped:
                yield TankPlace(part, node, self._why)

    def _pipes(self) -> Iterator[TankPlace]:
        for near, far in reversed(list(pairwise(self._stretch))):
            pipe = self.network.pipe_at.get(self._port(far)) or self.network.pipe_at.get(self._port(near))
            if pipe is not None and self._part(near) != self._part(far):
                ends = frozenset({self._port(near), self._port(far)})
                yield in_pipe(self.network, self.network.pipe_between.get(ends, pipe), self._why)

    @cached_property
    def _stretch(self) -> tuple[Node, ...]:
        """The nodes of the way from behind the last valve that shuts off all, to what must lie downstream of a tank."""
        start, end = 0, self._end
        for number in range(end):
            if self._is_door(number):
                start = number + 1
        return self._way[start : end + 1]

    @cached_property
    def _end(self) -> int:
        """Where the stretch ends: before a service valve, at the return of a circulation, or at the last node."""
        for number in range(len(self._way)):
            if self._is_service(number) or self._returns_at(number):
                return number
        return len(self._way) - 1

    def _returns_at(self, number: int) -> bool:
        """Whether a circulation comes back here; where the rules want no valve before the tank, not before the last."""
        node, is_in_it = self._way[number], number > 0 and self._part(self._way[number - 1]) in self._looped
        if self._part(node) not in self._looped or is_in_it or any(node == one.inlet for one in self.heaters):
            return False
        return not (self._is_inside and any(self._is_door(later) for later in range(number, len(self._way) - 1)))

    def _is_service(self, number: int) -> bool:
        """Whether a valve on the way serves to shut off the one heater."""
        if len(self.heaters) > 1 or self._is_inside or not self._is_door(number):
            return False
        return not self.header.parts_from_all(self._way[number + 1])

    @property
    def _is_inside(self) -> bool:
        """Whether the rules want a single heater's tank between its valve and the heater."""
        asked = self.profile.valve_before_tank.is_asked or self.profile.valve_at_heater.is_asked
        return asked and len(self.heaters) == 1

    def _is_door(self, number: int) -> bool:
        """Whether a valve stands between two nodes of the way."""
        if number + 1 >= len(self._way):
            return False
        part = self._part(self._way[number])
        return part == self._part(self._way[number + 1]) and self.network.piping.system.parts[part].is_door()

    def _doors(self, node: Node) -> list[str]:
        """Valves on the way to a node."""
        way = self.header.shared([node])
        parts = [self._part(near) for near, far in pairwise(way) if self._part(near) == self._part(far)]
        return [name for name in parts if self.network.piping.system.parts[name].is_door()]

    def _hanging(self, best: Node) -> TankPlace | None:
        """The fitting at which a sound tank hangs already, if valves part it no otherwise than the best place."""
        for name, node in self.network.hung_in.get(self.zone, ()):
            at = self.network.piping.system.parts[self._part(node)]
            is_free = at.is_fitting and self._part(node) not in self._looped and node in self.header.tree
            if is_free and self._doors(node) == self._doors(best):
                return TankPlace(self._part(node), node, f"where {name} hangs already")
        return None

    @cached_property
    def _looped(self) -> frozenset[str]:
        """Parts in which a circulation of the heaters goes round."""
        nodes = (node for one in self.heaters for loop in one.loops for node in loop.nodes)
        return frozenset(self._part(node) for node in nodes)

    @cached_property
    def _why(self) -> str:
        """The reason in words."""
        names, last = [one.name for one in self.heaters], self._way[self._end]
        if self.network.sides.feeds_hot(last):
            water = f"the pipe that feeds {listed(names)} with hot water, for which the tank has to be made"
        elif len(names) > 1:
            water = f"the cold header that {_named(names, 'heaters')} share"
        else:
            water = f"the cold pipe of {names[0]}"
        below = list(dict.fromkeys(self._valves_below(last)))
        returns = [f"{self._part(last)}, where the circulation comes back"] if self._returns_at(self._end) else []
        if self._is_inside and self._doors(last):
            return f"{water}, with no valve between: {self._rule}"
        if not below and not returns:
            return water
        upstream = listed([*([_named(below, "valves")] if below else []), *returns])
        if below and len(names) > 1:
            return f"{water}, upstream of {upstream}: one heater can be shut off without the tank"
        if below:
            return f"{water}, upstream of {upstream}: no service on {names[0]} shuts off the tank"
        return f"{water}, upstream of {upstream}"

    @property
    def _rule(self) -> str:
        if self.profile.valve_before_tank.is_asked:
            return "the rules want none there that a hand can shut"
        return "the rules ask for a valve at the heater, and it must not part the two"

    def _valves_below(self, last: Node) -> Iterator[str]:
        """Valves between the place and the heaters."""
        above = set(self._doors(last))
        for near, far in self.header.steps(one.inlet for one in self.heaters):
            name = self._part(near)
            if name == self._part(far) and name not in above and self.network.piping.system.parts[name].is_door():
                yield name

    def _port(self, node: Node) -> End:
        return self.network.piping.ports[node]

    def _part(self, node: Node) -> str:
        return self._port(node).part


def _named(names: Sequence[str], things: str) -> str:
    """Names, or of many how many there are.

    >>> _named(["a", "b"], "heaters"), _named(["a", "b", "c", "d"], "heaters")
    ('a and b', 'the 4 heaters')
    """
    return listed(names) if len(names) <= MOST_NAMED else f"the {len(names)} {things}"
