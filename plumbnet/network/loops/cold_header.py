"""The cold pipe of heaters, from where water comes into their zone: what every way to them leads through."""

from collections import Counter, deque
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property

from plumbnet.layout.model import End
from plumbnet.network.graphs import dominators, spans
from plumbnet.network.loops.heated_volume import HeatedVolume
from plumbnet.network.piping import Crossing, Node, Zone, Zoning

_SUPPLY: Node = -1
"""Stands before every place at which water comes into a zone."""


@dataclass(frozen=True)
class ColdHeader:
    """The cold piping of one zone: `tree` has the nearest node before each that every way from the supply passes.

    No way leads through a heater. `draws` are the nodes there at which people draw water.
    """

    tree: Mapping[Node, Node | None]
    draws: tuple[Node, ...]

    def shared(self, nodes: Sequence[Node]) -> tuple[Node, ...]:
        """The nodes that every way to every one of `nodes` passes, in the direction of flow; they themselves count.

        Linear in the nodes on all these ways together.
        """
        known = [node for node in nodes if node in self.tree]
        way = self._way(known[0]) if known else []
        joins_at, end = {node: number for number, node in enumerate(way)}, len(way)
        for node in known[1:]:
            climbed = list(self._climb(node, joins_at))
            above = self.tree[climbed[-1]] if climbed else node
            joined = joins_at.get(above, -1) if above is not None else -1
            joins_at |= dict.fromkeys(climbed, joined)
            end = min(end, joined + 1)
        return tuple(way[:end])

    def steps(self, nodes: Iterable[Node]) -> Iterator[tuple[Node, Node]]:
        """Every step of the ways to some nodes once, way by way in the direction of flow. Linear in these steps."""
        seen: set[Node] = set()
        for node in nodes:
            climbed = list(self._climb(node, seen)) if node in self.tree else []
            seen.update(climbed)
            for far in reversed(climbed):
                near = self.tree[far]
                if near is not None and near != _SUPPLY:
                    yield near, far

    def parts_from_all(self, node: Node) -> bool:
        """Whether nobody draws water on the cold side but from behind a node, and somebody does there."""
        return bool(self.draws) and self._drawn_behind.get(node, 0) == len(self.draws)

    @cached_property
    def _drawn_behind(self) -> dict[Node, int]:
        """How many of the draws lie behind each node: summed from the ends of the tree to its root."""
        found, waiting = Counter(self.draws), Counter(above for above in self.tree.values() if above is not None)
        ends = deque(node for node in self.tree if not waiting[node])
        while ends:
            node = ends.popleft()
            above = self.tree[node]
            if above is not None:
                found[above] += found[node]
                waiting[above] -= 1
                if not waiting[above]:
                    ends.append(above)
        return found

    def _way(self, node: Node) -> list[Node]:
        return list(self._climb(node, ()))[::-1]

    def _climb(self, node: Node, known: Collection[Node]) -> Iterator[Node]:
        """A node and those above it, to the supply or to one that is known."""
        at: Node | None = node
        while at is not None and at != _SUPPLY and at not in known:
            yield at
            at = self.tree[at]


@dataclass
class ColdHeaders:
    """Finds the cold header of each zone, once; linear in the zone, but for a logarithm."""

    zoning: Zoning
    heated: tuple[HeatedVolume, ...]
    _found: dict[Zone, ColdHeader] = field(default_factory=dict)

    def of(self, zone: Zone) -> ColdHeader:
        """The cold header of a zone; an empty one where no water comes in."""
        if zone not in self._found:
            self._found[zone] = self._searched(zone)
        return self._found[zone]

    def _searched(self, zone: Zone) -> ColdHeader:
        onward: dict[Node, Iterable[Node]] = {_SUPPLY: self._entries(zone)}
        queue, free = deque(onward[_SUPPLY]), self.zoning.piping.free
        while queue:
            node = queue.popleft()
            if node not in onward:
                onward[node] = [] if node in self._inlets else [to for to in free[node] if to not in self._bodies]
                queue.extend(onward[node])
        tree = dominators(onward, _SUPPLY)
        return ColdHeader(tree, tuple(node for node in self._draws if node in tree))

    def _entries(self, zone: Zone) -> tuple[Node, ...]:
        """Where water comes into a zone that has not been there: at supplies, through gates, else through shut ones."""
        own = [node for node in self._sources if self.zoning.zone_of[node] == zone]
        forward = [one for one in self.zoning.into.get(zone, ()) if one.is_forward and self._is_fed(one.near, zone)]
        entries = [*own, *(one.enters for one in forward if one.way is not None)]
        entries = entries or [one.enters for one in forward if one.gate.is_shut]
        return tuple(dict.fromkeys(node for node in entries if node not in self._bodies))

    def _is_fed(self, near: Zone, zone: Zone) -> bool:
        """Whether supplies feed a zone though nothing passes through another: not every way there leads through it."""
        if near not in self._spans or near == zone:
            return False
        first, end = self._spans.get(zone, (0, 0))
        return not first <= self._spans[near][0] < end

    @cached_property
    def _spans(self) -> dict[Zone, tuple[int, int]]:
        """Zones that supplies feed, numbered so that what is fed through one alone lies in its span. Near-linear."""
        onward: dict[Zone, list[Zone]] = {_SUPPLY: [self.zoning.zone_of[node] for node in self._sources]}
        queue = deque(onward[_SUPPLY])
        while queue:
            zone = queue.popleft()
            if zone not in onward:
                onward[zone] = [one.far for one in self.zoning.out.get(zone, ()) if _feeds(one)]
                queue.extend(onward[zone])
        return spans(dominators(onward, _SUPPLY))

    @cached_property
    def _sources(self) -> tuple[Node, ...]:
        piping = self.zoning.piping
        found = ((name, part.source()) for name, part in piping.system.parts.items())
        return tuple(piping.node_of[End(name, source.port)] for name, source in found if source is not None)

    @cached_property
    def _draws(self) -> tuple[Node, ...]:
        piping = self.zoning.piping
        ends = (End(name, port) for name, part in piping.system.parts.items() for port in part.draws_at())
        return tuple(piping.node_of[end] for end in ends)

    @cached_property
    def _inlets(self) -> frozenset[Node]:
        return frozenset(one.inlet for one in self.heated)

    @cached_property
    def _bodies(self) -> frozenset[Node]:
        """The nodes of heaters through which no cold pipe leads."""
        return frozenset(self._heater_nodes()) - self._inlets

    def _heater_nodes(self) -> Iterator[Node]:
        for one in self.heated:
            yield from self.zoning.piping.nodes_of(one.name)


def _feeds(crossing: Crossing) -> bool:
    return crossing.is_forward and (crossing.way is not None or crossing.gate.is_shut)
